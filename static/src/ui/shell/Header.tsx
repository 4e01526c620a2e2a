// The head line of every screen: where you are, where the entries are, and find by number.

import { book } from "../../store/book.ts";
import { known } from "../known.ts";
import { person } from "../mine.ts";
import { ageWords } from "../words/time.ts";
import { hrefTo } from "./route.ts";

const Kept = () => {
  const { count, oldestAt, attention } = book.waiting.value;
  const age = oldestAt === null ? "" : ageWords(oldestAt, known.value.now);
  const oldest = age === "" || age === "just now" ? "" : `, oldest ${age}`;
  return (
    <a class={`kept ${attention > 0 ? "look" : ""}`} href={hrefTo("office", "entries")}>
      {attention > 0 ? (
        <span>
          <b>{attention}</b> {attention === 1 ? "needs" : "need"} attention
        </span>
      ) : count > 0 ? (
        <span>
          <b>{count}</b> on this phone{oldest}
        </span>
      ) : (
        <span>all at the brewery</span>
      )}
    </a>
  );
};

/** Where a phone goes from hand to hand: who has it, and the way to say that somebody else does. */
const Hand = () => {
  const people = book.account.value.me?.people ?? [];
  if (people.filter((one) => one.pin_check !== null).length < 2) return null;
  const name = person.value;
  return (
    <a
      class="icon whose"
      href={hrefTo("who")}
      aria-label={`${name} has this phone. Somebody else?`}
    >
      <b>{[...name][0]}</b>
    </a>
  );
};

export const Header = ({ title }: { title: string }) => (
  <header class="topline">
    {/* The focus comes here when the screen changes, so that ears hear where they are. */}
    <h1 tabIndex={-1}>{title}</h1>
    {book.begun.value && <Kept />}
    <Hand />
    <a class="icon" href={hrefTo("find")}>
      <span class="unseen">Find by number</span>
      <svg viewBox="0 0 26 26" aria-hidden="true">
        <path
          d="M11 3a8 8 0 1 0 .01 0ZM17 17l6.5 6.5"
          fill="none"
          stroke="currentColor"
          stroke-width="2.6"
          stroke-linecap="round"
        />
      </svg>
    </a>
  </header>
);
