/** From what a camera reads off a plate to the number of a container. */
import { takeApart } from "./asset-number.ts";
import { DomainError, notANumber } from "./errors.ts";
import { normalNumber } from "./numbers.ts";

/** Our own link on a plate: whose container it is and how to give it back stand behind it. */
const PLATE = /^https?:\/\/[^?#]*\/f\/([^/?#]+)\/?$/i;

/** The number on a plate, whether it is a GS1 asset number, our own link or the bare number. */
export function scannedNumber(text: string): string {
  const plate = PLATE.exec(text);
  if (plate !== null) return normalNumber(plate[1] ?? "");
  try {
    return normalNumber(takeApart(text)[1]);
  } catch (fault) {
    if (!(fault instanceof DomainError)) throw fault;
  }
  if (/^[0-9]{12,}$/.test(text)) throw notANumber(text); // a shop's barcode
  return normalNumber(text);
}
