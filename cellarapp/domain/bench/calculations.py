"""The bench's calculations by the names under which they are offered."""

from cellarapp.domain.bench.co2 import co2_in_beer
from cellarapp.domain.bench.finings_conditions import finings_conditions, sulphite
from cellarapp.domain.bench.finings_lots import finings_life, moves_after_fining, vegan
from cellarapp.domain.bench.finings_order import finings_order
from cellarapp.domain.bench.pressure import keg_pressure, sealed_pressure
from cellarapp.domain.bench.primings import primings
from cellarapp.domain.bench.racking import racking_plan
from cellarapp.domain.bench.rates import cask_hops, finings_dose
from cellarapp.domain.bench.sheet import bench_sheet
from cellarapp.domain.bench.solution import solution_state, titration
from cellarapp.domain.bench.strength import expected_strength, strength
from cellarapp.domain.bench.trial import trial_ladder, trial_proposal
from cellarapp.domain.bench.washing import caustic_dilution, peracetic_dilution
from cellarapp.domain.bench.weight import fill_by_weight
from cellarapp.domain.working import Rule

BENCH: dict[str, tuple[str, Rule]] = {
    "co2_in_beer": ("CO2 in the beer", co2_in_beer),
    "primings": ("Priming sugar", primings),
    "sealed_pressure": ("Pressure in a sealed container", sealed_pressure),
    "keg_pressure": ("Carbonating a keg", keg_pressure),
    "finings_dose": ("Finings", finings_dose),
    "cask_hops": ("Hops in the cask", cask_hops),
    "finings_order": ("Which finings now", finings_order),
    "finings_conditions": ("Beer at fining", finings_conditions),
    "sulphite": ("Sulphite", sulphite),
    "finings_life": ("Life of finings", finings_life),
    "moves_after_fining": ("Moves after fining", moves_after_fining),
    "vegan": ("Vegan or not", vegan),
    "trial_ladder": ("Samples of a finings trial", trial_ladder),
    "trial_proposal": ("What a finings trial says", trial_proposal),
    "racking_plan": ("Which containers to fill", racking_plan),
    "bench_sheet": ("Sheet for the bench", bench_sheet),
    "fill_by_weight": ("Fill by weight", fill_by_weight),
    "strength": ("Strength", strength),
    "expected_strength": ("Strength to expect in the cask", expected_strength),
    "peracetic_dilution": ("Peracetic acid", peracetic_dilution),
    "caustic_dilution": ("Caustic", caustic_dilution),
    "titration": ("Titration", titration),
    "solution_state": ("A made-up solution", solution_state),
}
"""Name, title, rule."""
