/** ORD-3: entries that put other entries right. Twin of cellarapp/domain/corrections.py. */
import { type Entry, isContainerKind, orderKey } from "./entries.ts";
import { agreedWay, liveSettlements } from "./queries.ts";

/** Which subject each entry counts for, and by which entry each of the others was taken out. */
export interface Resolved {
  countsFor: Map<string, string>;
  droppedBy: Map<string, string>;
}

type Known = Map<string, Entry>;
type MovedBy = { key: string; target: string; to: string };

/** Applies the corrections among the entries, in whatever order they are given. */
export function resolve(entries: Entry[]): Resolved {
  const known: Known = new Map(entries.map((e) => [e.id, e]));
  const droppedBy = voids(known);
  const moves: MovedBy[] = [];
  for (const [way, settlement] of agreed(known, droppedBy)) {
    const [act, target = "", to = ""] = way.split(":");
    const quarrel = String(settlement.facts.query).split(":").slice(1);
    const kind = known.get(target)?.kind ?? "";
    if (!quarrel.includes(target) || !isContainerKind(kind)) continue;
    if (act === "void" && !droppedBy.has(target)) droppedBy.set(target, settlement.id);
    if (act === "renumber") moves.push({ key: orderKey(settlement), target, to });
  }
  for (const entry of known.values()) {
    if (entry.kind === "renumbered" && !droppedBy.has(entry.id)) {
      moves.push({ key: orderKey(entry), target: entry.facts.target, to: entry.facts.to });
    }
  }
  const countsFor = new Map<string, string>();
  for (const entry of known.values()) {
    if (!droppedBy.has(entry.id)) countsFor.set(entry.id, entry.subject);
  }
  moves.sort((a, b) => compare(a.key, b.key) || compare(a.target, b.target) || compare(a.to, b.to));
  for (const { target, to } of moves) {
    const kind = known.get(target)?.kind ?? "";
    if (countsFor.has(target) && isContainerKind(kind)) countsFor.set(target, to);
  }
  return { countsFor, droppedBy };
}

function compare(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}

/** A void counts unless it is itself voided by one that counts; rings, which no screen makes, stand. */
function voids(known: Known): Map<string, string> {
  const voiders = new Map<string, string[]>();
  for (const entry of known.values()) {
    const target: string = entry.facts.target;
    if (entry.kind === "voided" && known.has(target)) {
      voiders.set(target, [...(voiders.get(target) ?? []), entry.id]);
    }
  }
  const stands = new Set([...known.keys()].filter((id) => !voiders.has(id)));
  const dropped = new Set<string>();
  const undecided = new Map(voiders);
  while (undecided.size > 0) {
    const decided: string[] = [];
    for (const [target, by] of undecided) {
      if (by.some((id) => stands.has(id))) dropped.add(target);
      else if (by.every((id) => dropped.has(id))) stands.add(target);
      else continue;
      decided.push(target);
    }
    if (decided.length === 0) break;
    for (const target of decided) undecided.delete(target);
  }
  const droppedBy = new Map<string, string>();
  for (const target of dropped) {
    const [first] = (voiders.get(target) ?? []).filter((id) => stands.has(id)).sort();
    if (first !== undefined) droppedBy.set(target, first);
  }
  return droppedBy;
}

/** LIFE-21: the ways on which all who settled a query agree, with one settlement of each. */
function agreed(known: Known, droppedBy: Map<string, string>): [string, Entry][] {
  const byQuery = new Map<string, Entry[]>();
  for (const entry of known.values()) {
    if (entry.kind === "settled" && !droppedBy.has(entry.id)) {
      const query: string = entry.facts.query;
      byQuery.set(query, [...(byQuery.get(query) ?? []), entry]);
    }
  }
  const pairs: [string, Entry][] = [];
  for (const settlements of byQuery.values()) {
    const live = liveSettlements(
      settlements.map((e) => ({
        entry: e.id,
        way: e.facts.way,
        replaces: e.facts.replaces ?? [],
      })),
    );
    const way = agreedWay(live);
    const first = known.get(live.map(({ entry }) => entry).sort()[0] ?? "");
    if (way !== null && way !== "right" && first) pairs.push([way, first]);
  }
  return pairs.sort((a, b) => compare(a[1].id, b[1].id));
}
