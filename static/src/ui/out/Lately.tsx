// What was recorded at the van lately, each with its way back.

import { book } from "../../store/book.ts";
import { Slices } from "../cellar/Slices.tsx";
import { known } from "../known.ts";
import { Head } from "../parts/Head.tsx";
import { bareHead, headOf } from "../parts/head-of.ts";
import { Lines } from "../parts/Line.tsx";
import { undo } from "../parts/say.ts";
import { containerHref } from "../shell/route.ts";
import { clockWords, containerName } from "../words.ts";
import type { Done } from "./session.ts";

const WHERE = { phone: "on this phone", brewery: "at the brewery", attention: "needs attention" };

const Row = (props: { done: Done; did: string; about: string }) => {
  const { own, entries } = props.done;
  const number = own.entry.subject;
  const standing = book.containers.value.get(number);
  const what = `${number} ${props.did}.`;
  return (
    <li class="line">
      <a class="what" href={containerHref(number)}>
        <Head look={standing ? headOf(standing, known.value.now) : bareHead(number)} />
        <div>
          <p>
            <strong>{standing ? containerName(standing) : number}</strong>
          </p>
          <p class="small">
            {props.about}
            {clockWords(own.entry.happened_at)}, {WHERE[own.where]}
          </p>
        </div>
      </a>
      {own.where !== "attention" && (
        <button
          type="button"
          class="button"
          aria-label={`Undo: ${what}`}
          onClick={() => void undo(what, entries)}
        >
          Undo
        </button>
      )}
    </li>
  );
};

export const Lately = (props: {
  heading: string;
  count: string;
  all: readonly Done[];
  /** After the number: "came back". */
  did: string;
  /** What else is to be said of one, with its comma: "from Lantern, ". */
  about: (done: Done) => string;
}) =>
  props.all.length === 0 ? null : (
    <Lines heading={props.heading} count={props.count}>
      <Slices
        items={props.all}
        each={(done) => (
          <Row key={done.own.entry.id} done={done} did={props.did} about={props.about(done)} />
        )}
      />
    </Lines>
  );
