// What a phone is called until somebody calls it something better: what it is, as far as its
// browser says.

const KINDS: readonly (readonly [RegExp, string])[] = [
  [/iPad|Tablet|Android(?!.*Mobile)/, "Tablet"],
  [/iPhone|Mobile/, "Phone"],
];

export const kindOfDevice = (userAgent: string): string =>
  KINDS.find(([pattern]) => pattern.test(userAgent))?.[1] ?? "Computer";

/** "Bob's phone" where the name is known, else "Phone". */
export const suggestedName = (person: string, userAgent: string): string => {
  const kind = kindOfDevice(userAgent);
  return person === "" ? kind : `${person}'s ${kind.toLowerCase()}`;
};
