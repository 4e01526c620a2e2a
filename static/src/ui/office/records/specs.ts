// What is asked about a beer, a gyle, a place and a customer. The forms and the lists are made
// from this; the names and units are those of the ledger.

import { BEER_DOSES, BEER_LABEL, GYLE_MEASURED } from "./bench-fields.ts";

interface Asked {
  name: string;
  label: string;
  hint?: string;
  /** Without it the record cannot be told from others. */
  needed?: true;
  /** Seldom asked for: stands with others of its group behind this word. */
  group?: string;
}

/** The kinds of record that are kept by a plain form. */
export type OfficeKind = "brewery" | "beer" | "gyle" | "place" | "customer" | "lot";

export type FieldSpec =
  | (Asked & { is: "words"; most: number; unique?: true; phone?: true; prefix?: true; web?: true })
  | (Asked & { is: "whole"; least: number; most: number; unit?: string })
  /** Typed with its point; the ledger keeps `per` of it as one: 1.0105 as 10105 for 10000. */
  | (Asked & { is: "scaled"; per: number; least: number; most: number })
  /** A gravity, which is said in full or as brewers do: 1.0105 or 1010.5. */
  | (Asked & { is: "gravity"; least: number; most: number })
  | (Asked & { is: "tenths"; most: number })
  | (Asked & { is: "litres"; most: number })
  | (Asked & { is: "day" })
  | (Asked & { is: "record"; of: OfficeKind; none: string })
  | (Asked & { is: "choice"; options: readonly Option[]; list?: true })
  | (Asked & { is: "several"; options: readonly Option[] })
  | (Asked & { is: "yes" })
  | (Asked & { is: "map" })
  /** An amount for each kind of container, kept as `scaled` is. */
  | (Asked & { is: "by_kind"; per: number; least: number; most: number })
  | (Asked & { is: "weekday" });

interface Option {
  value: string;
  label: string;
}

export interface RecordSpec {
  kind: OfficeKind;
  one: string;
  many: string;
  /** What the list says where there is none yet. */
  nothing: string;
  /** What its end is called, where it is not retired by a person's will. */
  end?: End;
  fields: readonly FieldSpec[];
}

/** Taking a record out of use, and back into it. */
export interface End {
  act: string;
  /** "Lot IF2041 is used up." */
  done: string;
  /** Over the list of those that ended. */
  heading: string;
  back: string;
}

export const RETIRED: End = {
  act: "Retire it",
  done: "is retired",
  heading: "Retired",
  back: "Use it again",
};

/** The limits are those of the brewery's server, so that nothing a form takes is refused there. */
const days = (
  name: string,
  label: string,
  hint: string,
  [least, most]: readonly [number, number],
): FieldSpec => ({ is: "whole", name, label, hint, least, most });

/** A beer with nothing of its own is not without days. */
const LEFT_EMPTY = "Left empty, what the Figures say.";

const DEPOSITS: FieldSpec = {
  is: "by_kind",
  name: "deposits",
  label: "Deposit by kind of container, £",
  per: 100,
  least: 0,
  most: 100_000,
};

const MAP: FieldSpec = {
  is: "map",
  name: "map",
  label: "Place on the map",
  hint: "Latitude and longitude as a map gives them: 54.1234, -2.5678. Rounds go by it.",
};

const BREWERY: RecordSpec = {
  kind: "brewery",
  one: "brewery",
  many: "The brewery",
  nothing: "",
  fields: [
    { is: "words", name: "name", label: "Name", most: 60, needed: true },
    { is: "words", name: "address", label: "Address", most: 200 },
    { is: "words", name: "phone", label: "Telephone", most: 40, phone: true },
    { is: "words", name: "email", label: "E-mail", most: 120 },
    {
      is: "words",
      name: "web",
      label: "Address on the web",
      hint: "Where everybody reaches this program, such as https://casks.example. It is printed on plates, so choose one that lasts.",
      most: 100,
      web: true,
    },
    {
      is: "words",
      name: "company_prefix",
      label: "GS1 company prefix, if you have one",
      hint: "Then container plates carry a GS1 asset number. Without one they do as well.",
      most: 12,
      prefix: true,
    },
    MAP,
    { ...DEPOSITS, hint: "As usual. What a customer has agreed to goes before it." },
  ],
};

