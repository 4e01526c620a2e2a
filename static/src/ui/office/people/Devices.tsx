// The phones and tablets of the brewery: which there are, who uses them, what waits on them.

import type { ComponentChildren } from "preact";
import { useState } from "preact/hooks";
import { book } from "../../../store/book.ts";
import { sync } from "../../../sync/engine.ts";
import { known } from "../../known.ts";
import { Field } from "../../parts/Field.tsx";
import { Line, Lines } from "../../parts/Line.tsx";
import { say } from "../../parts/say.ts";
import { Asking } from "../../people/Asking.tsx";
import { hrefTo } from "../../shell/route.ts";
import { useTitle } from "../../shell/title.ts";
import { fullTimeWords, listWords, sentence } from "../../words.ts";
import { Answer } from "./Answer.tsx";
import type { DeviceAnswer } from "./answers.ts";
import { deviceWords, waitingWords } from "./device-words.ts";
import { ForOwner } from "./ForOwner.tsx";
import { PairOne } from "./PairOne.tsx";
import { tell, useAnswer } from "./telling.ts";

type All = { devices: DeviceAnswer[] };

const PATH = "/api/devices";

/** The phone in the hand, as the brewery knows it. */
const thisOne = (): string | undefined => book.account.value.me?.device.id;

const List = ({ devices }: All) => (
  <>
    <div class="above">
      <a class="button main wide" href={hrefTo("office", "devices", "new")}>
        Pair a phone
      </a>
    </div>
    {[false, true].map((revoked) => {
      const those = devices.filter(({ revoked_at }) => (revoked_at !== null) === revoked);
      return those.length === 0 ? null : (
        <div class="sections" key={String(revoked)}>
          <Lines heading={revoked ? "Out of use" : "In use"} count={those.length}>
            {those.map((one) => (
              <Line
                key={one.id}
                title={one.id === thisOne() ? `${one.name} (this one)` : one.name}
                reason={sentence(deviceWords(one, known.value.now))}
                {...(one.waiting > 0 ? { tone: "look" as const } : {})}
                href={hrefTo("office", "devices", one.id)}
              />
            ))}
          </Lines>
        </div>
      );
    })}
  </>
);

const Revoke = ({ of, onGo }: { of: DeviceAnswer; onGo: () => Promise<void> }) => {
  const [sure, setSure] = useState(false);
  const here = of.id === thisOne();
  return (
    <section>
      <div class="form">
        <p class="small">
          A phone that is lost or has gone elsewhere is taken out of use. It gets no news any more;
          what still comes from it is held for you. A new link brings it back.
        </p>
        {!sure && (
          <button type="button" class="button" onClick={() => setSure(true)}>
            Take it out of use
          </button>
        )}
      </div>
      {sure && (
        <Asking does={`Yes, take ${of.name} out of use`} lacks={null} onGo={onGo} aside>
          {here && <p class="look">This is the phone in your hand: it will be shut out itself.</p>}
        </Asking>
      )}
    </section>
  );
};

const One = ({ of, onChanged }: { of: DeviceAnswer; onChanged: () => void }) => {
  useTitle(of.name);
  const [name, setName] = useState(of.name);
  const { now } = known.value;
  const change = async (path: string, told: { [name: string]: unknown }, done: string) => {
    await tell(`${PATH}/${of.id}${path}`, told);
    void sync.now();
    say.saved(done, []);
    onChanged();
  };
  return (
    <>
      <section class="form">
        <p>Used by {of.people.length === 0 ? "nobody yet" : listWords(of.people)}.</p>
        <p>
          Paired {fullTimeWords(of.paired_at, now)}, last seen {fullTimeWords(of.last_seen_at, now)}
          .
        </p>
        <p class={of.waiting > 0 ? "look" : ""}>{sentence(waitingWords(of, now))}.</p>
        {of.revoked_at !== null && (
          <p class="look">Out of use since {fullTimeWords(of.revoked_at, now)}.</p>
        )}
        <p class="small">App {of.app}.</p>
      </section>
      <Asking
        does="Keep the name"
        lacks={name.trim() === "" ? "The name is missing." : null}
        onGo={() => change("", { name: name.trim() }, `It is called ${name.trim()}.`)}
      >
        <Field label="Name" value={name} onValue={setName} maxLength={60} />
      </Asking>
      {of.revoked_at === null && (
        <Revoke of={of} onGo={() => change("/revoke", {}, `${of.name} is out of use.`)} />
      )}
    </>
  );
};

const Shown = ({ id }: { id: string | undefined }) => {
  useTitle("Phones");
  const all = useAnswer<All>(PATH);
  const which = ({ devices }: All): ComponentChildren => {
    if (id === undefined) return <List devices={devices} />;
    const one = devices.find((other) => other.id === id);
    return one ? (
      <One key={`${id} ${one.revoked_at}`} of={one} onChanged={all.again} />
    ) : (
      <p class="form">There is no phone of this address.</p>
    );
  };
  return <Answer of={all}>{which}</Answer>;
};

export const Devices = ({ id }: { id: string | undefined }) => (
  <ForOwner>{id === "new" ? <PairOne /> : <Shown key={id ?? ""} id={id} />}</ForOwner>
);
