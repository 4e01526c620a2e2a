// The frame round every screen.

import { useEffect } from "preact/hooks";
import { book } from "../../store/book.ts";
import { Bench } from "../bench/Bench.tsx";
import { SavedForEars, SavedStrip } from "../parts/Saved.tsx";
import { said, say } from "../parts/say.ts";
import { Guard } from "./Guard.tsx";
import { Header } from "./Header.tsx";
import { Lazy, Moment } from "./Lazy.tsx";
import { Places } from "./Places.tsx";
import { hrefTo, route } from "./route.ts";
import { DemoStrip, DoorStrip, NoticeStrip, TroubleStrip, UpdateStrip } from "./Strips.tsx";
import { SCREENS } from "./screens.ts";
import { nearerTitle } from "./title.ts";

const Nowhere = () => (
  <section class="form">
    <p>There is no such screen.</p>
    <a class="button" href={hrefTo("bench")}>
      To the Bench
    </a>
  </section>
);

export const Shell = () => {
  const [name = "bench", ...path] = route.value;
  const screen = SCREENS[name];
  const title = nearerTitle.value ?? (name === "bench" ? "Bench" : (screen?.title ?? "Not here"));
  const address = route.value.join("/");
  useArrival(address, title);
  // At the Bench what was saved is said beside the pad, where the eyes are; its lists have no pad.
  const atThePad = name === "bench" && path.length === 0;
  const strip = !atThePad && said.value !== null;
  return (
    <div class={`shell ${strip ? "room" : ""}`}>
      <Header title={title} />
      <aside aria-label="About the app">
        <DemoStrip />
        <TroubleStrip />
        <UpdateStrip />
        <NoticeStrip />
        <DoorStrip />
      </aside>
      <main>
        <Guard place={address}>
          {name === "bench" ? (
            book.begun.value ? (
              <Bench path={path} />
            ) : (
              <Moment />
            )
          ) : screen ? (
            <Lazy screen={screen} path={path} />
          ) : (
            <Nowhere />
          )}
        </Guard>
      </main>
      {strip && <SavedStrip />}
      <SavedForEars />
      <Places here={name === "bench" ? "bench" : (screen?.place ?? "")} />
    </div>
  );
};

/** On another screen: from the top, with the focus on its title. */
const useArrival = (address: string, title: string): void => {
  useEffect(() => {
    document.title = `${title} – cellarapp`;
  }, [title]);
  useEffect(() => {
    if (arrivedAt === null) {
      arrivedAt = address; // the first screen leaves the focus where the browser put it
      return;
    }
    if (arrivedAt === address) return;
    arrivedAt = address;
    scrollTo(0, 0);
    say.moveOn();
    document.querySelector<HTMLElement>(".topline h1")?.focus({ preventScroll: true });
  }, [address]);
};
let arrivedAt: string | null = null;
