// Rounds with a brewery that does not let the phone in, or not everybody do everything.

import assert from "node:assert/strict";
import { test } from "node:test";
import { accountOf, type Me, personOf } from "../../../static/src/store/account.ts";
import { ask, Refused } from "../../../static/src/sync/asking.ts";
import type { Question, Reply } from "../../../static/src/sync/transport.ts";
import { ME } from "../store/a-me.ts";
import { FIRKIN } from "../store/a-phone.ts";
import { World } from "./a-world.ts";

const reply = (status: number, body: unknown): Reply => ({ status, body, retryAfterMs: null });
const closed = (slug: string): Reply =>
  reply(401, { type: `/problems/${slug}`, title: "x", status: 401 });

/** A world whose brewery answers some questions otherwise. */
const withAnswers = async (answers: (asked: Question) => Reply | null): Promise<World> => {
  const world = await World.make(1, 1);
  world.network = (ask) => async (question) => answers(question) ?? ask(question);
  return world;
};

/** The brewery's own answers, with the version of people in each pull. */
const saying = (world: World, me: () => typeof ME): void => {
  world.network = (ask) => async (question) => {
    if (question.path === "/api/me") return reply(200, me());
    const answer = await ask(question);
    if (question.path.startsWith("/api/pull")) {
      return { ...answer, body: { ...(answer.body as object), me_version: me().version } };
    }
    return answer;
  };
};

for (const slug of ["not-set-up", "not-paired"] as const) {
  test(`${slug}: nothing is sent, nothing is lost, and all goes once the phone is let in`, async () => {
    let shut = true;
    const world = await withAnswers(() => (shut ? closed(slug) : null));
    const phone = world.phone(0);
    await phone.book.record("registered", "117", FIRKIN);
    await phone.go();
    assert.equal(accountOf(phone.phone).value.door, slug);
    assert.equal(phone.book.waiting.value.count, 1);
    assert.equal(phone.sync.state.value.online, true);
    assert.match(phone.sync.state.value.message ?? "", /Everything is kept on/);
    await phone.book.record("noted", "117", { words: "recorded on" });
    shut = false;
    await phone.go();
    assert.equal(accountOf(phone.phone).value.door, "in");
    assert.equal(phone.sync.state.value.message, null);
    await world.isSettled();
    assert.equal(world.brewery.taken.size, 2);
  });
}

test("revoked: what waits is held for the owner, what is recorded then too; taken in it is known", async () => {
  let revoked = true;
  const world = await World.make(1, 1);
  world.network = (ask) => async (question) => {
    if (!revoked) return ask(question);
    if (question.path !== "/api/push") return closed("revoked");
    const { entries } = JSON.parse(question.body ?? "");
    const results = entries.map(({ id }: { id: string }) => {
      return { id, verdict: "held", problem: { type: "/problems/revoked", title: "Revoked" } };
    });
    const server_time = new Date(world.nowMs).toISOString();
    return reply(200, { epoch: "epoch-1", head: 0, server_time, results });
  };
  const phone = world.phone(0);
  for (const number of ["117", "118"]) {
    await phone.book.record("registered", number, FIRKIN);
    await phone.go();
  }
  assert.equal(accountOf(phone.phone).value.door, "revoked");
  assert.deepEqual(
    phone.book.ownEntries.value.map(({ where, verdict }) => [where, verdict]),
    [
      ["attention", "held"],
      ["attention", "held"],
    ],
  );
  revoked = false;
  await phone.restart();
  await phone.go();
  assert.equal(phone.book.waiting.value.attention, 0);
  await world.isSettled();
});

test("people are asked about when their version turns, and not at every round", async () => {
  const world = await World.make(1, 1);
  let me = ME;
  saying(world, () => me);
  const phone = world.phone(0);
  await phone.go();
  assert.deepEqual(accountOf(phone.phone).value, { door: "in", me });
  assert.equal(personOf(phone.phone).value, "Ann");
  await phone.go();
  assert.equal(phone.asked, 1);
  personOf(phone.phone).value = "Bob";
  const [ann, , ...others] = ME.people;
  me = {
    ...ME,
    version: 4,
    people: [
      ann as Me["people"][number],
      { name: "Bob", role: "reader", pin_check: null },
      ...others,
    ],
  };
  await phone.go();
  assert.match(phone.sync.notice.value ?? "", /Bob is now somebody who looks and records nothing/);
});

test("an answer about people that makes no sense changes nothing", async () => {
  const world = await World.make(1, 1);
  saying(world, () => ({ ...ME, people: [{ name: "Ann", role: "emperor" }] }) as never);
  const phone = world.phone(0);
  await phone.go();
  assert.equal(accountOf(phone.phone).value.me, null);
  assert.match(phone.sync.state.value.message ?? "", /made no sense/);
});

test("each push says how much stays behind, and since when", async () => {
  const world = await World.make(1, 1);
  const pushes: { waiting: number; oldest_waiting_at: string | null }[] = [];
  world.network = (ask) => (question) => {
    if (question.path === "/api/push") pushes.push(JSON.parse(question.body ?? ""));
    return ask(question);
  };
  const phone = world.phone(0);
  const drafts = Array.from({ length: 501 }, (_, at) => {
    return { kind: "noted" as const, subject: "117", facts: { words: `${at}` } };
  });
  await phone.book.recordMany(drafts);
  const savedAt = phone.book.ownEntries.value[0]?.savedAt;
  await phone.go();
  assert.deepEqual(
    pushes.map(({ waiting, oldest_waiting_at }) => [waiting, oldest_waiting_at]),
    [
      [1, savedAt],
      [0, null],
    ],
  );
});

test("what is asked at once is answered, refused in words, or not answered at all", async () => {
  const me = await ask(async () => reply(200, ME), "/api/me");
  assert.deepEqual(me, ME);
  const problem = {
    type: "/problems/wrong-passphrase",
    title: "That is not the passphrase",
    detail: "Try again.",
  };
  await assert.rejects(
    ask(async () => reply(403, problem), "/api/sign-in", {}),
    (fault: Refused) =>
      fault instanceof Refused &&
      fault.slug === "wrong-passphrase" &&
      fault.message === "That is not the passphrase. Try again.",
  );
  const errors = [{ pointer: "#/pin", detail: "pin must be 4 to 8 digits." }];
  await assert.rejects(
    ask(async () => reply(422, { ...problem, errors }), "/api/people", {}),
    /^Refused: pin must be 4 to 8 digits\.$/,
  );
  await assert.rejects(
    ask(async () => reply(502, undefined), "/api/me"),
    /^NoAnswer: The brewery's answer made no sense/,
  );
});
