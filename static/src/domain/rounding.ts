/** The one rounding rule. Twin of cellarapp/domain/rounding.py. */

const NUDGE = 1 + 1e-12;

/** The value to so many digits after the point; halves, or all but, go away from nought. */
export function halfUp(value: number, digits: number): number {
  const steps = 10 ** digits;
  const whole = Math.floor(Math.abs(value) * steps * NUDGE + 0.5);
  const rounded = whole / steps;
  return value < 0 && whole > 0 ? -rounded : rounded;
}

/** The nearest whole number; halves go away from nought. */
export function halfUpWhole(value: number): number {
  return halfUp(value, 0);
}

/** The value cut down, not rounded, to so many digits; not below nought. */
export function cut(value: number, digits: number): number {
  const steps = 10 ** digits;
  return Math.floor(value * steps * NUDGE) / steps;
}
