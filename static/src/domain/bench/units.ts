/** Units that are exact by definition. Twin of cellarapp/domain/bench/units.py. */
import { figure } from "../figures.ts";

export const ATMOSPHERE_BAR = 1.01325;
/** A pound of force on a square inch: 0.45359237 kg, 9.80665 m/s² and 25.4 mm, all exact. */
export const PSI_BAR = 0.0689475729316836;
export const OUNCE_G = 28.349523125;
export const PINTS_PER_GALLON = 8;
export const GALLONS_PER_BARREL = 36;

/** The same temperature in degrees Fahrenheit. */
export const fahrenheit = (tempC: number): number => (tempC * 9) / 5 + 32;

/** The same temperature above absolute nought. */
export const kelvin = (tempC: number): number => tempC + 273.15;

/** A barrel of 36 imperial gallons. */
export const barrelMl = (): number => GALLONS_PER_BARREL * figure("imperial_gallon_ml");

/** An imperial pint. */
export const pintMl = (): number => figure("imperial_gallon_ml") / PINTS_PER_GALLON;

/** The trade's rate in millilitres for a litre: a barrel is 288 pints, so this is exact. */
export const mlPerLFromPints = (pintsPerBarrel: number): number =>
  (pintsPerBarrel * 1000) / (GALLONS_PER_BARREL * PINTS_PER_GALLON);
