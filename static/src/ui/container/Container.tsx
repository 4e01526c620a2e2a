// A container's own page: how it stands, what does not fit, what can happen, what has happened.

import { isNumber } from "../../domain/numbers.ts";
import { blank } from "../../domain/standing.ts";
import { book } from "../../store/book.ts";
import { hrefTo } from "../shell/route.ts";
import type { ScreenProps } from "../shell/screens.ts";
import { useTitle } from "../shell/title.ts";
import { containerName } from "../words.ts";
import { Deeds } from "./Deeds.tsx";
import { History } from "./History.tsx";
import { Label } from "./Label.tsx";
import { Questions } from "./Questions.tsx";
import { Ready } from "./Ready.tsx";
import { Standing } from "./Standing.tsx";

export default ({ path }: ScreenProps) => {
  const number = path[0] ?? "";
  const standing = book.containers.value.get(number) ?? blank(number);
  useTitle(isNumber(number) ? containerName(standing) : "Not a number");
  if (!isNumber(number)) {
    return (
      <section class="form">
        <p>“{number}” is not a container's number.</p>
        <a class="button main" href={hrefTo("find")}>
          Find by number
        </a>
      </section>
    );
  }
  return (
    <>
      <Standing standing={standing} />
      <Questions key={number} standing={standing} />
      <Deeds key={number} standing={standing} />
      <Ready standing={standing} />
      <Label standing={standing} />
      {standing.registered !== null && standing.owner === null && (
        <div class="form">
          <a class="button" href={hrefTo("office", "labels", "plates", number)}>
            Print its plate
          </a>
        </div>
      )}
      <History key={number} number={number} />
    </>
  );
};
