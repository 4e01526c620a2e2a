// Small things that most screens are made of and the first is not: built as one file, which each
// of the others takes along (see build/one-core.mjs).

import "../attempt.ts";
import "../cellar/Slices.tsx";
import "../cellar/places.ts";
import "../parts/Empty.tsx";
import "../parts/in-view.ts";
import "../parts/Line.tsx";
import "../parts/More.tsx";
import "../parts/Nothing.tsx";
import "../parts/working.ts";