const BEER: RecordSpec = {
  kind: "beer",
  one: "beer",
  many: "Beers",
  nothing: "No beer is entered yet. Begin with what you brew most.",
  fields: [
    { is: "words", name: "name", label: "Name", most: 60, needed: true, unique: true },
    { is: "tenths", name: "abv_tenths", label: "Strength, % vol", most: 300 },
    { is: "words", name: "style", label: "Style", most: 60 },
    days(
      "conditioning_days",
      "Days of conditioning",
      `From racking until it is ready. ${LEFT_EMPTY}`,
      [0, 1000],
    ),
    days("best_before_days", "Days to best before", `From racking. ${LEFT_EMPTY}`, [1, 4000]),
    days(
      "on_sale_days",
      "Days on sale",
      `From tapping until it has to come off. ${LEFT_EMPTY}`,
      [1, 365],
    ),
    {
      is: "litres",
      name: "sediment_firkin_ml",
      label: "Sediment in a firkin, litres",
      hint: "As measured below the last pint that can be sold; other casks in proportion. Left empty, what is published.",
      most: 40_915,
    },
    ...BEER_DOSES,
    ...BEER_LABEL,
  ],
};

const GYLE: RecordSpec = {
  kind: "gyle",
  one: "gyle",
  many: "Gyles",
  nothing: "No gyle is entered yet. Casks are filled from a gyle.",
  fields: [
    { is: "words", name: "number", label: "Gyle number", most: 20, needed: true, unique: true },
    { is: "record", name: "beer", label: "Beer", of: "beer", none: "Choose a beer", needed: true },
    { is: "day", name: "brewed_on", label: "Brewed on" },
    {
      is: "litres",
      name: "volume_ml",
      label: "Litres to rack",
      hint: "What there is to fill from, as dipped.",
      most: 100_000_000,
    },
    ...GYLE_MEASURED,
  ],
};

const PLACE: RecordSpec = {
  kind: "place",
  one: "place",
  many: "Places",
  nothing:
    "No place is entered yet. Most have a cold room, a stillage, a bar and a yard for empties.",
  fields: [
    { is: "words", name: "name", label: "Name", most: 60, needed: true, unique: true },
    {
      is: "choice",
      name: "role",
      label: "What it is for",
      needed: true,
      options: [
        { value: "store", label: "Keeping beer" },
        { value: "stillage", label: "Stillage" },
        { value: "bar", label: "Bar" },
        { value: "yard", label: "Empties" },
      ],
    },
  ],
};

const CUSTOMER: RecordSpec = {
  kind: "customer",
  one: "customer",
  many: "Customers",
  nothing: "No customer is entered yet. Enter whoever takes your casks away.",
  fields: [
    { is: "words", name: "name", label: "Name", most: 60, needed: true, unique: true },
    { is: "words", name: "contact", label: "Who to ask for", most: 120 },
    { is: "words", name: "phone", label: "Telephone", most: 40, phone: true },
    { is: "words", name: "email", label: "E-mail", most: 120 },
    MAP,
    {
      is: "scaled",
      name: "deposit_pence",
      label: "Deposit, £ a container of any kind",
      per: 100,
      least: 0,
      most: 100_000,
    },
    { ...DEPOSITS, hint: "Where it is another one for a kind. Left empty, the one above." },
    days("agreed_days", "Days to bring a container back", "From the day it goes out.", [0, 1000]),
    { is: "weekday", name: "delivery_day", label: "Delivery day" },
    days(
      "expected_days",
      "Days of life it expects",
      "Still to go to best before when a cask reaches it.",
      [0, 1000],
    ),
  ],
};

const LOT: RecordSpec = {
  kind: "lot",
  one: "lot",
  many: "Lots",
  nothing:
    "No lot is entered yet. A lot of finings on record says how long it lasts, and is noted with each dose.",
  end: { act: "It is used up", done: "is used up", heading: "Used up", back: "There is some left" },
  fields: [
    {
      is: "choice",
      list: true,
      name: "what",
      label: "What it is",
      needed: true,
      options: [
        { value: "isinglass", label: "Isinglass" },
        { value: "auxiliary_alginate", label: "Auxiliary finings, alginate" },
        { value: "auxiliary_silica", label: "Auxiliary finings, silica" },
        { value: "primings", label: "Priming sugar" },
        { value: "hops", label: "Hops" },
      ],
    },
    {
      is: "words",
      name: "name",
      label: "Lot, as its maker marks it",
      most: 60,
      needed: true,
    },
    { is: "day", name: "received_on", label: "Received on" },
    {
      is: "scaled",
      name: "stored_temp_decidegc",
      label: "Warmest it was kept at, °C",
      hint: "It decides how long isinglass lasts. Heat ruins it within hours; so may frost.",
      per: 10,
      least: -300,
      most: 1000,
    },
    { is: "day", name: "opened_on", label: "Opened on" },
    {
      is: "whole",
      name: "so2_mg_per_l",
      label: "Sulphite in it as SO2, mg/L",
      hint: "From its sheet. Left empty, the highest that is published.",
      least: 0,
      most: 10_000,
      unit: "mg/L",
    },
  ],
};

export const SPECS: { readonly [kind in OfficeKind]: RecordSpec } = {
  brewery: BREWERY,
  beer: BEER,
  gyle: GYLE,
  place: PLACE,
  customer: CUSTOMER,
  lot: LOT,
};
