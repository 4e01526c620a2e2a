// All that was done at this bench today, each with its way back.

import { book } from "../../store/book.ts";
import { known } from "../known.ts";
import { Empty } from "../parts/Empty.tsx";
import { Head } from "../parts/Head.tsx";
import { bareHead, headOf } from "../parts/head-of.ts";
import { Lines } from "../parts/Line.tsx";
import { undo } from "../parts/say.ts";
import { containerHref, goOnTo, hrefTo } from "../shell/route.ts";
import { useTitle } from "../shell/title.ts";
import { clockWords, containerName, litres } from "../words.ts";
import { JOBS } from "./jobs.ts";
import { doneToday, HEADING } from "./Lately.tsx";
import type { Done } from "./session.ts";
import { clearPad, job, moving } from "./state.ts";

const WHERE = { phone: "on this phone", brewery: "at the brewery", attention: "needs attention" };

const facts = ({ own: { entry } }: Done): string =>
  entry.kind === "filled"
    ? `${litres(entry.facts.volume_ml)}, `
    : entry.kind === "inspected"
      ? `${entry.facts.passed ? "passed" : `set aside: ${entry.facts.why}`}, `
      : "";

const Row = ({ done }: { done: Done }) => {
  const { number, own } = done;
  const standing = book.containers.value.get(number);
  const what = `${number} ${JOBS[job.value].done.split(",")[0]}.`;
  return (
    <li class="line two-rows">
      <a class="what" href={containerHref(number)}>
        <Head look={standing ? headOf(standing, known.value.now) : bareHead(number)} />
        <div>
          <p>
            <strong>{standing ? containerName(standing) : number}</strong>
          </p>
          <p class="small">
            {facts(done)}
            {clockWords(own.entry.happened_at)}, {WHERE[own.where]}
          </p>
        </div>
      </a>
      <button
        type="button"
        class="button"
        aria-label={`Undo ${what}`}
        onClick={() => void undo(what, done.entries)}
      >
        Undo
      </button>
      <button
        type="button"
        class="button"
        aria-label={`Wrong number: ${number}`}
        onClick={() => {
          clearPad();
          moving.value = { number, entries: done.entries };
          goOnTo("bench");
        }}
      >
        Wrong number
      </button>
    </li>
  );
};

const DoneList = () => {
  const all = doneToday();
  useTitle(`${HEADING[job.value]} today`);
  if (all.length === 0) {
    return (
      <Empty says="Nothing on this phone in the last 12 hours.">
        <a class="button main" href={hrefTo("bench")}>
          To the pad
        </a>
      </Empty>
    );
  }
  return (
    <Lines heading="On this phone" count={all.length}>
      {all.map((done) => (
        <Row key={done.own.entry.id} done={done} />
      ))}
    </Lines>
  );
};

export default DoneList;
