// Figures in words: values with units, and how far each can be trusted.

import assert from "node:assert/strict";
import { test } from "node:test";
import { FIGURES } from "../../../../static/src/domain/figures.ts";
import {
  kindWords,
  numberWords,
  standingValue,
  valueWords,
} from "../../../../static/src/ui/parts/figure-words.ts";

test("a figure nobody published says so", () => {
  assert.equal(kindWords("common practice", null), "Common practice, no source");
  assert.equal(kindWords("common practice", "A book"), "Common practice");
  assert.equal(kindWords("from memory", null), "From memory");
  assert.equal(kindWords("published", "A book"), "Published");
});

test("a value has its unit, a few constants their names, a table says that it is one", () => {
  assert.equal(valueWords(1.4, "volumes of CO2"), "1.4 volumes of CO2");
  assert.equal(valueWords({ a: 1, b_c: 0.00001 }, "x"), "a 1, b c 1.000e-5 (x)");
  assert.equal(valueWords([{ up_to_c: 10 }], "days"), "A table (days)");
  assert.equal(valueWords([3.9, 5, 7], "% vol"), "3.9, 5, 7 % vol");
  assert.equal(numberWords(0), "0");
});

test("the brewery's own value stands in place of the default", () => {
  assert.equal(standingValue("cellar_temp_c", FIGURES.cellar_temp_c, { cellar_temp_c: 11 }), 11);
  assert.equal(standingValue("cellar_temp_c", FIGURES.cellar_temp_c, {}), 12);
});
