// One line of who did what.

import { sentence } from "../../words.ts";
import type { AuditItem } from "./answers.ts";

/** "Link to pair: Bob" */
export const auditWords = ({ what, about }: AuditItem): string =>
  about === "" ? sentence(what) : `${sentence(what)}: ${about}`;

/** Who did it and on which phone; nobody where it was the server's own command. */
export const auditBy = ({ who, device }: AuditItem): string =>
  [who ?? "on the server", device ?? ""].filter(Boolean).join(", ");
