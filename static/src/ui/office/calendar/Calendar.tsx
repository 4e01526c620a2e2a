// The jobs due in one's own calendar: an address that the phone's or computer's calendar reads.

import { useState } from "preact/hooks";
import { londonDate } from "../../../domain/calendar.ts";
import { known } from "../../known.ts";
import { role } from "../../mine.ts";
import { Button } from "../../parts/Button.tsx";
import { say } from "../../parts/say.ts";
import { Asking } from "../../people/Asking.tsx";
import { useTitle } from "../../shell/title.ts";
import { dateWords } from "../../words.ts";
import { Answer } from "../people/Answer.tsx";
import { tell, useAnswer } from "../people/telling.ts";

interface Address {
  made_at: string | null;
}

interface NewAddress {
  made_at: string;
  address: string;
  qr_svg: string;
}

const PATH = "/api/calendar";

const copy = async (address: string): Promise<void> => {
  try {
    await navigator.clipboard.writeText(address);
    say.saved("The address is copied.", []);
  } catch {
    say.trouble("This browser does not copy it. Press long on the address and copy it there.");
  }
};

/** Calendar programs of many phones open this by themselves. */
const webcal = (address: string): string => address.replace(/^https?:/, "webcal:");

const Made = ({ made }: { made: NewAddress }) => (
  <section class="form">
    <h2>Your address</h2>
    <img
      class="qr"
      alt="The address as a code to scan"
      src={`data:image/svg+xml,${encodeURIComponent(made.qr_svg)}`}
    />
    <p>
      Give it to your calendar as “add by address” or “subscribe”. It is shown this once: whoever
      has it reads the jobs and your customers’ names.
    </p>
    <p class="small link">{made.address}</p>
    <div class="buttons">
      <Button look="main" onPress={() => void copy(made.address)}>
        Copy the address
      </Button>
      <a class="button" href={webcal(made.address)}>
        Open in a calendar
      </a>
    </div>
  </section>
);

const Make = ({ since, onChange }: { since: string | null; onChange: () => void }) => {
  const [made, setMade] = useState<NewAddress | null>(null);
  const make = async () => {
    setMade((await tell(PATH, {})) as NewAddress);
    onChange();
  };
  const end = async () => {
    await tell(`${PATH}/end`, {});
    setMade(null);
    onChange();
  };
  return (
    <>
      <p class="form">
        What will be ready, what is to be vented and tapped for a sale, best-before days, what is to
        be collected, what was promised and which hired containers are due back: in the calendar of
        your phone or computer. It asks every few hours, so it is for planning and not for the next
        hour.
      </p>
      {made !== null && <Made made={made} />}
      {made === null && since !== null && (
        <p class="form">
          You have an address since {dateWords(londonDate(since), known.value.now)}. It cannot be
          shown again.
        </p>
      )}
      <Asking
        does={since === null ? "Make an address" : "Make a new address"}
        lacks={null}
        onGo={make}
        aside={made !== null}
      >
        {since !== null && <p class="small">The one before works no more from then on.</p>}
      </Asking>
      {since !== null && (
        <Asking does="End the address" lacks={null} onGo={end} aside>
          <p class="small">Then no calendar reads the jobs any more.</p>
        </Asking>
      )}
    </>
  );
};

export const Calendar = () => {
  useTitle("Jobs in your calendar");
  const answered = useAnswer<Address>(PATH);
  if (role.value !== null && role.value !== "owner" && role.value !== "cellar") {
    return <p class="form">The calendar is for those who work in the cellar.</p>;
  }
  return (
    <Answer of={answered}>
      {({ made_at }) => <Make since={made_at} onChange={answered.again} />}
    </Answer>
  );
};
