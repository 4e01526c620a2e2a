"""What there is to be seen when the demo is opened, whatever day that is."""

from collections import Counter
from typing import Any

import pytest

from cellarapp.demo.words import BEERS, CUSTOMERS, PLACES
from cellarapp.domain.bench.finings_lots import finings_life
from cellarapp.domain.bench.primings import primings
from cellarapp.domain.bench.strength import strength
from cellarapp.domain.bench.trial import trial_proposal
from cellarapp.domain.calendar import days_between, london_date
from cellarapp.domain.cellar.label import label_strength
from cellarapp.domain.corrections import resolve
from cellarapp.domain.entries import order_key
from cellarapp.domain.fold import entries_by_subject, step
from cellarapp.domain.numbers import bare_digits, is_number
from cellarapp.domain.standing import blank
from cellarapp.domain.trips import days_overdue

from .scene import NOWS, scene

every_now = pytest.mark.parametrize("now", NOWS)


@every_now
def test_fleet_is_large_and_of_five_kinds(now: str) -> None:
    """More than 240 containers; casks with plain numbers, kegs with a K, some sharing digits."""
    standings = scene(now).standings.values()
    kinds = Counter(standing["kind"] for standing in standings)
    assert len(standings) >= 240
    assert kinds.keys() == {"pin", "firkin", "kilderkin", "keg_30", "keg_50"}
    assert min(kinds.values()) >= 20
    assert all((s["shape"] == "keg") == s["number"].startswith("K") for s in standings)
    digits = Counter(bare_digits(standing["number"]) for standing in standings)
    assert {"12", "K12"} <= scene(now).standings.keys()
    assert sum(count == 2 for count in digits.values()) >= 20


@every_now
def test_records_are_as_many_as_promised(now: str) -> None:
    """Eight beers of different strength and days, sixty gyles, five places, 25 customers."""
    records = scene(now).records
    beers = [record["fields"] for record in records["beer"].values()]
    assert len(beers) == len(BEERS) == 8
    assert len({beer["abv_tenths"] for beer in beers}) == 8
    assert len({beer["best_before_days"] for beer in beers}) >= 4
    assert len({beer["conditioning_days"] for beer in beers}) >= 3
    assert len(records["gyle"]) >= 60
    assert len(records["place"]) == len(PLACES) == 5
    assert len(records["customer"]) == len(CUSTOMERS) == 25
    assert len({customer["fields"]["agreed_days"] for customer in records["customer"].values()}) > 2


@every_now
def test_some_ninety_containers_are_out_and_several_overdue(now: str) -> None:
    """With a good many customers, some of whom keep them for good."""
    overdue = [s["number"] for s in scene(now).out if s["trip"] and days_overdue(s["trip"], now)]
    holders = Counter(s["trip"]["customer"] for s in scene(now).out if s["trip"])
    longest = max(days_overdue(s["trip"], now) for s in scene(now).out if s["trip"])
    assert 70 <= len(scene(now).out) <= 110
    assert 12 <= len(overdue) <= 45
    assert len(holders) >= 12
    assert longest > 100


@every_now
def test_cellar_holds_beer_at_every_stage(now: str) -> None:
    """Conditioning, ready, on the stillage and on sale."""
    stages = Counter(scene(now).stage(standing) for standing in scene(now).full)
    assert 20 <= len(scene(now).full) <= 36
    assert stages["conditioning"] >= 5
    assert stages["ready"] >= 3
    assert stages["working"] + stages["stillaged"] >= 1
    assert 2 <= stages["on_sale"] <= 4
    assert stages["past"] == 0


@every_now
def test_casks_on_sale_have_been_dipped(now: str) -> None:
    """So that the bar shows what is left."""
    on_sale = [s for s in scene(now).full if s["serving"] and s["serving"]["tapped"]]
    assert [s for s in on_sale if s["contents"] and s["contents"]["dipped"]]
    assert all(s["shape"] == "cask" for s in on_sale)


@every_now
def test_one_cask_is_near_its_best_before(now: str) -> None:
    """And none is past it."""
    today = london_date(now)
    left = sorted(
        days_between(today, s["contents"]["best_before"] or "")
        for s in scene(now).full
        if s["contents"]
    )
    assert 0 <= left[0] <= 5
    assert left[4] > 7


@every_now
def test_racking_can_begin(now: str) -> None:
    """A gyle in the tank that nobody has drawn from, and washed containers of every kind."""
    gyles = scene(now).records["gyle"].items()
    filled = [e["facts"]["gyle"] for e in scene(now).of_kind("filled")]
    today = london_date(now)
    waiting = [
        gyle["fields"]
        for gyle_id, gyle in gyles
        if gyle_id not in filled and days_between(gyle["fields"]["brewed_on"], today) >= 6
    ]
    assert len(waiting) == 1
    assert waiting[0]["volume_ml"] > 700_000
    assert waiting[0]["present_gravity_e4"] < waiting[0]["original_gravity_e4"]
    ready = Counter(standing["kind"] for standing in scene(now).ready_to_fill)
    assert ready["firkin"] >= 10
    assert min(ready[kind] for kind in ("pin", "kilderkin", "keg_30", "keg_50")) >= 2


