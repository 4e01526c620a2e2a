// The phone's store did not open. Without it nothing could be kept, so nothing else is offered.

import { faultWords } from "../parts/say.ts";

export const NotOpened = (props: { fault: unknown; onAgain: () => void }) => (
  <main class="form">
    <h1>The app cannot start yet</h1>
    <p role="alert">{faultWords(props.fault)}</p>
    <p>What was recorded on this phone before is still there.</p>
    <button type="button" class="button main" onClick={props.onAgain}>
      Try again
    </button>
  </main>
);
