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
import { linkFor } from "../page-link.ts";
import type { Stop } from "./drops.ts";
import { type Note, noteOf, noteText } from "./note.ts";
import { Strokes } from "./Signature.tsx";

interface Papers {
  file: File;
  text: string;
}

/** The note as a file and as a message, both with the way to the customer's own page. */
const papersOf = async (note: Note, customer: string, name: string): Promise<Papers> => {
  const { notePdf } = await import("./note-pdf.ts");
  const link = await linkFor(customer);
  const file = new File([notePdf(note, link)], name, { type: "application/pdf" });
  return { file, text: noteText(note, link) };
};

const maySend = (file: File): boolean => navigator.canShare?.({ files: [file] }) ?? false;

/** To whatever app the person chooses; changing one's mind there is no fault. */
const send = async ({ file, text }: Papers): Promise<void> => {
  try {
    await navigator.share({ files: [file], title: file.name, text });
  } catch (fault) {
    if (!(fault instanceof DOMException && fault.name === "AbortError")) {
      say.trouble(faultWords(fault));
    }
  }
};

const keep = ({ file }: Papers): void => {
  const address = URL.createObjectURL(file);
  const link = document.createElement("a");
  link.href = address;
  link.download = file.name;
  link.click();
  // The browser has taken the file over by the next turn.
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
};

const Paper = (props: { note: Note; customer: string; name: string }) => {
  const { note, customer, name } = props;
  const [making, setMaking] = useState(false);
  const make = async (give: (papers: Papers) => unknown) => {
    setMaking(true);
    try {
      await give(await papersOf(note, customer, name));
    } catch (fault) {
      say.trouble(faultWords(fault));
    } finally {
      setMaking(false);
    }
  };
  const share = (papers: Papers) => (maySend(papers.file) ? send(papers) : keep(papers));
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
      <Paper note={note} customer={stop.customer} name={`delivery-note-${on || "today"}.pdf`} />
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
