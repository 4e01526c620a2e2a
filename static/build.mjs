// Builds the client into dist/: `node build.mjs`.
//
// Everything is made in memory first and dist/ is swapped in one go at the end, so that a build
// that fails, or a server that reads meanwhile, never sees half a client.

import { bundlePage, bundleWorker } from "./build/bundle.mjs";
import { copiedFiles, indexPage } from "./build/files.mjs";
import { buildId, precacheList } from "./build/manifest.mjs";
import { writeDist } from "./build/write.mjs";

/** Bundle page and worker for a build id; the id is part of what they contain. */
const assemble = async (id) => {
  const page = await bundlePage(id);
  const files = new Map([
    ...page.files,
    ...(await copiedFiles()),
    ["index.html", await indexPage(page)],
  ]);
  files.set("sw.js", await bundleWorker(id, precacheList(files)));
  return { files, firstScreen: page.firstScreen };
};

// The id is a hash of all that is delivered, and is delivered itself. So it is taken from a
// first round without an id, and put in with a second.
const id = buildId((await assemble("")).files);
const { files, firstScreen } = await assemble(id);
const summary = { id, firstScreen, files: [...files.keys()].sort() };
files.set("build.json", Buffer.from(`${JSON.stringify(summary, null, 2)}\n`));

await writeDist(files);
console.log(`client ${id}: ${files.size} files in static/dist`);
