// The one container that is meant: its head, and what is to be known before the button is pressed.

import type { Standing } from "../../domain/standing.ts";
import NewContainer from "../bench/NewContainer.tsx";
import { known } from "../known.ts";
import { Field } from "../parts/Field.tsx";
import { Head } from "../parts/Head.tsx";
import { bareHead, headOf } from "../parts/head-of.ts";
import { Others } from "../parts/pad/Others.tsx";
import { containerHref } from "../shell/route.ts";
import { containerName, litres } from "../words.ts";
import type { HandJob } from "./hand-job.ts";

export const HandOne = (props: { number: string; standing: Standing | null; job: HandJob }) => {
  const { number, standing, job } = props;
  const ullage = job.ullage?.ml ?? null;
  const meant = job.pad.meant.value;
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
        {meant.is === "one" && <Others of={meant} chosen={job.pad.chosen} />}
      </div>
    </div>
  );
};
