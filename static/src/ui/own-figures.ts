// The brewery's own values in place of the trade's figures, followed as they change.

import { computed } from "@preact/signals";
import type { Settings } from "../domain/figures.ts";
import { book } from "../store/book.ts";
import { ownValues } from "./own-values.ts";

export const ownFigures = computed<Settings>(() => ownValues(book.brewerySettings.value));
