// A link that reached the phone some other way than by opening it: an app on the home screen has a
// storage of its own on some phones, where a scanned code opens in the browser beside it.

import { useState } from "preact/hooks";
import { Field } from "../parts/Field.tsx";
import { readLink } from "../shell/link.ts";
import { follow } from "../shell/route.ts";

export const PasteLink = () => {
  const [text, setText] = useState("");
  const [fault, setFault] = useState<string | null>(null);
  const go = (event: Event) => {
    event.preventDefault();
    const link = readLink(text);
    if (link === null) setFault("That is no link from the brewery. It ends in #pair= and letters.");
    else follow(link);
  };
  return (
    <form class="form" noValidate onSubmit={go}>
      <Field label="The link" value={text} onValue={setText} fault={fault} />
      <button type="submit" class="button">
        Use this link
      </button>
    </form>
  );
};
