// What the first screen is made of stays in one piece. Left alone, the bundler cuts it into as many
// chunks as there are sets of lazy parts that share something, each compressed by itself. So each
// lazy part is told to need the page's script, which is there by then: then all share all of it.
// The same with the small things that many lazy parts are made of: each by itself would be a file
// of its own to fetch, and a screen would want a score of them.

import { readFile } from "node:fs/promises";
import { extname, resolve } from "node:path";

const SCRIPT = /\.tsx?$/;

/**
 * The files that a build fetches when asked for, by its metafile. A build that is under way may read
 * one of them before it comes upon the place that fetches it, so another build has to tell.
 */
export const lazyParts = (root, { inputs }) => {
  const imports = Object.values(inputs).flatMap((input) => input.imports);
  const fetched = imports.filter(({ kind }) => kind === "dynamic-import");
  return new Set(fetched.map(({ path }) => resolve(root, path)));
};

export const oneCore = (root, lazy, ...shared) => ({
  name: "one-core",
  setup(build) {
    build.onLoad({ filter: SCRIPT }, async ({ path }) => {
      if (!lazy.has(path)) return undefined;
      const source = await readFile(path, "utf8");
      const needs = shared.map((one) => `import ${JSON.stringify(resolve(root, one))};\n`);
      return { contents: [source, ...needs].join("\n"), loader: extname(path).slice(1) };
    });
  },
});
