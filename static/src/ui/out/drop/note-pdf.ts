// The delivery note as PDF, drawn on the phone: at a pub's door there is often no network.

import { jsPDF } from "jspdf";
import { encode } from "uqr";
import { fontText } from "./font-text.ts";
import { type Note, THEIR_PAGE } from "./note.ts";
import { strokesOf } from "./Signature.tsx";

/** Millimetres on A4. */
const LEFT = 20;
const RIGHT = 190;
const TOP = 22;
const LAST = 270;
const SIGNATURE_WIDE = 80;
const SIGNATURE_HIGH = 32;
const CODE = 32;
/** The empty border without which a QR code is not found. Source: DENSO WAVE, qrcode.com. */
const QUIET_MODULES = 4;

class Paper {
  readonly #pdf = new jsPDF({ unit: "mm", format: "a4" });
  #y = TOP;

  constructor(title: string) {
    this.#pdf.setProperties({ title: fontText(title) });
  }

  room(high: number): void {
    if (this.#y + high <= LAST) return;
    this.#pdf.addPage();
    this.#y = TOP;
  }

  write(words: string, size: number, { bold = false, at = LEFT, after = 0 } = {}): void {
    this.#pdf.setFont("helvetica", bold ? "bold" : "normal").setFontSize(size);
    const lines: string[] = this.#pdf.splitTextToSize(fontText(words), RIGHT - at);
    for (const line of lines) {
      this.room(size / 2);
      this.#pdf.text(line, at, this.#y);
      this.#y += size / 2.2;
    }
    this.#y += after;
  }

  /** Beside what is written next: a number in front of its line. */
  beside(words: string, size: number): void {
    this.room(size);
    this.#pdf.setFont("helvetica", "bold").setFontSize(size);
    this.#pdf.text(fontText(words), LEFT, this.#y);
  }

  rule(): void {
    this.#pdf.setDrawColor(120).line(LEFT, this.#y - 3, RIGHT, this.#y - 3);
    this.#y += 3;
  }

  sign(signature: string): void {
    this.room(SIGNATURE_HIGH);
    this.#pdf.setDrawColor(0).setLineWidth(0.5).setLineCap("round");
    const scale = SIGNATURE_WIDE / 1000;
    for (const stroke of strokesOf(signature)) {
      stroke.forEach(([x, y], at) => {
        const [fromX, fromY] = stroke[at - 1] ?? [x, y];
        const top = this.#y;
        this.#pdf.line(
          LEFT + fromX * scale,
          top + fromY * scale,
          LEFT + x * scale,
          top + y * scale,
        );
      });
    }
    this.#y += SIGNATURE_HIGH;
  }

  /** A link as a code to scan, with its words beside it for those who type. */
  link(words: string, link: string): void {
    this.room(CODE);
    const { data, size } = encode(link, { ecc: "M", border: QUIET_MODULES });
    const module = CODE / size;
    const top = this.#y;
    this.#pdf.setFillColor("#000000");
    data.forEach((row, y) => {
      row.forEach((dark, x) => {
        const at = LEFT + x * module;
        if (dark) this.#pdf.rect(at, top + y * module, module, module, "F");
      });
    });
    this.#y = top + CODE / 4;
    this.write(`${words}:`, 11, { at: LEFT + CODE + 4 });
    this.write(link, 9, { at: LEFT + CODE + 4 });
    this.#y = top + CODE;
  }

  blob(): Blob {
    return this.#pdf.output("blob");
  }
}

/** With the link to the customer's page where there is one. */
export const notePdf = (note: Note, link: string | null): Blob => {
  const paper = new Paper(`Delivery note, ${note.customer}, ${note.day}`);
  paper.write(note.brewery, 18, { bold: true });
  paper.write(note.address, 10, { after: 6 });
  paper.write(`Delivery note, ${note.day}`, 14, { bold: true });
  paper.write(`To ${note.customer}`, 12, { after: 6 });
  paper.rule();
  for (const { number, what, more } of note.lines) {
    paper.beside(number, 12);
    paper.write(what, 11, { at: LEFT + 28 });
    paper.write(more, 9, { at: LEFT + 28, after: 3 });
  }
  paper.rule();
  for (const { what, says } of note.said) paper.write(`${what}: ${says}`, 11, { after: 1 });
  if (note.signature !== "") paper.sign(note.signature);
  if (link !== null) paper.link(THEIR_PAGE, link);
  return paper.blob();
};
