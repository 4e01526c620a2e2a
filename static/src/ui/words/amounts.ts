// Volumes, strengths, temperatures and counts in words.

/** Whole tenths, halves up, without a trailing ".0": 40915 of 1000 is "40.9", 36000 is "36". */
const tenths = (amount: number, whole: number): string => {
  const rounded = Math.floor((amount * 10) / whole + 0.5);
  return rounded % 10 === 0 ? `${rounded / 10}` : (rounded / 10).toFixed(1);
};

/** Litres to one decimal: "40.9 L". The space does not break. */
export const litres = (ml: number): string => `${tenths(ml, 1000)}\u00a0L`;

/** A limit in litres, never rounded up: what is refused must not read like what is allowed. */
export const litresAtMost = (ml: number): string => litres(ml - (ml % 100));

/** Strength: "4.2 %". */
export const strength = (abvTenths: number): string => `${tenths(abvTenths, 10)}\u00a0%`;

/** Temperature: "11.5 °C". */
export const degrees = (decidegc: number): string => `${tenths(decidegc, 10)}\u00a0°C`;

/** Litres typed by a person ("36", "36.5", "36,5") in mL; null where they are no such figure. */
export const typedMl = (text: string): number | null => {
  const clean = text.trim().replace(",", ".");
  if (!/^\d{1,4}(\.\d{0,3})?$/.test(clean)) return null;
  return Math.floor(Number(clean) * 1000 + 0.5);
};

/** "1 firkin", "3 firkins". */
export const count = (n: number, one: string, many = `${one}s`): string =>
  `${n} ${n === 1 ? one : many}`;

/** "117, 118 and 119"; from six on "117, 118, 119 and 5 more". */
export const listWords = (items: readonly string[], most = 5): string => {
  if (items.length <= 1) return items.join("");
  if (items.length <= most) return `${items.slice(0, -1).join(", ")} and ${items.at(-1)}`;
  return `${items.slice(0, most - 2).join(", ")} and ${items.length - most + 2} more`;
};

/** A sentence starts with a capital. */
export const sentence = (words: string): string =>
  words === "" ? "" : words[0]?.toUpperCase() + words.slice(1);
