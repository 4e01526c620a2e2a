// An id for a new record, made on this phone.

import { phone } from "../../store/book.ts";

export const newId = (): string => phone.newId();
