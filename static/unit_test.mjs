// Runs one file of TypeScript tests: `node unit_test.mjs ../tests/front/domain/dosing.test.ts`.
// Node 20 cannot read TypeScript, so the test and what it imports are bundled first.

import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { fileURLToPath } from "node:url";
import * as esbuild from "esbuild";

const here = fileURLToPath(new URL(".", import.meta.url));
const folder = mkdtempSync(join(tmpdir(), "cellarapp-test-"));
const outfile = join(folder, "test.mjs");

try {
  await esbuild.build({
    entryPoints: [resolve(process.argv[2])],
    outfile,
    bundle: true,
    format: "esm",
    platform: "node",
    target: "node20",
    sourcemap: "inline",
    jsx: "automatic",
    jsxImportSource: "preact",
    // Tests live outside this folder, and would look for its packages in vain.
    nodePaths: [join(here, "node_modules")],
    define: { __BUILD_ID__: '"test"', __PRECACHE__: "[]" },
    logLevel: "warning",
  });
  const flags = ["--enable-source-maps", "--test-reporter=tap"];
  process.exitCode = spawnSync(process.execPath, [...flags, outfile], { stdio: "inherit" }).status;
} finally {
  rmSync(folder, { recursive: true });
}
