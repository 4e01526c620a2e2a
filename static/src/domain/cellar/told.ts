/** TOLD: what the rules of readiness are told of a container. Twin of cellarapp/domain/cellar/told.py. */

import { figure } from "../figures.ts";
import { RANGES, type RangedField } from "../inputs.ts";
import type { Reading } from "../readings.ts";
import type { Beer, Gyle, Place } from "../records.ts";
import type { Contents, Dose, Serving, Standing } from "../standing.ts";
import type { Shape } from "./asked.ts";
import type { CaskInputs } from "./cask.ts";
import type { CandidateInputs } from "./plan.ts";
import { HOUR_MS } from "./units.ts";

/** The records that a container's readiness hangs on; null where the phone knows none. */
export interface Around {
  beer: Beer | null;
  gyle: Gyle | null;
  place: Place | null;
}

/** Left out where no such thing can have been meant. */
const degreesC = (name: RangedField, decidegc: number | undefined): number | null => {
  if (decidegc === undefined) return null;
  const { low, high } = RANGES[name];
  return decidegc / 10 >= low && decidegc / 10 <= high ? decidegc / 10 : null;
};

type Dosed = Pick<Contents, "doses">;

const lastIsinglass = ({ doses }: Dosed): Dose | null =>
  doses.filter((dose) => dose.what === "isinglass").at(-1) ?? null;

/** TOLD-1: whether it was fined: as noted with the fill, else as the beer's own rate says. */
export const isFined = (contents: Dosed, beer: Beer | null): boolean | null => {
  if (lastIsinglass(contents) !== null) return true;
  if (contents.doses.length > 0 || beer?.fields.vegan === true) return false;
  const rate = beer?.fields.isinglass_ml_per_hl;
  return rate === undefined ? null : rate > 0;
};

const finingInputs = (contents: Contents, beer: Beer | null) => {
  const dose = lastIsinglass(contents);
  return {
    fined: isFined(contents, beer),
    fined_at: dose?.since ?? null,
    moves: Math.min(RANGES.moves.high, contents.moves - (dose?.moves ?? 0)),
    last_moved_at: contents.moved?.since ?? null,
  };
};

/** TOLD-2: tapped the day before a sale it is drawn from when that begins, unless a dip says not. */
const firstDrawnAt = ({ serving, planned, contents }: Standing): string | null => {
  const tapped = serving?.tapped?.since;
  const sale = planned?.sale_at;
  if (tapped === undefined || sale === undefined || sale <= tapped) return null;
  if (Date.parse(sale) - Date.parse(tapped) > TAPPED_BEFORE_MS) return null;
  const drawn = contents?.dips.some(({ at, left_ml }) => at < sale && left_ml < contents.volume_ml);
  return drawn ? null : sale;
};

const servingInputs = (serving: Serving | null) => ({
  stillaged_at: serving?.stillaged?.since ?? null,
  vented_at: serving?.vented?.first_at ?? null,
  hard_spile_at: serving?.vented?.spile === "hard" ? serving.vented.since : null,
  tapped_at: serving?.tapped?.since ?? null,
});

/** Houses that tap early tap so long before a sale. */
const TAPPED_BEFORE_MS = figure("tapped_ahead_most_hours") * HOUR_MS;

/** TOLD-3: so near to the reading before, and so soon after it, one tells nothing new. */
const SAME_DECIDEGC = 2;
const SAME_MS = 3 * HOUR_MS;

const thinned = (readings: readonly Reading[]): Reading[] => {
  const found: Reading[] = [];
  for (const [at, decidegc] of readings) {
    if (degreesC("reading_temp_c", decidegc) === null) continue;
    const [before, was] = found.at(-1) ?? ["", 0];
    const same = before !== "" && Math.abs(decidegc - was) <= SAME_DECIDEGC;
    if (!same || Date.parse(at) - Date.parse(before) >= SAME_MS) found.push([at, decidegc]);
  }
  return found;
};

/** Hundreds of casks stand in one place, and a logger writes hundreds of lines. */
const thinnedOf = new WeakMap<Place, Reading[]>();

const readingsAt = (place: Place): Reading[] => {
  const known = thinnedOf.get(place) ?? thinned(place.temperatures);
  thinnedOf.set(place, known);
  return known;
};

const STANDS_MS = figure("reading_stands_hours") * HOUR_MS;

/** What the place's thermometer showed when it came there, if that was read not long before. */
const onArrival = (readings: readonly Reading[], from: string): Reading[] => {
  const before = readings.filter(([at]) => at <= from).at(-1);
  if (before === undefined || Date.parse(from) - Date.parse(before[0]) > STANDS_MS) return [];
  return [[from, before[1]]];
};

/** TOLD-4: only where it is now is known, and since when. */
const airInputs = (standing: Standing, contents: Contents, place: Place | null) => {
  if (standing.place === null) return {};
  const { since } = standing.place;
  const [from = since] = [since, contents.since].sort().slice(-1);
  const all = place === null ? [] : readingsAt(place);
  const readings = [...onArrival(all, from), ...all.filter(([at]) => at > from)];
  const place_temp_c = degreesC("place_temp_c", place?.fields.temp_decidegc);
  return {
    stays: [{ since_at: since, place_temp_c }],
    readings: readings.map(([at, decidegc]) => ({ at, reading_temp_c: decidegc / 10 })),
  };
};

const holdsMl = (standing: Standing, contents: Contents): number | null => {
  const ml = standing.capacity_ml ?? contents.volume_ml;
  return ml >= RANGES.holds_ml.low && ml <= RANGES.holds_ml.high ? ml : null;
};

/** TOLD-5: what `ready` and the plans are told; null while there is no beer in it. */
export const caskInputs = (standing: Standing, around: Around): CaskInputs | null => {
  const { contents, serving } = standing;
  if (contents === null) return null;
  const { beer, gyle, place } = around;
  return {
    filled_at: contents.since,
    shape: standing.shape as Shape | null,
    holds_ml: holdsMl(standing, contents),
    conditioning_days: beer?.fields.conditioning_days ?? null,
    best_before_on: contents.best_before,
    on_sale_days: beer?.fields.on_sale_days ?? null,
    fill_temp_c: degreesC("fill_temp_c", gyle?.fields.fining_temp_decidegc),
    tasted_at: contents.tasted?.since ?? null,
    ...finingInputs(contents, beer),
    ...servingInputs(serving),
    first_drawn_at: firstDrawnAt(standing),
    ...airInputs(standing, contents, place),
  };
};

/** The same with its number, for a plan. */
export const candidateInputs = (standing: Standing, around: Around): CandidateInputs | null => {
  const inputs = caskInputs(standing, around);
  return inputs === null ? null : { ...inputs, number: standing.number };
};
