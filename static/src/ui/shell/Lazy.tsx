// A screen that is fetched when first gone to, and shown once what it names is read. It is kept on
// the phone with everything else, so it comes without a network too; where it does not, the screen
// says so.

import { useLayoutEffect, useState } from "preact/hooks";
import { book } from "../../store/book.ts";
import { Button } from "../parts/Button.tsx";
import type { Loadable, Screen } from "./screens.ts";

const loaded = new Map<Loadable, Screen>();

export const Lazy = ({ screen, path }: { screen: Loadable; path: readonly string[] }) => {
  const [, setTurn] = useState(0);
  const [failed, setFailed] = useState<Loadable | null>(null);
  const fetchIt = () => {
    setFailed(null);
    screen.load().then(
      (module) => {
        loaded.set(screen, module.default);
        setTurn((turn) => turn + 1);
      },
      () => setFailed(screen),
    );
  };
  useLayoutEffect(() => {
    if (!loaded.has(screen)) fetchIt();
  }, [screen]);

  const Shown = loaded.get(screen);
  const known = screen.fullOnly ? book.fullKnown : book.whole;
  if (Shown && known.value) return <Shown path={path} />;
  if (failed === screen) {
    return (
      <section class="form" role="alert">
        <p>
          This screen is not on the phone yet and could not be fetched. Recording goes on at the
          Bench.
        </p>
        <Button onPress={fetchIt}>Try again</Button>
      </section>
    );
  }
  return <Moment />;
};

export const Moment = () => <p class="form small">One moment…</p>;
