// A container's head, seen end-on, as it would look in the cellar. Beside it the same is always
// said in words, so it is hidden from ears.

/** What a head shows. Made from a standing by headOf(); by hand only where there is none. */
export interface HeadLook {
  label: string;
  shape: "cask" | "keg";
  /** Share of the container that is full, 0 to 1. */
  level: number;
  /** Share of the time to best before that is left, 0 to 1; null shows no ring. */
  ring: number | null;
  spile: "hard" | "soft" | "unknown" | null;
  tapped: boolean;
  /** Not at the brewery: a broken rim. */
  away: boolean;
  /** Set aside, missing or scrapped: struck through. */
  stopped: boolean;
}

const RADIUS = 47;
const ROUND = 2 * Math.PI * RADIUS;
const CASK = "M50 8a42 42 0 1 0 .01 0Z";
const KEG = "M28 8H72L92 28V72L72 92H28L8 72V28Z";

/** The ring turns to the colour of warning for its last eighth; its words say the days. */
const LAST = 1 / 8;

const sizeOf = (label: string): number =>
  label.length <= 3 ? 32 : label.length === 4 ? 25 : label.length <= 6 ? 18 : 14;

const Spile = ({ spile }: { spile: HeadLook["spile"] }) =>
  spile === null ? null : spile === "hard" ? (
    <path class="hard" d="M44 0h12l-2.5 17h-7z" />
  ) : (
    <path class="soft" d="M45 1h10l-2 15h-6z" />
  );

export const Head = ({ look, size = "" }: { look: HeadLook; size?: "" | "large" | "huge" }) => {
  const shape = look.shape === "keg" ? KEG : CASK;
  const top = 92 - 84 * Math.min(1, Math.max(0, look.level));
  // Cut by an arc or a box of its own rather than by a clip path, which would need an id.
  return (
    <svg class={`head ${size} ${look.away ? "away" : ""}`} viewBox="0 0 100 108" aria-hidden="true">
      <path class="steel" d={shape} />
      {look.level > 0 && <path class="level" d={beerPath(look.shape, top)} />}
      <path class="rim" d={shape} />
      {look.ring !== null && look.ring > 0 && (
        <circle
          class={look.ring < LAST ? "ring last" : "ring"}
          cx="50"
          cy="50"
          r={RADIUS}
          stroke-dasharray={`${look.ring * ROUND} 999`}
          transform="rotate(-90 50 50)"
        />
      )}
      <Spile spile={look.spile} />
      {look.tapped && <path class="tap" d="M44 84h12v10h-4v12h-6v-6h2v-6h-4z" />}
      {look.stopped && <path class="stop" d="M14 86 86 14" />}
      <text x="50" y={50 + sizeOf(look.label) * 0.35} font-size={sizeOf(look.label)}>
        {look.label}
      </text>
    </svg>
  );
};

/** The outline of the beer from the foot of the head up to `top`. */
const beerPath = (shape: "cask" | "keg", top: number): string => {
  if (shape === "cask") {
    const half = Math.sqrt(Math.max(0, 42 ** 2 - (50 - top) ** 2));
    const large = top < 50 ? 1 : 0;
    return `M${50 - half} ${top}A42 42 0 ${large} 0 ${50 + half} ${top}Z`;
  }
  if (top >= 72) return `M${8 + top - 72} ${top}H${92 - (top - 72)}L72 92H28Z`;
  const foot = "V72L72 92H28L8 72";
  if (top >= 28) return `M8 ${top}H92${foot}Z`;
  return `M${36 - top} ${top}H${64 + top}L92 28${foot}V28Z`;
};
