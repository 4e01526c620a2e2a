// Questions to settle: what the ways out are called and which entries they are about.

import assert from "node:assert/strict";
import { test } from "node:test";
import { manyAlike, questions } from "../../../../static/src/ui/office/questions/open.ts";
import { overdrawn } from "../../../../static/src/ui/office/questions/overdrawn.ts";
import { waysOut } from "../../../../static/src/ui/office/questions/ways.ts";
import { ago, container, FIRKIN, filled, known } from "../brewery.ts";

const twice = container("117", FIRKIN, filled(9, null), filled(9, null, "g319"));

test("filled twice: both, either never, or either another number", () => {
  const [question] = questions([twice]);
  assert.ok(question);
  assert.deepEqual(waysOut(question.query, known), [
    { is: "right", label: "Both are right: the last fill is in it" },
    { is: "void", target: "e2", label: "The fill from gyle 318 never happened" },
    { is: "void", target: "e3", label: "The fill from gyle 319 never happened" },
    { is: "renumber", target: "e2", label: "The fill from gyle 318 was another number" },
    { is: "renumber", target: "e3", label: "The fill from gyle 319 was another number" },
  ]);
});

test("registered twice is about one container: no other number would explain it", () => {
  const [question] = questions([
    container("117", FIRKIN, [ago(1), "registered", { kind: "pin", capacity_ml: 20457 }]),
  ]);
  assert.ok(question);
  assert.deepEqual(
    waysOut(question.query, known).map(({ label }) => label),
    [
      "The later entry is right",
      "Entering it as a firkin never happened",
      "Entering it as a pin never happened",
    ],
  );
});

test("a finder's report is seen to, of no use, or about another number", () => {
  const [question] = questions([container("117", FIRKIN, [ago(1), "reported", { where: "Quay" }])]);
  assert.ok(question);
  assert.deepEqual(waysOut(question.query, known), [
    { is: "right", label: "It is seen to" },
    { is: "void", target: "e2", label: "It is of no use" },
    { is: "renumber", target: "e2", label: "It was another number" },
  ]);
});

test("the latest question comes first, and a settled one is no question", () => {
  const empty = container("9", FIRKIN, [ago(1), "tapped", {}]);
  assert.deepEqual(
    questions([twice, empty]).map(({ standing }) => standing.number),
    ["9", "117"],
  );
  const query = twice.queries[0]?.id ?? "";
  const settled = { [query]: [{ entry: "s", way: "right", replaces: [] }] };
  assert.deepEqual(questions([{ ...twice, settlements: settled }]), []);
});

test("the same question of three containers is offered to be settled at once, of two it is not", () => {
  const emptied = (number: string) =>
    container(number, FIRKIN, [ago(2), "washed", {}], [ago(1), "emptied", {}]);
  const two = questions([emptied("1"), emptied("2")]);
  assert.deepEqual(manyAlike(two, known), []);
  const three = questions([emptied("1"), emptied("2"), emptied("3"), twice]);
  assert.deepEqual(
    manyAlike(three, known).map(({ rule, label, all }) => [rule, label, all.length]),
    [["emptied_empty", "It was emptied all the same", 3]],
  );
});

test("a gyle drawn beyond its volume is found, the worst first; without a volume nothing is said", () => {
  const gyle = (drawn_ml: number, fields: object) => ({ fields, set_by: {}, drawn_ml });
  const found = overdrawn(
    new Map([
      ["a", gyle(100, { volume_ml: 90 })],
      ["b", gyle(200, { volume_ml: 90 })],
      ["c", gyle(90, { volume_ml: 90 })],
      ["d", gyle(90, {})],
    ]),
  );
  assert.deepEqual(
    found.map((one) => one.gyle),
    ["b", "a"],
  );
});
