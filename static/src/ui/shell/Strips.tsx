// Lines that tell something about the app itself, under the head line.

import { signal } from "@preact/signals";
import { book } from "../../store/book.ts";
import { updateReady, useUpdate } from "../../sw/update.ts";
import { sync } from "../../sync/engine.ts";
import { demo } from "./demo.ts";
import { halfMade } from "./half-made.ts";
import { hrefTo } from "./route.ts";

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

/** Told once, such as that the brewery's ledger was restored from a copy. */
export const NoticeStrip = () =>
  sync.notice.value === null ? null : (
    <div class="strip" role="status">
      <p>{sync.notice.value}</p>
      <button
        type="button"
        class="button"
        onClick={() => {
          sync.notice.value = null;
        }}
      >
        Seen
      </button>
    </div>
  );

const person = book.setting<string>("person", "");

/** Until somebody's name stands beside what this phone records. */
export const NameStrip = () =>
  person.value === "" && !demo.value ? (
    <div class="strip">
      <p>What is noted here carries no name yet.</p>
      <a class="button" href={hrefTo("office", "phone")}>
        Say who
      </a>
    </div>
  ) : null;

export const DemoStrip = () =>
  demo.value ? (
    <div class="strip demo">
      <p>Demo brewery: everything here is invented.</p>
    </div>
  ) : null;
