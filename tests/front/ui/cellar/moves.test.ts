// Moves of a fined cask: counted from its isinglass, and told before there is one too many.

import assert from "node:assert/strict";
import { test } from "node:test";
import { movesWords } from "../../../../static/src/ui/cellar/moves.ts";
import { ago, container, FIRKIN, filled, type Told } from "../brewery.ts";

const isinglass: Told = [ago(4), "dosed", { what: "isinglass", amount_ml: 426 }];
/** To another place each time: from where it stands to where it stands is no move. */
const moved = (days: number): Told => [ago(days), "moved", { place: `place ${days}` }];
const words = (...told: Told[]) =>
  movesWords(container("117", FIRKIN, filled(5, null), ...told), {});

test("moves before it was fined do not count, and unfined beer is not counted", () => {
  assert.equal(words(moved(3)).says, "");
  assert.deepEqual(words(moved(4.5), isinglass), {
    says: "Fined, not moved since: trusted to settle after 3 more moves.",
    tone: "",
  });
  assert.match(words(isinglass, moved(3)).says, /moved once since: .* 2 more moves\.$/);
});

test("the last one that is trusted is told before the next, and one too many after", () => {
  const three = [moved(3), moved(2), moved(1)];
  assert.deepEqual(words(isinglass, ...three), {
    says: "Fined, moved 3 times since: one more may be too many for it to settle.",
    tone: "look",
  });
  assert.match(
    words(isinglass, ...three, moved(0)).says,
    /more than it is trusted to settle after/,
  );
});

test("fined again it is counted anew, by the brewery's own number", () => {
  const again: Told = [ago(1), "dosed", { what: "isinglass", amount_ml: 70 }];
  assert.match(words(isinglass, moved(3), moved(2), again).says, /not moved since/);
  const cask = container("117", FIRKIN, filled(5, null), isinglass, moved(3));
  assert.match(movesWords(cask, { resettles_most: 5 }).says, /4 more moves/);
});
