"""NEED: against the published case of Little's law, a simulation, and another implementation."""

import random
import warnings
from typing import Any

import pytest

from cellarapp.domain.fleet.needed import enough_for, restricted_mean
from cellarapp.domain.fleet.survival import Trips, curve

from ..cellar.asking import result
from .test_survival import PLACEBO, SIX_MP, trips

with warnings.catch_warnings():
    warnings.simplefilter("ignore")  # of what lifelines draws with, which is not used here
    from lifelines import KaplanMeierFitter
    from lifelines.utils import restricted_mean_survival_time
    from scipy.stats import poisson


def needed(days: int, a_week: float, **more: Any) -> dict[str, Any]:
    """With trips that all take so many days."""
    asked = {
        "trips": [{"entered_day": 0, "days": days, "returned": 50, "open": 0}], "out": [],
        "at_home": 0, "fills_a_week": a_week, "home_days": 0, "lost_a_year": 0,
        "value_pounds": 75,
    }  # fmt: skip
    return result("fleet_needed", **(asked | more))


def test_a_rack_of_wine_as_published() -> None:
    """NEED-2. Little and Graves 2008: 160 bottles, eight bought a month: 20 months each."""
    # A month for a day: 20 days, eight a day.
    assert needed(20, 8 * 7)["expected"] == 160


def test_brewery_of_580_casks() -> None:
    """NEED-2. Hop Craft, May 2016: 580 casks, 200 fills a month: 88 days, 4.14 turns a year."""
    found = needed(88, 200 * 12 / 365.25 * 7)
    assert found["expected"] == pytest.approx(580, abs=2)
    assert found["turns_a_year"] == pytest.approx(4.14, abs=0.07)


@pytest.mark.parametrize(("text", "mean"), [(SIX_MP, 17.909), (PLACEBO, 8.667)])
def test_mean_within_23_weeks_is_lifelines(text: str, mean: float) -> None:
    """NEED-1: with its error."""
    each = [Trips(0, t["days"], t["returned"], t["open"]) for t in trips(text)]
    found = restricted_mean(curve(each), 23)
    assert found.days == pytest.approx(mean, abs=0.001)
    fitter = KaplanMeierFitter().fit([t.days for t in each], [t.returned for t in each])
    assert found.days == pytest.approx(restricted_mean_survival_time(fitter, t=23), abs=1e-9)


@pytest.mark.parametrize("mean", [0.3, 4, 120, 2500])
@pytest.mark.parametrize("certainty", [0.5, 0.9, 0.95, 0.999])
def test_margin_is_poissons(mean: float, certainty: float) -> None:
    """NEED-3: scipy's quantile; 138 for 120 at 95 %, as in the reference."""
    assert enough_for(mean, certainty) == poisson.ppf(certainty, mean)
    assert enough_for(120, 0.95) == 138


def test_simulated_brewery_has_enough_as_often_as_it_was_promised() -> None:
    """NEED-2, NEED-3: sent at random, out for 10 to 90 days evenly; looked at on 3,000 days."""
    chance = random.Random(7)
    times = range(10, 91)
    evenly = [{"entered_day": 0, "days": d, "returned": 1, "open": 0} for d in times]
    found = needed(0, 14, trips=evenly, home_days=0)
    enough = 0
    for _ in range(3000):
        # All that left within the last 90 days, each with its own time.
        left = [age for age in range(90) for _ in range(poisson_draw(chance, 2))]
        out = sum(chance.choice(times) > age for age in left)
        enough += out <= found["needed"]
    assert found["mean_days"] == 50
    assert 0.94 < enough / 3000 < 0.98


def poisson_draw(chance: random.Random, mean: float) -> int:
    """How many come in a day, by the times between them."""
    count, at = 0, chance.expovariate(mean)
    while at < 1:
        count, at = count + 1, at + chance.expovariate(mean)
    return count


def test_shortage_is_foreseen() -> None:
    """NEED-4. By hand: ten at home, seven sent a week, back after 30 days: short in week two."""
    found = needed(30, 7, at_home=10)
    assert found["at_home_by_week"][:2] == [3, -4]
    assert found["short_in_weeks"] == 2
    # From the day on which the first come back as many come as go.
    assert found["at_home_by_week"][5] == found["at_home_by_week"][8]
    assert needed(30, 7, at_home=40)["short_in_weeks"] is None


def test_what_is_out_comes_back_by_its_chances() -> None:
    """NEED-4: five sent 28 days ago are back within the week."""
    found = needed(30, 0, out=[{"days_out": 28}] * 5)
    assert found["at_home_by_week"][0] == 5
    assert found["have"] == 5


def test_losses_cost_what_they_cost() -> None:
    assert needed(30, 7, lost_a_year=12)["lost_pounds"] == 900
