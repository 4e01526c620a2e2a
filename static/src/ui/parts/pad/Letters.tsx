// The letters of the pad. Numbers carry one letter at most times (K12), so that after one the pad
// shows its digits again.

import { Delete } from "./Delete.tsx";

const ALL = [..."ABCDEFGHIJKLMNOPQRSTUVWXYZ"];

export const Letters = (props: {
  onLetter: (letter: string) => void;
  onBack: () => void;
  onDigits: () => void;
}) => (
  <fieldset class="pad letters" aria-label="Letters">
    {ALL.map((letter) => (
      <button type="button" key={letter} onClick={() => props.onLetter(letter)}>
        {letter}
      </button>
    ))}
    <button type="button" class="word wide" onClick={props.onDigits}>
      1 2 3
    </button>
    <button type="button" class="wide" aria-label="Delete" onClick={props.onBack}>
      <Delete />
    </button>
  </fieldset>
);
