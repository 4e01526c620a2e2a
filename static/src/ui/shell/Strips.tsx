// Lines that tell something about the app itself, under the head line.

import { signal } from "@preact/signals";
import { book } from "../../store/book.ts";
import { updateReady, useUpdate } from "../../sw/update.ts";
import { sync } from "../../sync/engine.ts";
import { demo } from "./demo.ts";
import { halfMade } from "./half-made.ts";
import { hrefTo, route } from "./route.ts";

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

const DOORS = {
  "not-set-up": {
    says: "This brewery has no owner yet: open the link that its server printed.",
    does: "Paste the link",
    screen: "begin",
  },
  "not-paired": {
    says: "This phone is not signed in. Recording goes on; it is sent once you are in.",
    does: "Sign in",
    screen: "sign-in",
  },
  revoked: {
    says: "An owner took this phone out of use. What you record is held for the owner to decide.",
    does: "Come in again",
    screen: "sign-in",
  },
} as const;

/** While the brewery does not let this phone in: what goes on, and what to do. */
export const DoorStrip = () => {
  const { door } = book.account.value;
  if (door === null || door === "in") return null;
  const { says, does, screen } = DOORS[door];
  // Whoever is there already, as by the printed link, is not sent there.
  if (route.value[0] === screen) return null;
  return (
    <div class="strip" role="status">
      <p>{says}</p>
      <a class="button" href={hrefTo(screen)}>
        {does}
      </a>
    </div>
  );
};

export const DemoStrip = () =>
  demo.value ? (
    <div class="strip demo">
      <p>Demo brewery: everything here is invented.</p>
    </div>
  ) : null;
