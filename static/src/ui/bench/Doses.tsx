// Fetches the reckoning of doses once the pad is up, and shows it for the container that is meant.

import { useEffect } from "preact/hooks";
import { book } from "../../store/book.ts";
import { known } from "../known.ts";
import { ownFigures } from "../own-figures.ts";
import { capacityOf } from "./jobs.ts";
import { dosing, loadDosing } from "./load-dosing.ts";
import { gyleId, job, meant, typingLitres, volumeMl } from "./state.ts";

/** The first of a run stands for all: mostly they are of a kind. */
const standingMeant = () => {
  const what = meant.value;
  if (what.is === "one") return what.standing;
  return what.is === "run" ? (book.containers.value.get(what.numbers[0] ?? "") ?? null) : null;
};

export const Doses = () => {
  useEffect(loadDosing, []);
  const rules = dosing.value;
  if (rules === null || typingLitres.value !== null) return null;
  const standing = standingMeant();
  const fining = job.value === "fine";
  const gyle = fining ? (standing?.contents?.gyle ?? "") : gyleId.value;
  const beer = known.value.gyles.get(gyle)?.fields.beer ?? "";
  const ml = fining
    ? (standing?.contents?.left_ml ?? 0)
    : (volumeMl.value ?? capacityOf(standing) ?? 0);
  const own = ownFigures.value;
  const line = fining && standing ? rules.finingLine(known.value, standing, own) : null;
  const lines = fining
    ? line === null
      ? []
      : [{ ...line, later: true }]
    : rules.linesFor(known.value, gyle, ml, standing, own);
  return <rules.DoseStrip lines={lines} volumeMl={ml} gyle={gyle} beer={beer} />;
};
