// What runs on this phone and at the brewery, for whoever has to compare the two.

import { useEffect, useState } from "preact/hooks";
import { RULES_VERSION } from "../../../domain/rules.ts";
import { NoAnswer, overFetch, PATIENCE_MS } from "../../../sync/transport.ts";

interface Server {
  version: string;
  rules: number;
  build: string;
}

const askServer = async (): Promise<Server | null> => {
  try {
    const { status, body } = await overFetch("", PATIENCE_MS)({ path: "/api/health" });
    return status === 200 ? (body as Server) : null;
  } catch (error) {
    if (error instanceof NoAnswer) return null;
    throw error;
  }
};

export const Versions = () => {
  const [server, setServer] = useState<Server | null>(null);
  useEffect(() => void askServer().then(setServer), []);
  return (
    <section class="form">
      <h2>Versions</h2>
      <p class="small">
        App {__BUILD_ID__}, rules {RULES_VERSION}.
      </p>
      <p class="small">
        {server === null
          ? "The brewery's server has not said what it runs."
          : `The brewery's server ${server.version}, rules ${server.rules}, app ${server.build}.`}
      </p>
    </section>
  );
};
