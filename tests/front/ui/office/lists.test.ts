// Lists that are brought in.

import assert from "node:assert/strict";
import { test } from "node:test";
import { readList } from "../../../../static/src/ui/office/lists/ask.ts";

test("a file that the server would not take is refused on the phone, with what to do", async () => {
  const large = new Blob([new Uint8Array(1024 * 1024 + 1)]);
  await assert.rejects(readList("containers", large), /more than 1 MiB.*split it/);
});
