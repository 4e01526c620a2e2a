// Who is loaded for. Those sent to or entered lately on this phone come first, then whose delivery is next.

import { useState } from "preact/hooks";
import { londonDate } from "../../domain/calendar.ts";
import { book } from "../../store/book.ts";
import { Slices } from "../cellar/Slices.tsx";
import { known } from "../known.ts";
import { Field } from "../parts/Field.tsx";
import { Line, Lines } from "../parts/Line.tsx";
import { Nothing } from "../parts/Nothing.tsx";
import { formAndBack, goOnTo } from "../shell/route.ts";
import { useTitle } from "../shell/title.ts";
import { type Customers, customersLike, latelyMet } from "./customers.ts";
import { NewCustomer } from "./NewCustomer.tsx";
import { sendTo } from "./state.ts";

export const ChooseCustomer = () => {
  useTitle("Send to whom?");
  const [words, setWords] = useState("");
  const customers: Customers = book.customers.value;
  const found = customersLike(
    customers,
    words,
    latelyMet(book.ownEntries.value),
    londonDate(known.value.now),
  );
  if (customers.size === 0) {
    return (
      <Nothing says="No customer is entered yet. A container is sent to a customer.">
        <a class="button main" href={formAndBack("customers", "new")}>
          Enter a customer
        </a>
      </Nothing>
    );
  }
  return (
    <>
      <div class="above">
        <Field label="Find a customer" value={words} onValue={setWords} />
        <NewCustomer />
      </div>
      <Lines heading="Send to" count={found.length}>
        <Slices
          items={found}
          each={({ id, name, says }) => (
            <Line
              key={id}
              title={name}
              reason={says}
              action={{
                label: id === sendTo.value ? "Stay" : "Choose",
                onPress: () => {
                  sendTo.value = id;
                  goOnTo("out", "send");
                },
              }}
            />
          )}
        />
      </Lines>
    </>
  );
};
