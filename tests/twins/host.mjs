// Answers for the phone's rules: a JSON line {fault, rule, args} in, a line {value} or {error} out.
// `fault` is null, or names a file of the rules and what to write in it in place of what.
// All of them run in this one process: each is bundled in memory when it is first asked.

import { readFile } from "node:fs/promises";
import { createInterface } from "node:readline";
import { fileURLToPath } from "node:url";
import { build } from "../../static/node_modules/esbuild/lib/main.js";

const here = (path) => fileURLToPath(new URL(path, import.meta.url));
const RULES = here("../../static/src/domain/");

/** Writes the fault into the file that it names as that file is read. */
const planting = ({ file, right, wrong }) => ({
  name: "planting",
  setup(bundling) {
    bundling.onLoad({ filter: /\.ts$/ }, async ({ path }) => {
      if (path !== RULES + file) return;
      const text = await readFile(path, "utf8");
      if (!text.includes(right)) throw new Error(`no ${right} in ${file}: plant another fault`);
      return { contents: text.replaceAll(right, () => wrong), loader: "ts" };
    });
  },
});

const bundled = async (fault) => {
  const made = await build({
    entryPoints: [here("answers.ts")],
    bundle: true,
    write: false,
    format: "esm",
    platform: "node",
    logLevel: "error",
    plugins: fault ? [planting(fault)] : [],
  });
  const code = Buffer.from(made.outputFiles[0].contents).toString("base64");
  return import(`data:text/javascript;base64,${code}`);
};

const rules = new Map();

for await (const line of createInterface({ input: process.stdin })) {
  const { fault, rule, args } = JSON.parse(line);
  const key = JSON.stringify(fault);
  if (!rules.has(key)) rules.set(key, await bundled(fault));
  process.stdout.write(`${JSON.stringify(rules.get(key).answer(rule, args))}\n`);
}
