// Files that are not bundled: the page itself, the manifest and the icons.

import { readdir, readFile } from "node:fs/promises";
import { PAGE_SCRIPT, PAGE_STYLE } from "./bundle.mjs";

const root = new URL("../", import.meta.url);

/** The page, with each source that it names replaced by what was built from it. */
export const indexPage = async ({ script, style, chunks }) => {
  const source = await readFile(new URL("index.html", root), "utf8");
  const preloads = chunks
    .map((name) => `    <link rel="modulepreload" href="/${name}">\n`)
    .join("");
  const page = source
    .replace(`/${PAGE_STYLE}`, `/${style}`)
    .replace(`/${PAGE_SCRIPT}`, `/${script}`)
    .replace("  </head>", `${preloads}  </head>`);
  for (const needed of [script, style, ...chunks]) {
    if (!page.includes(needed)) throw new Error(`index.html has no place for ${needed}`);
  }
  return Buffer.from(page);
};

/** What goes along as it is. */
export const copiedFiles = async () => {
  const icons = (await readdir(new URL("icons/", root))).sort();
  const names = ["app.webmanifest", ...icons.map((icon) => `icons/${icon}`)];
  return Promise.all(names.map(async (name) => [name, await readFile(new URL(name, root))]));
};