@every_now
def test_no_gyle_gave_more_than_it_held(now: str) -> None:
    """LIFE-4: but for the fill whose volume was mistyped."""
    counts_for = resolve(scene(now).entries).counts_for
    drawn: Counter[str] = Counter()
    for entry in scene(now).of_kind("filled"):
        if entry["id"] in counts_for:
            drawn[entry["facts"]["gyle"]] += entry["facts"]["volume_ml"]
    for gyle_id, gyle in scene(now).records["gyle"].items():
        assert drawn[gyle_id] <= gyle["fields"]["volume_ml"] + 50_000


@every_now
def test_a_few_queries_wait_each_of_another_sort(now: str) -> None:
    """LIFE-21: so that whoever looks sees one of each and not a flood."""
    rules = Counter(query["rule"] for query in scene(now).queries)
    assert rules == dict.fromkeys(
        [
            "dip_rose",
            "filled_twice",
            "impossible_time",
            "overfull",
            "reported",
            "sent_elsewhere",
            "sent_set_aside",
            "told_not_here",
            "unwashed",
        ],
        1,
    )


@every_now
def test_one_is_missing_one_scrapped_and_one_set_aside(now: str) -> None:
    """LIFE-14, LIFE-15: the missing one is still on its customer's account."""
    held = [s for s in scene(now).standings.values() if s["held"]]
    states = Counter(s["held"]["state"] for s in held if s["held"])
    assert states["missing"] == states["scrapped"] == 1
    assert states["set_aside"] >= 1
    assert [s["trip"] is not None for s in held if s["held"] and s["held"]["state"] == "missing"]


@every_now
def test_some_steps_were_inferred(now: str) -> None:
    """LIFE-20: returns and ventings that nobody noted."""
    inferred: Counter[str] = Counter()
    for number, counting in entries_by_subject(scene(now).entries).items():
        standing = blank(number)
        for entry in sorted(counting, key=order_key) if is_number(number) else []:
            standing, steps = step(standing, entry)
            inferred.update(steps)
    assert inferred["returned"] >= 2
    assert inferred["vented"] >= 5
    assert inferred["moved"] >= 100
    assert inferred.keys() == {"returned", "vented", "moved"}


@every_now
def test_promises_were_kept_and_broken(now: str) -> None:
    """Some customers gave back on the day they named, some did not, and some day is to come."""
    today, promises = london_date(now), Counter[str]()
    returned = {
        (e["facts"].get("customer"), london_date(e["effective_at"]))
        for e in scene(now).of_kind("returned")
    }
    for entry in scene(now).of_kind("chased"):
        day = entry["facts"].get("promised_on")
        if day is None:
            promises["none"] += 1
        elif day >= today:
            promises["to come"] += 1
        else:
            promises["kept" if (entry["subject"], day) in returned else "broken"] += 1
    assert promises["kept"] >= 10
    assert promises["broken"] >= 5
    assert promises["to come"] >= 1
    assert promises["none"] >= 3


@every_now
def test_thermometers_were_read_until_yesterday(now: str) -> None:
    """TEMP-1: cold room and stillage have a series each."""
    places = scene(now).records["place"].values()
    series = [place["temperatures"] for place in places if place["temperatures"]]
    assert len(series) == 2
    for readings in series:
        assert len(readings) >= 80
        assert days_between(london_date(str(readings[-1][0])), london_date(now)) == 1
        assert all(100 <= int(temp_decidegc) <= 140 for _, temp_decidegc in readings)


@every_now
def test_casks_were_dosed_and_the_gyle_that_waits_was_measured(now: str) -> None:
    """LIFE-17: primings and finings with their lots; the gravities that decide them."""
    lots = scene(now).records["lot"]
    casks = [s for s in scene(now).full if s["shape"] == "cask" and s["contents"]]
    doses = [dose for s in casks if s["contents"] for dose in s["contents"]["doses"]]
    assert {dose["what"] for dose in doses} == {"primings", "auxiliary_silica", "isinglass"}
    assert all((dose["what"] == "primings") == (dose["lot"] is None) for dose in doses)
    assert {dose["lot"] for dose in doses} - {None} <= lots.keys()
    measured = [g for g in scene(now).records["gyle"].values() if "ph_hundredths" in g["fields"]]
    assert len(measured) >= 55
    assert all(g["fields"]["present_gravity_e4"] < 10_300 for g in measured)


