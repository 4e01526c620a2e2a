// One dose of a racking as the bench shows it, and what stands in for it while something is missing.

import { inAll } from "../../domain/bench/fillings.ts";
import type { sealedPressure } from "../../domain/bench/pressure.ts";
import { DomainError } from "../../domain/errors.ts";
import type { Settings } from "../../domain/figures.ts";
import type { BeerFields, GyleFields } from "../../domain/record-fields.ts";
import type { Trial } from "../../domain/records.ts";
import { halfUpWhole } from "../../domain/rounding.ts";
import type { Contents, Dose } from "../../domain/standing.ts";
import type { AnyWorked } from "../parts/working.ts";
import type { Lots, LotsInUse } from "./lots.ts";
import type { Size } from "./sizes.ts";

export type Added = Dose["what"];

export interface Racked {
  beer: Partial<BeerFields>;
  gyle: Partial<GyleFields>;
  sizes: readonly Size[];
  /** What the beer usually has, where enough of its gyles were measured. */
  usualPh?: number | null;
  settings: Settings;
  /** What a full container has had before, and all lots, by which its label goes. */
  wentIn?: Pick<Contents, "doses" | "volume_ml">;
  lots?: Lots;
  /** The lots that go in now, and the trials that the beer's rates were set by. */
  next?: LotsInUse;
  tried?: readonly Trial[];
}

/** What is not entered yet, and of what it is to be entered. */
export interface Missing {
  words: string[];
  of: "beer" | "gyle";
}

export interface DoseLine {
  what: Added;
  label: string;
  unit: "mL" | "g";
  sizes: readonly Size[];
  /** For one container of each size, and for all; null while something is missing. */
  each: number[] | null;
  total: number | null;
  /** How it goes in: "syrup 800 g/L", or why there is none. */
  note: string;
  missing: Missing | null;
  /** Isinglass after alginate: not at filling but some hours later. */
  later: boolean;
  worked: AnyWorked[];
  /** Said above the working: by whose figures it goes, and whether they hold for this lot. */
  remarks?: { says: string; look: boolean }[];
  /** Of sugar: the pressure that so much of it in a litre comes to in a closed container. */
  closed?: (perL: number) => ReturnType<typeof sealedPressure>;
}

export type Half = Pick<DoseLine, "what" | "label" | "unit" | "sizes">;

export const lacking = (half: Half, of: Missing["of"], words: string[]): DoseLine => ({
  ...half,
  each: null,
  total: null,
  note: "not known yet",
  missing: { words, of },
  later: false,
  worked: [],
});

const FIELDS: { readonly [field: string]: readonly [of: Missing["of"], words: string] } = {
  highest_temp_c: ["gyle", "warmest temperature"],
  measured_vol: ["gyle", "CO2 as measured"],
  present_gravity: ["gyle", "gravity now"],
  original_gravity: ["gyle", "original gravity"],
  gravity_fall: ["gyle", "gravities with a fall"],
  target_vol: ["beer", "CO2 wanted"],
  keg_vol: ["beer", "CO2 wanted in a keg"],
  limit_gravity: ["beer", "attenuation limit"],
  syrup_g_per_l: ["beer", "sugar in the syrup"],
  syrup_gravity: ["beer", "gravity of the syrup"],
  solids_pct: ["beer", "solids of the sugar"],
  fermentable_pct: ["beer", "fermentable part of the sugar"],
  rate: ["beer", "rate"],
};

/** A rule's refusal in words: the figure is there and cannot be. */
export const refused = (fault: unknown): Missing => {
  if (!(fault instanceof DomainError)) throw fault;
  const { field, low, high, unit } = fault.facts;
  const [of, words] = FIELDS[String(field)] ?? ["gyle", String(field).replaceAll("_", " ")];
  return { of, words: [`${words} from ${low} to ${high} ${unit}`] };
};

export const refusal = (half: Half, fault: unknown): DoseLine => {
  const { of, words } = refused(fault);
  return lacking(half, of, words);
};

/** The sizes as the rules are asked about them. */
export const fillings = (sizes: readonly Size[]) =>
  sizes.map(({ volume_ml, count }) => ({ volume_ml, count }));

/** The doses as they are measured out, in whole mL or g, and what to draw of them in all. */
export const inWhole = (sizes: readonly Size[], doses: readonly number[]) => {
  const each = doses.map(halfUpWhole);
  return { each, total: inAll(sizes, each) };
};

/** Behind the tap, where whole grams come to another sum than the rule's tenths. */
export const weighedWords = (total: number, ofRule: number) =>
  total === ofRule ? [] : [{ says: `Weighed in whole grams, ${total} g in all.`, look: false }];

/** The figures of what is not undefined. */
export const absent = (asked: { readonly [words: string]: unknown }): string[] =>
  Object.keys(asked).filter((words) => asked[words] === undefined);
