// Asking over HTTP, of a real server on this machine that answers well and badly.

import assert from "node:assert/strict";
import { createServer, type RequestListener } from "node:http";
import type { AddressInfo } from "node:net";
import { test } from "node:test";
import {
  NO_SENSE,
  NoAnswer,
  noUse,
  overFetch,
  type Transport,
  waitFrom,
} from "../../../static/src/sync/transport.ts";

const withServer = async (
  listener: RequestListener,
  work: (ask: Transport) => Promise<void>,
  patienceMs = 10_000,
): Promise<void> => {
  const server = createServer(listener);
  await new Promise<void>((resolve) => server.listen(0, "127.0.0.1", resolve));
  const { port } = server.address() as AddressInfo;
  try {
    await work(overFetch(`http://127.0.0.1:${port}`, patienceMs));
  } finally {
    server.closeAllConnections();
    await new Promise((resolve) => server.close(resolve));
  }
};

test("a question without a body is asked for, one with a body is sent as JSON", async () => {
  const heard: string[] = [];
  const listener: RequestListener = (request, response) => {
    let body = "";
    request.on("data", (part) => {
      body += part;
    });
    request.on("end", () => {
      const type = request.headers["content-type"] ?? "-";
      heard.push(`${request.method} ${request.url} ${type} ${body}`);
      response.end("{}");
    });
  };
  await withServer(listener, async (ask) => {
    const reply = await ask({ path: "/api/pull?since=1" });
    assert.deepEqual(reply, { status: 200, body: {}, retryAfterMs: null });
    await ask({ path: "/api/push", body: '{"a":1}' });
  });
  assert.deepEqual(heard, ["GET /api/pull?since=1 - ", 'POST /api/push application/json {"a":1}']);
});

test("what is not JSON comes without a body, and the wish to be left alone is heard", async () => {
  const listener: RequestListener = (_request, response) => {
    response.writeHead(503, { "Retry-After": "120" }).end("<h1>Busy</h1>");
  };
  await withServer(listener, async (ask) => {
    const reply = await ask({ path: "/" });
    assert.deepEqual(reply, { status: 503, body: undefined, retryAfterMs: 120_000 });
  });
});

test("an answer that is cut off is no answer", async () => {
  const listener: RequestListener = (_request, response) => {
    response.writeHead(200, { "Content-Length": "100" });
    response.write('{"half":', () => response.destroy());
  };
  await withServer(listener, async (ask) => {
    await assert.rejects(ask({ path: "/" }), NoAnswer);
  });
});

test("a server that never answers is given up", async () => {
  const silent: RequestListener = () => undefined;
  const giveUp = async (ask: Transport) => {
    await assert.rejects(ask({ path: "/" }), /cannot be reached/);
  };
  await withServer(silent, giveUp, 20);
});

test("no server at all is no answer", async () => {
  await assert.rejects(overFetch("http://127.0.0.1:1", 1000)({ path: "/" }), NoAnswer);
});

test("a wish to be left alone is a number of seconds or a date", () => {
  const now = Date.parse("2026-03-02T09:00:00Z");
  assert.equal(waitFrom("120", now), 120_000);
  assert.equal(waitFrom("Mon, 02 Mar 2026 09:01:00 GMT", now), 60_000);
  assert.equal(waitFrom("Mon, 02 Mar 2026 08:00:00 GMT", now), 0);
  assert.equal(waitFrom("soon", now), null);
});

test("a server that cannot do its work now is told of in its own words", () => {
  const title = "The server has no room left on its disk";
  const told = noUse({ status: 503, body: { title }, retryAfterMs: 30_000 });
  assert.equal(told.message, `${title}. Everything is kept on this phone.`);
  assert.equal(told.retryAfterMs, 30_000);
});

test("an answer that is not the brewery's makes no sense, whatever it says", () => {
  for (const body of [undefined, null, "busy", {}, { title: 7 }]) {
    assert.equal(noUse({ status: 503, body, retryAfterMs: null }).message, NO_SENSE);
  }
  const other = { status: 200, body: { title: "Sign in to the hotel" }, retryAfterMs: null };
  assert.equal(noUse(other).message, NO_SENSE);
});
