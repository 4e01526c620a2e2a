/** LOG: a temperature logger's file, read line by line. Twin of cellarapp/domain/cellar/logger.py. */
import { notAmong, outOfRange } from "../errors.ts";
import type { Settings } from "../figures.ts";
import { RANGES } from "../inputs.ts";
import { halfUp } from "../rounding.ts";
import { Working } from "../working.ts";
import { CellarAsked } from "./asked.ts";
import { type Columns, cellsOf, columnsOf, NUMBER, partedBy, trimmed } from "./log-columns.ts";
import { instantOf, type Written, writtenTime } from "./log-times.ts";
import { atMs } from "./times.ts";
import { celsius } from "./units.ts";

const MOST_LINES = 20_000;
const MOST_SHOWN = 60;
const UNITS = ["C", "F"] as const;
const UNIT_WHY = "The unit of the file, where its head does not say.";
const FAULTS = {
  too_few_cells: "it has no cell for the time or the temperature",
  too_many_cells: "it has more cells than the head; a decimal comma needs other signs between",
  no_time: "no time can be read in it; the day comes before the month, or the year first",
  time_never_was: "the clocks leapt over that time in London",
  no_temperature: "no temperature can be read in it",
  temperature_beyond: "no thermometer in a brewery shows that temperature",
  time_twice: "another line has the same time",
};

export interface LogInputs {
  text: string;
  unit?: "C" | "F" | null;
}

/** A line that could not be read. */
export interface LogFault {
  line: number;
  why: keyof typeof FAULTS;
  text: string;
  says: string;
}

interface Row {
  line: number;
  text: string;
  written: Written;
  tempC: number;
}

/** The temperature in a cell, °C to hundredths; a unit beside the number comes first. */
function tempOf(cell: string, unit: "C" | "F"): number | null {
  const found = NUMBER.exec(cell);
  if (!found) return null;
  const shown = Number((found[1] ?? "").replace(",", "."));
  return halfUp((found[2] ?? unit).toUpperCase() === "F" ? celsius(shown) : shown, 2);
}

/** LOG-4: a line's reading, or what is wrong with it. */
function readLine(
  text: string,
  cells: readonly string[],
  where: Columns,
  unit: "C" | "F",
  line: number,
): Row | keyof typeof FAULTS {
  const [date, temp] = [cells[where.time], cells[where.temp]];
  const clock = where.clock === null ? "" : cells[where.clock];
  if (date === undefined || temp === undefined || clock === undefined) return "too_few_cells";
  if (where.most !== null && cells.length > where.most) return "too_many_cells";
  const found = writtenTime(where.clock === null ? date : `${date} ${clock}`);
  if (found === null) return "no_time";
  const written = { ...found, offsetMs: found.offsetMs ?? where.offsetMs };
  const tempC = tempOf(temp, where.unit ?? unit);
  if (tempC === null) return "no_temperature";
  const { low, high } = RANGES.reading_temp_c;
  return low <= tempC && tempC <= high ? { line, text, written, tempC } : "temperature_beyond";
}

const cut = (text: string): string =>
  [...text.slice(0, 2 * MOST_SHOWN)].slice(0, MOST_SHOWN).join("");

function fault(why: keyof typeof FAULTS, line: number, text: string): LogFault {
  const shown = cut(text);
  return { line, why, text: shown, says: `Line ${line}, "${shown}": ${FAULTS[why]}.` };
}

/** LOG-5: rows on the calendar; a file that runs backwards is read from its end. */
function placed(rows: readonly Row[]): { readings: Map<number, number>; faults: LogFault[] } {
  const [first, last] = [rows[0], rows.at(-1)];
  const backwards = first && last && first.written.clockMs > last.written.clockMs;
  const readings = new Map<number, number>();
  const faults: LogFault[] = [];
  let before: number | null = null;
  for (const row of backwards ? [...rows].reverse() : rows) {
    const time = instantOf(row.written, before);
    if (time === null || readings.has(time)) {
      faults.push(fault(time === null ? "time_never_was" : "time_twice", row.line, row.text));
      continue;
    }
    readings.set(time, row.tempC);
    before = time;
  }
  return { readings, faults };
}

/** The lines of the file, however they end. Throws not-among, out-of-range. */
function askedLines(asked: CellarAsked): string[] {
  const text = asked.given["text"];
  if (typeof text !== "string" || text === "") {
    const given = text === undefined || text === null ? null : "not text";
    const why = "What the logger wrote.";
    throw notAmong({ field: "text", given, choices: ["text of a file"], why });
  }
  const lines = text.replaceAll("\r\n", "\n").replaceAll("\r", "\n").split("\n");
  if (lines.length > MOST_LINES) {
    const range = { low: 1, high: MOST_LINES, unit: "whole lines" };
    const why = "A file of some months; cut it.";
    throw outOfRange({ field: "text", given: lines.length, ...range, why });
  }
  return lines.map(trimmed);
}

/** LOG-6: the readings of a logger's file in the order of time, and the lines at fault. */
export function readLog(inputs: LogInputs, settings: Settings | null = null) {
  const asked = new CellarAsked(inputs, ["text", "unit"]);
  const work = new Working(settings);
  const lines = askedLines(asked);
  const unit = asked.has("unit") ? asked.choice("unit", UNITS, UNIT_WHY) : "C";
  const between = partedBy(lines);
  const found = columnsOf(lines, between);
  if (found === null) {
    const why = "None of the first lines has a column of times and one of temperatures.";
    const choices = ["time", "temperature"];
    throw notAmong({ field: "text", given: cut(lines[0] ?? ""), choices, why });
  }
  const rows: Row[] = [];
  const faults: LogFault[] = [];
  for (const [n, line] of lines.entries()) {
    if (n < found.first || line === "") continue;
    const row = readLine(line, cellsOf(line, between), found.where, unit, n + 1);
    if (typeof row === "string") faults.push(fault(row, n + 1, line));
    else rows.push(row);
  }
  const { readings, faults: misplaced } = placed(rows);
  const all = [...faults, ...misplaced].sort((a, b) => a.line - b.line);
  work.step("Readings taken in", readings.size, "readings", 0);
  work.step("Lines that could not be read", all.length, "lines", 0);
  if (all.length > 0) work.caution("log_has_faults");
  const inOrder = [...readings].sort(([a], [b]) => a - b);
  return work.done({
    readings: inOrder.map(([time, tempC]) => ({ at: atMs(time), reading_temp_c: tempC })),
    faults: all,
  });
}
