// What the first screen is made of stays in one piece. Left alone, the bundler cuts it into as many
// chunks as there are sets of lazy parts that share something, each compressed by itself. So each
// lazy part is told to need the page's script, which is there by then: then all share all of it.
// The same with the small things that many lazy parts are made of: each by itself would be a file
// of its own to fetch, and a screen would want a score of them.

import { readFile } from "node:fs/promises";
import { extname, resolve } from "node:path";

const SCRIPT = /\.tsx?$/;

export const oneCore = (root, ...shared) => {
  const lazy = new Set();
  return {
    name: "one-core",
    setup(build) {
      build.onResolve({ filter: SCRIPT }, ({ kind, path, resolveDir }) => {
        if (kind === "dynamic-import") lazy.add(resolve(resolveDir, path));
        return undefined;
      });
      build.onLoad({ filter: SCRIPT }, async ({ path }) => {
        if (!lazy.has(path)) return undefined;
        const source = await readFile(path, "utf8");
        const needs = shared.map((one) => `import ${JSON.stringify(resolve(root, one))};\n`);
        return { contents: [source, ...needs].join("\n"), loader: extname(path).slice(1) };
      });
    },
  };
};
