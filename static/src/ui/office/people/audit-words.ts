// One line of who did what.

import { sentence } from "../../words.ts";
import type { AuditLine, DeviceNames } from "./answers.ts";

/** "Link to pair: Bob" */
export const auditWords = ({ what, about }: AuditLine): string =>
  about === "" ? sentence(what) : `${sentence(what)}: ${about}`;

/** Who did it and on which phone; nobody where it was the server's own command. */
export const auditBy = ({ who, device }: AuditLine, names: DeviceNames): string =>
  [who ?? "on the server", names.get(device ?? "") ?? ""].filter(Boolean).join(", ");
