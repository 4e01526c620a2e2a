// This phone's link to the page of each customer, made when it is first wanted, with no network
// too. It stays on the phone; once all links of a customer are stopped, the next one is a new one.

import type { Customer } from "../../domain/records.ts";
import { book } from "../../store/book.ts";
import { may } from "../mine.ts";
import { newLink, type PageLink } from "./new-link.ts";

const kept = book.setting<{ readonly [customer: string]: PageLink }>("out.pageLinks", {});

/** Where everybody reaches the brewery; "" while it has not said so, and then there is no link. */
export const webAddress = (): string => book.breweries.value.get("brewery")?.fields.web ?? "";

const works = (link: PageLink, record: Customer | undefined): boolean =>
  (record?.links ?? []).some(({ hash }) => hash === link.hash);

/** The address to give out; null where there can be none. */
export const linkFor = async (customer: string): Promise<string | null> => {
  const web = webAddress();
  if (web === "" || !may("linked")) return null;
  const had = kept.peek()[customer];
  if (had !== undefined && works(had, book.customers.peek().get(customer))) {
    return `${web}/yours/${had.token}`;
  }
  const made = await newLink(customer);
  await book.record("linked", customer, { hash: made.hash });
  kept.value = { ...kept.peek(), [customer]: made };
  return `${web}/yours/${made.token}`;
};
