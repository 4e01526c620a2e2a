// When the bar is open, a field for each day of the week.

import { useState } from "preact/hooks";
import { settingList } from "../../../domain/figures.ts";
import { book } from "../../../store/book.ts";
import { may } from "../../mine.ts";
import { ownFigures } from "../../own-figures.ts";
import { Button } from "../../parts/Button.tsx";
import { barHoursWords, DAYS, readDays, typedDays } from "../../parts/bar-hours.ts";
import { Field } from "../../parts/Field.tsx";
import { NotMine } from "../../parts/NotMine.tsx";
import { save } from "../../parts/say.ts";
import { goOnTo } from "../../shell/route.ts";
import { useTitle } from "../../shell/title.ts";

const record = async (text: string, facts: object) => {
  if (await save(text, () => book.record("setting", "bar_hours", facts))) {
    goOnTo("office", "figures");
  }
};

export const BarHours = () => {
  useTitle("When the bar is open");
  const [typed, setTyped] = useState(() => typedDays(settingList("bar_hours", ownFigures.peek())));
  const [faults, setFaults] = useState<readonly (string | null)[]>([]);
  const isOwn = ownFigures.value.bar_hours !== undefined;
  const keep = () => {
    const read = readDays(typed);
    if ("faults" in read) return setFaults(read.faults);
    const values_millionths = read.map((minute) => minute * 1_000_000);
    return void record(`The bar: ${barHoursWords(read)}.`, { values_millionths, retired: false });
  };
  return (
    <form
      class="form"
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        keep();
      }}
    >
      <p>
        A cask on sale runs out by the hours that beer is drawn. As long as no hours stand here,
        every hour counts, nights too.
      </p>
      <p class="small">
        As 12-23, or 12-15 17:30-00:30. Empty when it is shut. A closing after midnight stands with
        the day that it opened on.
      </p>
      {DAYS.map((day, n) => (
        <Field
          key={day}
          label={day}
          value={typed[n] ?? ""}
          fault={faults[n] ?? null}
          onValue={(text) => setTyped(typed.map((before, at) => (at === n ? text : before)))}
        />
      ))}
      <NotMine kind="setting" />
      {may("setting") && (
        <button type="submit" class="button main wide">
          Keep it
        </button>
      )}
      {isOwn && may("setting") && (
        <Button onPress={() => void record("Every hour counts again.", { retired: true })}>
          Count every hour
        </Button>
      )}
    </form>
  );
};
