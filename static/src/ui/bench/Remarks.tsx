// By whose figures a dose goes, above how it was worked out.

import type { DoseLine } from "./dose-line.ts";

export const Remarks = ({ line }: { line: DoseLine }) => (
  <>
    {(line.remarks ?? []).map(({ says, look }) => (
      <p key={says} class={look ? "look" : "small"}>
        {says}
      </p>
    ))}
  </>
);
