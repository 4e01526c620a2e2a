// A drop that was handed over: what was said and signed, and its note to share.

import { useState } from "preact/hooks";
import { book } from "../../../store/book.ts";
import { known } from "../../known.ts";
import { Button } from "../../parts/Button.tsx";
import { Line, Lines } from "../../parts/Line.tsx";
import { faultWords, say } from "../../parts/say.ts";
import { containerHref, hrefTo } from "../../shell/route.ts";
import { useTitle } from "../../shell/title.ts";
import { customerName, sentence } from "../../words.ts";
import type { Stop } from "./drops.ts";
import { type Note, noteOf, noteText } from "./note.ts";
import { Strokes } from "./Signature.tsx";

const fileOf = async (note: Note, name: string): Promise<File> => {
  const { notePdf } = await import("./note-pdf.ts");
  return new File([notePdf(note)], name, { type: "application/pdf" });
};

const maySend = (file: File): boolean => navigator.canShare?.({ files: [file] }) ?? false;

/** To whatever app the person chooses; changing one's mind there is no fault. */
const send = async (file: File, note: Note): Promise<void> => {
  try {
    await navigator.share({ files: [file], title: file.name, text: noteText(note) });
  } catch (fault) {
    if (!(fault instanceof DOMException && fault.name === "AbortError")) {
      say.trouble(faultWords(fault));
    }
  }
};

const keep = (file: File): void => {
  const address = URL.createObjectURL(file);
  const link = document.createElement("a");
  link.href = address;
  link.download = file.name;
  link.click();
  // The browser has taken the file over by the next turn.
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
};

const Paper = ({ note, name }: { note: Note; name: string }) => {
  const [making, setMaking] = useState(false);
  const make = async (give: (file: File) => unknown) => {
    setMaking(true);
    try {
      await give(await fileOf(note, name));
    } catch (fault) {
      say.trouble(faultWords(fault));
    } finally {
      setMaking(false);
    }
  };
  const share = (file: File) => (maySend(file) ? send(file, note) : keep(file));
  return (
    <div class="above">
      <Button look="main" onPress={() => void make(share)}>
        {making ? "One moment…" : "Share the note"}
      </Button>
      <Button onPress={() => void make(keep)}>Save it</Button>
    </div>
  );
};

export const HandedOver = ({ stop }: { stop: Stop }) => {
  const name = customerName(known.value, stop.customer);
  useTitle(name);
  const brewery = book.breweries.value.get("brewery")?.fields ?? {};
  const note = noteOf(stop.fields, brewery, name);
  const { on = "" } = stop.fields;
  return (
    <div class="close">
      <Paper note={note} name={`delivery-note-${on || "today"}.pdf`} />
      {note.brewery === "" && (
        <p class="form look">
          The note says no name yet. <a href={hrefTo("office", "brewery")}>Enter the brewery’s</a>.
        </p>
      )}
      <Lines heading={`Handed over ${note.day}`} count={note.lines.length}>
        {note.lines.map(({ number, what, more }) => (
          <Line
            key={number}
            title={`${number}: ${what}`}
            reason={sentence(more)}
            href={containerHref(number)}
          />
        ))}
      </Lines>
      <section class="why facts">
        <dl>
          {note.said.map(({ what, says }) => (
            <div key={what}>
              <dt>{what}</dt>
              <dd>{says}</dd>
            </div>
          ))}
        </dl>
        {note.signature !== "" && <Strokes signature={note.signature} />}
      </section>
      <div class="above">
        <a class="button wide" href={hrefTo("out", "round")}>
          Back to the round
        </a>
      </div>
    </div>
  );
};
