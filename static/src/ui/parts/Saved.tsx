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

export const SavedStrip = () => {
  const now = said.value;
  if (now === null) return null;
  const canUndo = now.entries.length > 0 && !now.text.startsWith("Undone");
  return (
    <div class={`saved ${now.trouble ? "look" : ""}`}>
      <p class={now.trouble ? "look" : ""}>{saidWords()}</p>
      {canUndo && (
        <button type="button" class="button" onClick={() => void undo(now.text, now.entries)}>
          {now.entries.length > 1 ? `Undo all ${now.entries.length}` : "Undo"}
        </button>
      )}
      <button type="button" class="button quiet" onClick={say.nothing}>
        Close
      </button>
    </div>
  );
};
