// Between the session's list and the pad: the container that is meant, and all there is to know
// before the button is pressed. It sits on the pad, so that a warning is never out of sight.

import { book } from "../../store/book.ts";
import { known } from "../known.ts";
import { SavedStrip } from "../parts/Saved.tsx";
import { said } from "../parts/say.ts";
import { Lazy } from "../shell/Lazy.tsx";
import { hrefTo } from "../shell/route.ts";
import { litres } from "../words.ts";
import { capacityOf, JOBS } from "./jobs.ts";
import { NowOne } from "./NowOne.tsx";
import { NowRun } from "./NowRun.tsx";
import { NowSeveral } from "./NowSeveral.tsx";
import { session } from "./session.ts";
import { clearPad, failing, gyleId, job, meant, moving, typed, typingLitres } from "./state.ts";

const FAILING = { title: "Bench", place: "bench", load: () => import("./Failing.tsx") };

/** What of this bench was just saved, if it was one: a run is moved in the list above. */
const justDone = (entries: readonly string[]) =>
  session(book.ownEntries.value, job.value, gyleId.value, known.value.now).find((one) =>
    entries.includes(one.own.entry.id),
  );

const wrongNumber = (entries: readonly string[]): void => {
  const done = justDone(entries);
  if (done === undefined) return;
  clearPad();
  moving.value = { number: done.number, entries: done.entries };
};

const Hint = () => {
  const from = moving.value;
  if (from !== null) {
    return (
      <div class="now">
        <p class="look">Not {from.number}: which number was it?</p>
        <button
          type="button"
          class="button"
          onClick={() => {
            moving.value = null;
          }}
        >
          It was {from.number}
        </button>
      </div>
    );
  }
  if (said.value !== null && !said.value.trouble) {
    // What was saved elsewhere, a new gyle for one, has no number that could be wrong.
    return justDone(said.value.entries) ? <SavedStrip onWrong={wrongNumber} /> : <SavedStrip />;
  }
  return (
    <p class="now small">
      {job.value === "fill"
        ? "Type the number of the container under the spout. A run: 117 – 124."
        : "Type the number on the container. A run: 117 – 124."}
    </p>
  );
};

/** Which container the litres are for, and what it holds. */
const into = (): string => {
  const what = meant.value;
  if (what.is !== "one") return "How much goes into the next one?";
  const capacity = capacityOf(what.standing);
  return `into ${what.number}${capacity === null ? "" : `, which holds ${litres(capacity)}`}`;
};

const Litres = ({ text }: { text: string }) => {
  return (
    <p class="now typed">
      <output aria-live="polite">{text === "" ? "–" : text}</output> litres
      <span class="small">{into()}</span>
      {meant.value.is === "one" && (
        <a class="button" href={hrefTo("bench", "weight")}>
          By weight
        </a>
      )}
    </p>
  );
};

/** What went wrong stays above the pad until the next key. */
export const Now = () => (
  <>
    {said.value?.trouble && <p class="now look">{said.value.text}</p>}
    <Meant />
  </>
);

const Meant = () => {
  if (typingLitres.value !== null) return <Litres text={typingLitres.value} />;
  const what = meant.value;
  switch (what.is) {
    case "nothing":
      return <Hint />;
    case "unfinished":
      return (
        <p class="now typed">
          <output aria-live="polite">{typed.value.replace("-", " – ")}</output>
          <span class="small"> {what.says}</span>
        </p>
      );
    case "several":
      return <NowSeveral numbers={what.numbers} />;
    case "run":
      return <NowRun numbers={what.numbers} />;
    default:
      return failing.value ? (
        <Lazy screen={FAILING} path={[what.number]} />
      ) : (
        <NowOne
          number={what.number}
          standing={book.containers.value.get(what.number) ?? null}
          doing={JOBS[job.value].doing}
          known={known.value}
        />
      );
  }
};
