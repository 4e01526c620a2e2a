// The form of anything that a brewery sets in place of the default: what is asked stands within it.

import type { ComponentChildren } from "preact";
import { book } from "../../store/book.ts";
import { may } from "../mine.ts";
import { Button } from "../parts/Button.tsx";
import { NotMine } from "../parts/NotMine.tsx";
import { save } from "../parts/say.ts";
import { goOnTo } from "../shell/route.ts";

/** Facts of a setting that counts, and how its being kept is said. */
interface Kept {
  says: string;
  facts: { [fact: string]: unknown };
}

export const SettingForm = (props: {
  id: string;
  /** Where the list of its like is. */
  section: "figures" | "texts";
  /** What was typed; null where something is wrong with it, which the form has said by then. */
  read: () => Kept | null;
  /** The way back to the default, where the brewery has its own. */
  back: { label: string; says: string } | null;
  children: ComponentChildren;
}) => {
  const { id, section, read, back } = props;
  const record = async (says: string, facts: Kept["facts"]) => {
    if (await save(says, () => book.record("setting", id, facts))) goOnTo("office", section);
  };
  return (
    <form
      class="form"
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        const kept = read();
        if (kept === null) return focusOnFault(event.currentTarget);
        // A value given up before counts again once another is set.
        return void record(kept.says, { ...kept.facts, retired: false });
      }}
    >
      {props.children}
      <NotMine kind="setting" />
      {may("setting") && (
        <button type="submit" class="button main wide">
          Keep it
        </button>
      )}
      {back !== null && may("setting") && (
        <Button onPress={() => void record(back.says, { retired: true })}>{back.label}</Button>
      )}
    </form>
  );
};

/** The button may be far below: a fault that has just been said is brought into sight and focus. */
const focusOnFault = (form: HTMLElement): void => {
  requestAnimationFrame(() => form.querySelector<HTMLElement>("[aria-invalid=true]")?.focus());
};
