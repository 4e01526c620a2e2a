// Knowing a PIN again with no network. It says who has a shared tablet in hand; it is no lock
// against somebody who has the tablet and time.

import type { PinCheck } from "./account.ts";

export const PIN = /^\d{4,8}$/;

/** PBKDF2 with SHA-256, as the brewery worked it out. */
export const pinFits = async (pin: string, check: PinCheck): Promise<boolean> => {
  const key = await crypto.subtle.importKey("raw", new TextEncoder().encode(pin), "PBKDF2", false, [
    "deriveBits",
  ]);
  const hash = bytesOf(check.hash);
  const bits = await crypto.subtle.deriveBits(
    { name: "PBKDF2", hash: "SHA-256", salt: bytesOf(check.salt), iterations: check.iterations },
    key,
    hash.length * 8,
  );
  return new Uint8Array(bits).every((byte, at) => byte === hash[at]);
};

/** From base64. */
const bytesOf = (text: string): Uint8Array<ArrayBuffer> =>
  Uint8Array.from(atob(text), (sign) => sign.charCodeAt(0));

/** Wrong PINs of one person, one after another, and when the last was typed. */
export interface WrongTries {
  count: number;
  lastMs: number;
}

const FREE_TRIES = 3;
const FIRST_WAIT_MS = 5000;
const LONGEST_WAIT_MS = 300_000;

/** How long the next try has to wait: not after a slip or two, then twice as long each time. */
export const waitMs = ({ count, lastMs }: WrongTries, nowMs: number): number => {
  if (count < FREE_TRIES) return 0;
  const wait = Math.min(LONGEST_WAIT_MS, FIRST_WAIT_MS * 2 ** (count - FREE_TRIES));
  // A clock that was put back must not shut anybody out for longer than the wait itself.
  return Math.max(0, Math.min(wait, lastMs + wait - nowMs));
};
