// What was done, in a word or two, with nothing else known.

/** What was done, in a word or two, with nothing else known: for buttons and short sentences. */
const DONE: { [kind: string]: string } = {
  registered: "Entered",
  washed: "Washed",
  inspected: "Inspected",
  filled: "Filled",
  dosed: "Added to",
  moved: "Moved",
  stillaged: "Set on the stillage",
  vented: "Vented",
  tapped: "Tapped",
  stooped: "Tilted",
  dipped: "Dipped",
  checked: "Checked",
  planned: "Picked for a sale",
  emptied: "Emptied",
  sent: "Sent out",
  returned: "Came back",
  set_aside: "Set aside",
  released: "Back in use",
  missing: "Down as missing",
  found: "Found",
  scrapped: "Scrapped",
  noted: "Note",
  reported: "Reported by a finder",
  told: "The customer says",
  forgotten: "What a finder left of themselves erased",
  voided: "Undone",
  renumbered: "Wrong number",
  settled: "Settled",
  brewery: "The brewery",
  beer: "Beer",
  gyle: "Gyle",
  place: "Place",
  customer: "Customer",
  setting: "Figure",
  drop: "Drop",
  lot: "Lot",
  solution: "Solution",
  trial: "Finings trial",
  chased: "Chased",
  erased: "Personal data erased",
  linked: "Link to their page made",
  unlinked: "Links to their page stopped",
  temperature: "Temperature",
  solution_used: "Solution used",
  solution_checked: "Solution checked",
  trial_read: "Finings trial read",
};

export const doneWords = (kind: string): string => DONE[kind] ?? "Something was noted";

const TOLD: { [says: string]: string } = {
  empty: "empty, ready to collect",
  not_here: "not here",
};

/** What a customer says of a container; that it is there again where an earlier word is taken back. */
export const toldWords = (says: string): string => TOLD[says] ?? "here after all";
