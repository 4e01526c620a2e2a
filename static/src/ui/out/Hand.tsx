// What is in the hand: the container that is meant, right on top of the pad.

import { book } from "../../store/book.ts";
import { known } from "../known.ts";
import { Head } from "../parts/Head.tsx";
import { bareHead, headOf } from "../parts/head-of.ts";
import { Pad } from "../parts/pad/Pad.tsx";
import { SavedStrip } from "../parts/Saved.tsx";
import { said } from "../parts/say.ts";
import { containerName, typedMl } from "../words.ts";
import { HandOne } from "./HandOne.tsx";
import { HandRun } from "./HandRun.tsx";
import { handGo } from "./hand-go.ts";
import type { HandJob } from "./hand-job.ts";
import { useOwnStrip } from "./own-strip.ts";

const Several = ({ numbers, job }: { numbers: readonly string[]; job: HandJob }) => (
  <div class="now several">
    <p class="small">Which one?</p>
    <div class="heads">
      {numbers.map((number) => {
        const standing = book.containers.value.get(number);
        return (
          <button
            type="button"
            class="button"
            key={number}
            onClick={() => {
              job.pad.chosen.value = number;
            }}
          >
            <Head look={standing ? headOf(standing, known.value.now) : bareHead(number)} />
            {standing ? containerName(standing) : number}
          </button>
        );
      })}
    </div>
  </div>
);

const Meant = ({ job }: { job: HandJob }) => {
  const { litres, meant, typed } = job.pad;
  if (litres.value !== null) {
    return (
      <p class="now typed">
        <output aria-live="polite">{litres.value === "" ? "–" : litres.value}</output> litres
        <span class="small"> of beer still in it</span>
      </p>
    );
  }
  const what = meant.value;
  switch (what.is) {
    case "nothing":
      return said.value !== null ? <SavedStrip /> : <p class="now small">{job.hint}</p>;
    case "unfinished":
      return (
        <p class="now typed">
          <output aria-live="polite">{typed.value.replace("-", " – ")}</output>
          <span class="small"> {what.says}</span>
        </p>
      );
    case "several":
      return <Several numbers={what.numbers} job={job} />;
    case "run":
      return <HandRun numbers={what.numbers} job={job} />;
    default:
      return <HandOne number={what.number} standing={what.standing} job={job} />;
  }
};

/** The key under the big button: litres of beer that came back, or away from typing them. */
const sideKey = ({ pad, ullage }: HandJob) => {
  if (ullage === undefined) return null;
  if (pad.litres.value !== null) {
    return {
      label: "None",
      hint: "empty",
      onPress: () => {
        ullage.set(null);
        pad.litres.value = null;
      },
    };
  }
  return {
    label: "Beer in it",
    onPress: () => {
      pad.litres.value = "";
    },
  };
};

export const Hand = ({ job }: { job: HandJob }) => {
  useOwnStrip();
  const { litres, typed, type } = job.pad;
  const side = sideKey(job);
  return (
    <section class="hand" aria-label={job.verb}>
      <Meant job={job} />
      <Pad
        types={litres.value === null ? "number" : "litres"}
        typed={litres.value ?? typed.value}
        onTyped={(text) => {
          if (litres.value !== null) litres.value = text;
          else type(text);
          // Another number is another container: the litres were this one's.
          if (text === "" && litres.value === null) job.ullage?.set(null);
        }}
        go={handGo(job, litres.value === null ? null : typedMl(litres.value))}
        {...(side === null ? {} : { side })}
      />
    </section>
  );
};
