// A ready text: to look over, then to copy, or to send with the phone's own apps.

import type { ComponentChildren } from "preact";
import { useId, useState } from "preact/hooks";
import { Button } from "../parts/Button.tsx";
import { say } from "../parts/say.ts";
import { mailHref, smsHref } from "./call-text.ts";

interface Props {
  words: string;
  subject: string;
  phone?: string | undefined;
  email?: string | undefined;
  children?: ComponentChildren;
}

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

export const ReadyText = ({ words, subject, phone, email, children }: Props) => {
  const [text, setText] = useState(words);
  const id = useId();
  return (
    <div class="form">
      <div class="field">
        <label for={id}>The text</label>
        <textarea
          id={id}
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
          <a class="button" href={mailHref(email, subject, text)}>
            E-mail
          </a>
        )}
        {"share" in navigator && <Button onPress={() => share(text)}>Share</Button>}
      </div>
      {children}
    </div>
  );
};
