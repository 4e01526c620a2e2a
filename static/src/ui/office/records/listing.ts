// The list of one kind of record: what a line says, and in which order the lines stand.

import type { Settings } from "../../../domain/figures.ts";
import type { Lot } from "../../../domain/records.ts";
import { basisWords, isPast, lifeWords } from "../../bench/lots.ts";
import { addedWords } from "../../words/entries.ts";
import { WEEKDAYS } from "../../words/weekdays.ts";
import {
  count,
  type Doc,
  dateWords,
  type Known,
  litres,
  sentence,
  strength,
  text,
} from "../../words.ts";
import { type OfficeKind, SPECS } from "./specs.ts";

const figureOf = (doc: Doc, name: string): number | null => {
  const value = doc.fields[name];
  return typeof value === "number" ? value : null;
};

const beer = (doc: Doc): string[] => {
  const abv = figureOf(doc, "abv_tenths");
  const days = figureOf(doc, "conditioning_days");
  const best = figureOf(doc, "best_before_days");
  return [
    abv === null ? "" : strength(abv),
    text(doc, "style"),
    days === null ? "" : `ready in ${count(days, "day")}`,
    best === null ? "" : `good for ${count(best, "day")}`,
  ];
};

const gyle = (doc: Doc, known: Known): string[] => {
  const volume = figureOf(doc, "volume_ml");
  const drawn = doc.drawn_ml ?? 0;
  const brewed = text(doc, "brewed_on");
  return [
    brewed === "" ? "" : `brewed ${dateWords(brewed, known.now)}`,
    volume === null ? `${litres(drawn)} racked` : `${litres(drawn)} of ${litres(volume)} racked`,
  ];
};

const place = (doc: Doc): string[] => {
  const role = SPECS.place.fields.find((field) => field.name === "role");
  const options = role?.is === "choice" ? role.options : [];
  return [options.find(({ value }) => value === text(doc, "role"))?.label ?? ""];
};

const customer = (doc: Doc): string[] => {
  const day = figureOf(doc, "delivery_day");
  const days = figureOf(doc, "agreed_days");
  return [
    day === null ? "" : `${WEEKDAYS[day]} delivery`,
    text(doc, "contact"),
    text(doc, "phone"),
    days === null ? "" : `${count(days, "day")} agreed`,
  ];
};

const brewery = (doc: Doc): string[] => [text(doc, "address")];

const lot = (doc: Doc, known: Known, own: Settings): string[] => {
  const opened = text(doc, "opened_on");
  return [
    addedWords(text(doc, "what")),
    opened === "" ? "" : `opened ${dateWords(opened, known.now)}`,
    basisWords(doc as Lot, known.now),
    doc.fields.retired ? "" : lifeWords(doc as Lot, known.now, own),
  ];
};

const SAYS: { readonly [kind in OfficeKind]: (doc: Doc, known: Known, own: Settings) => string[] } =
  {
    brewery,
    beer,
    gyle,
    place,
    customer,
    lot,
  };

export const recordSays = (kind: OfficeKind, doc: Doc, known: Known, own: Settings): string =>
  sentence(SAYS[kind](doc, known, own).filter(Boolean).join(", "));

/** What must not be read past: finings past their life. */
export const recordTone = (
  kind: OfficeKind,
  doc: Doc,
  known: Known,
  own: Settings,
): "look" | undefined =>
  kind === "lot" && !doc.fields.retired && isPast(doc as Lot, known.now, own) ? "look" : undefined;

export interface Listed {
  id: string;
  doc: Doc;
  title: string;
}

const order = new Intl.Collator("en-GB", { numeric: true });

/** Gyles by brewing day, the newest first; everything else by name. */
export const listed = (
  kind: OfficeKind,
  docs: ReadonlyMap<string, Doc>,
  title: (doc: Doc) => string,
  retired: boolean,
): Listed[] =>
  [...docs]
    .filter(([, doc]) => (doc.fields.retired === true) === retired)
    .map(([id, doc]) => ({ id, doc, title: title(doc) }))
    .sort((a, b) =>
      kind === "gyle"
        ? order.compare(text(b.doc, "brewed_on"), text(a.doc, "brewed_on")) ||
          order.compare(b.title, a.title)
        : order.compare(a.title, b.title),
    );
