/** The kinds of container: pin, firkin, kilderkin, barrel, kegs. Twin of cellarapp/domain/containers.py. */

import figuresJson from "../../../cellarapp/domain/figures.json";
import { type Settings, setting } from "./figures.ts";

export interface ContainerKind {
  name: string;
  shape: "cask" | "keg";
  gallons: number | null;
  capacity_ml: number | null;
}

export const CONTAINER_KINDS: Readonly<Record<string, ContainerKind>> = figuresJson.container_kinds
  .value as Record<string, ContainerKind>;

export const LARGEST_ML = Math.max(
  ...Object.values(CONTAINER_KINDS).map((kind) => kind.capacity_ml ?? 0),
);

/** The largest volume that is believed of a container, mL; of one not registered, the largest kind's. */
export function mostThatFitsMl(capacityMl: number | null, settings: Settings | null): number {
  const capacity = capacityMl ?? LARGEST_ML;
  return (
    capacity + Math.floor((capacity * setting("fill_above_capacity_permille", settings)) / 1000)
  );
}
