// The one place for wording: every sentence that a screen says about the ledger comes from here.
// What only screens that are fetched later say is imported from its own file.

export * from "./words/amounts.ts";
export * from "./words/done.ts";
export * from "./words/known.ts";
export * from "./words/marks.ts";
export * from "./words/names.ts";
export * from "./words/outcome.ts";
export * from "./words/queries.ts";
export * from "./words/standing.ts";
export * from "./words/time.ts";
