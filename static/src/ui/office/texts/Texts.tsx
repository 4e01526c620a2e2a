// What the brewery writes to others, in its own words: with names in braces that are filled in.

import { useState } from "preact/hooks";
import wordings from "../../../../../cellarapp/domain/wordings.json";
import { book } from "../../../store/book.ts";
import { may } from "../../mine.ts";
import { unknownNames } from "../../out/call-text.ts";
import { Below } from "../../parts/Field.tsx";
import { Line, Lines } from "../../parts/Line.tsx";
import { NotMine } from "../../parts/NotMine.tsx";
import { hrefTo } from "../../shell/route.ts";
import { useTitle } from "../../shell/title.ts";
import { listWords } from "../../words.ts";
import { SettingForm } from "../SettingForm.tsx";

type Text = keyof typeof wordings;

const TEXTS = Object.keys(wordings) as Text[];

/** What is wrong with a text; null when nothing is. */
const faultOf = (text: string, holds: readonly string[]): string | null => {
  if (text.trim() === "") return "Write something, or take the default.";
  const unknown = unknownNames(text, holds);
  return unknown.length === 0
    ? null
    : `Nothing stands for {${unknown[0]}}. Take one of the names below.`;
};

export const Texts = ({ id }: { id: string | undefined }) => {
  const text = TEXTS.find((one) => one === id);
  useTitle(text === undefined ? "Texts to others" : wordings[text].title);
  if (!may("setting")) return <NotMine kind="setting" />;
  if (text !== undefined) return <Form key={text} text={text} />;
  return (
    <Lines heading="Written in your own words">
      {TEXTS.map((one) => (
        <Line
          key={one}
          title={wordings[one].title}
          reason={wordings[one].label}
          href={hrefTo("office", "texts", one)}
        />
      ))}
    </Lines>
  );
};

const Form = ({ text }: { text: Text }) => {
  const { holds, label, words } = wordings[text];
  const own = book.brewerySettings.value.get(text)?.fields;
  const isOwn = own?.words !== undefined && own.retired !== true;
  const [typed, setTyped] = useState(isOwn ? (own.words ?? words) : words);
  const [fault, setFault] = useState<string | null>(null);
  const read = () => {
    const wrong = faultOf(typed, holds);
    setFault(wrong);
    return wrong === null ? { says: "The text is kept.", facts: { words: typed.trim() } } : null;
  };
  return (
    <SettingForm
      id={text}
      section="texts"
      read={read}
      back={isOwn ? { label: "Back to the default", says: "The text is the default again." } : null}
    >
      <div class="field">
        <label for="own-text">{label}</label>
        <textarea
          id="own-text"
          rows={8}
          maxLength={1000}
          value={typed}
          onInput={(event) => setTyped(event.currentTarget.value)}
          aria-invalid={fault ? "true" : undefined}
          aria-describedby="own-text-hint own-text-fault"
        />
        <Below
          id="own-text"
          hint={`Filled in each time: ${listWords(
            holds.map((name) => `{${name}}`),
            holds.length,
          )}.`}
          fault={fault}
        />
      </div>
    </SettingForm>
  );
};
