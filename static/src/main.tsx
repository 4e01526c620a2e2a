// The page starts here.

import { render } from "preact";

const place = document.getElementById("app");
if (place === null) throw new Error("index.html has no #app");
render(<h1>cellarapp</h1>, place);
