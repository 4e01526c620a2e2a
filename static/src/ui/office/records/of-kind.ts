// The records of one kind, as the lists and forms of the Office take them.

import { book } from "../../../store/book.ts";
import { type Doc, type Known, text } from "../../words.ts";
import type { FieldSpec, OfficeKind } from "./specs.ts";

export type Docs = ReadonlyMap<string, Doc>;

export const docsOf = (kind: OfficeKind): Docs => {
  const maps = {
    brewery: book.breweries,
    beer: book.beers,
    gyle: book.gyles,
    place: book.places,
    customer: book.customers,
    lot: book.lots,
  };
  return maps[kind].value as unknown as Docs;
};

/** What a record is called: a gyle by its number. */
export const titleOf = (kind: OfficeKind, doc: Doc | undefined, known: Known): string => {
  if (kind !== "gyle") return text(doc, "name") || "No name";
  const beer = text(known.beers.get(text(doc, "beer")), "name");
  return `${text(doc, "number") || "No number"}${beer === "" ? "" : ` ${beer}`}`;
};

export interface Choice {
  value: string;
  label: string;
}

/** What can be chosen in a field that names another record; one retired since stays choosable. */
export const choicesFor = (
  spec: FieldSpec & { is: "record" },
  current: string,
  known: Known,
): Choice[] =>
  [...docsOf(spec.of)]
    .filter(([id, doc]) => id === current || doc.fields.retired !== true)
    .map(([value, doc]) => ({ value, label: titleOf(spec.of, doc, known) }))
    .sort((a, b) => (a.label < b.label ? -1 : 1));
