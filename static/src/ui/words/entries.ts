// What an entry says, as a line of a container's history.

import type { Facts } from "../../domain/entries.ts";
import { degrees, litres } from "./amounts.ts";
import { doneWords, toldWords } from "./done.ts";
import type { Known } from "./known.ts";
import { brewName, customerName, kindWords, placeName } from "./names.ts";
import { dateWords, timeWords } from "./time.ts";

const added = (lead: string, value: unknown): string =>
  typeof value === "string" && value !== "" ? `${lead}${value}` : "";

const ADDED: { [what: string]: string } = {
  primings: "primings",
  auxiliary_alginate: "auxiliary finings (alginate)",
  auxiliary_silica: "auxiliary finings (silica)",
  isinglass: "isinglass",
  hops: "hops",
};

/** "auxiliary finings (silica)" */
export const addedWords = (what: string): string => ADDED[what] ?? "something";

/** "142 mL of primings", "426 mL of isinglass IF2041": with its lot where one was noted. */
const doseWords = (dose: Facts, known: Known): string => {
  const added = addedWords(dose.what);
  const lot = known.lots.get(dose.lot)?.fields.name;
  const what = lot === undefined ? added : `${added} ${lot}`;
  if (typeof dose.amount_ml === "number") return `${dose.amount_ml} mL of ${what}`;
  return typeof dose.amount_g === "number" ? `${dose.amount_g} g of ${what}` : what;
};

const doses = (given: readonly Facts[] | undefined, known: Known): string =>
  given && given.length > 0
    ? `, with ${given.map((dose) => doseWords(dose, known)).join(", ")}`
    : "";

const WITH_FACTS: { [kind: string]: (facts: Facts, known: Known) => string } = {
  registered: (f) =>
    `Entered as ${kindWords(f.kind)}, holds ${litres(f.capacity_ml)}${added(", owner ", f.owner)}`,
  washed: (f) => `Washed${added(" with ", f.with)}`,
  inspected: (f) =>
    f.passed ? "Inspected and passed" : `Inspected and failed${added(": ", f.why)}`,
  filled: (f, known) =>
    `Filled with ${litres(f.volume_ml)} of ${brewName(known, f.gyle)}${f.best_before ? `, best before ${dateWords(f.best_before, known.now)}` : ""}${doses(f.doses, known)}`,
  dosed: (f, known) => `Added ${doseWords(f, known)}`,
  moved: (f, known) => `Moved to ${placeName(known, f.place)}`,
  stillaged: (f, known) =>
    f.place ? `Set on ${placeName(known, f.place)}` : "Set on the stillage",
  vented: (f) => `Vented with a ${f.spile} spile`,
  dipped: (f) => `Dipped: ${litres(f.left_ml)} left`,
  checked: (f) => {
    const found = [
      typeof f.temp_decidegc === "number" ? degrees(f.temp_decidegc) : "",
      added("clarity ", f.clarity),
      added("taste ", f.taste),
      added("", f.words),
    ].filter(Boolean);
    return `Checked${found.length > 0 ? `: ${found.join(", ")}` : ""}`;
  },
  planned: (f, known) =>
    f.sale_at ? `Picked to be on sale ${timeWords(f.sale_at, known.now)}` : "Not picked any more",
  emptied: (f) => `Emptied${added(": ", f.why)}`,
  sent: (f, known) =>
    `${f.on_record_since ? "Out already, with" : "Sent to"} ${customerName(known, f.customer)}${f.due_on ? `, due back ${dateWords(f.due_on, known.now)}` : ""}`,
  returned: (f, known) =>
    `Came back${f.customer ? ` from ${customerName(known, f.customer)}` : ""}${f.ullage_ml > 0 ? ` with ${litres(f.ullage_ml)} still in it` : ""}${f.place ? `, to ${placeName(known, f.place)}` : ""}`,
  set_aside: (f) => `Set aside${added(": ", f.why)}`,
  missing: (f) => `Down as missing${added(": ", f.why)}`,
  found: (f, known) => `Found${f.place ? `: ${placeName(known, f.place)}` : ""}`,
  scrapped: (f) => `Scrapped${added(": ", f.why)}`,
  noted: (f) => `Note: ${f.words}`,
  reported: (f) =>
    `A finder says: ${[f.where, f.words, f.name, f.phone].filter(Boolean).join("; ")}`,
  told: (f, known) => `${customerName(known, f.customer)} says: ${toldWords(f.says)}`,
  renumbered: (f) => `Wrong number, it was ${f.to}`,
  settled: (f) =>
    f.way === "right"
      ? "Settled: right as it stands"
      : f.way.startsWith("void:")
        ? "Settled: an entry never happened"
        : `Settled: an entry was ${f.way.split(":").at(-1)}`,
  setting: (f) => (f.retired ? "Figure as usual again" : "Figure changed"),
  temperature: (f) => {
    const [, last] = f.series?.at(-1) ?? [];
    return typeof last === "number" ? `Temperature: ${degrees(last)}` : "Temperature";
  },
  solution_used: (f) => `Solution used${f.uses > 1 ? ` ${f.uses} times` : ""}`,
  solution_checked: (f) =>
    `Solution checked${f.strength_mg_per_l ? `: ${f.strength_mg_per_l} mg/L` : ""}`,
  chased: (f) => `Chased${added(": ", f.words)}`,
};

/** An entry in words, without who and when. Record entries are named by what they set. */
export const entryWords = (entry: { kind: string; facts: Facts }, known: Known): string => {
  const withFacts = WITH_FACTS[entry.kind];
  if (withFacts) return withFacts(entry.facts, known);
  const name = entry.facts.name ?? entry.facts.number;
  return typeof name === "string" ? `${doneWords(entry.kind)}: ${name}` : doneWords(entry.kind);
};
