// Which component shows which address. Bench is there from the start: it is where the app opens and
// where time is short. The others come when first gone to.

import type { ComponentType } from "preact";

/** Every screen takes what the address says after its own name: "#/out/abc" gives Out ["abc"]. */
export interface ScreenProps {
  path: readonly string[];
}

export type Screen = ComponentType<ScreenProps>;

export interface Loadable {
  /** The title in the head line; a screen may set a nearer one with useTitle. */
  title: string;
  /** Which of the five places it belongs to, "" for none. */
  place: string;
  /** It names no containers but full ones at the brewery, and need not wait for the others. */
  fullOnly?: true;
  load: () => Promise<{ default: Screen }>;
}

export const SCREENS: { readonly [name: string]: Loadable } = {
  cellar: {
    ...{ title: "Cellar", place: "cellar", fullOnly: true },
    load: () => import("../cellar/Cellar.tsx"),
  },
  bar: {
    ...{ title: "Bar", place: "bar", fullOnly: true },
    load: () => import("../bar/Bar.tsx"),
  },
  out: { title: "Out", place: "out", load: () => import("../out/Out.tsx") },
  office: { title: "Office", place: "office", load: () => import("../office/Office.tsx") },
  c: { title: "Container", place: "", load: () => import("../container/Container.tsx") },
  begin: { title: "To begin with", place: "", load: () => import("../people/Begin.tsx") },
  pair: { title: "Pair this phone", place: "", load: () => import("../people/Pair.tsx") },
  "sign-in": { title: "Sign in", place: "", load: () => import("../people/SignIn.tsx") },
  who: { title: "Who has it?", place: "", load: () => import("../people/Who.tsx") },
  find: { title: "Find", place: "", load: () => import("../container/Find.tsx") },
};
