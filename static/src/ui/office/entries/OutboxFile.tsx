// What waits, carried to the brewery as a file, and such a file read in.

import { useEffect, useState } from "preact/hooks";
import { londonDate } from "../../../domain/calendar.ts";
import { book } from "../../../store/book.ts";
import { faultWords, say } from "../../parts/say.ts";
import { count } from "../../words.ts";

/** Made when asked for; the address of the last one is let go with the screen. */
const useFile = (): [string | null, () => void] => {
  const [address, setAddress] = useState<string | null>(null);
  useEffect(() => () => (address === null ? undefined : URL.revokeObjectURL(address)), [address]);
  const make = async (): Promise<void> => {
    try {
      setAddress(URL.createObjectURL(await book.exportOutbox()));
    } catch (fault) {
      say.trouble(faultWords(fault));
    }
  };
  return [address, () => void make()];
};

const readIn = async (input: HTMLInputElement): Promise<void> => {
  const [file] = input.files ?? [];
  if (file === undefined) return;
  try {
    const { added, known } = await book.importOutbox(file);
    const news = added === 0 ? "Nothing new." : `${count(added, "entry", "entries")} read in.`;
    const had = known === 0 ? "" : ` ${count(known, "entry was", "entries were")} here already.`;
    say.saved(news + had, []);
  } catch (fault) {
    say.trouble(faultWords(fault));
  }
  input.value = ""; // the same file can be chosen again
};

export const OutboxFile = ({ waiting }: { waiting: number }) => {
  const [address, make] = useFile();
  const name = `cellarapp-entries-${londonDate(book.now())}.json`;
  return (
    <section class="form">
      <h2>As a file</h2>
      <p class="small">
        Where a phone cannot reach the brewery, what it holds can be carried there as a file and
        read in on another one. Reading it in twice changes nothing.
      </p>
      {waiting > 0 &&
        (address === null ? (
          <button type="button" class="button" onClick={make}>
            Make a file of {count(waiting, "entry", "entries")}
          </button>
        ) : (
          <a class="button main" href={address} download={name}>
            Save {name}
          </a>
        ))}
      <label class="button file">
        Read a file in
        <input
          type="file"
          class="unseen"
          accept="application/json,.json"
          onChange={(event) => void readIn(event.currentTarget)}
        />
      </label>
    </section>
  );
};
