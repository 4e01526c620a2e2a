// The last few that were done, as heads in a row: "did I do 114?" is answered at a glance. Touched,
// it opens the whole list.

import { book } from "../../store/book.ts";
import { known } from "../known.ts";
import { Head } from "../parts/Head.tsx";
import { bareHead, headOf } from "../parts/head-of.ts";
import { hrefTo } from "../shell/route.ts";
import { type Done, session } from "./session.ts";
import { gyleId, job } from "./state.ts";

export const HEADING = { fill: "Filled", fine: "Fined", wash: "Washed", inspect: "Inspected" };

/** What fits beside one another at 320 px. */
const MOST = 5;

export const doneToday = (): Done[] =>
  session(book.ownEntries.value, job.value, gyleId.value, known.value.now);

export const Lately = () => {
  const all = doneToday();
  if (all.length === 0) return null;
  return (
    <a class="lately" href={hrefTo("bench", "done")}>
      <p class="small">
        <span>{HEADING[job.value]} on this phone today, the last first</span>{" "}
        <b>{all.length === 1 ? "1" : `all ${all.length}`}</b>
      </p>
      <div aria-hidden="true">
        {all.slice(0, MOST).map(({ number, own }) => {
          const standing = book.containers.value.get(number);
          const look = standing ? headOf(standing, known.value.now) : bareHead(number);
          return <Head key={own.entry.id} look={look} />;
        })}
      </div>
    </a>
  );
};
