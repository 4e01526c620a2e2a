// The finings trials of one beer: their list, a new one, or one of them.

import { book } from "../../../store/book.ts";
import { known } from "../../known.ts";
import { may } from "../../mine.ts";
import { ownFigures } from "../../own-figures.ts";
import { Line, Lines } from "../../parts/Line.tsx";
import { Nothing } from "../../parts/Nothing.tsx";
import { NotMine } from "../../parts/NotMine.tsx";
import { hrefTo } from "../../shell/route.ts";
import { useTitle } from "../../shell/title.ts";
import { trialSays, trialsOf, trialTitle } from "./list.ts";
import { OneTrial } from "./OneTrial.tsx";
import { SetUp } from "./SetUp.tsx";

const List = ({ beer, name }: { beer: string; name: string }) => {
  useTitle("Finings trials");
  const trials = trialsOf(book.trials.value, beer, known.value);
  return (
    <>
      <div class="form">
        <p>{name}</p>
        <NotMine kind="trial" />
        {may("trial") && (
          <a class="button main wide" href={hrefTo("bench", "trials", beer, "new")}>
            Set a trial up
          </a>
        )}
      </div>
      {trials.length === 0 ? (
        <Nothing
          says={`No trial of ${name} is on record. Jars with rising doses show the lowest that clears it.`}
        />
      ) : (
        <Lines heading="On record" count={trials.length}>
          {trials.map(([id, trial]) => (
            <Line
              key={id}
              title={trialTitle(trial, known.value)}
              reason={trialSays(trial, known.value, ownFigures.value)}
              href={hrefTo("bench", "trials", beer, id)}
            />
          ))}
        </Lines>
      )}
    </>
  );
};

const Trials = ({ path }: { path: readonly string[] }) => {
  const [, beer = "", id] = path;
  const doc = book.beers.value.get(beer);
  if (doc === undefined) return <Nothing says="This beer is not on this phone." />;
  const name = doc.fields.name ?? "This beer";
  if (id === undefined) return <List beer={beer} name={name} />;
  if (id === "new") return <SetUp beer={beer} />;
  const trial = book.trials.value.get(id);
  if (trial === undefined) return <Nothing says="This trial is not on this phone." />;
  return <OneTrial key={id} id={id} trial={trial} beer={beer} />;
};

export default Trials;
