// What a delivery note says, in lines: for the screen, for a message, and for the paper.

import { CONTAINER_KINDS } from "../../../domain/containers.ts";
import type { BreweryFields, DropFields, DropLine } from "../../../domain/record-fields.ts";
import { count, dateWords, listWords, litres, strength } from "../../words.ts";

export interface Note {
  brewery: string;
  address: string;
  customer: string;
  day: string;
  lines: { number: string; what: string; more: string }[];
  /** Beside the lines: what came along, what is there now, duty, who took it. */
  said: { what: string; says: string }[];
  signature: string;
}

const kindOf = ({ kind }: DropLine): string => CONTAINER_KINDS[kind]?.name ?? kind;

const moreOf = (line: DropLine, now: string): string =>
  [
    line.lot === "" ? "" : `lot ${line.lot}`,
    line.best_before === null ? "" : `best before ${dateWords(line.best_before, now)}`,
    line.contains.toLowerCase(),
  ]
    .filter(Boolean)
    .join(", ");

const whatOf = (line: DropLine): string => {
  if (line.beer === "") return `${kindOf(line)}, no beer on record`;
  const beer = line.abv_tenths === null ? line.beer : `${line.beer} ${strength(line.abv_tenths)}`;
  return `${kindOf(line)} of ${beer}, ${litres(line.volume_ml)}`;
};

/** A paper is kept for years: its date has the year. */
const dayOf = (at: string): string =>
  new Date(at).toLocaleDateString("en-GB", {
    timeZone: "Europe/London",
    day: "numeric",
    month: "long",
    year: "numeric",
  });

const takenWords = ({ empties = [], empties_counted = 0 }: Partial<DropFields>): string => {
  const counted = empties_counted === 0 ? "" : count(empties_counted, "counted", "counted");
  return [listWords(empties), counted].filter(Boolean).join(", and ") || "none";
};

const DEPOSIT_PENCE = 100;

const exactly = (pence: number): string => `£${(pence / DEPOSIT_PENCE).toFixed(2)}`;

/** What is paid for those dropped and given back for those taken along, and what that comes to. */
const depositWords = ({
  deposits_taken_pence: taken = 0,
  deposits_given_back_pence: back = 0,
  empties_counted = 0,
}: Partial<DropFields>): string => {
  if (taken === 0 && back === 0) return "";
  const due = taken - back;
  const comes = due < 0 ? `${exactly(-due)} to give back` : `${exactly(due)} to pay`;
  const later = empties_counted === 0 ? "" : "; what was only counted is reckoned later";
  return `${exactly(taken)} for these, ${exactly(back)} back for empties: ${comes}${later}`;
};

export const noteOf = (
  drop: Partial<DropFields>,
  brewery: Partial<BreweryFields>,
  customer: string,
): Note => {
  const { lines = [], handed_over_at = "", held_before = 0, held_after = 0 } = drop;
  const total = lines.reduce((sum, { volume_ml }) => sum + volume_ml, 0);
  const said = [
    { what: "Empties taken along", says: takenWords(drop) },
    { what: "Our containers here", says: `${held_before} before, ${held_after} now` },
    { what: "Beer, duty paid", says: litres(total) },
    { what: "Deposits", says: depositWords(drop) },
    { what: "Taken by", says: drop.taken_by ?? "" },
    { what: "Note", says: drop.note ?? "" },
  ];
  return {
    brewery: brewery.name ?? "",
    address: [brewery.address, brewery.phone, brewery.email].filter(Boolean).join(", "),
    customer,
    day: dayOf(handed_over_at),
    lines: lines.map((line) => ({
      number: line.number,
      what: whatOf(line),
      more: moreOf(line, handed_over_at),
    })),
    said: said.filter(({ says }) => says !== ""),
    signature: drop.signature ?? "",
  };
};

export const THEIR_PAGE = "What you have of our containers, and where to tap those that are empty";

/** As a message says it, with the link to the customer's page where there is one. */
export const noteText = (note: Note, link: string | null): string =>
  [
    `${note.brewery}: delivery to ${note.customer}, ${note.day}`,
    ...note.lines.map(({ number, what, more }) => `${number}: ${what}${more && `, ${more}`}`),
    ...note.said.map(({ what, says }) => `${what}: ${says}`),
    ...(link === null ? [] : [`${THEIR_PAGE}: ${link}`]),
  ].join("\n");
