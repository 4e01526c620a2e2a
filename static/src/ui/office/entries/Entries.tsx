// The entries of this phone: what needs attention, what waits, what is at the brewery.

import { isNumber } from "../../../domain/numbers.ts";
import { book, type OwnEntry } from "../../../store/book.ts";
import { sync } from "../../../sync/engine.ts";
import { Slices } from "../../cellar/Slices.tsx";
import { known } from "../../known.ts";
import { mayPutRight } from "../../mine.ts";
import { Line, Lines } from "../../parts/Line.tsx";
import { undo } from "../../parts/say.ts";
import { containerHref } from "../../shell/route.ts";
import { useTitle } from "../../shell/title.ts";
import { ageWords, count, fullTimeWords } from "../../words.ts";
import { Attention } from "./Attention.tsx";
import { OutboxFile } from "./OutboxFile.tsx";
import { ownTitle } from "./said.ts";

const waitingWords = (): string => {
  const { count: n, oldestAt } = book.waiting.value;
  if (n === 0) return "Nothing waits: all that this phone recorded is at the brewery.";
  const age = oldestAt === null ? "" : ageWords(oldestAt, known.value.now);
  const oldest = age === "" || age === "just now" ? "" : `, the oldest for ${age}`;
  return `${count(n, "entry waits", "entries wait")} on this phone${oldest}.`;
};

const SyncNow = () => {
  const { busy, message } = sync.state.value;
  return (
    <div class="form">
      <p>
        <strong>{waitingWords()}</strong>
      </p>
      {message !== null && <p class="small">{message}</p>}
      <button type="button" class="button" onClick={() => void sync.now()}>
        {busy ? "Asking the brewery…" : "Send and fetch now"}
      </button>
    </div>
  );
};

const EntryLine = ({ own }: { own: OwnEntry }) => {
  const { entry, undone } = own;
  const title = ownTitle(own, known.value);
  const by = entry.person === "" ? "" : `, ${entry.person}`;
  const canUndo = !undone && entry.kind !== "voided" && mayPutRight(entry);
  return (
    <Line
      title={title}
      reason={`${fullTimeWords(entry.happened_at, known.value.now)}${by}${undone ? ", undone" : ""}`}
      {...(isNumber(entry.subject) ? { href: containerHref(entry.subject) } : {})}
      {...(canUndo
        ? { action: { label: "Undo", onPress: () => void undo(`${title}.`, [entry.id]) } }
        : {})}
    />
  );
};

const EntryLines = (props: { heading: string; all: readonly OwnEntry[] }) =>
  props.all.length === 0 ? null : (
    <Lines heading={props.heading} count={props.all.length}>
      <Slices items={props.all} each={(own) => <EntryLine key={own.entry.id} own={own} />} />
    </Lines>
  );

export const Entries = () => {
  useTitle("Entries on this phone");
  const all = book.ownEntries.value;
  const attention = all.filter(({ where }) => where === "attention");
  const waiting = all.filter(({ where }) => where === "phone");
  return (
    <>
      <SyncNow />
      {attention.length > 0 && (
        <Lines heading="Need attention" count={attention.length}>
          <Slices items={attention} each={(own) => <Attention key={own.entry.id} own={own} />} />
        </Lines>
      )}
      <EntryLines heading="On this phone" all={waiting} />
      <EntryLines heading="At the brewery" all={all.filter(({ where }) => where === "brewery")} />
      <OutboxFile waiting={waiting.length + attention.length} />
    </>
  );
};
