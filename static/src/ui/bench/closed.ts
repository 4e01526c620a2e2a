// What a container comes to once it is closed: the pressure in the cellar and on a warm dray, by the
// sugar that is really given.

import { CAUTIONS, type CautionId } from "../../domain/cautions.ts";
import { type Settings, setting } from "../../domain/figures.ts";
import type { AnyWorked } from "../parts/working.ts";
import type { DoseLine } from "./dose-line.ts";
import { loudCautions } from "./doses.ts";
import { amountGiven, type Instead } from "./instead.ts";

const PRESSURE: readonly CautionId[] = ["pressure_at_limit", "pressure_high"];

/** For the container with the most sugar in a litre; null where that is not known. */
export const closedOf = (lines: readonly DoseLine[], instead: Instead) => {
  const line = lines.find(({ closed }) => closed !== undefined);
  if (line?.closed === undefined) return null;
  const perL = line.sizes.map(
    ({ volume_ml }, n) => ((amountGiven(instead, line, n) ?? 0) * 1000) / volume_ml,
  );
  return line.closed(Math.max(...perL));
};

type Closed = NonNullable<ReturnType<typeof closedOf>>;

const warning = ({ cautions }: Closed): CautionId | undefined =>
  PRESSURE.find((id) => cautions.includes(id));

const tenths = (bar: number): string => (Math.floor(bar * 10 + 0.5) / 10).toFixed(1);

/** "Closed: 0.4 bar in the cellar at 12 °C, 1.1 bar on a dray at 30 °C." */
export const closedWords = (closed: Closed, own: Settings): { says: string; look: boolean } => {
  const { cellar_bar, dray_bar, dray_temp_c } = closed.result;
  const cellar = setting("cellar_temp_c", own);
  const says = `Closed: ${tenths(cellar_bar)} bar in the cellar at ${cellar} °C, ${tenths(dray_bar)} bar on a dray at ${dray_temp_c} °C.`;
  const id = warning(closed);
  return id === undefined
    ? { says, look: false }
    : { says: `${says} ${CAUTIONS[id].words}`, look: true };
};

const firstSentence = (words: string): string =>
  words.replace(/(?<=[.:]) .*$/s, "").replace(/:$/, ".");

/** The first caution that this racking has earned, and how many more; danger stands out. */
export const cautionLine = (
  lines: readonly DoseLine[],
  instead: Instead,
  more: readonly AnyWorked[] = [],
): { says: string; look: boolean } => {
  const closed = closedOf(lines, instead);
  const danger = closed && warning(closed);
  const others = loudCautions([...lines, { worked: more }]).filter((id) => !PRESSURE.includes(id));
  const [first, ...rest] = danger ? [danger, ...others] : others;
  if (first === undefined) return { says: "", look: false };
  const bar = closed && first === danger ? `${tenths(closed.result.dray_bar)} bar when warm: ` : "";
  const words = `${bar}${firstSentence(CAUTIONS[first].words)}`;
  const says = rest.length === 0 ? words : `${words} ${rest.length} more.`;
  return { says, look: first === danger };
};
