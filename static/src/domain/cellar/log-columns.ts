/** LOG: the cells of a logger's lines, and which hold time and temperature. Twin of cellarapp/domain/cellar/log_columns.py. */
import { offsetOf, writtenTime } from "./log-times.ts";

const MOST_HEAD_LINES = 30;
const AROUND = /^[ \t\u00a0\ufeff]+|[ \t\u00a0\ufeff]+$/g;
export const NUMBER = /^([+-]?[0-9]{1,6}(?:[.,][0-9]{1,9})?)[ ]*(?:\u00b0?[ ]*([CcFf]))?$/;
const FEW_DIGITS = /^[0-9]{1,2}$/;
const TIME_HEAD = /^(date|time|timestamp|date[ /_-]?time|when)([^a-z]|$)/i;
const DATE_HEAD = /^date(?![ /_-]?time)/i;
const CLOCK_HEAD = /^time([^a-z]|$)/i;
const ZONE_HEAD = /(?:UTC|GMT)[ ]*([+-][0-9]{2}:?[0-9]{2})?/i;
const TEMP_HEAD = /temp|celsius|fahrenheit|\u00b0[ ]*[CF]|^[CF]$/i;
const IN_F = /fahrenheit|\u00b0[ ]*F|[(][ ]*F[ ]*[)]|^F$/i;
const IN_C = /celsius|\u00b0[ ]*C|[(][ ]*C[ ]*[)]|^C$/i;

/** Where the cells of a line stand, and what the head says of them. */
export interface Columns {
  time: number;
  /** Apart from the date, where that has its own column. */
  clock: number | null;
  temp: number;
  unit: "C" | "F" | null;
  offsetMs: number | null;
  /** Cells a line may have, where a comma parts them and may also stand in a number. */
  most: number | null;
}

/** Without the blanks around it. */
export const trimmed = (text: string): string => text.replace(AROUND, "");

/** The cells of a line, without the blanks and quotes around them. */
export function cellsOf(line: string, between: string): string[] {
  const found: string[] = [];
  let cell = "";
  let quoted = false;
  for (const sign of line) {
    if (sign === '"') quoted = !quoted;
    else if (sign === between && !quoted) {
      found.push(trimmed(cell));
      cell = "";
    } else cell += sign;
  }
  return [...found, trimmed(cell)];
}

/** What stands between the cells: the first of these that any of the first lines has. */
export function partedBy(lines: readonly string[]): string {
  const head = lines.slice(0, MOST_HEAD_LINES);
  return [";", "\t"].find((sign) => head.some((line) => line.includes(sign))) ?? ",";
}

const indexes = (cells: readonly string[], fits: (cell: string, n: number) => boolean): number[] =>
  [...cells.keys()].filter((n) => fits(cells[n] ?? "", n));

/** The columns by their heads; null where the line is no head. */
function headed(cells: readonly string[], between: string): Columns | null {
  const times = indexes(cells, (cell) => TIME_HEAD.test(cell));
  const temps = indexes(cells, (cell, n) => TEMP_HEAD.test(cell) && !times.includes(n));
  const [firstTime, temp] = [times[0], temps[0]];
  if (firstTime === undefined || temp === undefined) return null;
  const date = times.find((n) => DATE_HEAD.test(cells[n] ?? ""));
  const clock = times.find((n) => CLOCK_HEAD.test(cells[n] ?? ""));
  const apart = date !== undefined && clock !== undefined;
  const time = apart ? date : firstTime;
  const head = cells[temp] ?? "";
  const zone = ZONE_HEAD.exec(cells[apart ? clock : time] ?? "");
  return {
    time,
    clock: apart ? clock : null,
    temp,
    unit: IN_F.test(head) ? "F" : IN_C.test(head) ? "C" : null,
    offsetMs: zone ? offsetOf(zone[1] ?? "Z") : null,
    most: between === "," ? cells.length : null,
  };
}

/** The columns by what stands in them: a time, and the next number after it. */
function guessed(cells: readonly string[], between: string): Columns | null {
  for (const [n, cell] of cells.entries()) {
    const next = cells[n + 1];
    const apart = next !== undefined && writtenTime(`${cell} ${next}`) !== null;
    if (!apart && writtenTime(cell) === null) continue;
    const start = apart ? n + 2 : n + 1;
    const temp = cells.findIndex((each, at) => at >= start && NUMBER.test(each));
    if (temp < 0) continue;
    const mayBeOne = between === "," && !cells[temp]?.includes(".");
    if (mayBeOne && FEW_DIGITS.test(cells[temp + 1] ?? "")) return null;
    const most = between === "," ? cells.length : null;
    return { time: n, clock: apart ? n + 1 : null, temp, unit: null, offsetMs: null, most };
  }
  return null;
}

/** LOG-3: the columns, and the number of lines before the first that holds a reading. */
export function columnsOf(
  lines: readonly string[],
  between: string,
): { where: Columns; first: number } | null {
  const head = lines.slice(0, MOST_HEAD_LINES).map((line) => cellsOf(line, between));
  for (const [n, cells] of head.entries()) {
    const where = headed(cells, between);
    if (where) return { where, first: n + 1 };
  }
  for (const [n, cells] of head.entries()) {
    const where = guessed(cells, between);
    if (where) return { where, first: n };
  }
  return null;
}
