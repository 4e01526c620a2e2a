// A plan for a sale, and the jobs of what was picked. Now is a Wednesday at noon.

import assert from "node:assert/strict";
import { test } from "node:test";
import type { Standing } from "../../../../static/src/domain/standing.ts";
import { allFull } from "../../../../static/src/ui/cellar/lists.ts";
import {
  isPicked,
  jobsFor,
  jobWords,
  nextSaturday,
  pickedRows,
  planFor,
  plannedWords,
  saleInstant,
} from "../../../../static/src/ui/cellar/plan.ts";
import { ago, container, FIRKIN, filled, KEG, known, NOW, type Told } from "../brewery.ts";

const SATURDAY = "2026-11-28T13:00:00.000Z";
const SUNDAY = "2026-11-29T13:00:00.000Z";

const fulls = (...containers: Standing[]) => allFull(containers, known);
const planned = (at: string | null, days = 0): Told => [ago(days, 1), "planned", { sale_at: at }];
const plan = (saleAt: string | null, ...containers: Standing[]) =>
  planFor(fulls(...containers), saleAt, known, {});

test("the next Saturday is never today", () => {
  assert.equal(nextSaturday(NOW), "2026-11-28");
  assert.equal(nextSaturday("2026-11-28T09:00:00.000Z"), "2026-12-05");
  assert.equal(nextSaturday("2026-11-27T23:30:00.000Z"), "2026-11-28");
});

test("a day and a clock are an instant in London, summer and winter", () => {
  assert.equal(saleInstant("2026-11-28", "13:00"), SATURDAY);
  assert.equal(saleInstant("2026-07-04", "13:00"), "2026-07-04T12:00:00.000Z");
  assert.equal(saleInstant("2026-11-28", ""), null);
  assert.equal(saleInstant("", "13:00"), null);
});

test("a time that has passed, or none, is no plan", () => {
  assert.equal(plan(null), null);
  assert.equal(plan(ago(1)), null);
});

test("what can be sold by then, the shortest best before first; then what cannot, and why", () => {
  const worked = plan(
    SUNDAY,
    container("1", FIRKIN, filled(20, "2026-12-30")),
    container("2", FIRKIN, filled(20, "2026-12-20")),
    container("3", FIRKIN, filled(1, "2026-12-10")),
  );
  const rows = worked?.result.casks ?? [];
  assert.deepEqual(
    rows.map(({ number, can }) => [number, can]),
    [
      ["2", true],
      ["1", true],
      ["3", false],
    ],
  );
  const [first, , last] = rows;
  assert.ok(first && last);
  assert.match(plannedWords(first, NOW), /^Set on the stillage .* 21 days of its life left then\./);
  assert.match(plannedWords(last, NOW), /^Not before /);
});

test("held, doubted, past and tapped casks are no candidates", () => {
  const worked = plan(
    SUNDAY,
    container("1", FIRKIN, filled(20, null), [ago(1), "set_aside", { why: "hazy" }]),
    container("2", FIRKIN, filled(50, "2026-11-20")),
    container("3", FIRKIN, filled(20, null), [ago(1), "tapped", {}]),
  );
  assert.deepEqual(worked?.result.casks, []);
});

test("only what is picked has jobs, and a pick can be taken back", () => {
  const [picked] = fulls(container("1", FIRKIN, filled(20, null), planned(SATURDAY)));
  const [back] = fulls(
    container("2", FIRKIN, filled(20, null), planned(SATURDAY, 1), planned(null)),
  );
  const [never] = fulls(container("3", FIRKIN, filled(20, null)));
  assert.ok(picked && back && never);
  assert.deepEqual(
    [picked, back, never].map((full) => isPicked(full, NOW)),
    [true, false, false],
  );
  assert.equal(jobsFor([back, never], known, {}), null);
});

test("a firkin for Friday noon goes up and is vented today, and the rest is for later", () => {
  const friday = "2026-11-27T13:00:00.000Z";
  const picked = container("1", FIRKIN, filled(20, null), planned(friday));
  const found = jobsFor(fulls(picked), known, {})?.result;
  assert.deepEqual(
    found?.jobs.map(({ step }) => step),
    ["stillage", "vent"],
  );
  assert.equal(found.later, 3);
});

test("a keg is tapped and tasted, no more", () => {
  const keg = container(
    "K12",
    KEG,
    filled(20, null, "g318", 30_000),
    planned(NOW.replace("12:", "20:")),
  );
  const found = jobsFor(fulls(keg), known, {});
  assert.deepEqual(
    found?.result.jobs.map(({ step }) => step),
    ["tap", "taste"],
  );
});

test("a sale that is long over has no jobs", () => {
  assert.equal(
    jobsFor(fulls(container("1", FIRKIN, filled(20, null), planned(ago(2), 3))), known, {}),
    null,
  );
});

test("a job says when, by when, and that it is late", () => {
  const job = {
    number: "1",
    step: "vent",
    do_at: "2026-11-25T14:00:00.000Z",
    by_at: "2026-11-25T16:00:00.000Z",
    late: false,
    says: "",
  } as const;
  assert.equal(jobWords(job, NOW), "Vent with a soft spile 14:00, by 16:00 at the latest.");
  assert.equal(
    jobWords({ ...job, do_at: NOW }, NOW),
    "Vent with a soft spile now, by 16:00 at the latest.",
  );
  const late = { ...job, late: true, by_at: "2026-11-25T10:00:00.000Z" };
  assert.equal(jobWords(late, NOW), "Vent with a soft spile at once: it was due by 10:00.");
});

test("a pick is shown for its own sale, one whose sale is over as due at once", () => {
  const found = pickedRows(
    fulls(
      container("1", FIRKIN, filled(20, null), planned(SUNDAY)),
      container("2", FIRKIN, filled(20, null), planned(SATURDAY)),
      container("3", FIRKIN, filled(20, null), planned(ago(0, 2), 1)),
      container("4", FIRKIN, filled(20, null)),
    ),
    known,
    {},
  );
  assert.deepEqual(
    found.map(({ number, sale_at }) => [number, sale_at]),
    [
      ["3", NOW],
      ["2", SATURDAY],
      ["1", SUNDAY],
    ],
  );
});
