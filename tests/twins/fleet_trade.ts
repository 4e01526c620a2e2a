/** The fleet's rules on the phone, by the names of cellarapp/domain/fleet/calculations.py. */
import { callWorth } from "../../static/src/domain/fleet/call-worth.ts";
import { fleetNeeded } from "../../static/src/domain/fleet/needed.ts";
import { roundOrder } from "../../static/src/domain/fleet/stops.ts";
import { returnChance } from "../../static/src/domain/fleet/survival.ts";

export const FLEET = {
  return_chance: returnChance,
  call_worth: callWorth,
  fleet_needed: fleetNeeded,
  round_order: roundOrder,
};
