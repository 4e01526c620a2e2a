// The Office: a list of sections, each its own page.

import { book } from "../../store/book.ts";
import { sync } from "../../sync/engine.ts";
import { may } from "../mine.ts";
import { Line, Lines } from "../parts/Line.tsx";
import { NotMine } from "../parts/NotMine.tsx";
import { Lazy } from "../shell/Lazy.tsx";
import { hrefTo } from "../shell/route.ts";
import type { Loadable, ScreenProps } from "../shell/screens.ts";
import { sentence } from "../words.ts";
import { Calendar } from "./calendar/Calendar.tsx";
import { Entries } from "./entries/Entries.tsx";
import { Figures } from "./figures/Figures.tsx";
import { firstSteps } from "./first-steps.ts";
import { Labels } from "./labels/Labels.tsx";
import { Lists } from "./lists/Lists.tsx";
import { Audit } from "./people/Audit.tsx";
import { Devices } from "./people/Devices.tsx";
import { Held } from "./people/Held.tsx";
import { People } from "./people/People.tsx";
import { ThisPhone } from "./phone/ThisPhone.tsx";
import { OverdrawnGyles } from "./questions/Overdrawn.tsx";
import { Questions } from "./questions/Questions.tsx";
import { RecordForm } from "./records/RecordForm.tsx";
import { Records } from "./records/Records.tsx";
import { SPECS } from "./records/specs.ts";
import { NewContainers } from "./register/NewContainers.tsx";
import { Register } from "./register/Register.tsx";
import { Unregistered } from "./register/Unregistered.tsx";
import { peopleSections, phoneSections, records, type Section, toDo } from "./sections.ts";
import { Texts } from "./texts/Texts.tsx";

/** Reckons with every trip there was: fetched when somebody looks. */
const FLEET: Loadable = {
  title: "How many we need",
  place: "office",
  load: () => import("./fleet/Fleet.tsx"),
};

const Sections = (props: { heading: string; all: readonly Section[] }) =>
  props.all.length === 0 ? null : (
    <Lines heading={props.heading}>
      {props.all.map(({ path, title, says, waits }) => (
        <Line
          key={path}
          title={title}
          reason={sentence(says)}
          {...(waits ? { tone: "look" as const } : {})}
          href={hrefTo("office", ...path.split("/"))}
        />
      ))}
    </Lines>
  );

const begin = (): Section[] =>
  firstSteps(sync.state.value.lastSyncAt !== null, {
    beers: book.beers.value,
    places: book.places.value,
    containers: book.containers.value,
    gyles: book.gyles.value,
  });

const Overview = () => (
  <div class="sections">
    <Sections heading="To begin with" all={may("registered") ? begin() : []} />
    <Sections heading="Waiting for a person" all={toDo()} />
    <Sections heading="On record" all={records()} />
    <Sections heading="People and phones" all={peopleSections()} />
    <Sections heading="Here" all={phoneSections()} />
  </div>
);

const Office = ({ path }: ScreenProps) => {
  const [section, id, ...from] = path;
  switch (section) {
    case "brewery":
      return <RecordForm spec={SPECS.brewery} id="brewery" back={["office"]} />;
    case "beers":
      return <Records kind="beer" section={section} id={id} from={from} />;
    case "gyles":
      return <Records kind="gyle" section={section} id={id} from={from} />;
    case "places":
      return <Records kind="place" section={section} id={id} from={from} />;
    case "customers":
      return <Records kind="customer" section={section} id={id} from={from} />;
    case "lots":
      return <Records kind="lot" section={section} id={id} from={from} />;
    case "figures":
      return <Figures id={id} />;
    case "fleet":
      return <Lazy screen={FLEET} path={path} />;
    case "texts":
      return <Texts id={id} />;
    case "containers":
      if (id !== "new") return <Register />;
      return may("registered") ? <NewContainers /> : <NotMine kind="registered" />;
    case "unregistered":
      return may("registered") ? <Unregistered /> : <NotMine kind="registered" />;
    case "questions":
      return <Questions />;
    case "overdrawn":
      return <OverdrawnGyles />;
    case "entries":
      return <Entries />;
    case "labels":
      return <Labels which={id === "plates" ? id : "fills"} of={from[0]} />;
    case "calendar":
      return <Calendar />;
    case "lists":
      return <Lists />;
    case "people":
      return <People id={id} />;
    case "devices":
      return <Devices id={id} />;
    case "held":
      return <Held />;
    case "audit":
      return <Audit />;
    case "phone":
      return <ThisPhone />;
    default:
      return <Overview />;
  }
};

export default Office;
