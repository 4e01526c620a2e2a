// Days and times are London's, and say no more than the distance asks for.

import assert from "node:assert/strict";
import { test } from "node:test";
import {
  ageWords,
  clockWords,
  dateWords,
  dayWords,
  fullTimeWords,
  timeWords,
} from "../../../../static/src/ui/words/time.ts";

const WINTER = "2026-11-25T12:00:00.000Z";
const SUMMER = "2026-07-01T12:00:00.000Z";

test("a time of today is its clock alone, within a week its day too, beyond only its date", () => {
  assert.equal(timeWords("2026-11-25T09:40:00.000Z", WINTER), "09:40");
  assert.equal(timeWords("2026-11-24T09:40:00.000Z", WINTER), "Tue 09:40");
  assert.equal(timeWords("2026-11-28T13:00:00.000Z", WINTER), "Sat 13:00");
  assert.equal(timeWords("2026-10-02T09:40:00.000Z", WINTER), "2 Oct");
  assert.equal(timeWords("2025-10-02T09:40:00.000Z", WINTER), "2 Oct 2025");
});

test("in summer the clock is an hour ahead of UTC", () => {
  assert.equal(clockWords("2026-07-01T08:40:00.000Z"), "09:40");
  assert.equal(timeWords("2026-06-30T23:30:00.000Z", SUMMER), "00:30");
});

test("a day is said as people say it", () => {
  const said = (day: string) => dayWords(day, WINTER);
  assert.deepEqual(
    ["2026-11-24", "2026-11-25", "2026-11-26", "2026-11-28", "2026-12-18", "2027-01-04"].map(said),
    ["yesterday", "today", "tomorrow", "Sat", "18 Dec", "4 Jan 2027"],
  );
});

test("a label's date never says today", () => {
  assert.equal(dateWords("2026-11-25", WINTER), "25 Nov");
});

test("a history tells the hour of old entries too", () => {
  assert.equal(fullTimeWords("2026-10-02T08:40:00.000Z", WINTER), "2 Oct, 09:40");
});

test("an age is rough, and never negative on a phone whose clock was put right", () => {
  assert.equal(ageWords("2026-11-25T11:59:30.000Z", WINTER), "just now");
  assert.equal(ageWords("2026-11-25T11:48:00.000Z", WINTER), "12 min");
  assert.equal(ageWords("2026-11-24T05:00:00.000Z", WINTER), "31 h");
  assert.equal(ageWords("2026-11-20T12:00:00.000Z", WINTER), "5 days");
  assert.equal(ageWords("2026-11-25T12:05:00.000Z", WINTER), "just now");
});
