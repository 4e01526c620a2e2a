// A container's history in words, the newest first, each entry with its way back.

import { useEffect, useState } from "preact/hooks";
import { isContainerKind, type MadeEntry } from "../../domain/entries.ts";
import { book } from "../../store/book.ts";
import { known } from "../known.ts";
import { may, mayPutRight } from "../mine.ts";
import { faultWords, save, say, undo } from "../parts/say.ts";
import { entryWords } from "../words/entries.ts";
import { doneWords, fullTimeWords } from "../words.ts";
import { ask } from "./ask.ts";
import { historyOf, type Line, type Told } from "./history.ts";
import { WhichNumber } from "./WhichNumber.tsx";

const WHERE = { phone: ", on this phone", brewery: "", attention: ", needs attention" };

/** A correction names what it put right, where that is known. */
const wordsOf = (entry: MadeEntry, all: readonly Line[]): string => {
  const target = all.find((line) => line.entry.id === entry.facts["target"]);
  const words = entryWords(entry, known.value);
  return target ? `${words}: ${entryWords(target.entry, known.value)}` : words;
};

/** What a finder left of themselves, which an owner erases for good when they ask for it. */
const Forget = ({ entry }: { entry: MadeEntry }) => {
  const [sure, setSure] = useState(false);
  const { words, name, phone } = entry.facts;
  if (entry.kind !== "reported" || !(words || name || phone) || !may("forgotten")) return null;
  const forget = async () => {
    try {
      await book.record("forgotten", entry.subject, { target: entry.id });
      say.saved("What the finder left of themselves is erased.", []);
    } catch (fault) {
      say.trouble(faultWords(fault));
    }
  };
  return sure ? (
    <>
      <button type="button" class="button" onClick={() => setSure(false)}>
        Keep it
      </button>
      <button type="button" class="button" onClick={() => void forget()}>
        Erase for good
      </button>
    </>
  ) : (
    <button type="button" class="button" onClick={() => setSure(true)}>
      Erase what they left of themselves
    </button>
  );
};

const Entry = ({ line, number, all }: { line: Line; number: string; all: readonly Line[] }) => {
  const [open, setOpen] = useState(false);
  const [moving, setMoving] = useState(false);
  const { entry } = line;
  const words = doneWords(entry.kind);
  // A correction stands under the number that was wrong, and is shown under the right one as it is.
  const elsewhere = line.countsFor !== null && line.countsFor !== number;
  const gone = line.undone || (elsewhere && isContainerKind(entry.kind));
  const state = line.undone
    ? ", undone"
    : gone
      ? `, moved to ${line.countsFor}`
      : WHERE[line.where];
  const can =
    !gone && line.where !== "attention" && isContainerKind(entry.kind) && mayPutRight(entry);
  const told = (
    <>
      <span class="words">{wordsOf(entry, all)}</span>
      <span class="small">
        {fullTimeWords(line.at, known.value.now)}, {entry.person || "no name"}
        {state}
      </span>
    </>
  );
  return (
    <li class={`past ${gone ? "gone" : ""}`}>
      {can ? (
        <button type="button" aria-expanded={open} onClick={() => setOpen(!open)}>
          {told}
        </button>
      ) : (
        <p>{told}</p>
      )}
      {open && can && (
        <div class="buttons">
          <button
            type="button"
            class="button"
            aria-label={`Undo: ${words}`}
            onClick={() => void undo(`${number}, ${words}.`, [entry.id], entry)}
          >
            Undo
          </button>
          <button
            type="button"
            class="button"
            aria-label={`Wrong number: ${words}`}
            onClick={() => setMoving(!moving)}
          >
            Wrong number
          </button>
          <Forget entry={entry} />
        </div>
      )}
      {open && can && moving && (
        <WhichNumber
          wrong={number}
          onNumber={(to) =>
            save(`Put down to ${to}, not ${number}.`, () => book.moveTo(entry.id, to, entry))
          }
          onLeave={() => setMoving(false)}
        />
      )}
    </li>
  );
};

/** Asked again whenever something about the container has changed at the brewery. */
const useTold = (number: string): readonly Told[] | null | undefined => {
  const [told, setTold] = useState<readonly Told[] | null>();
  const standing = book.containers.value.get(number);
  const settled = book.ownEntries.value.filter(
    (own) => own.entry.subject === number && own.where === "brewery",
  ).length;
  useEffect(() => {
    let stale = false;
    void ask(number).then((answer) => {
      if (!stale) setTold(answer);
    });
    return () => {
      stale = true;
    };
  }, [number, standing?.last, settled]);
  return told;
};

const SOURCE = {
  asking: "Asking the brewery for all of it…",
  all: "All of it, from the brewery.",
  own: "The brewery cannot be asked now. Here is what this phone noted itself; others may have noted more.",
};

export const History = ({ number }: { number: string }) => {
  const told = useTold(number);
  const lines = historyOf(number, told ?? null, book.ownEntries.value);
  return (
    <section class="lines">
      <h2>
        What happened to it <span>{lines.length}</span>
      </h2>
      <p class="source small" role="status">
        {SOURCE[told === undefined ? "asking" : told === null ? "own" : "all"]}
      </p>
      <ul>
        {lines.map((line) => (
          <Entry key={line.entry.id} line={line} number={number} all={lines} />
        ))}
      </ul>
    </section>
  );
};