@every_now
def test_a_cask_is_picked_for_saturday_and_a_solution_is_in_the_tank(now: str) -> None:
    """LIFE-19: and the solution was used and titrated, so that it can be judged."""
    picked = [s["planned"]["sale_at"] for s in scene(now).standings.values() if s["planned"]]
    assert len(picked) == 1
    assert 0 < days_between(london_date(now), london_date(picked[0])) <= 7
    solutions = list(scene(now).records["solution"].values())
    in_the_tank = [s for s in solutions if not s["fields"].get("thrown_away")]
    assert len(in_the_tank) == 1
    assert in_the_tank[0]["uses"] > 0
    assert len(in_the_tank[0]["checks"]) == 1


@every_now
def test_a_round_of_three_is_made_up_for_today(now: str) -> None:
    """Each drop of what is full and at the brewery, for a customer with a place on the map."""
    records, standings = scene(now).records, scene(now).standings
    drops = [drop["fields"] for drop in records["drop"].values()]
    assert [drop["on"] for drop in drops] == [london_date(now)] * 3
    numbers = [number for drop in drops for number in drop["numbers"]]
    assert all(drop["numbers"] for drop in drops)
    assert len(numbers) == len(set(numbers))
    assert all(standings[number]["contents"] for number in numbers)
    assert not any(standings[number]["trip"] for number in numbers)
    assert len({drop["customer"] for drop in drops}) == 3
    assert all(customer["fields"]["map"] for customer in records["customer"].values())


@every_now
def test_a_trial_proposes_a_dose_and_a_tub_of_isinglass_is_near_its_end(now: str) -> None:
    """TRIAL-2, FINE-6: the second step did not settle again, so the third is the lowest."""
    [trial] = scene(now).records["trial"].values()
    read = [jar for reading in trial["readings"] for jar in reading["jars"]]
    samples = [
        {
            "isinglass_pt": sample["isinglass_centipt"] / 100,
            "auxiliary_pt": sample["auxiliary_centipt"] / 100,
            "clarity": [
                {"after_h": jar["after_min"] / 60, "score": jar["clarity_tenths"] / 10}
                for jar in read
                if jar["jar"] == n and "clarity_tenths" in jar
            ],
            "resettled": [
                jar["resettled_tenths"] / 10
                for jar in read
                if jar["jar"] == n and "resettled_tenths" in jar
            ],
        }
        for n, sample in enumerate(trial["fields"]["samples"], start=1)
    ]
    proposed = trial_proposal({"samples": samples})["result"]["proposal"]
    assert proposed == {"isinglass_pt": 3, "auxiliary_pt": 0.5, "settled_ml": None}
    live = [
        lot["fields"]
        for lot in scene(now).records["lot"].values()
        if "retired" not in lot["fields"]
    ]
    left = {lot["name"]: days_left(lot, london_date(now)) for lot in live}
    assert len(left) == 3
    assert 0 <= min(left.values()) <= 14
    assert sorted(left.values())[1] > 60


def days_left(lot: dict[str, Any], today: str) -> int:
    product = "isinglass" if lot["what"] == "isinglass" else "auxiliary"
    storage_temp_c = lot["stored_temp_decidegc"] / 10
    asked = {"product": product, "received_on": lot["received_on"], "today": today}
    left: int = finings_life(asked | {"storage_temp_c": storage_temp_c})["result"]["days_left"]
    return left


@every_now
def test_work_is_done_by_day(now: str) -> None:
    """Racking, washing and deliveries between seven and six; nobody racks at a weekend."""
    for entry in scene(now).of_kind("washed", "filled", "sent", "returned"):
        assert "06:00" < entry["happened_at"][11:16] < "18:30"
    days = {london_date(e["happened_at"]) for e in scene(now).of_kind("filled")}
    assert {days_between("2024-01-01", day) % 7 for day in days} <= {0, 1, 2, 3, 4}


@every_now
def test_what_is_racked_asks_for_sugar_and_keeps_to_its_label(now: str) -> None:
    """Every gyle that was measured: none has so much extract left that primings are nought."""
    records = scene(now).records
    measured = [one["fields"] for one in records["gyle"].values() if "loss_ml" in one["fields"]]
    assert len(measured) >= 50
    for gyle in measured:
        beer = records["beer"][gyle["beer"]]["fields"]
        limit, present = beer["limit_gravity_e4"] / 10_000, gyle["present_gravity_e4"] / 10_000
        asked = {
            "target_vol": beer["target_co2_centivols"] / 100,
            "yield": "full",
            "sugar": beer["priming_sugar"],
            "highest_temp_c": gyle["highest_temp_decidegc"] / 10,
            "present_gravity": present,
            "limit_gravity": limit,
            "cellar_temp_c": 12,
            "containers": [{"volume_ml": 40_915, "count": 1}],
        }
        assert primings(asked)["result"]["total_sugar_g"] > 20
        original = gyle["original_gravity_e4"] / 10_000
        found = strength({"original_gravity": original, "present_gravity": limit})
        label = {
            "label_abv_tenths": beer["abv_tenths"],
            "measured_abv": found["result"]["strength_pct"],
        }
        assert label_strength(label)["result"]["within"]
