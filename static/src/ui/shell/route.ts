// Which screen is shown, read from the address after the #: "#/c/117" is ["c", "117"].
// The address is the only state, so that Back, a bookmark and a second tab all work.

import { computed, signal } from "@preact/signals";
import { type Link, readLink } from "./link.ts";

const read = (): string[] =>
  location.hash
    .replace(/^#\/?/, "")
    .split("/")
    .filter((part) => part !== "")
    .map((part) => {
      try {
        return decodeURIComponent(part);
      } catch {
        return part; // a hand-typed % that is no code: take it as it stands
      }
    });

/** A link with a secret becomes its screen; the secret stays with this step of the history. */
const hideSecret = (): void => {
  const link = readLink(location.hash);
  if (link !== null) keepSecret(link);
};

const keepSecret = ({ way, secret }: Link): void =>
  history.replaceState({ secret }, "", `#/${way}`);

hideSecret();
const parts = signal<readonly string[]>(read());
addEventListener("hashchange", () => {
  hideSecret();
  parts.value = read();
});

/** The secret of the link that led here, also after a reload; "" where there is none. */
export const secretHere = (): string => {
  const { secret } = (history.state ?? {}) as { secret?: unknown };
  return typeof secret === "string" ? secret : "";
};

/** To where a pasted link leads. */
export const follow = (link: Link): void => {
  keepSecret(link);
  parts.value = read();
};

/** The parts of the address; ["bench"] where it says nothing. */
export const route = computed(() => (parts.value.length === 0 ? ["bench"] : parts.value));

/** The address of a screen: hrefTo("c", "117") is "#/c/117". */
export const hrefTo = (...path: string[]): string => `#/${path.map(encodeURIComponent).join("/")}`;

/** The address of a form in the Office that comes back to this screen once it is kept or left. */
export const formAndBack = (section: string, id: string): string =>
  hrefTo("office", section, id, ...route.value);

/** The address of a container's own page. */
export const containerHref = (number: string): string => hrefTo("c", number);

export const goTo = (...path: string[]): void => {
  location.hash = hrefTo(...path);
};

/** Go on without leaving a step behind, so that Back does not return to a passing screen. */
export const goOnTo = (...path: string[]): void => {
  location.replace(hrefTo(...path));
};
