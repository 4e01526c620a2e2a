// Links that carry a secret.

import assert from "node:assert/strict";
import { test } from "node:test";
import { readLink } from "../../../../static/src/ui/shell/link.ts";

test("a link is known in an address, whole or only its end, with spaces about it", () => {
  const link = { way: "pair", secret: "abc_DEF-123" };
  for (const text of [
    "#pair=abc_DEF-123",
    "https://cellar.example:8443/#pair=abc_DEF-123",
    "  https://cellar.example/#pair=abc_DEF-123\n",
  ]) {
    assert.deepEqual(readLink(text), link, text);
  }
  assert.deepEqual(readLink("#begin=x"), { way: "begin", secret: "x" });
});

test("anything else is no link", () => {
  for (const text of ["", "#/pair", "#pair=", "pair=abc", "#pair=a b", "#other=abc", "#pair=<b>"]) {
    assert.equal(readLink(text), null, text);
  }
});
