// What the first screen is made of stays in one piece. Left alone, the bundler cuts it into as many
// chunks as there are sets of lazy parts that share something, each compressed by itself. So each
// lazy part is told to need the page's script, which is there by then: then all share all of it.

import { readFile } from "node:fs/promises";
import { extname, resolve } from "node:path";

const SCRIPT = /\.tsx?$/;

export const oneCore = (root, pageScript) => {
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
        const core = JSON.stringify(resolve(root, pageScript));
        return { contents: `${source}\nimport ${core};\n`, loader: extname(path).slice(1) };
      });
    },
  };
};
