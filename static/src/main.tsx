// The page starts here: the phone's own book first, so that the first thing drawn is true.

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

const start = (): void => {
  book.open().then(
    () => {
      render(<Shell />, place);
      sync.start();
      void lookWhetherDemo();
    },
    (fault: unknown) => render(<NotOpened fault={fault} onAgain={start} />, place),
  );
};
followTheme();
start();
void watchUpdates(mustStay);
