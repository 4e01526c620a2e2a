// In place of what somebody's role does not go so far as to record: who may, and the way to say
// that somebody else has the phone. Nothing where they may.

import type { Kind } from "../../domain/entries.ts";
import { book } from "../../store/book.ts";
import { hrefTo } from "../shell/route.ts";

export const NotMine = ({ kind }: { kind: Kind }) => {
  const why = book.whyNot(kind);
  return why === null ? null : (
    <div class="form">
      <p>{why}</p>
      <a class="button" href={hrefTo("who")}>
        Somebody else has this phone
      </a>
    </div>
  );
};
