// What a rule answers, or nothing where what the records say is beyond it.

import { DomainError } from "../domain/errors.ts";

export const attempt = <Result>(rule: () => Result): Result | null => {
  try {
    return rule();
  } catch (fault) {
    if (fault instanceof DomainError) return null;
    throw fault;
  }
};
