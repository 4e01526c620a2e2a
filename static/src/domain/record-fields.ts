// What is kept of each kind of record, field by field, and of its parts. Units stand in the names.

/** Where something is, in millionths of a degree. */
export interface MapPosition {
  latitude_e6: number;
  longitude_e6: number;
}

/** What is paid for a container of each kind, in pence. */
export type Deposits = { readonly [kind in string]?: number };

/** Whose casks these are, as it stands on labels and papers. There is one: its id is "brewery". */
export interface BreweryFields {
  name: string;
  address: string;
  phone: string;
  email: string;
  /** Where this program is found in the wide world, such as https://casks.example. */
  web: string;
  /** Of GS1, 4 to 12 digits, if the brewery has licensed one. */
  company_prefix: string;
  map: MapPosition;
  /** As they are usual. */
  deposits: Deposits;
}

export interface BeerFields {
  name: string;
  abv_tenths: number;
  style: string;
  conditioning_days: number;
  best_before_days: number;
  on_sale_days: number;
  /** What is added: strengths of finings and hops by the hectolitre, CO2 wanted in the container. */
  target_co2_centivols: number;
  priming_sugar: string;
  priming_yield: "full" | "balling";
  /** Of a sugar that is bought as syrup, by its own sheet: parts of its weight, of its solids. */
  sugar_solids_tenths: number;
  sugar_fermentable_tenths: number;
  /** How strong the priming syrup is, by gravity or else by weight. */
  syrup_gravity_e4: number;
  syrup_g_per_l: number;
  /** Kegs are carbonated to it instead of being primed. */
  keg_co2_centivols: number;
  auxiliary: "none" | "auxiliary_alginate" | "auxiliary_silica";
  auxiliary_ml_per_hl: number;
  isinglass_ml_per_hl: number;
  hops_g_per_hl: number;
  limit_gravity_e4: number;
  vegan: boolean;
  cereals: string[];
  milk: boolean;
  /** What stays undrinkable in a firkin of it; other casks in proportion. */
  sediment_firkin_ml: number;
}

export interface GyleFields {
  number: string;
  beer: string;
  brewed_on: string;
  volume_ml: number;
  loss_ml: number;
  original_gravity_e4: number;
  present_gravity_e4: number;
  highest_temp_decidegc: number;
  measured_co2_centivols: number;
  yeast_thousands_per_ml: number;
  ph_hundredths: number;
  fining_temp_decidegc: number;
  sulphite_decimg_per_l: number;
}

export interface PlaceFields {
  name: string;
  role: "store" | "yard" | "stillage" | "bar";
  temp_decidegc: number;
}

export interface CustomerFields {
  name: string;
  contact: string;
  phone: string;
  email: string;
  map: MapPosition;
  /** For a kind that `deposits` does not name. */
  deposit_pence: number;
  deposits: Deposits;
  agreed_days: number;
  delivery_day: number;
  expected_days: number;
}

/** A delivery of finings, sugar or hops; its temperature is the warmest that it was kept at. */
export interface LotFields {
  what: "primings" | "auxiliary_alginate" | "auxiliary_silica" | "isinglass" | "hops";
  name: string;
  received_on: string;
  stored_temp_decidegc: number;
  opened_on: string;
  /** Of finings, by the product's sheet. */
  so2_mg_per_l: number;
}

/** A made-up washing solution. */
export interface SolutionFields {
  agent: "peracetic" | "caustic";
  name: string;
  made_at: string;
  volume_ml: number;
  made_mg_per_l: number;
  least_mg_per_l: number;
  most_uses: number;
  most_hours: number;
  thrown_away: boolean;
}

/** What is tried in one jar, in hundredths of a pint for a barrel. */
export interface TrialSample {
  isinglass_centipt: number;
  auxiliary_centipt: number;
}

/** What was read of one jar: clarity so long after the finings, or after shaking; what settled. */
export interface JarRead {
  /** Its place in the row, from 1. */
  jar: number;
  after_min?: number;
  clarity_tenths?: number;
  resettled_tenths?: number;
  sediment_ul?: number;
}

/**
 * A ladder of finings doses in samples of one gyle. It starts when the last of the finings go in,
 * `auxiliary_at` being before.
 */
export interface TrialFields {
  gyle: string;
  auxiliary: "auxiliary_alginate" | "auxiliary_silica";
  /** The lots that they come from. */
  isinglass_lot: string;
  auxiliary_lot: string;
  auxiliary_at: string;
  started_at: string;
  sample_ml: number;
  samples: TrialSample[];
}

/** One container of a drop as it was handed over: facts, which no later entry changes. */
export interface DropLine {
  number: string;
  kind: string;
  beer: string;
  abv_tenths: number | null;
  lot: string;
  best_before: string | null;
  volume_ml: number;
  contains: string;
}

/** What a customer has asked for: so many of a beer in a kind of container. */
export interface DropAsked {
  beer: string;
  kind: string;
  count: number;
}

/** One stop of the van: what is made up for a customer, and what was handed over at its door. */
export interface DropFields {
  customer: string;
  on: string;
  asked: DropAsked[];
  numbers: string[];
  handed_over_at: string;
  lines: DropLine[];
  empties: string[];
  /** Empties taken along and counted only; they are told by number in the yard. */
  empties_counted: number;
  /** Those of them that have been told by number since. */
  matched: string[];
  /** No more of them will be told by number: somebody miscounted. */
  count_closed: boolean;
  /** For what was dropped, and for the empties that were told by number. */
  deposits_taken_pence: number;
  deposits_given_back_pence: number;
  /** How many of ours the customer had before and has since. */
  held_before: number;
  held_after: number;
  taken_by: string;
  /** Strokes, each "x y x y…" in thousandths of the glass, with a semicolon between. */
  signature: string;
  note: string;
}
