// What stays behind in a container below the last pint that can be sold.

import { sediment } from "../../domain/cellar/sediment.ts";
import { CONTAINER_KINDS } from "../../domain/containers.ts";
import type { Settings } from "../../domain/figures.ts";
import type { Standing } from "../../domain/standing.ts";
import { beerDoc, type Known } from "../words/known.ts";

/** A beer's own is measured in a firkin and taken in proportion elsewhere; a keg has none of it. */
const ownMl = (standing: Standing, holdsMl: number | null, known: Known): number | null => {
  const beer = beerDoc(known, standing.contents?.gyle ?? "");
  const inFirkin = beer?.fields.sediment_firkin_ml;
  const firkinMl = CONTAINER_KINDS["firkin"]?.capacity_ml;
  if (inFirkin === undefined || holdsMl === null || !firkinMl || standing.shape === "keg") {
    return null;
  }
  return Math.floor((inFirkin * holdsMl) / firkinMl + 0.5);
};

/** Null where its kind is not known: then no sediment is taken off. */
export const sedimentMl = (standing: Standing, known: Known, settings: Settings): number | null => {
  const { kind, capacity_ml, contents } = standing;
  if (kind === null) return null;
  const holds_ml = capacity_ml ?? contents?.volume_ml ?? null;
  const sediment_ml = ownMl(standing, holds_ml, known);
  return sediment({ kind, holds_ml, sediment_ml }, settings).result.sediment_ml;
};
