// What each fact is called on the screen, and how people write it.

export type Written = "litres" | "kilograms" | "tenths" | "whole" | "words" | "day" | "number";

export interface Asked {
  label: string;
  is: Written;
}

const as = (is: Written, labels: { [name: string]: string }): [string, Asked][] =>
  Object.entries(labels).map(([name, label]) => [name, { label, is }]);

export const ASKED = new Map<string, Asked>([
  ...as("litres", {
    volume_ml: "Litres",
    left_ml: "Litres left",
    ullage_ml: "Litres still in it",
    capacity_ml: "Litres it holds",
  }),
  ...as("kilograms", { tare_g: "Weight when empty, kg" }),
  ...as("tenths", { abv_tenths: "Strength, % vol", temp_decidegc: "Temperature, °C" }),
  ...as("whole", {
    conditioning_days: "Days of conditioning",
    best_before_days: "Days to best before",
    on_sale_days: "Days on sale",
    agreed_days: "Days to bring a container back",
  }),
  ...as("words", {
    name: "Name",
    style: "Style",
    number: "Gyle number",
    contact: "Who to ask for",
    phone: "Telephone",
    email: "E-mail",
    owner: "Owner",
    why: "Why",
    words: "Words",
    with: "Washed with",
    clarity: "Clarity",
    taste: "Taste",
  }),
  ...as("day", {
    best_before: "Best before",
    due_on: "Due back",
    promised_on: "Promised for",
    ask_again_on: "Ask again on",
    brewed_on: "Brewed on",
  }),
  ...as("number", { to: "The right number" }),
]);

/** Of those written as figures, how many of the ledger's wholes make one. */
export const WHOLES_IN: { readonly [is in Written]?: number } = {
  litres: 1000,
  kilograms: 1000,
  tenths: 10,
  whole: 1,
};
