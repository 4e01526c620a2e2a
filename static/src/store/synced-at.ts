// When this phone last knew all that the brewery knew.

import { writeMeta } from "./meta.ts";
import type { Phone } from "./phone.ts";

export const keepSyncedAt = async (phone: Phone): Promise<void> => {
  const at = phone.clock.now();
  await phone.connection.write(
    ["meta"],
    (transaction) => writeMeta(transaction, "syncedAt", at),
    "relaxed",
  );
  phone.syncedAt = at;
};
