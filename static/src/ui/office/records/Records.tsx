// A section of the Office for one kind of record: its list, or the form of one.

import { Nothing } from "../../parts/Nothing.tsx";
import { docsOf } from "./of-kind.ts";
import { RecordForm } from "./RecordForm.tsx";
import { RecordList } from "./RecordList.tsx";
import { type OfficeKind, SPECS } from "./specs.ts";

export const Records = (props: { kind: OfficeKind; section: string; id: string | undefined }) => {
  const { kind, section, id } = props;
  const spec = SPECS[kind];
  if (id === undefined) return <RecordList spec={spec} section={section} />;
  if (id !== "new" && !docsOf(kind).has(id)) {
    return <Nothing says={`This ${spec.one} is not on this phone.`} />;
  }
  return <RecordForm key={id} spec={spec} id={id === "new" ? null : id} back={section} />;
};
