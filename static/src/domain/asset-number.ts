/** GRAI, the number a container goes by in the whole world. Twin of cellarapp/domain/asset_number.py. */
import { notAnAssetNumber } from "./errors.ts";

const WRITTEN = /^0[0-9]{13}[!%-?A-Z_a-z"]{0,16}$/;
const LINK = /^https?:\/\/[^/?#]*(?:\/[^?#]*)?\/8003\/([^/?#]+)\/?(?:[?#].*)?$/i;
const PRINTED = /^(?:\]Q3|\]C1)?(?:8003|\(8003\))(?=0)/;

/** GRAI-1: weights 3 and 1 in turn from the right; what is missing to the next ten. */
export function checkDigit(digits: string): string {
  let sum = 0;
  for (let n = 0; n < digits.length; n += 1) {
    sum += Number(digits[digits.length - 1 - n]) * (n % 2 === 0 ? 3 : 1);
  }
  return String((10 - (sum % 10)) % 10);
}

/** GRAI-3: a GRAI as it is printed, scanned or in a link: its thirteen digits, and the serial. */
export function takeApart(text: string): [assetType: string, serial: string] {
  const link = LINK.exec(text);
  const plain = link === null ? text.replace(PRINTED, "") : decoded(link[1] ?? "");
  if (!WRITTEN.test(plain) || checkDigit(plain.slice(1, 13)) !== plain[13]) {
    throw notAnAssetNumber(text);
  }
  return [plain.slice(1, 14), plain.slice(14)];
}

function decoded(part: string): string {
  try {
    return decodeURIComponent(part);
  } catch {
    return part; // not percent-encoding after all: it will not be a GRAI either
  }
}
