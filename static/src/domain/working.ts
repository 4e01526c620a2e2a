/** How a rule shows what it did. Twin of cellarapp/domain/working.py. */
import type { CautionId } from "./cautions.ts";
import {
  type FigureId,
  type Figures,
  figure,
  type Settings,
  setting,
  settingList,
} from "./figures.ts";
import { halfUp } from "./rounding.ts";

/** One step: a sentence with the formula in symbols, and what came of it. */
export interface Step {
  says: string;
  value: number;
  unit: string;
}

/** A rule's answer. Names in `result` end in their units; `cautions` and `figures` are ids. */
export interface Worked<Result> {
  result: Result;
  steps: Step[];
  cautions: CautionId[];
  figures: FigureId[];
}

/** What a rule has used and done so far, in order; no figure is used without being listed. */
export class Working {
  private readonly settings: Settings | null;
  private readonly steps: Step[] = [];
  private readonly cautions = new Set<CautionId>();
  private readonly figures = new Set<FigureId>();

  constructor(settings: Settings | null = null) {
    this.settings = settings;
  }

  /** A published figure or a table, listed as used. */
  figure<Id extends FigureId>(name: Id): Figures[Id]["value"] {
    this.figures.add(name);
    return figure(name);
  }

  /** The brewery's own value or the default, listed as used. Throws out-of-range. */
  setting(name: FigureId): number {
    this.figures.add(name);
    return setting(name, this.settings);
  }

  /** The same of a list. Throws out-of-range. */
  settingList(name: FigureId): number[] {
    this.figures.add(name);
    return settingList(name, this.settings);
  }

  /** Shows a step, rounded to so many digits, and hands the value on unrounded. */
  step(says: string, value: number, unit: string, digits: number): number {
    this.steps.push({ says, value: halfUp(value, digits), unit });
    return value;
  }

  caution(name: CautionId): void {
    this.cautions.add(name);
  }

  /** The rule's answer; the figures in `result` are rounded by the rule. */
  done<Result>(result: Result): Worked<Result> {
    const { steps, cautions, figures } = this;
    return { result, steps, cautions: [...cautions], figures: [...figures] };
  }
}
