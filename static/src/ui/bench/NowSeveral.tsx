// Digits that fit several containers: each is offered as its head.

import { book } from "../../store/book.ts";
import { known } from "../known.ts";
import { Head } from "../parts/Head.tsx";
import { bareHead, headOf } from "../parts/head-of.ts";
import { containerName } from "../words.ts";
import { chosen } from "./state.ts";

export const NowSeveral = ({ numbers }: { numbers: readonly string[] }) => (
  <div class="now several">
    <p class="small">Which one?</p>
    <div class="heads">
      {numbers.map((number) => {
        const standing = book.containers.value.get(number);
        return (
          <button
            type="button"
            class="button"
            key={number}
            onClick={() => {
              chosen.value = number;
            }}
          >
            <Head look={standing ? headOf(standing, known.value.now) : bareHead(number)} />
            {standing ? containerName(standing) : number}
          </button>
        );
      })}
    </div>
  </div>
);
