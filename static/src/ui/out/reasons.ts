// What Out says of a customer and of a container that is away.

import { londonDate } from "../../domain/calendar.ts";
import {
  beerOfGyle,
  containerKinds,
  count,
  dateWords,
  dayWords,
  type Known,
  kindName,
  listWords,
  sentence,
  toldWords,
} from "../words.ts";
import { type Away, askedAbout, brokenPromise, type Holding, saidEmpty } from "./holdings.ts";

const KINDS = [...Object.keys(containerKinds()), null];

/** "9 firkins"; "2 × 30 L keg", where two figures side by side would be one. */
export const manyOf = (kind: string | null, n: number): string => {
  const name = kindName(kind);
  return /^\d/.test(name) ? `${n} × ${name}` : count(n, name.toLowerCase());
};

/** "9 firkins and 2 pins", the kind there is most of first. */
export const byKindWords = (away: readonly Pick<Away, "standing">[]): string => {
  const counts = new Map<string | null, number>();
  for (const { standing } of away) counts.set(standing.kind, (counts.get(standing.kind) ?? 0) + 1);
  const sorted = [...counts].sort(
    ([a, many], [b, more]) => more - many || KINDS.indexOf(a) - KINDS.indexOf(b),
  );
  return listWords(sorted.map(([kind, n]) => manyOf(kind, n)));
};

/** What came of asking them last. A promise that is due, or was not kept, matters most. */
export const chaseWords = (holding: Holding, now: string): string => {
  const chase = holding.record?.chase ?? null;
  if (chase === null) return "";
  const broken = brokenPromise(holding, now);
  if (broken !== null) return `Promised for ${dateWords(broken, now)}, not kept.`;
  if (chase.promised_on !== null && chase.promised_on >= londonDate(now)) {
    return `Promised for ${dayWords(chase.promised_on, now)}.`;
  }
  return askedAbout(holding) ? `Last asked ${dayWords(londonDate(chase.since), now)}.` : "";
};

const MOST_SAID = 6;

const saidOf = (away: readonly Away[], what: string): string => {
  const numbers = away.map(({ standing }) => standing.number);
  if (numbers.length === 0) return "";
  return `They say: ${listWords(numbers, MOST_SAID)} ${what}.`;
};

/** "They say: 117 and 118 empty, ready to collect. They say: K3 not here." */
export const saidWords = (holding: Holding): string =>
  [
    saidOf(saidEmpty(holding), toldWords("empty")),
    saidOf(
      holding.away.filter(({ trip }) => trip.told?.says === "not_here"),
      toldWords("not_here"),
    ),
  ]
    .filter(Boolean)
    .join(" ");

const overdueWords = ({ away, overdue }: Holding): string => {
  const what = byKindWords(away);
  if (overdue === 0) return `${what}.`;
  if (away.length === 1) return `${what}, overdue.`;
  return overdue === away.length ? `${what}, all overdue.` : `${what}, ${overdue} overdue.`;
};

/** "9 firkins, 4 overdue. Promised for 12 Nov, not kept." The longest stands beside it. */
export const holdingWords = (holding: Holding, now: string): string =>
  [overdueWords(holding), saidWords(holding), chaseWords(holding, now)].filter(Boolean).join(" ");

const dueWords = ({ trip, overdue }: Away, now: string): string => {
  if (overdue > 0) return `${count(overdue, "day")} late`;
  return trip.due_on === null ? "no day agreed" : `due back ${dayWords(trip.due_on, now)}`;
};

/** "Oystercatcher. Out 23 days since 2 Oct, 4 days late." */
export const awayWords = (away: Away, known: Known): string => {
  const { contents, held } = away.standing;
  const beer = contents === null ? "" : beerOfGyle(known, contents.gyle);
  const sent = dateWords(londonDate(away.trip.since), known.now);
  return [
    beer === "" ? "" : `${beer}.`,
    `Out ${count(away.days, "day")} since ${sent}, ${dueWords(away, known.now)}.`,
    away.trip.told ? `They say: ${toldWords(away.trip.told.says)}.` : "",
    held?.state === "missing" ? "Down as missing." : "",
  ]
    .filter(Boolean)
    .join(" ");
};

/** "3 customers, 23 containers". */
export const totalWords = (holdings: readonly Holding[]): string => {
  const containers = holdings.reduce((sum, { away }) => sum + away.length, 0);
  return `${count(holdings.length, "customer")}, ${count(containers, "container")}`;
};

/** "Firkin 117", for lines under one customer. */
export const awayTitle = ({ standing }: Away): string =>
  sentence(`${kindName(standing.kind)} ${standing.number}`);
