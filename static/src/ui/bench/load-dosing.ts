// The reckoning of doses is not needed for the first screen: it is fetched right after.

import { signal } from "@preact/signals";

export const dosing = signal<typeof import("./dosing.ts") | null>(null);

/** Settles when it is there, or when this phone has not got it; filling goes on without. */
export const dosingReady = async (): Promise<void> => {
  try {
    dosing.value ??= await import("./dosing.ts");
  } catch {
    // Not kept on this phone yet and no signal: the strip is not shown and no dose is noted.
  }
};

export const loadDosing = (): void => void dosingReady();
