// One trial: its jars with what to pipette, the finings going in, the readings, what they speak for.

import { CAUTIONS } from "../../../domain/cautions.ts";
import type { Facts } from "../../../domain/entries.ts";
import type { Trial } from "../../../domain/records.ts";
import { book } from "../../../store/book.ts";
import { known } from "../../known.ts";
import { may } from "../../mine.ts";
import { Button } from "../../parts/Button.tsx";
import { Line, Lines } from "../../parts/Line.tsx";
import { More } from "../../parts/More.tsx";
import { save } from "../../parts/say.ts";
import { goOnTo } from "../../shell/route.ts";
import { useTitle } from "../../shell/title.ts";
import { byWords, fullTimeWords } from "../../words.ts";
import {
  auxiliaryIn,
  doseWords,
  jarsOf,
  nextOf,
  readingsOf,
  readingWords,
  readWords,
  stepWords,
  whenWords,
} from "./jars.ts";
import { trialTitle } from "./list.ts";
import { lotsTried } from "./lots-tried.ts";
import { Proposed } from "./Proposed.tsx";
import { Read } from "./Read.tsx";

const set = (id: string, text: string, facts: Facts) =>
  save(text, () => book.record("trial", id, facts));

const Dosing = ({ id, trial }: { id: string; trial: Trial }) => {
  const next = nextOf(trial, known.value);
  if (next.is === "reading" || !may("trial")) return null;
  return (
    <div class="form">
      {next.is === "auxiliary" ? (
        <Button
          look="main"
          wide
          onPress={() => void set(id, "The auxiliary is in.", auxiliaryIn(trial, book.now()))}
        >
          The auxiliary is in
        </Button>
      ) : (
        <>
          {next.cannot !== null && <p class="look">{next.cannot}</p>}
          <Button
            look="main"
            wide
            cannot={next.cannot}
            onPress={() => void set(id, "The isinglass is in.", { started_at: book.now() })}
          >
            The isinglass is in
          </Button>
        </>
      )}
      <p class="small">{CAUTIONS.trial_order.words} Never mix the two before they are in a jar.</p>
    </div>
  );
};

/** What each jar gets, and what was read of it. */
const Jars = ({ trial }: { trial: Trial }) => {
  const sampleMl = trial.fields.sample_ml ?? 0;
  const dosed = trial.fields.started_at !== undefined;
  return (
    <Lines heading={dosed ? "The jars" : `Into each jar of ${sampleMl} mL`}>
      {jarsOf(trial).map((sample, n) => (
        <Line
          key={n}
          title={`Jar ${n + 1}: ${dosed ? stepWords(sample) : doseWords(sample, sampleMl)}`}
          reason={dosed ? readWords(sample) : stepWords(sample)}
        />
      ))}
    </Lines>
  );
};

/** Each reading with its way back: one that went wrong would count for ever. */
const Readings = ({ id, trial }: { id: string; trial: Trial }) => {
  const readings = readingsOf(trial).reverse();
  if (readings.length === 0) return null;
  const takeBack = (entry: string) => () =>
    void save("That reading does not count any more.", () =>
      book.record("trial_read", id, { jars: [], instead_of: [entry] }),
    );
  return (
    <Lines heading="Readings" count={readings.length}>
      {readings.map((reading) => (
        <Line
          key={reading.key}
          title={fullTimeWords(reading.since, known.value.now)}
          reason={`${readingWords(reading)}, ${byWords(reading)}`}
          {...(may("trial_read")
            ? { action: { label: "Take back", onPress: takeBack(reading.entry) } }
            : {})}
        />
      ))}
    </Lines>
  );
};

const When = ({ startedAt }: { startedAt: string }) => {
  const [since, deciding] = whenWords(startedAt, known.value.now);
  return (
    <p>
      {since} <strong>{deciding}</strong> Other times are for comparing.
    </p>
  );
};

export const OneTrial = (props: { id: string; trial: Trial; beer: string }) => {
  const { id, trial, beer } = props;
  useTitle("Finings trial");
  const startedAt = trial.fields.started_at;
  const from = lotsTried([trial], book.lots.value);
  return (
    <>
      <div class="form">
        <p>
          <strong>{book.beers.value.get(beer)?.fields.name}</strong>
          <br />
          {trialTitle(trial, known.value)}
        </p>
        {from !== "" && <p>{from}.</p>}
        {startedAt !== undefined && <When startedAt={startedAt} />}
      </div>
      {startedAt !== undefined && <Proposed trial={trial} beer={beer} />}
      <Dosing id={id} trial={trial} />
      {startedAt !== undefined && may("trial") && (
        <Read id={id} trial={trial} startedAt={startedAt} />
      )}
      <Jars trial={trial} />
      <Readings id={id} trial={trial} />
      {may("trial") && (
        <More label="It was set up by mistake">
          <div class="form">
            <Button
              onPress={async () => {
                const kept = await set(id, "The trial is thrown out.", { retired: true });
                if (kept) goOnTo("bench", "trials", beer);
              }}
            >
              Throw it out
            </Button>
          </div>
        </More>
      )}
    </>
  );
};
