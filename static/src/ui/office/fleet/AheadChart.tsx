// How many are likely at the brewery week by week: bars to look at, and the numbers behind them.

import { More } from "../../parts/More.tsx";
import { count, dateWords } from "../../words.ts";

const WIDTH = 330;
const HEIGHT = 120;

interface Ahead {
  /** After each week from now. */
  atHome: readonly number[];
  weekOn: (week: number) => string;
  /** The week in which none is left. */
  short: number | null;
  now: string;
}

const Bars = ({ atHome, short }: Ahead) => {
  const most = Math.max(1, ...atHome);
  const least = Math.min(0, ...atHome);
  const y = (n: number) => ((most - n) / (most - least)) * HEIGHT;
  const step = WIDTH / atHome.length;
  return (
    <>
      {atHome.map((n, week) => (
        <rect
          key={week * step}
          x={week * step + 1}
          y={Math.min(y(n), y(0))}
          width={step - 2}
          height={Math.max(1, Math.abs(y(n) - y(0)))}
          fill={short !== null && week + 1 >= short ? "var(--oxide)" : "var(--beer)"}
        />
      ))}
      <line x1="0" x2={WIDTH} y1={y(0)} y2={y(0)} stroke="var(--chalk)" stroke-width="1.5" />
    </>
  );
};

export const AheadChart = (props: Ahead) => {
  const { atHome, weekOn, short, now } = props;
  const end = dateWords(weekOn(atHome.length), now);
  const says =
    short === null
      ? `There are containers at the brewery in every week until ${end}.`
      : `By ${dateWords(weekOn(short), now)} none is likely left at the brewery.`;
  return (
    <section class="form">
      <h2>At the brewery, week by week</h2>
      <p class={short === null ? "" : "look"}>{says}</p>
      <svg
        class="chart"
        viewBox={`0 0 ${WIDTH} ${HEIGHT}`}
        role="img"
        aria-label={`Containers at the brewery over ${count(atHome.length, "week")}: ${says}`}
      >
        <Bars {...props} />
      </svg>
      <p class="first-and-last small">
        <span>{dateWords(weekOn(1), now)}</span> <span>{end}</span>
      </p>
      <More label="The numbers">
        <table class="numbers">
          <thead>
            <tr>
              <th scope="col">Week to</th>
              <th scope="col">At the brewery</th>
            </tr>
          </thead>
          <tbody>
            {atHome.map((n, week) => (
              <tr key={weekOn(week + 1)}>
                <th scope="row">{dateWords(weekOn(week + 1), now)}</th>
                <td>{n < 0 ? `${Math.round(-n)} too few` : Math.round(n)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </More>
    </section>
  );
};
