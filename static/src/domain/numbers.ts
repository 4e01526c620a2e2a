/** A container's number: what is stamped on it, and its identity. Twin of cellarapp/domain/numbers.py. */
import { notANumber } from "./errors.ts";

const NORMAL = /^(?=[A-Z0-9]*[0-9])[A-Z0-9]{1,8}$/;
const BETWEEN = /[ \t\u00a0.-]+/g;
const DIGITS_AT_THE_END = /[0-9]+$/;

/** Whether the text is a container's number in its normal form. */
export function isNumber(text: string): boolean {
  return NORMAL.test(text);
}

/** The one way a number is written: "f 117", "F-117" and "F117" are one. Throws not-a-number. */
export function normalNumber(text: string): string {
  const number = text.replace(BETWEEN, "").toUpperCase();
  if (!isNumber(number)) throw notANumber(text);
  return number;
}

/** The digits of a number without letters and leading noughts: "K012" is "12". */
export function bareDigits(number: string): string {
  return number.replace(/[^0-9]/g, "").replace(/^0+/, "") || "0";
}

/** Whether what was typed on the pad means this container: 12 offers both 12 and K12. */
export function matches(typed: string, number: string): boolean {
  if (!/^[0-9]+$/.test(typed)) return typed === number;
  return bareDigits(typed) === bareDigits(number);
}

/** A longer run at the bench or on the van is a slip. */
const MOST_AT_ONCE = 100;

/** The numbers of a run such as 117 to 124 or K7 to K12, 2 to the most. Throws not-a-number. */
export function runOfNumbers(first: string, last: string, most = MOST_AT_ONCE): string[] {
  const [front, start] = split(first);
  const [writtenBack, end] = split(last);
  const back = writtenBack === "" ? front : writtenBack;
  const count = start && end ? Number(end) - Number(start) + 1 : 0;
  const fits = front === back && count >= 2 && count <= most && isNumber(front + end);
  if (!fits) throw notANumber(`${first}-${last}`);
  return Array.from(
    { length: count },
    (_, i) => front + String(Number(start) + i).padStart(start.length, "0"),
  );
}

function split(number: string): [string, string] {
  const digits = DIGITS_AT_THE_END.exec(number);
  return digits ? [number.slice(0, digits.index), digits[0]] : [number, ""];
}
