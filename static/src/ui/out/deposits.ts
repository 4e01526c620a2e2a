// What a customer pays for a container and gets back with it.

import type { Brewery, Customer } from "../../domain/records.ts";

export interface PaidBy {
  customer: Customer | undefined;
  brewery: Brewery | undefined;
}

/** In pence: as agreed for the kind, else for all kinds, else as the brewery usually has it. */
export const depositPence = (kind: string | null, { customer, brewery }: PaidBy): number => {
  const { deposits = {}, deposit_pence } = customer?.fields ?? {};
  const usual = brewery?.fields.deposits ?? {};
  const of = kind ?? "";
  return deposits[of] ?? deposit_pence ?? usual[of] ?? 0;
};
