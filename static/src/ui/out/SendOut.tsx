// Loading the van: the customer is chosen once, then number after number.

import { dueOn } from "../../domain/trips.ts";
import { book } from "../../store/book.ts";
import { newFacts } from "../bench/jobs.ts";
import { known } from "../known.ts";
import { ownFigures } from "../own-figures.ts";
import { save } from "../parts/say.ts";
import { hrefTo } from "../shell/route.ts";
import { useTitle } from "../shell/title.ts";
import { customerName, dateWords } from "../words.ts";
import { ChooseCustomer } from "./ChooseCustomer.tsx";
import { Hand } from "./Hand.tsx";
import type { HandJob } from "./hand-job.ts";
import { Lately } from "./Lately.tsx";
import { padState } from "./pad-state.ts";
import { sendDrafts, sendRemarks } from "./send.ts";
import { doneLately } from "./session.ts";
import { sendTo } from "./state.ts";

const pad = padState("send out");

const record = async (numbers: readonly string[]): Promise<void> => {
  const customer = sendTo.peek();
  const to = { customer, record: book.customers.peek().get(customer), asNew: newFacts() };
  const drafts = numbers.flatMap((number) =>
    sendDrafts(
      number,
      book.containers.peek().get(number) ?? null,
      to,
      book.now(),
      ownFigures.peek(),
    ),
  );
  const what =
    numbers.length === 1
      ? numbers.join("")
      : `${numbers[0]} to ${numbers.at(-1)}: ${numbers.length}`;
  const words = `${what} sent to ${customerName(known.peek(), customer)}.`;
  if (await save(words, () => book.recordMany(drafts))) pad.clear();
};

const To = ({ customer }: { customer: string }) => {
  const { now } = known.value;
  const due = dueOn(now, book.customers.value.get(customer) ?? null, ownFigures.value);
  return (
    <div class="gyle">
      <a href={hrefTo("out", "send", "to")}>
        <p>
          <strong>{customerName(known.value, customer)}</strong>
        </p>
        <p class="small">
          <span>Due back {dateWords(due, now)}</span>
          <u>change</u>
        </p>
      </a>
    </div>
  );
};

const Loading = ({ customer }: { customer: string }) => {
  useTitle("Send out");
  const all = doneLately(
    book.ownEntries.value,
    "sent",
    known.value.now,
    (facts) => facts["customer"] === customer,
  );
  const job: HandJob = {
    pad,
    verb: "Send",
    hint: "Type the number of each container as it goes on the van. A run: 117 – 124.",
    remarks: (standing) => {
      const record = book.customers.value.get(customer);
      return sendRemarks(standing, { customer, record }, known.value, ownFigures.value);
    },
    refusal: null,
    record: (numbers) => void record(numbers),
  };
  return (
    <div class="bench">
      <To customer={customer} />
      <Lately
        heading="Sent today"
        count={String(all.length)}
        all={all}
        did="sent out"
        about={() => ""}
      />
      <Hand job={job} />
    </div>
  );
};

/** A customer that this phone does not know, or that is retired, has to be chosen anew. */
export const SendOut = () => {
  const customer = sendTo.value;
  const record = book.customers.value.get(customer);
  return record === undefined || record.fields.retired ? (
    <ChooseCustomer />
  ) : (
    <Loading key={customer} customer={customer} />
  );
};
