// A link for one phone and one person: shown as a code to scan, and to be copied or sent.

import { useState } from "preact/hooks";
import { Button } from "../../parts/Button.tsx";
import { Select } from "../../parts/Field.tsx";
import { faultWords, say } from "../../parts/say.ts";
import { Asking } from "../../people/Asking.tsx";
import { useTitle } from "../../shell/title.ts";
import { clockWords } from "../../words.ts";
import { Answer } from "./Answer.tsx";
import type { InviteAnswer, PersonAnswer } from "./answers.ts";
import { tell, useAnswer } from "./telling.ts";

const copy = async (link: string): Promise<void> => {
  try {
    await navigator.clipboard.writeText(link);
    say.saved("The link is copied.", []);
  } catch {
    say.trouble("This browser does not copy it. Press long on the link and copy it there.");
  }
};

const share = (link: string, name: string): void => {
  navigator.share({ title: `cellarapp for ${name}`, url: link }).catch((fault: unknown) => {
    // Who changes their mind has not been refused anything.
    if (!(fault instanceof DOMException && fault.name === "AbortError")) {
      say.trouble(faultWords(fault));
    }
  });
};

const Invite = ({ invite, name }: { invite: InviteAnswer; name: string }) => (
  <section class="form">
    <h2>For {name}</h2>
    <img
      class="qr"
      alt="The link as a code to scan"
      src={`data:image/svg+xml,${encodeURIComponent(invite.qr_svg)}`}
    />
    <p>
      Scan this with the other phone, or open the link there. It works once, until{" "}
      {clockWords(invite.expires_at)}.
    </p>
    <p class="small link">{invite.link}</p>
    <div class="buttons">
      <Button onPress={() => void copy(invite.link)}>Copy the link</Button>
      {"share" in navigator && (
        <Button onPress={() => share(invite.link, name)}>Send the link</Button>
      )}
    </div>
  </section>
);

const ForWhom = ({ people }: { people: PersonAnswer[] }) => {
  const here = people.filter(({ retired_at }) => retired_at === null);
  const [id, setId] = useState(here[0]?.id ?? "");
  const [invite, setInvite] = useState<{ made: InviteAnswer; name: string } | null>(null);
  const make = async () => {
    const name = here.find((one) => one.id === id)?.name ?? "";
    const made = (await tell("/api/invites", { person: name })) as InviteAnswer;
    setInvite({ made, name });
  };
  return (
    <>
      {invite !== null && <Invite invite={invite.made} name={invite.name} />}
      <Asking
        does={invite === null ? "Make a link" : "Make another link"}
        lacks={id === "" ? "For whom?" : null}
        onGo={make}
      >
        <Select
          label="For whom"
          hint="They have the phone in hand when it is paired; others join them by PIN."
          value={id}
          onValue={setId}
          options={here.map((one) => ({ value: one.id, label: one.name }))}
        />
      </Asking>
    </>
  );
};

export const PairOne = () => {
  useTitle("Pair a phone");
  const all = useAnswer<{ people: PersonAnswer[] }>("/api/people");
  return <Answer of={all}>{({ people }) => <ForWhom people={people} />}</Answer>;
};
