// What came back and is not ours: whose it is, since when it waits to go home, and a ready text to
// whom it belongs.

import wordings from "../../../../cellarapp/domain/wordings.json";
import { book } from "../../store/book.ts";
import { once } from "../cellar/deed.ts";
import { known } from "../known.ts";
import { may } from "../mine.ts";
import { newId } from "../office/new-id.ts";
import { headOf } from "../parts/head-of.ts";
import { Line, Lines } from "../parts/Line.tsx";
import { More } from "../parts/More.tsx";
import { containerHref } from "../shell/route.ts";
import { containerName } from "../words.ts";
import { filledIn } from "./call-text.ts";
import { from, ownWords } from "./own-words.ts";
import { ReadyText } from "./ReadyText.tsx";
import { byOwner, namesFor, type Owned } from "./stray-text.ts";
import { customerLike, homeDrafts, type Stray, strays, strayWords } from "./strays.ts";
import { Written } from "./WriteTo.tsx";

const goHome = (stray: Stray): void => {
  const { number } = stray.standing;
  const text = `${number} went home to ${stray.owner}.`;
  const drafts = homeDrafts(stray, book.customers.peek(), newId);
  void once(number, text, () => book.recordMany(drafts));
};

const WriteToOwner = ({ owned }: { owned: Owned }) => {
  const [customer, record] = customerLike(owned.owner, book.customers.value) ?? [];
  const { address = "" } = book.breweries.value.get("brewery")?.fields ?? {};
  const names = namesFor(owned, { ...from(), address });
  return (
    <More label={`Write to ${owned.owner}`}>
      <ReadyText
        key={owned.strays.length}
        words={filledIn(ownWords("stray_text"), names).trim()}
        subject={wordings.stray_text.title}
        phone={record?.fields.phone}
        email={record?.fields.email}
      >
        {customer !== undefined && <Written customer={customer} />}
      </ReadyText>
    </More>
  );
};

export const Strays = () => {
  const all = strays(book.containers.value.values(), known.value.now);
  return all.length === 0 ? null : (
    <>
      <Lines heading="Of others, to go home" count={all.length}>
        {all.map((stray) => (
          <Line
            key={stray.standing.number}
            look={headOf(stray.standing, known.value.now)}
            title={containerName(stray.standing)}
            reason={strayWords(stray)}
            href={containerHref(stray.standing.number)}
            {...(may("sent")
              ? { action: { label: "Went home", onPress: () => goHome(stray) } }
              : {})}
          />
        ))}
      </Lines>
      {byOwner(all).map((owned) => (
        <WriteToOwner key={owned.owner} owned={owned} />
      ))}
    </>
  );
};
