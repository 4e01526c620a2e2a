// The racking bench: one gyle, one pad, one button. Everything comes from the phone's own store.

import { useEffect } from "preact/hooks";
import { book } from "../../store/book.ts";
import { may } from "../mine.ts";
import { Choice } from "../parts/Choice.tsx";
import { NotMine } from "../parts/NotMine.tsx";
import { Pad } from "../parts/pad/Pad.tsx";
import { SavedStrip } from "../parts/Saved.tsx";
import { said } from "../parts/say.ts";
import { Lazy } from "../shell/Lazy.tsx";
import { hrefTo } from "../shell/route.ts";
import type { Loadable } from "../shell/screens.ts";
import { litres } from "../words.ts";
import { Doses } from "./Doses.tsx";
import { GyleHead } from "./GyleHead.tsx";
import { goOf } from "./go.ts";
import { keepHand } from "./hand.ts";
import { capacityOf, solutionInUse } from "./jobs.ts";
import { Lately } from "./Lately.tsx";
import { Now } from "./Now.tsx";
import {
  clearPad,
  failing,
  gyleId,
  type JobName,
  job,
  meant,
  type,
  typed,
  typingLitres,
  volumeMl,
} from "./state.ts";

const GYLE = { title: "Bench", place: "bench", load: () => import("./ChooseGyle.tsx") };

const SCREENS: { readonly [path: string]: Loadable } = {
  gyle: GYLE,
  done: { title: "Bench", place: "bench", load: () => import("./DoneList.tsx") },
  lots: { title: "Lots in use", place: "bench", load: () => import("./ChooseLots.tsx") },
  plan: { title: "Plan", place: "bench", load: () => import("./Plan.tsx") },
  place: { title: "Where to", place: "bench", load: () => import("./WhereFilled.tsx") },
  solutions: { title: "Solutions", place: "bench", load: () => import("./washing/Solutions.tsx") },
  trials: { title: "Finings trials", place: "bench", load: () => import("./trial/Trials.tsx") },
  weight: { title: "By weight", place: "bench", load: () => import("./ByWeight.tsx") },
};

/** Fining is a job of its own where a beer is given isinglass. */
const jobOptions = () => [
  { value: "fill", label: "Fill" },
  ...(anyFined() ? [{ value: "fine", label: "Fine" }] : []),
  { value: "wash", label: "Wash" },
  { value: "inspect", label: "Inspect" },
];

const anyFined = (): boolean =>
  [...book.beers.value.values()].some(
    ({ fields }) => !fields.retired && (fields.isinglass_ml_per_hl ?? 0) > 0,
  );

const litresHint = (nominal = false): string => {
  const what = meant.value;
  const standing = what.is === "one" ? what.standing : null;
  const ml = (nominal ? null : volumeMl.value) ?? (what.is === "one" ? capacityOf(standing) : null);
  return ml === null ? "nominal" : litres(ml);
};

const side = () => {
  if (typingLitres.value !== null) {
    return {
      label: "Full",
      hint: litresHint(true),
      onPress: () => {
        volumeMl.value = null;
        typingLitres.value = null;
      },
    };
  }
  if (job.value === "fill") {
    return {
      label: "Litres",
      hint: litresHint(),
      onPress: () => {
        typingLitres.value = "";
      },
    };
  }
  if (job.value === "inspect" && meant.value.is === "one") {
    return {
      label: "Fail",
      onPress: () => {
        failing.value = true;
      },
    };
  }
  return undefined;
};

/** With no pad that would say it. */
const SaidStrip = () => (said.value === null ? null : <SavedStrip />);

export const Bench = ({ path }: { path: readonly string[] }) => {
  useEffect(keepHand, []);
  const screen = SCREENS[path[0] ?? ""];
  if (screen) return <Lazy screen={screen} path={path} />;
  if (!may("filled")) {
    return (
      <div class="bench">
        <NotMine kind="filled" />
        <SaidStrip />
      </div>
    );
  }
  const noGyle = job.value === "fill" && !book.gyles.value.has(gyleId.value);
  const inLitres = typingLitres.value;
  const key = side();
  const doses = (job.value === "fill" || job.value === "fine") && <Doses />;
  return (
    <div class="bench">
      {job.value === "fill" && !noGyle && <GyleHead />}
      {/* With a number on the pad its doses lie on the pad, in sight whatever else is said; they need
          the room, and the job is on the big button. */}
      {typed.value === "" && (
        <div class="jobs">
          <Choice
            label="What is done at the bench"
            labelUnseen
            options={jobOptions()}
            value={job.value}
            onValue={(value) => {
              clearPad();
              job.value = value as JobName;
            }}
          />
        </div>
      )}
      {!noGyle && typed.value === "" && doses}
      {noGyle ? (
        <>
          <Lazy screen={GYLE} path={path} />
          <SaidStrip />
        </>
      ) : (
        <>
          {job.value === "wash" && (
            <a class="lately" href={hrefTo("bench", "solutions")}>
              <p class="small">
                <span>Washed with</span> <b>{solutionInUse()?.name ?? "nothing on record"}</b>
              </p>
            </a>
          )}
          <Lately />
          <div class="hand">
            {typed.value !== "" && doses}
            <Now />
            {failing.value ? null : (
              <Pad
                typed={inLitres ?? typed.value}
                onTyped={(text) => {
                  if (inLitres === null) type(text);
                  else typingLitres.value = text;
                }}
                types={inLitres === null ? "number" : "litres"}
                go={goOf()}
                {...(key ? { side: key } : {})}
              />
            )}
          </div>
        </>
      )}
    </div>
  );
};
