// Entries that the brewery keeps for the owner to decide: from a phone that was out of use, of
// somebody whose role does not go so far. Each is taken in or put aside; neither loses it.

import { useState } from "preact/hooks";
import { sync } from "../../../sync/engine.ts";
import { Slices } from "../../cellar/Slices.tsx";
import { known } from "../../known.ts";
import { Lines } from "../../parts/Line.tsx";
import { More } from "../../parts/More.tsx";
import { faultWords, say } from "../../parts/say.ts";
import { useTitle } from "../../shell/title.ts";
import { count, fullTimeWords } from "../../words.ts";
import { Answer } from "./Answer.tsx";
import { type DeviceAnswer, type DeviceNames, type HeldAnswer, namesOf } from "./answers.ts";
import { ForOwner } from "./ForOwner.tsx";
import { byDevice, canTake, type HeldGroup, heldEntry, heldTitle, heldWhy } from "./held-words.ts";
import { tell, useAnswer } from "./telling.ts";

type Decision = "take" | "put_aside";

/** One after another; what went well stays so if a later one fails. */
const decide = async (all: readonly HeldAnswer[], decision: Decision): Promise<void> => {
  let done = 0;
  try {
    for (const { key } of all) {
      await tell(`/api/held/${key}`, { decision });
      done += 1;
    }
  } finally {
    if (done > 0) void sync.now();
  }
  const entries = count(done, "entry", "entries");
  say.saved(decision === "take" ? `${entries} taken in.` : `${entries} put aside.`, []);
};

const Buttons = (props: { all: readonly HeldAnswer[]; label: string; onDone: () => void }) => {
  const [busy, setBusy] = useState(false);
  const press = async (decision: Decision) => {
    if (busy) return;
    setBusy(true);
    try {
      await decide(props.all, decision);
    } catch (fault) {
      say.trouble(faultWords(fault));
    }
    setBusy(false);
    props.onDone();
  };
  const many = props.all.length > 1;
  return (
    <div class="buttons">
      {props.all.every(canTake) && (
        <button
          type="button"
          class="button main"
          aria-label={`Take in ${props.label}`}
          onClick={() => void press("take")}
        >
          {many ? "Take all in" : "Take in"}
        </button>
      )}
      {props.all.every(({ decision }) => decision === null) && (
        <button
          type="button"
          class="button"
          aria-label={`Put aside ${props.label}`}
          onClick={() => void press("put_aside")}
        >
          {many ? "Put all aside" : "Put aside"}
        </button>
      )}
    </div>
  );
};

const One = ({ held, onDone }: { held: HeldAnswer; onDone: () => void }) => {
  const title = heldTitle(held, known.value);
  const entry = heldEntry(held);
  const by = entry === null || entry.person === "" ? "" : `, ${entry.person}`;
  return (
    <li class="question">
      <div>
        <p>
          <strong>{title}</strong>{" "}
          <span class="small">
            {fullTimeWords(entry?.happened_at ?? held.received_at, known.value.now)}
            {by}
          </span>
        </p>
        <p class="look">{heldWhy(held)}</p>
      </div>
      <Buttons all={[held]} label={title} onDone={onDone} />
    </li>
  );
};

const Group = ({ group, onDone }: { group: HeldGroup; onDone: () => void }) => (
  <>
    <Lines heading={group.name} count={group.all.length}>
      <Slices
        items={group.all}
        each={(held) => <One key={held.key} held={held} onDone={onDone} />}
      />
    </Lines>
    {group.all.length > 1 && (
      <div class="form">
        <Buttons all={group.all} label={`all of ${group.name}`} onDone={onDone} />
      </div>
    )}
  </>
);

const PutAside = ({ all, onDone }: { all: readonly HeldAnswer[]; onDone: () => void }) =>
  all.length === 0 ? null : (
    <More label={`${count(all.length, "entry", "entries")} put aside`}>
      <ul>
        <Slices items={all} each={(held) => <One key={held.key} held={held} onDone={onDone} />} />
      </ul>
    </More>
  );

const All = (props: { held: HeldAnswer[]; names: DeviceNames; onDone: () => void }) => {
  const waiting = props.held.filter(({ decision }) => decision !== "put_aside");
  const aside = props.held.filter(({ decision }) => decision === "put_aside");
  return (
    <>
      <p class="form small">
        Take in: it counts as if it had come through at once. Put aside: it counts for nothing, and
        is kept all the same.
      </p>
      {waiting.length === 0 && <p class="form">Nothing is held.</p>}
      {byDevice(waiting, props.names).map((group) => (
        <Group key={group.device} group={group} onDone={props.onDone} />
      ))}
      <PutAside all={aside} onDone={props.onDone} />
    </>
  );
};

const Shown = () => {
  useTitle("Held for you");
  const held = useAnswer<{ held: HeldAnswer[] }>("/api/held");
  const devices = useAnswer<{ devices: DeviceAnswer[] }>("/api/devices");
  return (
    <Answer of={devices}>
      {(there) => (
        <Answer of={held}>
          {(answer) => <All held={answer.held} names={namesOf(there)} onDone={held.again} />}
        </Answer>
      )}
    </Answer>
  );
};

export const Held = () => (
  <ForOwner>
    <Shown />
  </ForOwner>
);
