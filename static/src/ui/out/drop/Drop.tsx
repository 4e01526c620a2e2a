// The pages of the round and its drops. They are fetched when first gone to.

import { Empty } from "../../parts/Empty.tsx";
import { hrefTo } from "../../shell/route.ts";
import { AtTheDoor } from "./AtTheDoor.tsx";
import { stopById } from "./drops.ts";
import { HandedOver } from "./HandedOver.tsx";
import { ForWhom, MakeUp } from "./MakeUp.tsx";
import { Round } from "./Round.tsx";

/** `where` is "round", "make-up" or "drop"; `id` names a drop. */
export const Drop = ({ where, id }: { where: string; id: string | undefined }) => {
  if (where === "round") return <Round />;
  if (where === "make-up" && id === undefined) return <ForWhom />;
  const stop = id === undefined ? undefined : stopById(id);
  if (stop === undefined) {
    return (
      <Empty says="This drop is not on this phone.">
        <a class="button main" href={hrefTo("out", "round")}>
          The round
        </a>
      </Empty>
    );
  }
  if (stop.fields.handed_over_at !== undefined) return <HandedOver stop={stop} />;
  return where === "make-up" ? <MakeUp key={stop.id} stop={stop} /> : <AtTheDoor stop={stop} />;
};
