// The saved strip: what was saved, where it is now, and the way back.

import { book } from "../../store/book.ts";
import { said, say, undo } from "./say.ts";

/** Where entries are, in words; the least safe of them counts. */
export const whereWords = (entries: readonly string[]): string => {
  if (entries.length === 0) return "";
  const places = new Set(
    book.ownEntries.value.filter((own) => entries.includes(own.entry.id)).map((own) => own.where),
  );
  if (places.has("attention")) return "Needs attention.";
  return places.size === 1 && places.has("brewery") ? "At the brewery." : "On this phone.";
};

/**
 * How many containers, beers … the entries are about; a drop is about its containers, and a wrong
 * number put right about the one that was meant.
 */
const subjects = (entries: readonly string[]): number =>
  wasMoved(entries)
    ? 1
    : new Set(
        book.ownEntries.value
          .filter(({ entry }) => entry.kind !== "drop" && entries.includes(entry.id))
          .map(({ entry }) => entry.subject),
      ).size;

const wasMoved = (entries: readonly string[]): boolean =>
  book.ownEntries.value.some(
    ({ entry }) => entry.kind === "renumbered" && entries.includes(entry.id),
  );

export const saidWords = (): string => {
  const now = said.value;
  return now === null ? "" : `${now.text} ${whereWords(now.entries)}`.trim();
};

/** For ears: present all the time, so that a change of its words is read out. */
export const SavedForEars = () => (
  <p class="unseen" role="status" aria-live="polite">
    {saidWords()}
  </p>
);

/** `onWrong` adds "Wrong number" where the screen knows how to put that right. */
export const SavedStrip = ({ onWrong }: { onWrong?: (entries: readonly string[]) => void }) => {
  const now = said.value;
  if (now === null) return null;
  const many = subjects(now.entries);
  const canUndo = now.entries.length > 0 && !now.text.startsWith("Undone");
  return (
    <section class={`saved ${now.trouble ? "look" : ""}`} aria-label="Just now">
      <p class={now.trouble ? "look" : ""}>{saidWords()}</p>
      {canUndo && (
        <button type="button" class="button" onClick={() => void undo(now.text, now.entries)}>
          {many > 1 ? `Undo all ${many}` : "Undo"}
        </button>
      )}
      {canUndo && onWrong && many === 1 && (
        <button type="button" class="button" onClick={() => onWrong(now.entries)}>
          Wrong number
        </button>
      )}
      {!onWrong && (
        <button type="button" class="icon" onClick={say.nothing}>
          <span class="unseen">Close</span>
          <svg viewBox="0 0 26 26" aria-hidden="true">
            <path d="M6 6l14 14m0-14L6 20" stroke="currentColor" stroke-width="2.6" />
          </svg>
        </button>
      )}
    </section>
  );
};
