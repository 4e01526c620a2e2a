// One customer: how to reach it, what it has, and what was said about it.

import type { CustomerFields } from "../../domain/record-fields.ts";
import { book } from "../../store/book.ts";
import { once } from "../cellar/deed.ts";
import { Slices } from "../cellar/Slices.tsx";
import { known } from "../known.ts";
import { may } from "../mine.ts";
import { Button } from "../parts/Button.tsx";
import { headOf } from "../parts/head-of.ts";
import { Line, Lines } from "../parts/Line.tsx";
import { Nothing } from "../parts/Nothing.tsx";
import { save } from "../parts/say.ts";
import { containerHref, formAndBack, goTo } from "../shell/route.ts";
import { useTitle } from "../shell/title.ts";
import { count, customerName } from "../words.ts";
import { AtStake, ProposeMissing } from "./AtStake.tsx";
import { backDrafts } from "./back.ts";
import { Chase } from "./Chase.tsx";
import { matchDrafts, type OpenCount, openCounts, openWords } from "./counted.ts";
import type { Away } from "./holdings.ts";
import { awayTitle, awayWords, byKindWords } from "./reasons.ts";
import { allHoldings, sendTo, worthAt } from "./state.ts";
import { TheirPage } from "./TheirPage.tsx";
import { WriteTo } from "./WriteTo.tsx";
import { placeForEmpties } from "./yards.ts";

const telHref = (phone: string): string => `tel:${phone.replace(/[^+0-9]/g, "")}`;

/** Opens the phone's own map (RFC 5870). */
const geoHref = ({ latitude_e6, longitude_e6 }: CustomerFields["map"]): string =>
  `geo:${latitude_e6 / 1e6},${longitude_e6 / 1e6}`;

const Reach = ({ customer }: { customer: string }) => {
  const fields = book.customers.value.get(customer)?.fields ?? {};
  return (
    <div class="above">
      {fields.phone !== undefined && fields.phone !== "" && (
        <a class="button main" href={telHref(fields.phone)}>
          Ring {fields.contact || fields.phone}
        </a>
      )}
      {may("sent") && (
        <button
          type="button"
          class="button"
          onClick={() => {
            sendTo.value = customer;
            goTo("out", "send");
          }}
        >
          Send out
        </button>
      )}
      {fields.map && (
        <a class="button" href={geoHref(fields.map)}>
          Map
        </a>
      )}
      <a class="button" href={formAndBack("customers", customer)}>
        Details
      </a>
    </div>
  );
};

const comeBack = ({ standing }: Away): void => {
  const { number } = standing;
  const how = { place: placeForEmpties()?.id, asNew: null };
  const drafts = [
    ...backDrafts(number, standing, { ...how, ullage_ml: null }),
    ...matchDrafts([standing], book.drops.peek()),
  ];
  void once(number, `${number} came back.`, () => book.recordMany(drafts));
};

const AwayLine = ({ away }: { away: Away }) => {
  return (
    <Line
      look={headOf(away.standing, known.value.now)}
      title={awayTitle(away)}
      reason={awayWords(away, known.value)}
      {...(away.overdue > 0 ? { tone: "look" as const } : {})}
      href={containerHref(away.standing.number)}
      {...(may("returned")
        ? { action: { label: "Came back", onPress: () => comeBack(away) } }
        : {})}
    />
  );
};

/** Miscounted, or told in another way: nobody is to look for them for ever. */
const closeCount = ({ drop }: OpenCount): void =>
  void save("No more of them are looked for.", () =>
    book.record("drop", drop, { count_closed: true }),
  );

/** What the list below has too many, as long as nobody has told it by number. */
const OnlyCounted = ({ customer }: { customer: string }) => {
  const open = openCounts(book.drops.value, customer);
  return open.length === 0 ? null : (
    <div class="told">
      {open.map((one) => (
        <div key={one.drop}>
          <p class="look">{openWords(one, known.value.now)}</p>
          {may("drop") && <Button onPress={() => closeCount(one)}>No more of them come</Button>}
        </div>
      ))}
    </div>
  );
};

export const CustomerPage = ({ customer }: { customer: string }) => {
  const name = customerName(known.value, customer);
  useTitle(name);
  const record = book.customers.value.get(customer);
  const holding = allHoldings.value.find((one) => one.customer === customer);
  const worth = worthAt(customer);
  return (
    <div class="close">
      <Reach customer={customer} />
      {holding && worth && <AtStake holding={holding} worth={worth} />}
      <OnlyCounted customer={customer} />
      <Chase customer={customer} name={name} record={record} />
      {holding && <WriteTo holding={holding} />}
      <TheirPage customer={customer} name={name} record={record} />
      {holding && worth && <ProposeMissing holding={holding} worth={worth} />}
      {holding === undefined ? (
        <Nothing says={`${name} has none of our containers.`} />
      ) : (
        <Lines
          heading={byKindWords(holding.away)}
          count={
            holding.overdue === 0 ? "none overdue" : count(holding.overdue, "overdue", "overdue")
          }
        >
          <Slices
            items={holding.away}
            each={(away) => <AwayLine key={away.standing.number} away={away} />}
          />
        </Lines>
      )}
    </div>
  );
};
