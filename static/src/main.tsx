// The page starts here.

import { render } from "preact";
import { Shell } from "./ui/shell/Shell.tsx";

const place = document.getElementById("app");
if (place === null) throw new Error("index.html has no #app");
render(<Shell />, place);
