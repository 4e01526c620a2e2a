// The first screen needs the figures of the trade, not what each is called and how far each can be trusted. Both stand in
// one file; a plain import gets what rules work with, an import ending in ?sources gets all of it,
// so that a screen can load the sources when somebody asks for them.

import { readFile } from "node:fs/promises";
import { dirname, resolve } from "node:path";

const WORDS = new Set(["name", "unit", "kind", "source", "read_on", "remark"]);

const withoutWords = (figures) =>
  Object.fromEntries(
    Object.entries(figures).map(([id, figure]) => [
      id,
      Object.fromEntries(Object.entries(figure).filter(([name]) => !WORDS.has(name))),
    ]),
  );

export const figures = {
  name: "figures",
  setup(build) {
    build.onResolve({ filter: /\/figures\.json\?sources$/ }, ({ path, resolveDir }) => ({
      path: resolve(resolveDir, path.replace("?sources", "")),
      namespace: "figures-with-sources",
    }));
    build.onLoad({ filter: /.*/, namespace: "figures-with-sources" }, async ({ path }) => ({
      contents: await readFile(path),
      loader: "json",
      watchFiles: [path],
      resolveDir: dirname(path),
    }));
    build.onLoad({ filter: /\/domain\/figures\.json$/ }, async ({ path }) => ({
      contents: JSON.stringify(withoutWords(JSON.parse(await readFile(path, "utf8")))),
      loader: "json",
    }));
  },
};
