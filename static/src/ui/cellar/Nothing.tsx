// A list with nothing in it. A phone that has never heard from the brewery does not know that there
// is nothing, and says so instead.

import type { ComponentChildren } from "preact";
import { sync } from "../../sync/engine.ts";
import { Button } from "../parts/Button.tsx";
import { Empty } from "../parts/Empty.tsx";

export const Nothing = (props: { says: string; children?: ComponentChildren }) => {
  const { busy, lastSyncAt } = sync.state.value;
  if (lastSyncAt !== null) return <Empty says={props.says}>{props.children}</Empty>;
  return (
    <Empty
      says={
        busy
          ? "Fetching what the brewery knows. It takes a moment the first time."
          : "This phone has not heard from the brewery yet, so it does not know."
      }
    >
      <Button onPress={() => void sync.now()}>Ask the brewery</Button>
      {props.children}
    </Empty>
  );
};
