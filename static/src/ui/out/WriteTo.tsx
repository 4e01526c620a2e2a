// A ready text that asks a customer for containers, and a note that it was sent.

import { book } from "../../store/book.ts";
import { known } from "../known.ts";
import { may } from "../mine.ts";
import { Button } from "../parts/Button.tsx";
import { More } from "../parts/More.tsx";
import { save } from "../parts/say.ts";
import { customerName, dayWords } from "../words.ts";
import { askAgainOn } from "./ask-again.ts";
import { CALL_TEXT, filledIn, namesAt } from "./call-text.ts";
import type { Holding } from "./holdings.ts";
import { from, ownWords } from "./own-words.ts";
import { ReadyText } from "./ReadyText.tsx";

export const Written = ({ customer }: { customer: string }) => {
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
  return may("chased") ? (
    <Button wide onPress={() => void note()}>
      Note it as sent, ask again {dayWords(again, known.value.now)}
    </Button>
  ) : null;
};

export const WriteTo = ({ holding }: { holding: Holding }) => {
  const { phone, email } = holding.record?.fields ?? {};
  const names = namesAt(holding, known.value, from());
  return (
    <More label="Write to them">
      <ReadyText
        key={holding.away.length}
        words={filledIn(ownWords("call_text"), names).trim()}
        subject={CALL_TEXT.title}
        phone={phone}
        email={email}
      >
        <Written customer={holding.customer} />
      </ReadyText>
    </More>
  );
};
