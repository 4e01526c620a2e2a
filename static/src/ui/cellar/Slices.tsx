// The lines of a long list, a slice at a time, so that thousands cost an old phone no more than
// the few that are looked at. Goes inside the ul of Lines.

import type { ComponentChildren } from "preact";
import { useState } from "preact/hooks";

export const Slices = <T,>(props: {
  items: readonly T[];
  each: (item: T) => ComponentChildren;
  size?: number;
}) => {
  const size = props.size ?? 20;
  const [shown, setShown] = useState(size);
  const rest = props.items.length - shown;
  return (
    <>
      {props.items.slice(0, shown).map(props.each)}
      {rest > 0 && (
        <li class="rest">
          <button type="button" class="button wide" onClick={() => setShown(shown + size * 2)}>
            {rest > size * 2 ? `Show ${size * 2} more of ${rest}` : `Show ${rest} more`}
          </button>
        </li>
      )}
    </>
  );
};
