// Fetches the reckoning of doses once the pad is up, and shows it for the containers that are meant.

import { useEffect } from "preact/hooks";
import { dosing, loadDosing } from "./load-dosing.ts";
import { typingLitres } from "./state.ts";

export const Doses = () => {
  useEffect(loadDosing, []);
  const rules = dosing.value;
  return rules === null || typingLitres.value !== null ? null : <rules.DosesNow />;
};
