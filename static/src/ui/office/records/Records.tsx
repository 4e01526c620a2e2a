// A section of the Office for one kind of record: its list, or the form of one.

import { Nothing } from "../../parts/Nothing.tsx";
import { docsOf } from "./of-kind.ts";
import { RecordForm } from "./RecordForm.tsx";
import { RecordList } from "./RecordList.tsx";
import { type OfficeKind, SPECS } from "./specs.ts";

interface Which {
  kind: OfficeKind;
  section: string;
  id: string | undefined;
  /** The screen that sent somebody here, as parts of its address; empty: the list. */
  from: readonly string[];
}

export const Records = ({ kind, section, id, from }: Which) => {
  const spec = SPECS[kind];
  if (id === undefined) return <RecordList spec={spec} section={section} />;
  if (id !== "new" && !docsOf(kind).has(id)) {
    return <Nothing says={`This ${spec.one} is not on this phone.`} />;
  }
  return (
    <RecordForm
      key={id}
      spec={spec}
      id={id === "new" ? null : id}
      back={from.length > 0 ? from : ["office", section]}
      asked={from.length > 0}
    />
  );
};
