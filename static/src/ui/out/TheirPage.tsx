// The customer's own page: a link to give to them, and an end to all that were given.

import { useState } from "preact/hooks";
import type { Customer } from "../../domain/records.ts";
import { book } from "../../store/book.ts";
import { may } from "../mine.ts";
import { Button } from "../parts/Button.tsx";
import { More } from "../parts/More.tsx";
import { faultWords, say } from "../parts/say.ts";
import { hrefTo } from "../shell/route.ts";
import { count } from "../words.ts";
import { linkFor, webAddress } from "./page-link.ts";
import { ReadyText } from "./ReadyText.tsx";

interface Props {
  customer: string;
  name: string;
  record: Customer | undefined;
}

const stop = async (customer: string, name: string): Promise<void> => {
  try {
    await book.record("unlinked", customer, {});
    say.saved(`No link to the page of ${name} works any more.`, []);
  } catch (fault) {
    say.trouble(faultWords(fault));
  }
};

/** Printed links do not come back to life, so it takes a second tap on another spot. */
const Stop = ({ customer, name }: Props) => {
  const [sure, setSure] = useState(false);
  if (!sure) return <Button onPress={() => setSure(true)}>Stop all links</Button>;
  return (
    <>
      <Button look="quiet" onPress={() => setSure(false)}>
        Keep them
      </Button>
      <p class="look">Those on delivery notes too, for good:</p>
      <Button onPress={() => void stop(customer, name).then(() => setSure(false))}>
        Stop every link to it
      </Button>
    </>
  );
};

const Give = ({ customer, record }: Props) => {
  const [link, setLink] = useState<string | null>(null);
  const make = async () => {
    try {
      setLink(await linkFor(customer));
    } catch (fault) {
      say.trouble(faultWords(fault));
    }
  };
  if (link === null) return <Button onPress={() => void make()}>Give them the link</Button>;
  const { phone, email } = record?.fields ?? {};
  return (
    <ReadyText
      key={link}
      words={`What you have of our containers, and where to tap those that are empty: ${link}`}
      subject="Our containers with you"
      phone={phone}
      email={email}
    />
  );
};

export const TheirPage = (props: Props) => {
  const working = props.record?.links?.length ?? 0;
  return (
    <More label="Their own page">
      <div class="form">
        <p>
          It shows them what they have, with no sign-in, and they say which are empty or not there.
          Delivery notes carry a link to it. {sentenceOf(working)}
        </p>
        {webAddress() === "" ? (
          <p class="look">
            <a href={hrefTo("office", "brewery")}>Enter the brewery’s address on the web</a> first.
          </p>
        ) : (
          may("linked") && <Give key={props.record?.set_by["unlinked"] ?? ""} {...props} />
        )}
        {working > 0 && may("unlinked") && <Stop {...props} />}
      </div>
    </More>
  );
};

const sentenceOf = (working: number): string =>
  working === 0 ? "None was given yet." : `${count(working, "link works", "links work")}.`;
