// Plates and labels to print. The brewery's server draws them; the phone saves the file.

import { useEffect, useState } from "preact/hooks";
import { londonDate } from "../../../domain/calendar.ts";
import { book } from "../../../store/book.ts";
import { known } from "../../known.ts";
import { Button } from "../../parts/Button.tsx";
import { Choice } from "../../parts/Choice.tsx";
import { Field } from "../../parts/Field.tsx";
import { faultWords, say } from "../../parts/say.ts";
import { useTitle } from "../../shell/title.ts";
import { count, listWords } from "../../words.ts";
import { fetchAnswer } from "../fetching.ts";
import { readNumbers } from "../register/numbers.ts";

type Which = "fills" | "plates";

interface Paper {
  address: string;
  name: string;
}

const WHICH = [
  { value: "fills", label: "Of fills" },
  { value: "plates", label: "Plates" },
] as const;

const STOCK = [
  { value: "a4", label: "A4, 2 by 5" },
  { value: "roll", label: "Roll, 100 by 50" },
] as const;

const SAYS: { readonly [which in Which]: string } = {
  fills: "Beer, strength, best before, lot and allergens of what is in them now.",
  plates: "Number, brewery and a code to scan. A plate stays on for the container's life.",
};

/** What was racked today stands there already: it is what labels are mostly wanted for. */
const rackedToday = (): string => {
  const today = londonDate(known.peek().now);
  return [...book.containers.peek().values()]
    .filter(({ contents }) => contents !== null && londonDate(contents.since) === today)
    .map(({ number }) => number)
    .join(", ");
};

const makePaper = async (which: Which, query: URLSearchParams): Promise<Paper> => {
  const file = await (await fetchAnswer(`/api/labels/${which}.pdf?${query}`)).blob();
  return { address: URL.createObjectURL(file), name: `${which}.pdf` };
};

const faultOf = (numbers: readonly string[], unread: readonly string[]): string | null => {
  if (unread.length > 0) return `Not a number: ${listWords(unread)}.`;
  return numbers.length === 0 ? "Which containers? A run or several: 117-124, 130." : null;
};

const usedFault = (used: string): string | null =>
  /^[0-9]?$/.test(used.trim()) ? null : "A whole figure from 0 to 9.";

/** `of` is the container whose page led here. */
export const Labels = (props: { which: Which; of: string | undefined }) => {
  useTitle("Labels");
  const [which, setWhich] = useState<Which>(props.which);
  const [stock, setStock] = useState<string>("a4");
  const [typed, setTyped] = useState(() => props.of ?? rackedToday());
  const [used, setUsed] = useState("");
  const [tried, setTried] = useState(false);
  const [paper, setPaper] = useState<Paper | null>(null);
  useEffect(() => () => void (paper && URL.revokeObjectURL(paper.address)), [paper]);

  const { numbers, unread } = readNumbers(typed);
  const numbersFault = faultOf(numbers, unread);
  const make = async () => {
    setTried(true);
    setPaper(null);
    if (numbersFault !== null || usedFault(used) !== null) return;
    const query = new URLSearchParams({ numbers: numbers.join(","), stock, used: used || "0" });
    try {
      setPaper(await makePaper(which, query));
    } catch (fault) {
      say.trouble(faultWords(fault));
    }
  };
  const change =
    <Value,>(set: (value: Value) => void) =>
    (value: Value) => {
      setPaper(null);
      set(value);
    };
  return (
    <form
      class="form"
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        void make();
      }}
    >
      <Choice
        label="Which labels"
        value={which}
        onValue={change((value) => setWhich(value as Which))}
        options={WHICH}
      />
      <p class="small">{SAYS[which]}</p>
      <Field
        label="Numbers"
        hint="A run or several: 117-124, 130, K3."
        value={typed}
        onValue={change(setTyped)}
        fault={tried ? numbersFault : null}
        capitals
      />
      <Choice label="On what" value={stock} onValue={change(setStock)} options={STOCK} />
      {stock === "a4" && (
        <Field
          label="Labels gone from the first sheet"
          type="whole"
          value={used}
          onValue={change(setUsed)}
          fault={tried ? usedFault(used) : null}
        />
      )}
      {paper === null ? (
        <Button look="main" wide onPress={() => void make()}>
          {numbers.length === 0 ? "Make the file" : `Make ${count(numbers.length, "label")}`}
        </Button>
      ) : (
        <a class="button main wide" href={paper.address} download={paper.name}>
          Save {paper.name}
        </a>
      )}
      <p class="small">Print at full size, not fitted to the page. This needs the network.</p>
    </form>
  );
};
