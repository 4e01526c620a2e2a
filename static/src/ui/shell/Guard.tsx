// When a screen breaks: say so, and that nothing recorded is lost. The outbox lies in the phone's
// store, which no screen can take along when it falls.

import { Component, type ComponentChildren } from "preact";
import { book } from "../../store/book.ts";
import { count } from "../words/amounts.ts";
import { hrefTo } from "./route.ts";

interface Props {
  /** Another place on the screen: a fresh start. */
  place: string;
  children: ComponentChildren;
}

interface State {
  fault: string | null;
  place: string;
}

const keptWords = (): string => {
  const waiting = book.waiting.peek().count;
  return waiting === 0
    ? "Nothing you recorded is lost: everything is at the brewery."
    : `Nothing you recorded is lost: ${count(waiting, "entry", "entries")} wait safely on this phone.`;
};

export class Guard extends Component<Props, State> {
  override state: State = { fault: null, place: this.props.place };

  static override getDerivedStateFromError(fault: unknown): Partial<State> {
    return { fault: fault instanceof Error ? `${fault.name}: ${fault.message}` : String(fault) };
  }

  static override getDerivedStateFromProps(props: Props, state: State): Partial<State> | null {
    return props.place === state.place ? null : { fault: null, place: props.place };
  }

  override render() {
    if (this.state.fault === null) return this.props.children;
    return (
      <section class="form" role="alert">
        <h2>This screen has stopped</h2>
        <p>{keptWords()}</p>
        <div class="buttons">
          <button type="button" class="button main" onClick={() => this.setState({ fault: null })}>
            Try again
          </button>
          <button type="button" class="button" onClick={() => location.reload()}>
            Start the app again
          </button>
          <a class="button" href={hrefTo("office", "entries")}>
            Entries on this phone
          </a>
        </div>
        <p class="small">For whoever looks after the app: {this.state.fault}</p>
      </section>
    );
  }
}
