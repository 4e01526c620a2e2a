// How many containers the brewery needs, kind by kind: the list, and the page of one kind.

import { useState } from "preact/hooks";
import { addDays, londonDate } from "../../../domain/calendar.ts";
import { setting } from "../../../domain/figures.ts";
import { fleetNeeded } from "../../../domain/fleet/needed.ts";
import { book } from "../../../store/book.ts";
import { known } from "../../known.ts";
import { ownFigures } from "../../own-figures.ts";
import { Button } from "../../parts/Button.tsx";
import { Field } from "../../parts/Field.tsx";
import { Line, Lines } from "../../parts/Line.tsx";
import { Nothing } from "../../parts/Nothing.tsx";
import { showWorking } from "../../parts/working.ts";
import { hrefTo } from "../../shell/route.ts";
import type { ScreenProps } from "../../shell/screens.ts";
import { useTitle } from "../../shell/title.ts";
import { containerKinds, kindName } from "../../words.ts";
import { AheadChart } from "./AheadChart.tsx";
import { askedOf, type Fleet, fleetOf, kindsInUse, standingDays } from "./fleet.ts";
import { needWords, standingWords, standsWords, turnWords } from "./fleet-words.ts";

const fleets = (): Fleet[] => {
  const kinds = new Set(kindsInUse(book.containers.value.values()));
  return Object.keys(containerKinds())
    .filter((kind) => kinds.has(kind))
    .map((kind) =>
      fleetOf(kind, book.containers.value.values(), book.trips.value, known.value.now),
    );
};

const asUsual = (fleet: Fleet) => ({
  fillsAWeek: Math.round(fleet.sentAWeek * 10) / 10,
  homeDays: setting("days_between_trips", ownFigures.value),
});

const workedOut = (fleet: Fleet, asked: ReturnType<typeof asUsual>) => {
  const { now } = known.value;
  return fleetNeeded(askedOf(fleet, asked, now, ownFigures.value), ownFigures.value);
};

const List = () => {
  useTitle("How many we need");
  const all = fleets();
  if (all.length === 0) return <Nothing says="No container is entered yet." />;
  return (
    <div class="sections">
      <Lines heading="By kind">
        {all.map((fleet) => {
          const { result } = workedOut(fleet, asUsual(fleet));
          const short = result.needed > result.have || result.short_in_weeks !== null;
          return (
            <Line
              key={fleet.kind}
              title={kindName(fleet.kind)}
              reason={`${standsWords(fleet)} ${needWords(result)}`}
              {...(short ? { tone: "look" as const } : {})}
              href={hrefTo("office", "fleet", fleet.kind)}
            />
          );
        })}
      </Lines>
    </div>
  );
};

const figureIn = (text: string, most: number): number | null => {
  const clean = text.trim().replace(",", ".");
  return /^\d{1,5}(\.\d{1,2})?$/.test(clean) && Number(clean) <= most ? Number(clean) : null;
};

const MOST_A_WEEK = 10_000;
const MOST_HOME_DAYS = 1000;

const One = ({ fleet }: { fleet: Fleet }) => {
  useTitle(`How many: ${kindName(fleet.kind)}`);
  const usual = asUsual(fleet);
  const standing = standingWords(standingDays(fleet, ownFigures.value));
  const [fills, setFills] = useState(String(usual.fillsAWeek));
  const [home, setHome] = useState(String(usual.homeDays));
  const fillsAWeek = figureIn(fills, MOST_A_WEEK);
  const homeDays = figureIn(home, MOST_HOME_DAYS);
  const worked =
    fillsAWeek === null || homeDays === null ? null : workedOut(fleet, { fillsAWeek, homeDays });
  const { now } = known.value;
  const short = worked?.result.short_in_weeks ?? null;
  return (
    <div class="close">
      <div class="form">
        <p>{standsWords(fleet)}</p>
        <Field
          label="To be sent out in a week"
          hint={`Until now ${usual.fillsAWeek} a week. Those for a bar of your own come on top.`}
          type="decimal"
          value={fills}
          onValue={setFills}
          fault={fillsAWeek === null ? `A figure up to ${MOST_A_WEEK}.` : null}
        />
        <Field
          label="Days at the brewery between two trips"
          hint={`Washing, racking, conditioning, waiting for the van. ${standing}`.trim()}
          type="decimal"
          value={home}
          onValue={setHome}
          fault={homeDays === null ? `Days, up to ${MOST_HOME_DAYS}.` : null}
        />
      </div>
      {worked !== null && (
        <>
          <div class="form" role="status">
            <p>
              <strong>{needWords(worked.result)}</strong>
            </p>
            {turnWords(worked.result).map((says) => (
              <p key={says}>{says}</p>
            ))}
          </div>
          <AheadChart
            atHome={worked.result.at_home_by_week}
            weekOn={(week) => addDays(londonDate(now), week * 7)}
            short={short}
            now={now}
          />
          <div class="form">
            <Button onPress={() => showWorking(`${kindName(fleet.kind)}: how many`, worked)}>
              How it is worked out
            </Button>
          </div>
        </>
      )}
    </div>
  );
};

const FleetScreen = ({ path }: ScreenProps) => {
  const kind = path[1];
  if (kind === undefined) return <List />;
  const fleet = fleets().find((one) => one.kind === kind);
  return fleet === undefined ? (
    <Nothing says="The brewery has no container of this kind." />
  ) : (
    <One key={kind} fleet={fleet} />
  );
};

export default FleetScreen;
