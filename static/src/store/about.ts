// What a correction is about, read from the entry alone.

import type { MadeEntry } from "../domain/entries.ts";
import { type RowKey, rowKey } from "./kept.ts";

/** The row of the container that a correction moves its target to. */
export const movedTo = (entry: MadeEntry): RowKey[] => {
  const to = entry.kind === "renumbered" ? String(entry.facts["to"]) : (wayOf(entry)?.to ?? "");
  return to === "" ? [] : [rowKey("container", to)];
};

/** What a settlement asks for beyond saying that all is right. */
const wayOf = (entry: MadeEntry): { target: string; to: string } | null => {
  if (entry.kind !== "settled") return null;
  const [act, target = "", to = ""] = String(entry.facts["way"]).split(":");
  return act === "right" ? null : { target, to };
};

/** The entry that a correction puts right, if it is one. */
export const targetOf = (entry: MadeEntry): string | null =>
  entry.kind === "voided" || entry.kind === "renumbered"
    ? String(entry.facts["target"])
    : (wayOf(entry)?.target ?? null);
