// What is kept of the people at a customer's: erased for good when they ask for it.

import { useState } from "preact/hooks";
import { book } from "../../../store/book.ts";
import { Button } from "../../parts/Button.tsx";
import { More } from "../../parts/More.tsx";
import { faultWords, say } from "../../parts/say.ts";

/** There is no undo, and none is offered: what was said of a person is gone from the ledger. */
const erase = async (id: string, title: string, name: boolean): Promise<void> => {
  try {
    await book.record("erased", id, name ? { name } : {});
    say.saved(`What was kept of people at ${title} is erased.`, []);
  } catch (fault) {
    say.trouble(faultWords(fault));
  }
};

/** What cannot be undone takes a second tap, on another spot. */
const Erase = ({ id, title }: { id: string; title: string }) => {
  const [sure, setSure] = useState(false);
  if (!sure) return <Button onPress={() => setSure(true)}>Erase personal data</Button>;
  return (
    <>
      <Button look="quiet" onPress={() => setSure(false)}>
        Keep everything
      </Button>
      <p class="look">For good, of {title}:</p>
      <Button onPress={() => void erase(id, title, false)}>Erase all but the name</Button>
      <Button onPress={() => void erase(id, title, true)}>Erase the name too</Button>
    </>
  );
};

export const Personal = ({ id, title }: { id: string; title: string }) => (
  <More label="Personal data">
    <div class="form">
      <a class="button wide" href={`/api/customers/${id}`} download={`${title}.json`}>
        Take a copy of all that is kept
      </a>
      <p>
        Who to ask for, telephone, e-mail, place on the map and the words of every call are taken
        out of everything on record. What is out with them, and when it was asked for, stays. This
        cannot be undone; copies of the database made before still hold it.
      </p>
      <Erase id={id} title={title} />
    </div>
  </More>
);
