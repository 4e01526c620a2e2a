// The hours of the bar: typed day by day, kept as minutes of the week, told in words.

import assert from "node:assert/strict";
import { test } from "node:test";
import { barHoursWords, readDays, typedDays } from "../../../../static/src/ui/parts/bar-hours.ts";

const week = (days: { readonly [day in number]?: string }): string[] =>
  Array.from({ length: 7 }, (_, day) => days[day] ?? "");
const DAY = 1440;

test("a day is typed as people write it", () => {
  for (const text of ["12-23", "12:00 - 23:00", "12 to 23", "12.00–23.00"]) {
    assert.deepEqual(readDays(week({ 0: text })), [720, 1380], text);
  }
  assert.deepEqual(readDays(week({ 1: "12-15 17:30-00:30" })), [2160, 2340, 2490, 2910]);
  assert.deepEqual(readDays(week({ 0: "00-24" })), [0, DAY]);
  assert.deepEqual(readDays(week({})), []);
});

test("Sunday's night runs past the end of the week", () => {
  assert.deepEqual(readDays(week({ 6: "20-01" })), [6 * DAY + 1200, 7 * DAY + 60]);
});

test("what cannot be read, and what is open still from before, is told by its day", () => {
  const faultsOf = (days: { readonly [day in number]?: string }) => {
    const read = readDays(week(days));
    return "faults" in read ? read.faults.map((fault) => fault?.slice(0, 7) ?? null) : read;
  };
  const only = (day: number, fault: string) =>
    Array.from({ length: 7 }, (_, n) => (n === day ? fault : null));
  for (const text of ["noon", "12", "25-26", "12-23:75", "-12-3"]) {
    assert.deepEqual(faultsOf({ 2: text }), only(2, "Times s"), text);
  }
  assert.deepEqual(faultsOf({ 0: "12-23 22-24" }), only(0, "It is s"));
  assert.deepEqual(faultsOf({ 0: "18-03", 1: "02-04" }), only(1, "It is s"));
  assert.deepEqual(faultsOf({ 0: "00-04", 6: "20-01" }), only(0, "It is s"));
});

test("what is kept comes back as it was typed", () => {
  const typed = week({ 0: "12:00-15:00 17:00-23:00", 4: "12:00-00:30", 5: "10:00-24:00" });
  const read = readDays(typed);
  assert.ok(!("faults" in read));
  assert.deepEqual(typedDays(read), typed);
  const sunday = week({ 6: "20:00-01:00" });
  assert.deepEqual(typedDays(readDays(sunday) as number[]), sunday);
});

test("days that are alike are told together", () => {
  const read = readDays(week({ 1: "12-23", 2: "12-23", 3: "12-15 17-23", 4: "12-00:30" }));
  assert.equal(
    barHoursWords(read as number[]),
    "Monday shut, Tuesday to Wednesday 12:00 to 23:00, Thursday 12:00 to 15:00 and 17:00 to 23:00, Friday 12:00 to 00:30, Saturday to Sunday shut",
  );
  assert.match(barHoursWords([]), /every hour counts/);
});
