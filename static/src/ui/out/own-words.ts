// The brewery's own words for a text, and who writes it.

import wordings from "../../../../cellarapp/domain/wordings.json";
import { book } from "../../store/book.ts";
import { person } from "../mine.ts";
import type { From } from "./call-text.ts";

export const ownWords = (text: keyof typeof wordings): string => {
  const fields = book.brewerySettings.value.get(text)?.fields;
  return fields?.retired || !fields?.words ? wordings[text].words : fields.words;
};

export const from = (): From => ({
  person: person.value,
  brewery: book.breweries.value.get("brewery")?.fields.name ?? "",
});
