"""The fleet's calculations by the names under which they are offered."""

from cellarapp.domain.fleet.call_worth import call_worth
from cellarapp.domain.fleet.needed import fleet_needed
from cellarapp.domain.fleet.stops import round_order
from cellarapp.domain.fleet.survival import return_chance
from cellarapp.domain.working import Rule

FLEET: dict[str, tuple[str, Rule]] = {
    "return_chance": ("Chance that a container comes back", return_chance),
    "fleet_needed": ("How many containers it takes", fleet_needed),
    "call_worth": ("What a call to a customer is worth", call_worth),
    "round_order": ("Order of a round's stops", round_order),
}
"""Name, title, rule."""
