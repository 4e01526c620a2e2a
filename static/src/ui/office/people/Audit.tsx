// Who did what about people, phones and held entries, the latest first.

import { useState } from "preact/hooks";
import { known } from "../../known.ts";
import { Button } from "../../parts/Button.tsx";
import { Line, Lines } from "../../parts/Line.tsx";
import { faultWords, say } from "../../parts/say.ts";
import { useTitle } from "../../shell/title.ts";
import { fullTimeWords } from "../../words.ts";
import { Answer } from "./Answer.tsx";
import {
  type AuditAnswer,
  type AuditLine,
  type DeviceAnswer,
  type DeviceNames,
  namesOf,
} from "./answers.ts";
import { auditBy, auditWords } from "./audit-words.ts";
import { ForOwner } from "./ForOwner.tsx";
import { tell, useAnswer } from "./telling.ts";

const PATH = "/api/audit";

const All = ({ first, names }: { first: AuditAnswer; names: DeviceNames }) => {
  const [more, setMore] = useState<AuditAnswer[]>([]);
  const [busy, setBusy] = useState(false);
  const pages = [first, ...more];
  const all: AuditLine[] = pages.flatMap((page) => page.lines);
  const next = pages.at(-1)?.next ?? null;
  const earlier = async () => {
    if (busy || next === null) return;
    setBusy(true);
    try {
      const page = await tell(`${PATH}?before=${next}`);
      setMore([...more, page as AuditAnswer]);
    } catch (fault) {
      say.trouble(faultWords(fault));
    }
    setBusy(false);
  };
  return (
    <>
      <Lines heading="Who did what">
        {all.map((line) => (
          <Line
            key={line.id}
            title={auditWords(line)}
            reason={`${fullTimeWords(line.at, known.value.now)}, ${auditBy(line, names)}`}
          />
        ))}
      </Lines>
      {next !== null && (
        <div class="form">
          <Button onPress={() => void earlier()}>{busy ? "Asking the brewery…" : "Earlier"}</Button>
        </div>
      )}
    </>
  );
};

const Shown = () => {
  useTitle("Who did what");
  const first = useAnswer<AuditAnswer>(PATH);
  const devices = useAnswer<{ devices: DeviceAnswer[] }>("/api/devices");
  return (
    <Answer of={devices}>
      {(there) => (
        <Answer of={first}>{(answer) => <All first={answer} names={namesOf(there)} />}</Answer>
      )}
    </Answer>
  );
};

export const Audit = () => (
  <ForOwner>
    <Shown />
  </ForOwner>
);
