// A ready text to a customer: to look over, then to copy, or to send with the phone's own apps.

import { useState } from "preact/hooks";
import { book } from "../../store/book.ts";
import { known } from "../known.ts";
import { may, person } from "../mine.ts";
import { Button } from "../parts/Button.tsx";
import { More } from "../parts/More.tsx";
import { save, say } from "../parts/say.ts";
import { customerName, dayWords } from "../words.ts";
import { askAgainOn } from "./ask-again.ts";
import { CALL_TEXT, filledIn, mailHref, namesAt, smsHref } from "./call-text.ts";
import type { Holding } from "./holdings.ts";

const brewerysWords = (): string => {
  const fields = book.brewerySettings.value.get("call_text")?.fields;
  return fields?.retired || !fields?.words ? CALL_TEXT.words : fields.words;
};

const from = () => ({
  person: person.value,
  brewery: book.breweries.value.get("brewery")?.fields.name ?? "",
});

const copy = (text: string): void => {
  navigator.clipboard.writeText(text).then(
    () => say.saved("Copied.", []),
    () => say.trouble("This browser does not let the text be copied. Hold a finger on it instead."),
  );
};

const share = (text: string): void => {
  // Turning back from the phone's own list is no fault.
  navigator.share({ text }).catch(() => undefined);
};

const Written = ({ customer }: { customer: string }) => {
  const again = askAgainOn();
  const note = () =>
    save(`Noted that ${customerName(known.value, customer)} was written to.`, () =>
      book.record("chased", customer, {
        words: "",
        outcome: "wrote",
        promised_on: null,
        ask_again_on: again,
      }),
    );
  return (
    <Button wide onPress={() => void note()}>
      Note it as sent, ask again {dayWords(again, known.value.now)}
    </Button>
  );
};

const Form = ({ holding }: { holding: Holding }) => {
  const [text, setText] = useState(() =>
    filledIn(brewerysWords(), namesAt(holding, known.value, from())).trim(),
  );
  const { phone, email } = holding.record?.fields ?? {};
  return (
    <div class="form">
      <div class="field">
        <label for="text-to-customer">The text</label>
        <textarea
          id="text-to-customer"
          rows={7}
          maxLength={1000}
          value={text}
          onInput={(event) => setText(event.currentTarget.value)}
        />
      </div>
      <div class="choice">
        <Button onPress={() => copy(text)}>Copy</Button>
        {phone && (
          <a class="button" href={smsHref(phone, text)}>
            Text
          </a>
        )}
        {email && (
          <a class="button" href={mailHref(email, CALL_TEXT.title, text)}>
            E-mail
          </a>
        )}
        {"share" in navigator && <Button onPress={() => share(text)}>Share</Button>}
      </div>
      {may("chased") && <Written customer={holding.customer} />}
    </div>
  );
};

export const WriteTo = ({ holding }: { holding: Holding }) => (
  <More label="Write to them">
    <Form key={holding.away.length} holding={holding} />
  </More>
);
