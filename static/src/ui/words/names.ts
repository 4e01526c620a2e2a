// What things are called in a sentence.

import { CONTAINER_KINDS } from "../../domain/containers.ts";
import { beerDoc, type Known } from "./known.ts";

/** The catalogue of container kinds, smallest cask first. */
export const containerKinds = (): typeof CONTAINER_KINDS => CONTAINER_KINDS;

/** "Firkin"; "Container" while nobody has said what it is. */
export const kindName = (kind: string | null | undefined): string =>
  (kind && CONTAINER_KINDS[kind]?.name) || "Container";

/** The same within a sentence: "firkin", "30 L keg". */
export const kindWords = (kind: string | null | undefined): string =>
  kindName(kind).replace(/^[A-Z](?=[a-z])/, (first) => first.toLowerCase());

/** "Firkin 117". */
export const containerName = (container: { number: string; kind: string | null }): string =>
  `${kindName(container.kind)} ${container.number}`;

export const beerName = (known: Known, beer: string): string =>
  known.beers.get(beer)?.fields.name ?? "a beer not known here";

/** "gyle 318". */
export const gyleName = (known: Known, gyle: string): string => {
  const number = known.gyles.get(gyle)?.fields.number;
  return number === undefined ? "a gyle not known here" : `gyle ${number}`;
};

/** The beer of a gyle, "" where the phone does not know it. */
export const beerOfGyle = (known: Known, gyle: string): string =>
  beerDoc(known, gyle)?.fields.name ?? "";

/** "Oystercatcher, gyle 318". */
export const brewName = (known: Known, gyle: string): string => {
  const beer = beerOfGyle(known, gyle);
  return beer === "" ? gyleName(known, gyle) : `${beer}, ${gyleName(known, gyle)}`;
};

export const customerName = (known: Known, customer: string): string =>
  known.customers.get(customer)?.fields.name ?? "a customer not known here";

/** What a place is called: "Cold room". */
export const placeName = (known: Known, place: string): string =>
  place === "brewery"
    ? "the brewery"
    : (known.places.get(place)?.fields.name ?? "a place not known here");
