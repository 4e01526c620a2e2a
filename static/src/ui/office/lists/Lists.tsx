// Lists in and out. One that the brewery kept elsewhere is shown first, with every cell that is
// wrong; then it is entered whole, or mended and chosen again.

import { useEffect, useState } from "preact/hooks";
import { book } from "../../../store/book.ts";
import { role } from "../../mine.ts";
import { Button } from "../../parts/Button.tsx";
import { faultWords, save } from "../../parts/say.ts";
import { useTitle } from "../../shell/title.ts";
import { count, listWords } from "../../words.ts";
import { newId } from "../new-id.ts";
import { askForKinds, draftsOf, type Reading, readList, type SheetKind } from "./ask.ts";

/** More than this nobody mends from a phone's screen. */
const MOST_SHOWN = 20;

interface Read {
  kind: SheetKind;
  name: string;
  reading: Reading | null;
  trouble: string;
}

const Headings = ({ columns }: SheetKind) => {
  const names = (required: boolean) =>
    listWords(columns.filter((one) => one.required === required).map(({ heading }) => heading));
  return (
    <p class="small">
      First row: {names(true)}. If you have them: {names(false)}.
    </p>
  );
};

const Choose = ({ kind, onRead }: { kind: SheetKind; onRead: (read: Read) => void }) => {
  const read = async (file: File) => {
    const found = { kind, name: file.name, reading: null, trouble: "" };
    try {
      onRead({ ...found, reading: await readList(kind.kind, file) });
    } catch (fault) {
      onRead({ ...found, trouble: faultWords(fault) });
    }
  };
  return (
    <section class="form">
      <h2>{kind.title}</h2>
      <Headings {...kind} />
      <label class="button wide">
        Choose a file: {kind.title}
        <input
          type="file"
          class="unseen"
          accept=".csv,.txt,.xlsx,text/csv"
          onChange={(event) => {
            const [file] = event.currentTarget.files ?? [];
            event.currentTarget.value = "";
            if (file !== undefined) void read(file);
          }}
        />
      </label>
    </section>
  );
};

const Faults = ({ faults }: Reading) => (
  <>
    <p class="look">
      {count(faults.length, "cell has", "cells have")} to be mended. Put them right in the file and
      choose it again; nothing is entered until all of it can be.
    </p>
    <ul>
      {faults.slice(0, MOST_SHOWN).map(({ row, column, says }) => (
        <li key={`${row} ${column}`}>
          Row {row}, {column}: {says}
        </li>
      ))}
    </ul>
    {faults.length > MOST_SHOWN && <p>And {faults.length - MOST_SHOWN} more.</p>}
  </>
);

const Found = ({ read, onDone }: { read: Read; onDone: () => void }) => {
  const { name, reading, trouble, kind } = read;
  if (reading === null) return <p class="look">{`${name}: ${trouble}`}</p>;
  const { drafts, faults, on_record, not_used } = reading;
  const enter = async () => {
    const entered = `${kind.title}: ${count(drafts.length, "row")} entered.`;
    if (await save(entered, () => book.recordMany(draftsOf(reading, newId)))) onDone();
  };
  return (
    <>
      <p>
        {name}: {count(drafts.length, "new row")}, {on_record} on record already.
      </p>
      {not_used.length > 0 && <p class="small">Not used: {listWords(not_used)}.</p>}
      {faults.length > 0 && <Faults {...reading} />}
      {faults.length === 0 && drafts.length > 0 && (
        <Button look="main" wide onPress={() => void enter()}>
          Enter {count(drafts.length, "row")}
        </Button>
      )}
    </>
  );
};

/** Everything at once is for an owner. */
const mayTakeOut = (): boolean => role.value === null || role.value === "owner";

/** Plain links: the browser saves what they lead to, and says so itself. */
const TakeOut = ({ kinds }: { kinds: readonly SheetKind[] }) => (
  <section class="form">
    <h2>Take a copy out</h2>
    {kinds.map(({ kind, title }) => (
      <a key={kind} class="button wide" href={`/api/sheets/${kind}.csv`} download>
        {title}, as CSV
      </a>
    ))}
    <a class="button wide" href="/api/ledger.json" download>
      Everything, as JSON
    </a>
    <a class="button wide" href="/api/events.jsonld" download>
      Events of containers, as EPCIS
    </a>
  </section>
);

export const Lists = () => {
  useTitle("Your lists");
  const [kinds, setKinds] = useState<readonly SheetKind[]>([]);
  const [trouble, setTrouble] = useState("");
  const [read, setRead] = useState<Read | null>(null);
  const ask = () => {
    setTrouble("");
    askForKinds().then(setKinds, (fault: unknown) => setTrouble(faultWords(fault)));
  };
  useEffect(ask, []);
  return (
    <>
      <p class="form small">
        From CSV or a workbook (.xlsx). Bring in the customers before what is out with them.
      </p>
      <section class={read === null ? "" : "form"} role="status">
        {read !== null && <Found key={read.name} read={read} onDone={() => setRead(null)} />}
      </section>
      {trouble !== "" && (
        <section class="form" role="alert">
          <p>{trouble} Lists are read by the brewery's server, so this needs the network.</p>
          <Button onPress={ask}>Try again</Button>
        </section>
      )}
      {kinds.map((kind) => (
        <Choose key={kind.kind} kind={kind} onRead={setRead} />
      ))}
      {kinds.length > 0 && mayTakeOut() && <TakeOut kinds={kinds} />}
    </>
  );
};
