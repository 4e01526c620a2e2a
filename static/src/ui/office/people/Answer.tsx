// What the brewery has answered, or why there is no answer yet.

import type { ComponentChildren } from "preact";
import { Button } from "../../parts/Button.tsx";
import type { Answered } from "./telling.ts";

export const Answer = <T,>(props: {
  of: Answered<T>;
  children: (answer: T) => ComponentChildren;
}) => {
  const { answer, fault, again } = props.of;
  if (answer !== null) return <>{props.children(answer)}</>;
  if (fault === null) return <p class="form small">Asking the brewery…</p>;
  return (
    <section class="form">
      <p role="alert">{fault}</p>
      <Button onPress={again}>Try again</Button>
    </section>
  );
};
