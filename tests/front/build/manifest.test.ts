// What was built is named so that a phone fetches what changed and nothing else.

import assert from "node:assert/strict";
import { test } from "node:test";
import { buildId, precacheList } from "../../../static/build/manifest.mjs";

const files = (...entries: [string, string][]) =>
  new Map(entries.map(([name, text]) => [name, Buffer.from(text)]));

test("a file with a hash in its name needs no revision", () => {
  assert.deepEqual(precacheList(files(["assets/main-ABC.js", "x"])), [
    { url: "/assets/main-ABC.js", revision: null },
  ]);
});

test("a file with a fixed name has a revision that follows its content", () => {
  const revision = (text: string) => precacheList(files(["index.html", text]))[0]?.revision;
  assert.match(revision("one") ?? "", /^[0-9a-f]{16}$/);
  assert.equal(revision("one"), revision("one"));
  assert.notEqual(revision("one"), revision("two"));
});

test("the build id does not depend on the order in which files were made", () => {
  const there = files(["a.js", "1"], ["b.js", "2"]);
  const back = files(["b.js", "2"], ["a.js", "1"]);
  assert.equal(buildId(there), buildId(back));
});

test("the build id changes with a file's content and with its name", () => {
  const id = buildId(files(["a.js", "1"]));
  assert.notEqual(id, buildId(files(["a.js", "2"])));
  assert.notEqual(id, buildId(files(["b.js", "1"])));
});
