// The temperature of places, as it is said, typed and taken from a logger's file.

import assert from "node:assert/strict";
import { test } from "node:test";
import { readLog } from "../../../../static/src/domain/cellar/logger.ts";
import { DomainError } from "../../../../static/src/domain/errors.ts";
import type { Place } from "../../../../static/src/domain/records.ts";
import {
  asText,
  forLedger,
  logWords,
  refusalWords,
  tempsOf,
  tempWords,
  typedDecidegc,
} from "../../../../static/src/ui/cellar/temperatures.ts";
import { ago, NOW } from "../brewery.ts";

const place = (name: string, temperatures: [string, number][], temp_decidegc?: number) =>
  ({
    fields: { name, role: "store", ...(temp_decidegc === undefined ? {} : { temp_decidegc }) },
    set_by: {},
    temperatures,
  }) as unknown as Place;

const said = (...places: Place[]) =>
  tempsOf(new Map(places.map((one, n) => [`p${n}`, one]))).map((temp) =>
    tempWords(temp, NOW).replaceAll("\u00a0", " "),
  );

test("what was read last is said with its time, the latest place first", () => {
  assert.deepEqual(
    said(
      place("Stillage", [[ago(1), 125]]),
      place("Cold room", [
        [ago(2), 99],
        [ago(0, 4), 118],
      ]),
    ),
    ["Cold room 11.8 °C at 08:00", "Stillage 12.5 °C on Tue 12:00"],
  );
});

test("with no reading the usual one is said, or that there is none", () => {
  assert.deepEqual(said(place("Cold room", [], 120), place("Loft", [])).sort(), [
    "Cold room usually 12 °C",
    "Loft: no temperature yet",
  ]);
});

test("degrees as they are typed", () => {
  assert.deepEqual(
    ["11.8", "11,8", "12", "-1.5", "-0"].map(typedDecidegc),
    [118, 118, 120, -15, 0],
  );
  assert.deepEqual(["", "x", "11.85", "1118", "."].map(typedDecidegc), [
    null,
    null,
    null,
    null,
    null,
  ]);
});

const logged = (count: number, minutes: number) =>
  Array.from({ length: count }, (_, n) => ({
    at: new Date(Date.parse(NOW) - (count - n) * minutes * 60_000).toISOString(),
    reading_temp_c: 11 + (n % 6) / 10,
  }));

test("a short log goes in whole, a long one as the warmest of each hour", () => {
  assert.equal(forLedger(logged(400, 60)).length, 400);
  const long = forLedger(logged(1200, 10));
  assert.equal(long.length, 200);
  assert.ok(long.every(([, decidegc]) => decidegc === 115));
  assert.equal(forLedger(logged(6000, 10)).length, 400);
});

test("what was found in a file is said before it is kept", () => {
  assert.match(logWords(logged(2, 60), [], NOW), /^2 readings, 10:00 to 11:00\.$/);
  const fault = { line: 3, why: "no_time", text: "x", says: "" } as const;
  assert.match(logWords(logged(1, 60), [fault], NOW), /could not be read: 1\.$/);
  assert.equal(logWords([], [], NOW), "No reading could be found in it.");
});

const file = (text: string, encoding: "latin1" | "utf16le" | "utf8", mark: number[] = []) =>
  new Uint8Array([...mark, ...Buffer.from(text, encoding)]).buffer;
const FAHRENHEIT = "Time;Temperature (°F)\n05/03/2026 14:30;54,5\nnonsense;1\n";

for (const [name, bytes] of [
  ["UTF-8", file(FAHRENHEIT, "utf8")],
  ["UTF-8 with its mark", file(FAHRENHEIT, "utf8", [0xef, 0xbb, 0xbf])],
  ["Latin-1", file(FAHRENHEIT, "latin1")],
  ["UTF-16", file(FAHRENHEIT, "utf16le", [0xff, 0xfe])],
] as const) {
  test(`a logger's file in ${name} keeps its degrees: Fahrenheit is not read as Celsius`, () => {
    const { readings, faults } = readLog({ text: asText(bytes) }).result;
    assert.deepEqual(readings, [{ at: "2026-03-05T14:30:00.000Z", reading_temp_c: 12.5 }]);
    assert.deepEqual(
      faults.map(({ line, says }) => [line, says.startsWith('Line 3, "nonsense;1": no time')]),
      [[3, true]],
    );
  });
}

test("a file of a hundred thousand lines is refused with how many it has", () => {
  const text = `Time,Temp\n${"2026-03-05 14:30,12.5\n".repeat(100_000)}`;
  assert.throws(
    () => readLog({ text }),
    (fault) => {
      assert.ok(fault instanceof DomainError);
      assert.match(refusalWords(fault), /^100002 lines, 20000 at most\. .*cut it\.$/);
      return true;
    },
  );
});

test("a film is no logger's file", () => {
  const noise = new Uint8Array(5000).map((_, n) => (n * 7919) % 256).buffer;
  assert.throws(() => readLog({ text: asText(noise) }), DomainError);
});
