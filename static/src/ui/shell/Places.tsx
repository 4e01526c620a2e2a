// The five places, named for where the person stands.

import { hrefTo } from "./route.ts";

// Drawn here: a cask under the spout, a vault, a handpump, a van, an open book.
const PLACES = [
  ["bench", "Bench", "M4 3h9v4M13 7v2M7 11h11a5 5 0 0 1 0 9H7a5 5 0 0 1 0-9M3 22h19"],
  ["cellar", "Cellar", "M3 22V12a9.5 9.5 0 0 1 19 0v10M8 22v-3a4.500 4.500 0 0 1 9 0v3M1 22h23"],
  ["bar", "Bar", "M10 22V11h5v11M12.500 11V8M10.500 8V3h4v5zM10 14H5v4M6 22h13"],
  [
    "out",
    "Out",
    "M2 18V6h12v12M14 10h5l4 4v4h-3M2 18h3m5 0h5M7.500 16a2 2 0 1 0 .01 0M17.500 16a2 2 0 1 0 .01 0",
  ],
  [
    "office",
    "Office",
    "M12.500 6C10 4 6 4 2.500 5v15c3.500-1 7.500-1 10 1 2.500-2 6.500-2 10-1V5C19 4 15 4 12.500 6Zm0 0v15",
  ],
] as const;

export const Places = ({ here }: { here: string }) => (
  <nav class="places" aria-label="Places">
    {PLACES.map(([place, name, drawing]) => (
      <a key={place} href={hrefTo(place)} aria-current={place === here ? "page" : undefined}>
        <svg viewBox="0 0 25 25" aria-hidden="true">
          <path d={drawing} fill="none" stroke="currentColor" stroke-width="1.8" />
        </svg>
        {name}
      </a>
    ))}
  </nav>
);
