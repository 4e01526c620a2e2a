// Making up a drop in the yard: the customer once, then number after number. What speaks against a
// container is said before it goes on.

import { useState } from "preact/hooks";
import { londonDate } from "../../../domain/calendar.ts";
import type { Standing } from "../../../domain/standing.ts";
import { book } from "../../../store/book.ts";
import { known } from "../../known.ts";
import { ownFigures } from "../../own-figures.ts";
import { Field } from "../../parts/Field.tsx";
import { headOf } from "../../parts/head-of.ts";
import { Line, Lines } from "../../parts/Line.tsx";
import { save } from "../../parts/say.ts";
import { hrefTo } from "../../shell/route.ts";
import { useTitle } from "../../shell/title.ts";
import { containerName, count, customerName } from "../../words.ts";
import type { Remark } from "../back.ts";
import { type Customers, customersLike, latelyMet } from "../customers.ts";
import { Hand } from "../Hand.tsx";
import type { HandJob } from "../hand-job.ts";
import { NewCustomer } from "../NewCustomer.tsx";
import { padState } from "../pad-state.ts";
import { sendRemarks } from "../send.ts";
import { AskedFor } from "./AskedFor.tsx";
import { askedRemarks } from "./asked-for.ts";
import { begin } from "./begin.ts";
import { madeUpElsewhere, type Stop } from "./drops.ts";

const pad = padState("make up a drop");

export const ForWhom = () => {
  useTitle("A drop for whom?");
  const [words, setWords] = useState("");
  const customers: Customers = book.customers.value;
  const found = customersLike(
    customers,
    words,
    latelyMet(book.ownEntries.value),
    londonDate(known.value.now),
  );
  return (
    <>
      <div class="above">
        <Field label="Find a customer" value={words} onValue={setWords} />
        <NewCustomer />
      </div>
      <Lines heading="Drop at" count={found.length}>
        {found.map(({ id, name, says }) => (
          <Line
            key={id}
            title={name}
            reason={says}
            action={{ label: "Choose", onPress: () => void begin(id) }}
          />
        ))}
      </Lines>
    </>
  );
};

const change = (stop: Stop, numbers: readonly string[], words: string): Promise<boolean> =>
  save(words, () => book.record("drop", stop.id, { numbers }));

const add = async (stop: Stop, added: readonly string[]): Promise<void> => {
  const numbers = [...new Set([...stop.numbers, ...added])];
  const what = added.length === 1 ? added.join("") : `${added[0]} to ${added.at(-1)}`;
  if (await change(stop, numbers, `${what} made up.`)) pad.clear();
};

const remarksFor = (stop: Stop, standing: Standing | null): Remark[] => {
  const to = { customer: stop.customer, record: book.customers.value.get(stop.customer) };
  const remarks = sendRemarks(standing, to, known.value, ownFigures.value);
  const asked = stop.fields.asked ?? [];
  const { numbers } = stop;
  remarks.push(...askedRemarks(standing, asked, numbers, book.containers.value, known.value));
  const number = standing?.number ?? "";
  if (stop.numbers.includes(number)) {
    remarks.push({ says: "Made up for this drop already.", tone: "look" });
  }
  const elsewhere = madeUpElsewhere(number, stop.id);
  if (elsewhere !== undefined) {
    const name = customerName(known.value, elsewhere.customer);
    remarks.push({ says: `Made up for ${name}.`, tone: "look" });
  }
  return remarks;
};

const MadeUp = ({ stop }: { stop: Stop }) => (
  <Lines heading="Made up" count={stop.numbers.length}>
    {stop.numbers.map((number) => {
      const standing = book.containers.value.get(number);
      return (
        <Line
          key={number}
          {...(standing ? { look: headOf(standing, known.value.now) } : {})}
          title={standing ? containerName(standing) : number}
          action={{
            label: "Take off",
            onPress: () => {
              const left = stop.numbers.filter((one) => one !== number);
              void change(stop, left, `${number} taken off.`);
            },
          }}
        />
      );
    })}
  </Lines>
);

export const MakeUp = ({ stop }: { stop: Stop }) => {
  useTitle(customerName(known.value, stop.customer));
  const job: HandJob = {
    pad,
    verb: "Make up",
    hint: "Type the number of each container that is to go. A run: 117 – 124.",
    remarks: (standing) => remarksFor(stop, standing),
    refusal: null,
    record: (numbers) => void add(stop, numbers),
  };
  return (
    <div class="bench">
      <div class="above">
        <a class="button main" href={hrefTo("out", "round")}>
          Done: {count(stop.numbers.length, "container")}
        </a>
      </div>
      <AskedFor stop={stop} />
      <MadeUp stop={stop} />
      <Hand job={job} />
    </div>
  );
};
