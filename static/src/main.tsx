// The page starts here: the frame at once, what stands in it as far as the phone's own book is read,
// so that all that is drawn is true.

import { render } from "preact";
import { book } from "./store/book.ts";
import { watchUpdates } from "./sw/update.ts";
import { sync } from "./sync/engine.ts";
import { followTheme } from "./ui/office/phone/theme.ts";
import { lookWhetherDemo } from "./ui/shell/demo.ts";
import { mustStay } from "./ui/shell/half-made.ts";
import { NotOpened } from "./ui/shell/NotOpened.tsx";
import { Shell } from "./ui/shell/Shell.tsx";

const place = document.getElementById("app");
if (place === null) throw new Error("index.html has no #app");

const open = async (): Promise<void> => {
  render(<Shell />, place);
  await book.open();
  sync.start();
  void lookWhetherDemo();
};
const start = (): void => {
  open().catch((fault: unknown) => render(<NotOpened fault={fault} onAgain={start} />, place));
};
followTheme();
start();
void watchUpdates(mustStay);
