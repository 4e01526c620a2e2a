// Lines that tell something about the app itself, under the head line.

import { signal } from "@preact/signals";
import { book } from "../../store/book.ts";
import { updateReady, useUpdate } from "../../sw/update.ts";
import { halfMade } from "./half-made.ts";

/** Put off until the app is opened again. */
const later = signal(false);

export const UpdateStrip = () =>
  updateReady.value && !later.value && !halfMade.value ? (
    <div class="strip" role="status">
      <p>A new version is here.</p>
      <button type="button" class="button main" onClick={() => useUpdate()}>
        Use it now
      </button>
      <button
        type="button"
        class="button quiet"
        onClick={() => {
          later.value = true;
        }}
      >
        Later
      </button>
    </div>
  ) : null;

/** The phone's store is in trouble, in its own words. */
export const TroubleStrip = () => {
  const { trouble } = book.waiting.value;
  return trouble === null ? null : (
    <div class="strip" role="alert">
      <p class="look">{trouble}</p>
    </div>
  );
};

export const DemoStrip = ({ demo }: { demo: boolean }) =>
  demo ? (
    <div class="strip demo">
      <p>Demo brewery: everything here is invented.</p>
    </div>
  ) : null;
