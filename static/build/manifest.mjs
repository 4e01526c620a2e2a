// Names for what was built: one for the whole, one for each file that has no hash in its own.

import { createHash } from "node:crypto";

const hash = (...parts) => {
  const sum = createHash("sha256");
  for (const part of parts) sum.update(part);
  return sum.digest("hex").slice(0, 16);
};

/** The same sources always give the same id, and any change to what is delivered another. */
export const buildId = (files) => hash(...[...files].sort(([a], [b]) => (a < b ? -1 : 1)).flat());

/** What the worker keeps for use with no network: everything, or a lazy part would fail there. */
export const precacheList = (files) =>
  [...files].map(([name, bytes]) => ({
    url: `/${name}`,
    revision: name.startsWith("assets/") ? null : hash(bytes),
  }));
