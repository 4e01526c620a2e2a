// Puts the built files on disk, each with the compressed forms that the server may send instead.

import { mkdir, rename, rm, writeFile } from "node:fs/promises";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { promisify } from "node:util";
import { brotliCompress, constants, gzip } from "node:zlib";

const root = fileURLToPath(new URL("..", import.meta.url));
const alreadyCompressed = /\.(png|woff2)$/;

const compressed = async (name, bytes) => {
  if (alreadyCompressed.test(name)) return [];
  const params = { [constants.BROTLI_PARAM_QUALITY]: constants.BROTLI_MAX_QUALITY };
  return [
    [`${name}.br`, await promisify(brotliCompress)(bytes, { params })],
    [`${name}.gz`, await promisify(gzip)(bytes, { level: constants.Z_BEST_COMPRESSION })],
  ].filter(([, smaller]) => smaller.length < bytes.length);
};

/** Write beside dist/ first and swap by renaming. */
export const writeDist = async (files) => {
  const dist = join(root, "dist");
  const next = join(root, `dist-next-${process.pid}`);
  const old = join(root, `dist-old-${process.pid}`);
  for (const [name, bytes] of files) {
    for (const [path, content] of [[name, bytes], ...(await compressed(name, bytes))]) {
      await mkdir(dirname(join(next, path)), { recursive: true });
      await writeFile(join(next, path), content);
    }
  }
  await rename(dist, old).catch((error) => {
    if (error.code !== "ENOENT") throw error; // the first build has nothing to move away
  });
  await rename(next, dist);
  await rm(old, { recursive: true, force: true });
};
