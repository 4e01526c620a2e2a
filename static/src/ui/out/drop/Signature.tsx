// A signature on the glass. Kept as strokes, not as a picture: it is small and prints sharp.

import { useEffect, useRef } from "preact/hooks";
import { Button } from "../../parts/Button.tsx";

/** Strokes are in thousandths of the width, both ways, so that they keep their shape. */
const PER = 1000;
export const HIGH = 400;
const MOST_SIGNS = 12_000;
const LEAST_STEP = 4;

type Point = readonly [x: number, y: number];

/** "x y x y;x y x y": the strokes of a signature. */
export const strokesOf = (signature: string): Point[][] =>
  signature
    .split(";")
    .filter((stroke) => stroke !== "")
    .map((stroke) => {
      const numbers = stroke.split(" ").map(Number);
      const points: Point[] = [];
      for (let n = 0; n + 1 < numbers.length; n += 2) {
        points.push([numbers[n] as number, numbers[n + 1] as number]);
      }
      return points;
    });

const pathOf = (stroke: readonly Point[]): string =>
  `M${stroke.map(([x, y]) => `${x} ${y}`).join("L")}${stroke.length === 1 ? "h1" : ""}`;

export const Strokes = ({ signature }: { signature: string }) => (
  <svg class="signature" viewBox={`0 0 ${PER} ${HIGH}`} role="img" aria-label="Signature">
    {strokesOf(signature).map((stroke) => (
      <path key={pathOf(stroke)} d={pathOf(stroke)} />
    ))}
  </svg>
);

const pointAt = (event: PointerEvent, glass: SVGSVGElement): Point => {
  const { left, top, width } = glass.getBoundingClientRect();
  const x = Math.round(((event.clientX - left) / width) * PER);
  const y = Math.round(((event.clientY - top) / width) * PER);
  return [Math.min(PER, Math.max(0, x)), Math.min(HIGH, Math.max(0, y))];
};

/** Fingers send many points on one spot; those say nothing. */
const grown = (signature: string, [x, y]: Point): string => {
  const numbers = signature.slice(signature.lastIndexOf(";") + 1).split(" ");
  const [lastX, lastY] = [Number(numbers.at(-2)), Number(numbers.at(-1))];
  if (Math.abs(lastX - x) < LEAST_STEP && Math.abs(lastY - y) < LEAST_STEP) return signature;
  return `${signature} ${x} ${y}`;
};

export const Signature = (props: {
  signature: string;
  onSignature: (signature: string) => void;
}) => {
  const glass = useRef<SVGSVGElement>(null);
  const latest = useRef(props);
  latest.current = props;
  const drawing = useRef("");
  useEffect(() => {
    const svg = glass.current;
    if (svg === null) return undefined;
    const put = (signature: string) => {
      if (signature.length > MOST_SIGNS) return;
      drawing.current = signature;
      latest.current.onSignature(signature);
    };
    const down = (event: PointerEvent) => {
      event.preventDefault();
      svg.setPointerCapture(event.pointerId);
      const [x, y] = pointAt(event, svg);
      const before = latest.current.signature;
      put(`${before}${before === "" ? "" : ";"}${x} ${y}`);
    };
    const move = (event: PointerEvent) => {
      if (svg.hasPointerCapture(event.pointerId)) put(grown(drawing.current, pointAt(event, svg)));
    };
    svg.addEventListener("pointerdown", down);
    svg.addEventListener("pointermove", move);
    return () => {
      svg.removeEventListener("pointerdown", down);
      svg.removeEventListener("pointermove", move);
    };
  }, []);
  return (
    <div class="field">
      <p>Signature</p>
      <svg
        ref={glass}
        class="signature glass"
        viewBox={`0 0 ${PER} ${HIGH}`}
        role="img"
        aria-label="Sign here"
      >
        {strokesOf(props.signature).map((stroke) => (
          <path key={pathOf(stroke)} d={pathOf(stroke)} />
        ))}
      </svg>
      {props.signature !== "" && (
        <Button look="quiet" onPress={() => props.onSignature("")}>
          Sign again
        </Button>
      )}
    </div>
  );
};
