// Prints the gzipped bytes of the script and style that the first screen waits for.
// A phone on one bar of signal fetches these before it shows anything.

import { readFileSync } from "node:fs";
import { gzipSync } from "node:zlib";

const dist = new URL("dist/", import.meta.url);
const { firstScreen } = JSON.parse(readFileSync(new URL("build.json", dist), "utf8"));

const bytes = firstScreen
  .map((name) => gzipSync(readFileSync(new URL(name, dist)), { level: 9 }).length)
  .reduce((sum, length) => sum + length, 0);
console.log(bytes);
