// People and phones in words.

import assert from "node:assert/strict";
import { test } from "node:test";
import {
  type DeviceAnswer,
  type HeldAnswer,
  namesOf,
} from "../../../../static/src/ui/office/people/answers.ts";
import { auditBy, auditWords } from "../../../../static/src/ui/office/people/audit-words.ts";
import { deviceWords, waitingWords } from "../../../../static/src/ui/office/people/device-words.ts";
import {
  byDevice,
  canTake,
  heldEntry,
  heldTitle,
  heldWhy,
} from "../../../../static/src/ui/office/people/held-words.ts";
import { kindOfDevice, suggestedName } from "../../../../static/src/ui/people/phone-name.ts";
import { known } from "../brewery.ts";

const NOW = "2026-03-10T12:00:00.000Z";

const DEVICE: DeviceAnswer = {
  id: "d",
  name: "Van",
  people: ["Ann", "Dee"],
  paired_at: "2026-03-01T12:00:00.000Z",
  last_seen_at: "2026-03-10T09:00:00.000Z",
  waiting: 0,
  oldest_waiting_at: null,
  app: "abc",
  revoked_at: null,
};

test("a phone says who uses it, when it was seen, what waits, and whether it is out of use", () => {
  assert.equal(deviceWords(DEVICE, NOW), "Ann and Dee, seen 3 h ago");
  const waiting = { ...DEVICE, waiting: 4, oldest_waiting_at: "2026-03-10T08:00:00.000Z" };
  assert.equal(deviceWords(waiting, NOW), "Ann and Dee, seen 3 h ago, 4 entries wait");
  assert.equal(
    waitingWords(waiting, NOW),
    "4 entries waited on it when it was last seen, the oldest since 08:00",
  );
  const revoked = { ...DEVICE, people: [], revoked_at: "2026-03-09T08:00:00.000Z" };
  assert.equal(
    deviceWords(revoked, NOW),
    "nobody yet, seen 3 h ago, out of use since 9 Mar, 08:00",
  );
});

const held = (entry: object | string, changes: Partial<HeldAnswer> = {}): HeldAnswer => ({
  key: "h",
  raw: typeof entry === "string" ? entry : JSON.stringify(entry),
  type: "/problems/revoked-device",
  device: "d",
  received_at: NOW,
  decision: null,
  ...changes,
});

const WASHED = {
  ...{ id: "e", device: "d", seq: 1, rules: 1, kind: "washed", subject: "117" },
  ...{ happened_at: NOW, person: "Dee", facts: {} },
};

test("what is held is shown as an entry where it can be read, and as it came where it cannot", () => {
  assert.equal(heldTitle(held(WASHED), known), "117: Washed");
  assert.equal(heldEntry(held(WASHED))?.person, "Dee");
  for (const raw of ["half an ent", "null", "[]", '{"kind":"washed"}']) {
    assert.equal(heldEntry(held(raw)), null);
    assert.equal(heldTitle(held(raw), known), raw);
  }
  assert.match(heldWhy(held(WASHED)), /out of use/);
  assert.match(heldWhy(held(WASHED, { type: "/problems/of-a-later-release" })), /not taken in/);
});

test("only what is held for want of a right is an owner's to take in", () => {
  assert.ok(canTake(held(WASHED)));
  assert.ok(canTake(held(WASHED, { type: "/problems/rights" })));
  assert.ok(!canTake(held(WASHED, { type: "/problems/own-fault" })));
});

test("held entries stand together by their phone", () => {
  const other = held(WASHED, { device: "x" });
  const groups = byDevice([held(WASHED), other, held(WASHED)], namesOf({ devices: [DEVICE] }));
  assert.deepEqual(
    groups.map(({ name, all }) => [name, all.length]),
    [
      ["Van", 2],
      ["A phone that is not in the list", 1],
    ],
  );
});

test("who did what is one line, and the server's own commands are nobody's", () => {
  const names = namesOf({ devices: [DEVICE] });
  const line = { id: 1, at: NOW, who: "Ann", device: "d", what: "link to pair", about: "Bob" };
  assert.equal(auditWords(line), "Link to pair: Bob");
  assert.equal(auditWords({ ...line, about: "" }), "Link to pair");
  assert.equal(auditBy(line, names), "Ann, Van");
  assert.equal(auditBy({ ...line, who: null, device: null }, names), "on the server");
});

test("a phone is called what it is until somebody names it", () => {
  const android = "Mozilla/5.0 (Linux; Android 14; SM) AppleWebKit Chrome/130 Mobile Safari/537.36";
  const tablet = "Mozilla/5.0 (Linux; Android 14; SM) AppleWebKit Chrome/130 Safari/537.36";
  const laptop = "Mozilla/5.0 (X11; Linux x86_64) AppleWebKit Chrome/130 Safari/537.36";
  assert.deepEqual([android, tablet, laptop].map(kindOfDevice), ["Phone", "Tablet", "Computer"]);
  assert.equal(suggestedName("Bob", android), "Bob's phone");
  assert.equal(suggestedName("", tablet), "Tablet");
});
