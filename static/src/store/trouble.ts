// What can go wrong with a phone's storage, in words for the person who stands there with it.

const WORDS = {
  "no-answer": "This phone's storage does not answer. Close the app, open it again and look.",
  blocked: "An older tab of this app is still open and holds the storage. Close it and try again.",
  newer: "A newer version of this app is open in another tab. Load this page again.",
  full: "This phone has no room left. Nothing was saved. Free some space and save again.",
  closed: "This phone's storage was closed under the app. Nothing was saved. Try again.",
  failed: "This phone could not save. Nothing was kept of it. Try again.",
} as const;

export type TroubleKind = keyof typeof WORDS;

/** An error whose message is for people. Nothing has been saved when it is thrown. */
export class Trouble extends Error {
  readonly kind: TroubleKind;
  constructor(kind: TroubleKind, cause?: unknown) {
    super(WORDS[kind], { cause });
    this.name = "Trouble";
    this.kind = kind;
  }
}

const KINDS: { [errorName: string]: TroubleKind } = {
  QuotaExceededError: "full",
  InvalidStateError: "closed",
  VersionError: "newer",
};

/** The trouble that a browser's error means. What is already said for people stays as it is. */
export const troubleFrom = (error: unknown): Error => {
  if (error instanceof Trouble || error instanceof NotPossible) return error;
  const name = error instanceof Error || error instanceof DOMException ? error.name : "";
  return new Trouble(KINDS[name] ?? "failed", error);
};

/** Something asked of the book that makes no sense; the message says why. */
export class NotPossible extends Error {
  constructor(message: string, cause?: unknown) {
    super(message, { cause });
    this.name = "NotPossible";
  }
}
