// A list with nothing in it. A phone that has never heard from the brewery does not know that there
// is nothing, and says so instead.

import type { ComponentChildren } from "preact";
import { sync } from "../../sync/engine.ts";
import { Button } from "./Button.tsx";
import { Empty } from "./Empty.tsx";

/** What a phone says that has never heard from the brewery; `still` is what can be done as it is. */
export const NotHeard = (props: { still?: string; children?: ComponentChildren }) => (
  <Empty
    says={
      sync.state.value.busy
        ? "Fetching what the brewery knows. It takes a moment the first time."
        : `This phone has not heard from the brewery yet, so it does not know what is there. ${props.still ?? ""}`
    }
  >
    <Button onPress={() => void sync.now()}>Ask the brewery</Button>
    {props.children}
  </Empty>
);

export const Nothing = (props: { says: string; children?: ComponentChildren }) =>
  sync.state.value.lastSyncAt === null ? (
    <NotHeard>{props.children}</NotHeard>
  ) : (
    <Empty says={props.says}>{props.children}</Empty>
  );
