// The one container that is meant: its head, and what is to be known before the button is pressed.

import type { Standing } from "../../domain/standing.ts";
import NewContainer from "../bench/NewContainer.tsx";
import { known } from "../known.ts";
import { Field } from "../parts/Field.tsx";
import { Head } from "../parts/Head.tsx";
import { bareHead, headOf } from "../parts/head-of.ts";
import { containerHref } from "../shell/route.ts";
import { containerName, litres } from "../words.ts";
import type { HandJob } from "./hand-job.ts";

/** Digits that fit one container with letters may be meant as a plain number all the same. */
const NotThat = ({ number, job }: { number: string; job: HandJob }) => {
  const { typed, chosen } = job.pad;
  const plain = typed.value;
  if (plain === number || chosen.value !== null) return null;
  return (
    <button
      type="button"
      class="button quiet"
      onClick={() => {
        chosen.value = plain;
      }}
    >
      Not {number}, but {plain}
    </button>
  );
};

export const HandOne = (props: { number: string; standing: Standing | null; job: HandJob }) => {
  const { number, standing, job } = props;
  const ullage = job.ullage?.ml ?? null;
  return (
    <div class="now">
      <a href={containerHref(number)} aria-label={`Page of ${number}`}>
        <Head look={standing ? headOf(standing, known.value.now) : bareHead(number)} size="large" />
      </a>
      <div>
        <p>
          <strong>{standing ? containerName(standing) : number}</strong>
        </p>
        {job.remarks(standing).map((remark) => (
          <p key={remark.says} class={remark.tone || "small"}>
            {remark.says}
          </p>
        ))}
        {ullage !== null && <p class="look">{litres(ullage)} of beer still in it.</p>}
        {!standing?.registered && (
          <>
            <p class="look">Not on record. What is it?</p>
            <NewContainer />
            {job.owner && (
              <Field
                label="Whose, if not ours"
                value={job.owner.name}
                onValue={job.owner.set}
                maxLength={60}
              />
            )}
          </>
        )}
        <NotThat number={number} job={job} />
      </div>
    </div>
  );
};
