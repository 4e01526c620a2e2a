// What does not fit is told before it is noted and after, with nothing left blank.

import assert from "node:assert/strict";
import { test } from "node:test";
import type { Facts, Kind } from "../../../../static/src/domain/entries.ts";
import type { Query, Standing } from "../../../../static/src/domain/standing.ts";
import { tryOut } from "../../../../static/src/ui/try-out.ts";
import { outcomeRemarks } from "../../../../static/src/ui/words/outcome.ts";
import { queryWords } from "../../../../static/src/ui/words/queries.ts";
import { ago, container, FIRKIN, filled, known, NOW, type Told } from "../brewery.ts";

const FILL: Facts = { gyle: "g318", volume_ml: 40_915, best_before: null };

const before = (standing: Standing | null, kind: Kind = "filled", facts: Facts = FILL): string[] =>
  outcomeRemarks(tryOut("117", standing, [{ kind, facts }], NOW), known, "Filling it").map(
    ({ says }) => says.replaceAll("\u00a0", " "),
  );

test("a clean container raises nothing", () => {
  assert.deepEqual(before(container("117", FIRKIN, [ago(1), "washed", {}])), ["Washed Tue 12:00"]);
});

test("one that is still down as out: filling it notes its return", () => {
  const out = container("117", FIRKIN, filled(70, null), [
    ago(60),
    "sent",
    { customer: "c1", due_on: null },
  ]);
  assert.deepEqual(before(out), [
    "Still down as out at Lantern since 26 Sep. Filling it notes its return.",
    "No wash on record since its last beer.",
  ]);
});

test("beer of an earlier day, dirty, set aside, missing, filled today, scrapped", () => {
  const first = (...told: Told[]) => before(container("117", FIRKIN, ...told)).at(-1);
  assert.match(
    before(container("117", FIRKIN, filled(9, null)))[0] ?? "",
    /^Still down as holding 40.9 L/,
  );
  assert.equal(first([ago(1), "returned", {}]), "Not washed: empty and dirty since Tue 12:00.");
  assert.equal(first([ago(1), "set_aside", { why: "leaks" }]), "Set aside since Tue 12:00: leaks.");
  assert.match(first([ago(9), "missing", {}]) ?? "", /^Down as missing since 16 Nov/);
  assert.match(first(filled(0, null)) ?? "", /^Already filled today at 12:00/);
  assert.match(
    first([ago(9), "scrapped", {}]) ?? "",
    /^Scrapped 16 Nov\. Is this the right number/,
  );
});

const muddles: { readonly [rule: string]: Told[] } = {
  registered_twice: [FIRKIN, [ago(1), "registered", { kind: "pin", capacity_ml: 20_457 }]],
  filled_twice: [FIRKIN, filled(9, null), filled(9, null, "g319")],
  unwashed: [FIRKIN, [ago(9), "returned", {}], filled(8, null)],
  filled_set_aside: [FIRKIN, [ago(9), "set_aside", { why: "leaks" }], filled(8, null)],
  overfull: [FIRKIN, filled(8, null, "g318", 42_000)],
  dip_rose: [FIRKIN, filled(8, null, "g318", 30_000), [ago(1), "dipped", { left_ml: 31_000 }]],
  dipped_tilted: [
    FIRKIN,
    filled(8, null),
    [ago(2), "stooped", {}],
    [ago(1), "dipped", { left_ml: 4_000, wet_mm: 60 }],
  ],
  emptied_empty: [FIRKIN, [ago(9), "washed", {}], [ago(8), "emptied", {}]],
  served_empty: [FIRKIN, [ago(8), "tapped", {}]],
  sent_empty: [FIRKIN, [ago(8), "sent", { customer: "c1", due_on: null }]],
  sent_set_aside: [
    FIRKIN,
    filled(9, null),
    [ago(8), "set_aside", { why: "hazy" }],
    [ago(7), "sent", { customer: "c1", due_on: null }],
  ],
  sent_elsewhere: [
    FIRKIN,
    filled(9, null),
    [ago(8), "sent", { customer: "c1", due_on: null }],
    [ago(1), "sent", { customer: "c2", due_on: null }],
  ],
  reported: [FIRKIN, [ago(1), "reported", { where: "Mill Lane", phone: "0100" }]],
  told_not_here: [
    FIRKIN,
    [ago(8), "sent", { customer: "c1", due_on: null, on_record_since: "2026-11-17" }],
    [ago(1), "told", { customer: "c1", says: "not_here" }],
  ],
  after_scrapped: [FIRKIN, [ago(8), "scrapped", {}], [ago(7), "washed", {}]],
};

test("every question that the rules can ask has words of its own", () => {
  for (const [rule, told] of Object.entries(muddles)) {
    const query = container("117", ...told).queries.find((one) => one.rule === rule);
    assert.ok(query, `${rule} is not raised by its muddle`);
    const words = queryWords(query, known);
    assert.doesNotMatch(words, /undefined|null|NaN|does not fit together/, rule);
  }
});

test("a wrong clock is said to be one", () => {
  const query = {
    id: "impossible_time:e1",
    rule: "impossible_time",
    entries: ["e1"],
    at: NOW,
    facts: { happened_at: "2030-01-01T10:00:00.000Z" },
  };
  assert.equal(
    queryWords(query, known),
    "The phone's clock was wrong: it said 1 Jan 2030. The time of arrival stands instead.",
  );
});

test("what a finder says is told whole, with what they left of themselves", () => {
  const said = { where: "Mill Lane, by the bridge", words: "on its side", name: "Gam", phone: "" };
  const standing = container("117", FIRKIN, [ago(1), "reported", said]);
  assert.equal(
    queryWords(standing.queries[0] as Query, known),
    "A finder says where it is: Mill Lane, by the bridge. “on its side”. From Gam.",
  );
});
