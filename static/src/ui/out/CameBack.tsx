// The yard: empties come off the van, number after number, from whichever customer.

import { signal } from "@preact/signals";
import { book } from "../../store/book.ts";
import { newFacts } from "../bench/jobs.ts";
import { known } from "../known.ts";
import { Choice } from "../parts/Choice.tsx";
import { save } from "../parts/say.ts";
import { useTitle } from "../shell/title.ts";
import { count, customerName, litres } from "../words.ts";
import { backDrafts, backRemarks, type Remark } from "./back.ts";
import { countedWords, matchDrafts } from "./counted.ts";
import { Hand } from "./Hand.tsx";
import type { HandJob } from "./hand-job.ts";
import { Lately } from "./Lately.tsx";
import { padState } from "./pad-state.ts";
import { type Done, doneLately } from "./session.ts";
import { backTo } from "./state.ts";
import { placeForEmpties, yards } from "./yards.ts";

const pad = padState("came back");
const ullage = signal<number | null>(null);
/** Whose a container not on record is; "" for ours. */
const owner = signal("");

const record = async (numbers: readonly string[]): Promise<void> => {
  const only = numbers.length === 1;
  const whose = owner.peek().trim();
  const back = {
    place: placeForEmpties()?.id,
    asNew: { ...newFacts(), ...(whose === "" ? {} : { owner: whose }) },
    ullage_ml: only ? ullage.peek() : null,
  };
  const standings = numbers.map((number) => book.containers.peek().get(number) ?? null);
  const drafts = [
    ...numbers.flatMap((number, n) => backDrafts(number, standings[n] ?? null, back)),
    ...matchDrafts(standings, book.drops.peek()),
  ];
  const what = only ? numbers.join("") : `${numbers[0]} to ${numbers.at(-1)}: ${numbers.length}`;
  if (await save(`${what} came back.`, () => book.recordMany(drafts))) {
    pad.clear();
    ullage.value = null;
    owner.value = "";
  }
};

const aboutBack = ({ own: { entry } }: Done): string => {
  const { customer, ullage_ml } = entry.facts;
  const from = customer === undefined ? "" : `from ${customerName(known.value, customer)}, `;
  return `${from}${ullage_ml > 0 ? `${litres(ullage_ml)} in it, ` : ""}`;
};

const ChooseYard = () => {
  const all = yards();
  return all.length < 2 ? null : (
    <div class="above">
      <Choice
        label="Put where?"
        value={placeForEmpties()?.id ?? ""}
        onValue={(id) => {
          backTo.value = id;
        }}
        options={all.map(({ id, name }) => ({ value: id, label: name }))}
      />
    </div>
  );
};

/** "7 from 3 customers": what the driver would say. */
const countWords = (all: readonly Done[]): string => {
  const customers = new Set(all.map(({ own }) => own.entry.facts["customer"]).filter(Boolean));
  return customers.size === 0
    ? String(all.length)
    : `${all.length} from ${count(customers.size, "customer")}`;
};

export const CameBack = () => {
  useTitle("Came back");
  const all = doneLately(book.ownEntries.value, "returned", known.value.now);
  const job: HandJob = {
    pad,
    verb: "Take back",
    hint: "Type the number on the container, whoever it comes from. A run: 117 – 124.",
    remarks: (standing) => {
      const says = countedWords(standing, book.drops.value, known.value.now);
      const counted: Remark[] = says === "" ? [] : [{ says, tone: "fine" }];
      return [...backRemarks(standing, known.value), ...counted];
    },
    refusal: null,
    record: (numbers) => void record(numbers),
    owner: {
      name: owner.value,
      set: (name) => {
        owner.value = name;
      },
    },
    ullage: {
      ml: ullage.value,
      set: (ml) => {
        ullage.value = ml;
      },
    },
  };
  return (
    <div class="bench">
      <ChooseYard />
      <Lately
        heading="Back today"
        count={countWords(all)}
        all={all}
        did="came back"
        about={aboutBack}
      />
      <Hand job={job} />
    </div>
  );
};
