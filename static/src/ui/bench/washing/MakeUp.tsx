// A solution is made up by the product's own sheet, and goes on record with its strength.

import { useState } from "preact/hooks";
import { CAUTIONS } from "../../../domain/cautions.ts";
import { book } from "../../../store/book.ts";
import { newId } from "../../office/new-id.ts";
import { ownFigures } from "../../own-figures.ts";
import { Choice } from "../../parts/Choice.tsx";
import { Field } from "../../parts/Field.tsx";
import { save, say } from "../../parts/say.ts";
import { showWorking } from "../../parts/working.ts";
import { goOnTo } from "../../shell/route.ts";
import { useTitle } from "../../shell/title.ts";
import { litres } from "../../words.ts";
import { solutionId } from "../state.ts";
import { type Agent, decimal, limitOf, readMaking, START, type Typed } from "./making.ts";

const options = (...pairs: readonly [string, string][]) =>
  pairs.map(([value, label]) => ({ value, label }));

const AGENTS = options(["peracetic", "Peracetic acid"], ["caustic", "Caustic"]);
const OF_WHAT = options(
  ["product_v_v", "Product by volume"],
  ["naoh_w_v", "Caustic soda by weight"],
);
const METALS = options(
  ["stainless", "Stainless"],
  ["aluminium", "Aluminium"],
  ["plastic", "Plastic"],
  ["wood", "Wood"],
);
const NAMES: { [agent in Agent]: string } = { peracetic: "Peracetic acid", caustic: "Caustic" };

export const MakeUp = () => {
  useTitle("Make up a solution");
  const [typed, setTyped] = useState<Typed>(START);
  const [least, setLeast] = useState("");
  const [mostUses, setMostUses] = useState("");
  const [mostHours, setMostHours] = useState("");
  const { worked, madeMgPerL, fault } = readMaking(typed, ownFigures.value);
  const set = (name: keyof Typed) => (text: string) => setTyped({ ...typed, [name]: text });
  const figure = (name: keyof Typed, label: string) => (
    <Field label={label} type="decimal" value={typed[name]} onValue={set(name)} />
  );
  const choice = (name: keyof Typed, label: string, of: ReturnType<typeof options>) => (
    <Choice label={label} value={typed[name]} onValue={set(name)} options={of} />
  );
  const keep = async () => {
    const leastMgPerL = decimal(least);
    if (worked === null) return say.trouble(fault ?? "");
    if (madeMgPerL === null) return say.trouble(CAUTIONS.no_caustic_on_aluminium.words);
    if (Number.isNaN(leastMgPerL))
      return say.trouble("Down to which strength is it used? In mg/L.");
    const uses = limitOf(mostUses);
    const hours = limitOf(mostHours);
    if (uses === "odd" || hours === "odd") {
      return say.trouble("Uses and hours: whole, from 1 to 10000, or left empty.");
    }
    const id = newId();
    const name = NAMES[typed.agent];
    const facts = {
      agent: typed.agent,
      name,
      made_at: book.now(),
      volume_ml: Math.floor(decimal(typed.litres) * 1000 + 0.5),
      made_mg_per_l: madeMgPerL,
      least_mg_per_l: Math.floor(leastMgPerL + 0.5),
      ...(uses === null ? {} : { most_uses: uses }),
      ...(hours === null ? {} : { most_hours: hours }),
    };
    if (!(await save(`${name} made up.`, () => book.record("solution", id, facts)))) return;
    solutionId.value = id;
    goOnTo("bench", "solutions");
  };
  const caustic = typed.agent === "caustic";
  return (
    <form
      class="form"
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        void keep();
      }}
    >
      {choice("agent", "What", AGENTS)}
      <h2>From the product's own sheet</h2>
      {figure("strengthPct", "Active, % by weight")}
      {figure("density", "Density, g/mL")}
      {figure("contactMin", "Contact, minutes")}
      {choice("rinse", "Rinse afterwards", options(["yes", "Yes"], ["no", "No"]))}
      <h2>To make up</h2>
      {figure("target", caustic ? "Strength wanted, %" : "Strength wanted, mg/L")}
      {caustic && choice("ofWhat", "% of what", OF_WHAT)}
      {caustic && choice("metal", "The containers are", METALS)}
      {!caustic && figure("tempC", "Temperature of the solution, °C")}
      {figure("litres", "Litres to make up")}
      <Field label="Used down to, mg/L" type="decimal" value={least} onValue={setLeast} />
      <Field
        label="Uses at most"
        hint="As its sheet or your own rule says; left empty, as many as its strength allows."
        type="whole"
        value={mostUses}
        onValue={setMostUses}
      />
      <Field label="Hours at most" type="whole" value={mostHours} onValue={setMostHours} />
      <div aria-live="polite">
        {worked === null ? (
          <p>{fault}</p>
        ) : (
          <p>
            <strong>{worked.result.product_ml} mL</strong> of product into{" "}
            {litres(worked.result.water_ml)} of water: {madeMgPerL ?? "–"} mg/L. Leave it{" "}
            {worked.result.contact_min} min, {worked.result.rinse ? "then rinse" : "no rinse"}.
          </p>
        )}
        {worked?.cautions.map((id) => (
          <p key={id} class="small">
            {CAUTIONS[id].words}
          </p>
        ))}
      </div>
      {worked && (
        <button type="button" class="button" onClick={() => showWorking("Dilution", worked)}>
          How it is worked out
        </button>
      )}
      <button type="submit" class="button main wide">
        It is made up
      </button>
    </form>
  );
};
