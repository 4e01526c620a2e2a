// The sections of the Office, with what each has to say before it is opened.

import { book } from "../../store/book.ts";
import { isPast } from "../bench/lots.ts";
import { known } from "../known.ts";
import { person, role } from "../mine.ts";
import { ownFigures } from "../own-figures.ts";
import { count } from "../words.ts";
import { allOverdrawn } from "./questions/Overdrawn.tsx";
import { allQuestions } from "./questions/Questions.tsx";
import { unregistered } from "./register/Unregistered.tsx";

export interface Section {
  path: string;
  title: string;
  says: string;
  /** Something waits for a person there. */
  waits?: boolean;
}

const inUse = (docs: Iterable<{ fields: { retired?: boolean } }>): number => {
  let n = 0;
  for (const doc of docs) if (!doc.fields.retired) n += 1;
  return n;
};

const ofNumber = (n: number, one: string, many: string): string =>
  n === 0 ? "none" : count(n, one, many);

/** What waits for a person; only what there is. */
export const toDo = (): Section[] => {
  const { attention } = book.waiting.value;
  const questions = allQuestions.value.length;
  const unknown = unregistered.value.length;
  const overdrawn = allOverdrawn.value.length;
  const sections: (Section | null)[] = [
    attention === 0
      ? null
      : {
          path: "entries",
          title: "Need attention",
          says: `The brewery did not take ${count(attention, "entry", "entries")}.`,
        },
    questions === 0
      ? null
      : {
          path: "questions",
          title: "Questions to settle",
          says: `${count(questions, "thing does", "things do")} not fit together.`,
        },
    unknown === 0
      ? null
      : {
          path: "unregistered",
          title: "Not registered",
          says: `${count(unknown, "number was", "numbers were")} used and never entered.`,
        },
    overdrawn === 0
      ? null
      : {
          path: "overdrawn",
          title: "Gyles drawn too far",
          says: `More was racked than there was from ${count(overdrawn, "gyle")}.`,
        },
  ];
  return sections.flatMap((section) => (section === null ? [] : [{ ...section, waits: true }]));
};

const registeredCount = (): number =>
  [...book.containers.value.values()].filter(
    ({ registered, held }) => registered !== null && held?.state !== "scrapped",
  ).length;

const figuresSay = (own: number): string =>
  own === 0 ? "what the reckoning builds on, all as usual" : `${own} set by this brewery`;

/** Finings past their life are told before anybody opens it. */
const lotsSection = (): Section => {
  const live = [...book.lots.value.values()].filter(({ fields }) => !fields.retired);
  const past = live.filter((lot) => isPast(lot, known.value.now, ownFigures.value)).length;
  return {
    path: "lots",
    title: "Lots of finings, sugar and hops",
    says: `${ofNumber(live.length, "lot", "lots")}${past === 0 ? "" : `, ${past} past its life`}`,
    waits: past > 0,
  };
};

/** Read by whoever works in the cellar; who has the phone in hand may not be known. */
const calendar = (): Section[] =>
  role.value === "driver" || role.value === "reader"
    ? []
    : [
        {
          path: "calendar",
          title: "Jobs in your calendar",
          says: "what is due, in the calendar of your phone",
        },
      ];

/** What the brewery is made of. */
export const records = (): Section[] => [
  {
    path: "brewery",
    title: "The brewery",
    says: book.breweries.value.get("brewery")?.fields.name ?? "its name is not entered yet",
  },
  {
    path: "beers",
    title: "Beers",
    says: ofNumber(inUse(book.beers.value.values()), "beer", "beers"),
  },
  {
    path: "gyles",
    title: "Gyles",
    says: ofNumber(inUse(book.gyles.value.values()), "gyle", "gyles"),
  },
  {
    path: "containers",
    title: "Containers",
    says: ofNumber(registeredCount(), "container", "containers"),
  },
  { path: "fleet", title: "How many we need", says: "containers by kind, turns and losses" },
  {
    path: "customers",
    title: "Customers",
    says: ofNumber(inUse(book.customers.value.values()), "customer", "customers"),
  },
  {
    path: "places",
    title: "Places",
    says: ofNumber(inUse(book.places.value.values()), "place", "places"),
  },
  lotsSection(),
  {
    path: "figures",
    title: "Figures",
    says: figuresSay(Object.keys(ownFigures.value).length),
  },
  { path: "texts", title: "Texts to others", says: "asking for containers, in your own words" },
  {
    path: "labels",
    title: "Labels",
    says: "for what was filled, and plates for containers",
  },
  {
    path: "lists",
    title: "Your lists",
    says: "bring in a spreadsheet, take a copy out",
  },
  ...calendar(),
];

/** What an owner looks after; to others it is not offered. */
export const peopleSections = (): Section[] => {
  const { me } = book.account.value;
  if (me === null || role.value !== "owner") return [];
  return [
    { path: "people", title: "People", says: "who they are, what each may do, their PINs" },
    { path: "devices", title: "Phones", says: "pair another, see what waits on each" },
    { path: "held", title: "Held for you", says: "entries that wait for your word" },
    { path: "audit", title: "Who did what", says: "about people, phones and held entries" },
  ];
};

export const phoneSections = (): Section[] => {
  const { count: waiting } = book.waiting.value;
  return [
    {
      path: "entries",
      title: "Entries on this phone",
      says:
        waiting === 0 ? "all at the brewery" : `${count(waiting, "entry waits", "entries wait")}`,
    },
    {
      path: "phone",
      title: "This phone",
      says: person.value === "" ? "nobody has signed in yet" : `${person.value} has it`,
    },
  ];
};
