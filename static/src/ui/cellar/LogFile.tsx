// A temperature logger's file, read on the phone: what was found is said before it is kept.

import { useState } from "preact/hooks";
import { readLog } from "../../domain/cellar/logger.ts";
import { DomainError } from "../../domain/errors.ts";
import { book } from "../../store/book.ts";
import { known } from "../known.ts";
import { ownFigures } from "../own-figures.ts";
import { Button } from "../parts/Button.tsx";
import { save } from "../parts/say.ts";
import { count } from "../words.ts";
import { asText, forLedger, logWords, type PlaceTemp, refusalWords } from "./temperatures.ts";

type Log = ReturnType<typeof readLog>["result"];

interface Read {
  name: string;
  log: Log | null;
  trouble: string;
}

/** A folder's file names may be long; the ledger keeps this much. */
const MOST_NAME = 120;

/** Of a logger's whole year; a film chosen by mistake would fill an old phone. */
const MOST_BYTES = 8_000_000;

const read = async (file: File): Promise<Read> => {
  const name = file.name.slice(0, MOST_NAME);
  if (file.size > MOST_BYTES) {
    return { name, log: null, trouble: `${name}: too large to be a logger's file of some months.` };
  }
  try {
    const { result } = readLog({ text: asText(await file.arrayBuffer()) }, ownFigures.value);
    return { name, log: result, trouble: "" };
  } catch (fault) {
    if (!(fault instanceof DomainError)) throw fault;
    return { name, log: null, trouble: `${name}: ${refusalWords(fault)}` };
  }
};

export const LogFile = ({ place }: { place: PlaceTemp }) => {
  const [found, setFound] = useState<Read | null>(null);
  const log = found?.log ?? null;
  const keep = async () => {
    if (found === null || log === null) return;
    const series = forLedger(log.readings);
    const kept = await save(`${place.name}: ${count(series.length, "reading")} taken in.`, () =>
      book.record("temperature", place.id, { series, read_from: found.name }),
    );
    if (kept) setFound(null);
  };
  return (
    <div class="log-file">
      <label class="button wide">
        Read a logger's file (CSV)
        <input
          type="file"
          class="unseen"
          accept=".csv,.txt,text/csv,text/plain"
          onChange={(event) => {
            const [file] = event.currentTarget.files ?? [];
            event.currentTarget.value = "";
            if (file !== undefined) void read(file).then(setFound);
          }}
        />
      </label>
      <div role="status">
        {found !== null && found.trouble !== "" && <p class="look">{found.trouble}</p>}
        {log !== null && <p>{logWords(log.readings, log.faults, known.value.now)}</p>}
        {log?.faults.slice(0, 3).map((fault) => (
          <p class="small look" key={fault.line}>
            {fault.says}
          </p>
        ))}
      </div>
      {log !== null && log.readings.length > 0 && (
        <div class="buttons">
          <Button onPress={() => void keep()}>Take them in</Button>
          <Button look="quiet" onPress={() => setFound(null)}>
            Leave it
          </Button>
        </div>
      )}
    </div>
  );
};
