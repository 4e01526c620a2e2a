// One beer or all: simple buttons, each with how many there are.

import { useState } from "preact/hooks";
import { beer, beerShown, beers } from "./state.ts";

/** So many stand side by side on a small phone without pushing the list off the screen. */
const AT_ONCE = 2;

const Pick = (props: { label: string; on: boolean; onPress: () => void }) => (
  <button type="button" class="button pick" aria-pressed={props.on} onClick={props.onPress}>
    {props.label}
  </button>
);

export const ChooseBeer = () => {
  const [open, setOpen] = useState(false);
  const all = beers.value;
  if (all.length < 2) return null;
  const chosen = all.find((one) => one.beer === beerShown.value);
  if (!open && all.length > AT_ONCE) {
    return (
      <button
        type="button"
        class="button"
        aria-expanded="false"
        onClick={() => setOpen(true)}
        aria-label={`Beer: ${chosen?.name ?? "all"}. Choose another`}
      >
        {chosen ? `${chosen.name} only` : `All ${all.length} beers`}
      </button>
    );
  }
  const pick = (id: string | null) => {
    beer.value = id;
    setOpen(false);
  };
  return (
    <fieldset class="buttons" aria-label="Which beer">
      <Pick label="All beers" on={chosen === undefined} onPress={() => pick(null)} />
      {all.map((one) => (
        <Pick
          key={one.beer}
          label={`${one.name} ${one.count}`}
          on={one === chosen}
          onPress={() => pick(one.beer)}
        />
      ))}
    </fieldset>
  );
};
