// When the bar is open, a field for each day of the week.

import { useState } from "preact/hooks";
import { MILLIONTHS, settingList } from "../../../domain/figures.ts";
import { ownFigures } from "../../own-figures.ts";
import { barHoursWords, readDays, typedDays } from "../../parts/bar-hours.ts";
import { Field } from "../../parts/Field.tsx";
import { useTitle } from "../../shell/title.ts";
import { WEEKDAYS } from "../../words/weekdays.ts";
import { SettingForm } from "../SettingForm.tsx";

export const BarHours = () => {
  useTitle("When the bar is open");
  const [typed, setTyped] = useState(() => typedDays(settingList("bar_hours", ownFigures.peek())));
  const [faults, setFaults] = useState<readonly (string | null)[]>([]);
  const isOwn = ownFigures.value.bar_hours !== undefined;
  const read = () => {
    const minutes = readDays(typed);
    if ("faults" in minutes) {
      setFaults(minutes.faults);
      return null;
    }
    const values_millionths = minutes.map((minute) => minute * MILLIONTHS);
    return { says: `The bar: ${barHoursWords(minutes)}.`, facts: { values_millionths } };
  };
  return (
    <SettingForm
      id="bar_hours"
      section="figures"
      read={read}
      back={isOwn ? { label: "Count every hour", says: "Every hour counts again." } : null}
    >
      <p>
        A cask on sale runs out by the hours that beer is drawn. As long as no hours stand here,
        every hour counts, nights too.
      </p>
      <p class="small">
        As 12-23, or 12-15 17:30-00:30. Empty when it is shut. A closing after midnight stands with
        the day that it opened on.
      </p>
      {WEEKDAYS.map((day, n) => (
        <Field
          key={day}
          label={day}
          value={typed[n] ?? ""}
          fault={faults[n] ?? null}
          onValue={(text) => setTyped(typed.map((before, at) => (at === n ? text : before)))}
        />
      ))}
    </SettingForm>
  );
};
