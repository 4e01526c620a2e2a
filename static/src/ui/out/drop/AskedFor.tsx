// What the customer has asked for, and how much of it is made up.

import { useState } from "preact/hooks";
import type { DropAsked } from "../../../domain/record-fields.ts";
import { book } from "../../../store/book.ts";
import { known } from "../../known.ts";
import { kindsInUse } from "../../office/fleet/fleet.ts";
import { choicesFor } from "../../office/records/of-kind.ts";
import { Button } from "../../parts/Button.tsx";
import { Field, Select } from "../../parts/Field.tsx";
import { Line, Lines } from "../../parts/Line.tsx";
import { More } from "../../parts/More.tsx";
import { save } from "../../parts/say.ts";
import { kindName, sentence } from "../../words.ts";
import { askedFault, askedWords, madeUpOf, withAsked } from "./asked-for.ts";
import type { Stop } from "./drops.ts";

const askedOf = ({ fields }: Stop): readonly DropAsked[] => fields.asked ?? [];

const put = (stop: Stop, line: DropAsked, words: string): Promise<boolean> =>
  save(words, () => book.record("drop", stop.id, { asked: withAsked(askedOf(stop), line) }));

const Asking = ({ stop }: { stop: Stop }) => {
  const [beer, setBeer] = useState("");
  const [kind, setKind] = useState("");
  const [many, setMany] = useState("");
  const [fault, setFault] = useState<string | null>(null);
  const beers = choicesFor(
    { is: "record", name: "beer", label: "", of: "beer", none: "" },
    "",
    known.value,
  );
  const kinds = kindsInUse(book.containers.value.values());
  const keep = async () => {
    const wrong = askedFault(beer, kind, many);
    setFault(wrong);
    if (wrong !== null) return;
    const line = { beer, kind, count: Number(many) };
    if (await put(stop, line, `${sentence(askedWords(line, known.value))} asked for.`)) setMany("");
  };
  return (
    <div class="form">
      <Select label="Beer" value={beer} onValue={setBeer} options={beers} none="Choose a beer" />
      <Select
        label="Size"
        value={kind}
        onValue={setKind}
        options={kinds.map((one) => ({ value: one, label: kindName(one) }))}
        none="Choose a size"
      />
      <Field label="How many" type="whole" value={many} onValue={setMany} fault={fault} />
      <Button onPress={() => void keep()}>Keep it</Button>
    </div>
  );
};

export const AskedFor = ({ stop }: { stop: Stop }) => {
  const asked = askedOf(stop);
  return (
    <>
      {asked.length > 0 && (
        <Lines heading="Asked for">
          {asked.map((line) => {
            const made = madeUpOf(line, stop.numbers, book.containers.value, known.value);
            return (
              <Line
                key={`${line.beer} ${line.kind}`}
                title={sentence(askedWords(line, known.value))}
                reason={made === 0 ? "None made up yet." : `${made} made up.`}
                {...(made === line.count ? { tone: "fine" as const } : {})}
                action={{
                  label: "Not asked",
                  onPress: () => void put(stop, { ...line, count: 0 }, "No longer asked for."),
                }}
              />
            );
          })}
        </Lines>
      )}
      <More label="What they asked for">
        <Asking stop={stop} />
      </More>
    </>
  );
};
