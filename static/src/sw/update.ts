// The page's side of an update: a new version waits until a person asks for it, and no tab is
// loaded anew under an entry that is being made.

import { effect, type ReadonlySignal, signal } from "@preact/signals";
import { USE_NOW } from "./use-now.ts";

/** A new version is here and waits to be used. */
export const updateReady = signal(false);

const HOUR_MS = 3_600_000;
let waiting: ServiceWorker | null = null;

/** Use the new version: it takes over, and then every tab that may loads itself anew. */
export const useUpdate = (): void => {
  waiting?.postMessage(USE_NOW);
};

/**
 * Register the worker and look for new versions, now, whenever the app is looked at, and hourly.
 * `halfMade` is true while something typed would be lost by loading the page anew.
 */
export const watchUpdates = async (halfMade: ReadonlySignal<boolean>): Promise<void> => {
  const workers = navigator.serviceWorker as ServiceWorkerContainer | undefined;
  if (workers === undefined) return; // no worker without HTTPS: the app then needs the network
  reloadWhenTakenOver(workers, halfMade);
  const registration = await workers.register("/sw.js", { updateViaCache: "none" });
  const offer = (worker: ServiceWorker | null) => {
    // Without a controller this is the first version of all, which nobody needs to be asked about.
    if (worker === null || workers.controller === null) return;
    waiting = worker;
    updateReady.value = true;
  };
  offer(registration.waiting);
  registration.addEventListener("updatefound", () => {
    const coming = registration.installing;
    coming?.addEventListener("statechange", () => {
      if (coming.state === "installed") offer(coming);
    });
  });
  // Without a network there is nothing to look for; the next look is soon enough.
  const look = () => registration.update().catch(() => undefined);
  document.addEventListener("visibilitychange", () => {
    if (document.visibilityState === "visible") void look();
  });
  setInterval(() => void look(), HOUR_MS);
};

const reloadWhenTakenOver = (
  workers: ServiceWorkerContainer,
  halfMade: ReadonlySignal<boolean>,
): void => {
  let hadOne = workers.controller !== null;
  let reloading = false;
  workers.addEventListener("controllerchange", () => {
    updateReady.value = false;
    if (!hadOne) {
      hadOne = true; // the first worker has taken charge of the page that it came with
      return;
    }
    // Now, or as soon as what is being typed has been saved or given up.
    effect(() => {
      if (halfMade.value || reloading) return;
      reloading = true;
      location.reload();
    });
  });
};
