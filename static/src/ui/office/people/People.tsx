// The people of the brewery: who they are, what they may do, and how they prove it is them.

import type { ComponentChildren } from "preact";
import { useState } from "preact/hooks";
import { ROLES, type Role } from "../../../domain/roles.ts";
import { PIN } from "../../../store/pin.ts";
import { sync } from "../../../sync/engine.ts";
import { Field, Select } from "../../parts/Field.tsx";
import { Line, Lines } from "../../parts/Line.tsx";
import { say } from "../../parts/say.ts";
import { Asking } from "../../people/Asking.tsx";
import { roleMay, roleName } from "../../people/role-words.ts";
import { Secret } from "../../people/Secret.tsx";
import { goOnTo, hrefTo } from "../../shell/route.ts";
import { useTitle } from "../../shell/title.ts";
import { sentence } from "../../words.ts";
import { Answer } from "./Answer.tsx";
import type { PersonAnswer } from "./answers.ts";
import { ForOwner } from "./ForOwner.tsx";
import { type Answered, tell, useAnswer } from "./telling.ts";

type All = { people: PersonAnswer[] };

const PATH = "/api/people";

const proofWords = ({ has }: PersonAnswer): string =>
  has.length === 0
    ? "neither PIN nor passphrase yet"
    : has.map((what) => (what === "pin" ? "PIN" : what)).join(" and ");

const hasLeft = ({ retired_at }: PersonAnswer): boolean => retired_at !== null;

const List = ({ people }: All) => (
  <>
    <div class="above">
      <a class="button main wide" href={hrefTo("office", "people", "new")}>
        Add somebody
      </a>
    </div>
    {[false, true].map((retired) => {
      const those = people.filter((one) => hasLeft(one) === retired);
      return those.length === 0 ? null : (
        <div class="sections" key={String(retired)}>
          <Lines heading={retired ? "No longer here" : "People"} count={those.length}>
            {those.map((one) => (
              <Line
                key={one.id}
                title={one.name}
                reason={`${roleName(one.role)}; ${proofWords(one)}`}
                href={hrefTo("office", "people", one.id)}
              />
            ))}
          </Lines>
        </div>
      );
    })}
  </>
);

const RoleField = (props: { value: Role; onValue: (role: Role) => void }) => (
  <Select
    label="Role"
    hint={`${sentence(roleMay(props.value))}.`}
    value={props.value}
    onValue={(value) => props.onValue(value as Role)}
    options={ROLES.map((value) => ({ value, label: roleName(value) }))}
  />
);

const PinField = (props: { value: string; onValue: (pin: string) => void }) => (
  <Field
    label="PIN"
    hint="4 to 8 digits, to take a shared tablet in hand. It says who; it is no lock."
    type="whole"
    value={props.value}
    onValue={props.onValue}
    maxLength={8}
  />
);

const lacksOf = (typed: { name?: string; pin: string }): string | null => {
  if (typed.name?.trim() === "") return "The name is missing.";
  return typed.pin === "" || PIN.test(typed.pin) ? null : "A PIN has 4 to 8 digits.";
};

const Add = () => {
  useTitle("Add somebody");
  const [name, setName] = useState("");
  const [role, setRole] = useState<Role>("cellar");
  const [pin, setPin] = useState("");
  const [passphrase, setPassphrase] = useState("");
  const add = async () => {
    const told = { name: name.trim(), role, ...given({ pin, passphrase }) };
    await tell(PATH, told);
    void sync.now();
    say.saved(`${told.name} is one of you now.`, []);
    goOnTo("office", "people");
  };
  return (
    <Asking does="Add" lacks={lacksOf({ name, pin })} onGo={add}>
      <Field
        label="Name"
        hint="It stands beside what they record. It stays theirs for good."
        value={name}
        onValue={setName}
        maxLength={60}
      />
      <RoleField value={role} onValue={setRole} />
      <PinField value={pin} onValue={setPin} />
      <Secret
        label="Passphrase"
        hint={
          role === "owner"
            ? "An owner needs one."
            : "Not needed. With one they can come in again without a new link."
        }
        value={passphrase}
        onValue={setPassphrase}
        fresh
      />
    </Asking>
  );
};

/** Only what was typed. */
const given = (typed: { pin: string; passphrase: string }): { [name: string]: string } =>
  Object.fromEntries(Object.entries(typed).filter(([, value]) => value !== ""));

const One = ({ of, onChanged }: { of: PersonAnswer; onChanged: () => void }) => {
  useTitle(of.name);
  const [role, setRole] = useState(of.role);
  const [pin, setPin] = useState("");
  const [passphrase, setPassphrase] = useState("");
  const change = async (told: { [name: string]: unknown }, done: string) => {
    await tell(`${PATH}/${of.id}`, told);
    void sync.now();
    say.saved(done, []);
    onChanged();
  };
  const keep = async () => {
    const told = { ...(role === of.role ? {} : { role }), ...given({ pin, passphrase }) };
    if (Object.keys(told).length > 0) await change(told, `${of.name}: changed.`);
    goOnTo("office", "people");
  };
  return (
    <>
      <Asking does="Keep the changes" lacks={lacksOf({ pin })} onGo={keep}>
        <p class="small">Has {proofWords(of)}. What is left empty stays as it is.</p>
        <RoleField value={role} onValue={setRole} />
        <PinField value={pin} onValue={setPin} />
        <Secret label="New passphrase" value={passphrase} onValue={setPassphrase} fresh />
      </Asking>
      <Asking
        does={hasLeft(of) ? "Is here again" : "Is no longer here"}
        lacks={null}
        aside
        onGo={() =>
          change(
            { retired: !hasLeft(of) },
            hasLeft(of) ? `${of.name} is here again.` : `${of.name} is no longer here.`,
          )
        }
      >
        <p class="small">
          {hasLeft(of)
            ? "Their PIN and passphrase count again."
            : "Then their PIN and passphrase count no more. What they recorded stays, with their name."}
        </p>
      </Asking>
    </>
  );
};

const Shown = ({ id }: { id: string | undefined }) => {
  useTitle("People");
  const all: Answered<All> = useAnswer<All>(PATH);
  const which = ({ people }: All): ComponentChildren => {
    if (id === undefined) return <List people={people} />;
    const one = people.find((other) => other.id === id);
    return one ? (
      <One key={`${id} ${one.retired_at}`} of={one} onChanged={all.again} />
    ) : (
      <p class="form">There is nobody of this address.</p>
    );
  };
  return <Answer of={all}>{which}</Answer>;
};

export const People = ({ id }: { id: string | undefined }) => (
  <ForOwner>{id === "new" ? <Add /> : <Shown key={id ?? ""} id={id} />}</ForOwner>
);
