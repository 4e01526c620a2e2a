// What the build puts in place of these names (see build/bundle.mjs).

/** Names what was built: page and worker of one build carry the same. */
declare const __BUILD_ID__: string;

/** Worker only: every file to keep for use with no network. */
declare const __PRECACHE__: readonly { url: string; revision: string | null }[];

declare module "*.wasm" {
  const url: string;
  export default url;
}

declare module "*.svg" {
  const url: string;
  export default url;
}

/** The figures of the trade with where each comes from; the plain import leaves that out. */
declare module "*/figures.json?sources" {
  const figures: Readonly<
    Record<
      string,
      {
        name: string;
        unit: string;
        kind: string;
        source: string | null;
        read_on: string | null;
        remark: string;
      }
    >
  >;
  export default figures;
}
