// At a customer's door: what is dropped, which empties come along, who took it.

import { useState } from "preact/hooks";
import { book } from "../../../store/book.ts";
import { known } from "../../known.ts";
import { readNumbers } from "../../office/register/numbers.ts";
import { ownFigures } from "../../own-figures.ts";
import { Button } from "../../parts/Button.tsx";
import { Field } from "../../parts/Field.tsx";
import { headOf } from "../../parts/head-of.ts";
import { Line, Lines } from "../../parts/Line.tsx";
import { More } from "../../parts/More.tsx";
import { save, say } from "../../parts/say.ts";
import { hrefTo } from "../../shell/route.ts";
import { useTitle } from "../../shell/title.ts";
import { containerName, customerName, listWords } from "../../words.ts";
import { awayWords } from "../reasons.ts";
import { allHoldings } from "../state.ts";
import { atTheDoor, clearAtTheDoor, putAtTheDoor } from "./at-the-door.ts";
import { heldBy, type Stop } from "./drops.ts";
import {
  countedFault,
  handedOverWords,
  handOverDrafts,
  othersFault,
  takenAlong,
} from "./hand-over.ts";
import { lineOf } from "./line.ts";
import { Signature } from "./Signature.tsx";

const toggled = (all: readonly string[], one: string): string[] =>
  all.includes(one) ? all.filter((other) => other !== one) : [...all, one];

const ToDrop = ({ stop }: { stop: Stop }) => {
  const { left } = atTheDoor(stop.id);
  return (
    <Lines heading="Drop" count={`${stop.numbers.length - left.length} of ${stop.numbers.length}`}>
      {stop.numbers.map((number) => {
        const standing = book.containers.value.get(number);
        const line = lineOf(number, standing, known.value, ownFigures.value);
        const stays = left.includes(number);
        return (
          <Line
            key={number}
            {...(standing ? { look: headOf(standing, known.value.now) } : {})}
            title={standing ? containerName(standing) : number}
            reason={stays ? "Stays on the van" : line.beer || "No beer on record in it"}
            {...(stays ? { tone: "look" as const } : {})}
            action={{
              label: stays ? "Drop it" : "Leave out",
              onPress: () => putAtTheDoor(stop.id, { left: toggled(left, number) }),
            }}
          />
        );
      })}
    </Lines>
  );
};

/** Those that the customer has: a tap takes one along. */
const Theirs = ({ stop }: { stop: Stop }) => {
  const { empties } = atTheDoor(stop.id);
  const holding = allHoldings.value.find(({ customer }) => customer === stop.customer);
  if (holding === undefined) return null;
  return (
    <Lines heading="Take along" count={`${empties.length} of ${holding.away.length}`}>
      {holding.away.map((away) => {
        const { number } = away.standing;
        const comes = empties.includes(number);
        return (
          <Line
            key={number}
            look={headOf(away.standing, known.value.now)}
            title={containerName(away.standing)}
            reason={comes ? "Comes along" : awayWords(away, known.value)}
            {...(comes ? { tone: "fine" as const } : {})}
            action={{
              label: comes ? "Stays" : "Take",
              onPress: () => putAtTheDoor(stop.id, { empties: toggled(empties, number) }),
            }}
          />
        );
      })}
    </Lines>
  );
};

/** Numbers that are not down as theirs, and those that nobody can read in the dark. */
const Others = ({ stop, tried }: { stop: Stop; tried: boolean }) => {
  const door = atTheDoor(stop.id);
  const { numbers } = readNumbers(door.others);
  return (
    <div class="form">
      <Field
        label="Other empties, by number"
        hint="A run or several: 117-124, 130, K3."
        value={door.others}
        onValue={(others) => putAtTheDoor(stop.id, { others })}
        fault={othersFault(door.others)}
        capitals
      />
      {numbers.length > 0 && <p>Come along too: {listWords(numbers)}.</p>}
      <Field
        label="Empties only counted"
        hint="Tell them by number later, in the yard."
        type="whole"
        value={door.counted}
        onValue={(counted) => putAtTheDoor(stop.id, { counted })}
        fault={tried ? countedFault(door.counted) : null}
      />
    </div>
  );
};

const handOver = async (stop: Stop): Promise<void> => {
  const door = atTheDoor(stop.id);
  const containers = book.containers.peek();
  const dropped = stop.numbers.filter((number) => !door.left.includes(number));
  const drafts = handOverDrafts({
    stop,
    door,
    lines: dropped.map((n) => lineOf(n, containers.get(n), known.peek(), ownFigures.peek())),
    customer: book.customers.peek().get(stop.customer),
    brewery: book.breweries.peek().get("brewery"),
    standings: containers,
    heldBefore: heldBy(stop.customer).length,
    now: book.now(),
    settings: ownFigures.peek(),
  });
  const name = customerName(known.peek(), stop.customer);
  const words = handedOverWords(dropped.length, takenAlong(door), name);
  if (await save(words, () => book.recordMany(drafts))) clearAtTheDoor(stop.id);
};

export const AtTheDoor = ({ stop }: { stop: Stop }) => {
  useTitle(customerName(known.value, stop.customer));
  const [tried, setTried] = useState(false);
  const door = atTheDoor(stop.id);
  const press = () => {
    setTried(true);
    // The field may be out of sight by then, so what is wrong is said at the button too.
    const fault = othersFault(door.others) ?? countedFault(door.counted);
    if (fault === null) void handOver(stop);
    else say.trouble(`Not handed over yet, look at the empties. ${fault}`);
  };
  return (
    <div class="close">
      <div class="above">
        <a class="button" href={hrefTo("out", "make-up", stop.id)}>
          Change what is made up
        </a>
      </div>
      <p class="form small">
        Full casks are heavier than anybody should lift alone: two people, a skid or a hoist, as
        your own rules say. Nobody stands below one that moves.
      </p>
      <ToDrop stop={stop} />
      <Theirs stop={stop} />
      <Others stop={stop} tried={tried} />
      <div class="form">
        <Field
          label="Taken by"
          value={door.takenBy}
          onValue={(takenBy) => putAtTheDoor(stop.id, { takenBy })}
          maxLength={60}
        />
        <Signature
          signature={door.signature}
          onSignature={(signature) => putAtTheDoor(stop.id, { signature })}
        />
        <More label="A note">
          <Field
            label="Note"
            value={door.note}
            onValue={(note) => putAtTheDoor(stop.id, { note })}
            maxLength={500}
          />
        </More>
        <Button look="main" wide onPress={press}>
          Hand over
        </Button>
      </div>
    </div>
  );
};
