// What may be typed on the pad, key by key.

/** "number": digits, letters and runs. "litres": digits and a point. "pin": up to 8 digits. */
export type Types = "number" | "litres" | "pin";

const MOST = 17; // a run of two longest numbers and its dash

/** Whether this key may follow what is typed. */
export const allowed = (key: string, typed: string, types: Types): boolean => {
  if (typed.length >= MOST) return false;
  if (types === "pin") return /^\d$/.test(key) && typed.length < 8;
  if (types === "litres") {
    return key === "." ? !typed.includes(".") : /^\d$/.test(key) && typed.length < 7;
  }
  if (key === "-") return typed !== "" && !typed.includes("-");
  return /^[0-9A-Z]$/.test(key) && (typed.split("-").at(-1) ?? "").length < 8;
};
