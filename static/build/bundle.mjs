// What esbuild is asked for. Knows entry points and output names, nothing of where they end up.

import { relative } from "node:path";
import { fileURLToPath } from "node:url";
import * as esbuild from "esbuild";
import { figures } from "./figures.mjs";
import { lazyParts, oneCore } from "./one-core.mjs";

const root = fileURLToPath(new URL("..", import.meta.url));
const outdir = `${root}dist`; // only for names: esbuild itself writes nothing

export const PAGE_SCRIPT = "src/main.tsx";
const LAZY_PARTS = "src/ui/shell/lazy-parts.ts";
export const PAGE_STYLE = "src/ui/style.css";
const WORKER = "src/sw/sw.ts";

const shared = {
  absWorkingDir: root,
  bundle: true,
  minify: true,
  write: false,
  metafile: true,
  outdir,
  target: "es2022",
  plugins: [figures],
  jsx: "automatic",
  jsxImportSource: "preact",
  loader: { ".wasm": "file", ".woff2": "file", ".svg": "file", ".png": "file" },
  // What the library for papers would fetch for pages of HTML, which we do not print.
  external: ["canvg", "dompurify", "html2canvas"],
  legalComments: "none",
  logLevel: "warning",
};

const nameInDist = (path) => relative(outdir, path).replaceAll("\\", "/");

/** The page: hashed names under assets/, one chunk for each lazy import. */
export const bundlePage = async (id) => {
  const page = {
    ...shared,
    entryPoints: [PAGE_SCRIPT, PAGE_STYLE],
    format: "esm",
    splitting: true,
    entryNames: "assets/[name]-[hash]",
    chunkNames: "assets/[name]-[hash]",
    assetNames: "assets/[name]-[hash]",
    publicPath: "/",
    define: { __BUILD_ID__: JSON.stringify(id) },
  };
  const { metafile } = await esbuild.build(page);
  const lazy = lazyParts(root, metafile);
  const result = await esbuild.build({
    ...page,
    plugins: [...page.plugins, oneCore(root, lazy, PAGE_SCRIPT, LAZY_PARTS)],
  });
  const outputs = Object.entries(result.metafile.outputs).map(([path, about]) => ({
    name: path.replace(/^dist\//, ""),
    ...about,
  }));
  const script = outputs.find((output) => output.entryPoint === PAGE_SCRIPT);
  const style = outputs.find((output) => output.entryPoint === PAGE_STYLE);
  refuseStraySheets(outputs, style);
  const chunks = neededAtOnce(script, outputs);
  return {
    files: new Map(result.outputFiles.map((file) => [nameInDist(file.path), file.contents])),
    script: script.name,
    style: style.name,
    chunks,
    firstScreen: [script.name, style.name, ...chunks],
  };
};

/** The worker: one classic script at the root, because its folder is its scope. */
export const bundleWorker = async (id, precache) => {
  const result = await esbuild.build({
    ...shared,
    entryPoints: [WORKER],
    format: "iife",
    define: {
      __BUILD_ID__: JSON.stringify(id),
      __PRECACHE__: JSON.stringify(precache),
      "process.env.NODE_ENV": '"production"',
    },
  });
  return result.outputFiles[0].contents;
};

/** A style sheet imported from a script would be built and never linked. */
const refuseStraySheets = (outputs, style) => {
  const stray = outputs.find((output) => output.name.endsWith(".css") && output !== style);
  if (stray !== undefined) {
    throw new Error(`${stray.name} is linked nowhere: @import its source in ${PAGE_STYLE}`);
  }
};

/** Chunks that the browser must have before the first line of the page's script runs. */
const neededAtOnce = (script, outputs) => {
  const found = new Set();
  const visit = (output) => {
    for (const { path, kind } of output.imports) {
      const name = path.replace(/^dist\//, "");
      if (kind !== "import-statement" || found.has(name)) continue;
      found.add(name);
      visit(outputs.find((other) => other.name === name));
    }
  };
  visit(script);
  return [...found];
};
