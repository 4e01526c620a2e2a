// The buttons of a container's page: what is likely now, and everything else behind "More".

import { useState } from "preact/hooks";
import type { Standing } from "../../domain/standing.ts";
import { clearPad, gyleId, job, type } from "../bench/state.ts";
import { may } from "../mine.ts";
import { More } from "../parts/More.tsx";
import { NotMine } from "../parts/NotMine.tsx";
import { goTo } from "../shell/route.ts";
import { DeedForm } from "./DeedForm.tsx";
import { DEEDS, type DeedName } from "./deeds.ts";
import { likely, others } from "./likely.ts";
import { take } from "./take.ts";

/** Filling has its own place: the gyle is chosen there, and what is odd is said there. */
const fillAtTheBench = (number: string): void => {
  clearPad();
  job.value = "fill";
  type(number);
  goTo("bench", ...(gyleId.peek() === "" ? ["gyle"] : []));
};

export const Deeds = ({ standing }: { standing: Standing }) => {
  const [open, setOpen] = useState<DeedName | null>(null);
  const press = (name: DeedName) => {
    if (DEEDS[name].asks.length > 0) setOpen(open === name ? null : name);
    else {
      setOpen(null);
      void take(DEEDS[name], {}, standing);
    }
  };
  const button = (name: DeedName, look = "") => (
    <button
      type="button"
      class={`button ${look}`}
      key={name}
      aria-expanded={DEEDS[name].asks.length > 0 ? open === name : undefined}
      onClick={() => press(name)}
    >
      {DEEDS[name].label}
    </button>
  );
  const form = (name: DeedName) => (
    <DeedForm key={name} deed={DEEDS[name]} standing={standing} onDone={() => setOpen(null)} />
  );
  if (!may("noted")) return <NotMine kind="noted" />;
  const mine = (name: DeedName) => may(DEEDS[name].kind);
  const first = likely(standing).filter(mine);
  const fill = may("filled") && (
    <button type="button" class="button" onClick={() => fillAtTheBench(standing.number)}>
      Fill at the Bench
    </button>
  );
  const empty = standing.contents === null && standing.trip === null;
  return (
    <section class="deeds" aria-label="What happened to it?">
      <div class="buttons pairs">
        {first.map((name, at) => button(name, at === 0 ? "main" : ""))}
        {empty && fill}
      </div>
      {open !== null && first.includes(open) && form(open)}
      <More label="More that can happen to it">
        <div class="buttons pairs">
          {others(standing)
            .filter(mine)
            .map((name) => button(name))}
          {!empty && fill}
        </div>
        {open !== null && !first.includes(open) && form(open)}
      </More>
    </section>
  );
};
