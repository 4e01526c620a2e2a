// UUIDv7: an id made on the device, sorting by the time it was made.

const HEX = Array.from({ length: 256 }, (_, byte) => byte.toString(16).padStart(2, "0"));

/**
 * A maker of ids, each larger than the one before within this page, whatever the clock does.
 * The 12 bits after the version and the 62 after the variant count on from a random start.
 */
export const uuid7Maker = (
  nowMs: () => number,
  random: (bytes: Uint8Array<ArrayBuffer>) => void,
) => {
  let lastMs = 0;
  const tail = new Uint8Array(10);
  return (): string => {
    const ms = nowMs();
    if (ms > lastMs) {
      lastMs = ms;
      random(tail);
      tail[0] = (tail[0] ?? 0) & 0x07; // room to count on within the same millisecond
    } else if (countOn(tail)) {
      lastMs += 1; // all counted out: borrow from the next millisecond
    }
    return written(lastMs, tail);
  };
};

/** Add one to the tail, leaving out the version's and the variant's bits. True on overflow. */
const countOn = (tail: Uint8Array): boolean => {
  for (let at = tail.length - 1; at >= 0; at -= 1) {
    const room = at === 0 ? 0x0f : at === 2 ? 0x3f : 0xff;
    const next = ((tail[at] ?? 0) & room) + 1;
    tail[at] = next > room ? 0 : next;
    if (next <= room) return false;
  }
  return true;
};

const written = (ms: number, tail: Uint8Array): string => {
  const bytes = new Uint8Array(16);
  for (let at = 5, left = ms; at >= 0; at -= 1, left = Math.floor(left / 256)) {
    bytes[at] = left % 256;
  }
  bytes.set(tail, 6);
  bytes[6] = ((bytes[6] ?? 0) & 0x0f) | 0x70;
  bytes[8] = ((bytes[8] ?? 0) & 0x3f) | 0x80;
  const hex = Array.from(bytes, (byte) => HEX[byte]);
  const part = (from: number, to: number): string => hex.slice(from, to).join("");
  return [part(0, 4), part(4, 6), part(6, 8), part(8, 10), part(10, 16)].join("-");
};
