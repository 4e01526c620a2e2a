// The strength of a gyle from its two gravities, by the published table.

import { strength } from "../../../domain/bench/strength.ts";
import { attempt } from "../../attempt.ts";
import { showWorking } from "../../parts/working.ts";
import type { Doc } from "../../words.ts";

const workedFor = (original: unknown, present: unknown) => {
  if (typeof original !== "number" || typeof present !== "number") return null;
  const asked = { original_gravity: original / 10_000, present_gravity: present / 10_000 };
  return attempt(() => strength(asked)); // none of a present gravity above the original one
};

export const Strength = ({ doc }: { doc: Doc }) => {
  const worked = workedFor(doc.fields["original_gravity_e4"], doc.fields["present_gravity_e4"]);
  if (worked === null) return null;
  return (
    <div class="form">
      <p>
        Strength by its gravities: <strong>{worked.result.duty_strength_pct} % vol</strong>
      </p>
      <button type="button" class="button" onClick={() => showWorking("Strength", worked)}>
        How it is worked out
      </button>
    </div>
  );
};
