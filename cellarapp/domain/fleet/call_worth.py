"""CALL: what a call to a customer is worth: what is late, and how likely it comes by itself."""

from typing import Any, NamedTuple

from cellarapp.domain.containers import CONTAINER_KINDS
from cellarapp.domain.figures import Settings
from cellarapp.domain.fleet.survival import (
    Curve,
    asked_trips,
    curve,
    last_watched,
    still_out_later,
)
from cellarapp.domain.inputs import Asked, Inputs
from cellarapp.domain.rounding import half_up, half_up_whole
from cellarapp.domain.working import Worked, Working

MOST_OUT = 1000
UNKNOWN_KIND = "other_cask"
KIND_WHY = "A kind of container."
OUT_FIELDS = (
    "kind", "days_out", "agreed_days", "value_pounds", "deposit_pounds", "hire_pounds_a_day",
)  # fmt: skip


class Out(NamedTuple):
    """A container that is out."""

    days_out: int
    agreed_days: int
    value_pounds: float
    """What it costs to replace, less the deposit that stays with us."""
    hire_pounds_a_day: float


class Evidence(NamedTuple):
    """The trips that a customer is judged by."""

    by: str
    """"own", or "all" where the customer's own are too few."""
    every: Curve
    last_day: int
    stays: list[float]
    """The chance to be out a fortnight later too, by days out; after the last of them certain."""


def asked_out(asked: Asked, work: Working) -> list[Out]:
    """The containers that the customer has, each with what it costs to do without."""
    found = []
    for n, part in enumerate(asked.parts("out", MOST_OUT, "containers")):
        one = Asked(part, *OUT_FIELDS, at=f"out[{n}].")
        kind = UNKNOWN_KIND
        if one.has("kind"):
            kind = one.choice("kind", list(CONTAINER_KINDS), KIND_WHY)
        value = one.number("value_pounds") if one.has("value_pounds") else None
        if value is None:
            value = work.setting(f"{kind}_value_pounds")
        agreed = one.whole("agreed_days") if one.has("agreed_days") else None
        if agreed is None:
            agreed = int(work.setting("agreed_days"))
        deposit = one.number("deposit_pounds") if one.has("deposit_pounds") else 0.0
        hire = one.number("hire_pounds_a_day") if one.has("hire_pounds_a_day") else 0.0
        found.append(Out(one.whole("days_out"), agreed, max(0.0, value - deposit), hire))
    return found


def judged_by(work: Working, asked: Asked) -> Evidence:
    """CALL-1: the customer's own trips once enough of them have ended with a return, else all.

    Its own say nothing of a time that none of them has lasted: from then on it is all.
    """
    own, every = asked_trips(asked, "own"), asked_trips(asked, "all")
    returned = sum(one.returned for one in own)
    work.step("Trips of this customer that ended with a return", returned, "trips", 0)
    enough = returned >= work.setting("own_trips_enough")
    of_all, of_own = curve(every), curve(own if enough else [])
    within = int(work.setting("chance_within_days"))
    stays = []
    for day in range(max(len(of_own.shares), len(of_all.shares))):
        seen = of_own if day + 1 < len(of_own.shares) else of_all
        later = still_out_later(seen, day, within)
        stays.append(1.0 if later is None else later)
    last_day = last_watched([*own, *every])
    return Evidence("own" if enough else "all", of_all, last_day, stays)


def chance_still_out(evidence: Evidence, out: Out) -> float:
    """CALL-2: the chance that a late container is still out in a fortnight if nobody asks.

    The longer it is late the likelier, never the other way: the highest chance of all days since
    it fell due. Of a time that no trip has lasted nothing good is believed.
    """
    if out.days_out <= out.agreed_days:
        return 0.0
    if out.days_out >= len(evidence.stays):
        return 1.0
    return max(evidence.stays[out.agreed_days + 1 : out.days_out + 1])


def chance_lost(evidence: Evidence, out: Out, lost_after: int) -> float:
    """CALL-3: the chance that it is never back: still out when it is to be taken for lost.

    Rare with most customers, so the trips of all have to tell.
    """
    if out.days_out >= lost_after:
        return 1.0
    now = evidence.every.still_out(out.days_out)
    return 1.0 if now == 0 else evidence.every.still_out(lost_after) / now


def chance_back(evidence: Evidence, out: Out, within: int) -> float | None:
    """KM-2: as the trips have it; None after the last return, or where none was watched so long.

    Of what is late CALL-2 has the other half, so that the chance and the money say the same.
    """
    if out.days_out + within > evidence.last_day or out.days_out >= len(evidence.stays):
        return None
    if out.days_out > out.agreed_days:
        return 1 - chance_still_out(evidence, out)
    return 1 - evidence.stays[out.days_out]


def call_worth(inputs: Inputs, settings: Settings | None = None) -> Worked:
    """CALL-4: what would likely be still out in a fortnight if nobody rang, in money.

    Asked: own and all: trips (entered_day, days, returned, open) of the customer and of everybody,
    those still open among them; out (kind, days_out, agreed_days, value_pounds, deposit_pounds,
    hire_pounds_a_day). A deposit that we hold is no loss; the hire of another's container goes on
    for the fortnight, and of a lost one until it is reckoned lost. Only what is late counts.
    Missing is proposed here, and declared by a person only.
    Twin: static/src/domain/fleet/call-worth.ts.
    """
    asked, work = Asked(inputs, "own", "all", "out"), Working(settings)
    evidence = judged_by(work, asked)
    all_out = asked_out(asked, work)
    within = int(work.setting("chance_within_days"))
    lost_after = int(work.setting("lost_after_days"))
    propose_pct = work.setting("missing_proposed_pct")
    worth = loss = 0.0
    rows: list[dict[str, Any]] = []
    for out in all_out:
        late_days = max(0, out.days_out - out.agreed_days)
        stays = chance_still_out(evidence, out)
        lost = chance_lost(evidence, out, lost_after) if late_days else 0.0
        back = chance_back(evidence, out, within)
        hired_on = max(0, lost_after - out.days_out)
        worth += stays * (out.value_pounds + out.hire_pounds_a_day * within)
        loss += lost * (out.value_pounds + out.hire_pounds_a_day * hired_on)
        rows.append(
            {
                "days_out": out.days_out,
                "late_days": late_days,
                "back_pct": None if back is None else half_up_whole(back * 100),
                "lost_pct": half_up_whole(lost * 100),
                "propose_missing": late_days > 0 and half_up(lost * 100, 3) >= propose_pct,
            }
        )
    late = [row for row in rows if row["late_days"]]
    work.step("Late, of those that are out", len(late), "containers", 0)
    chances: dict[int, int] = {}
    for row in late:
        if (back_pct := row["back_pct"]) is not None:
            chances[row["days_out"]] = min(back_pct, chances.get(row["days_out"], back_pct))
    for days, least_pct in chances.items():
        said = f"Out {days} days: the least chance since it fell due to be back in a fortnight"
        work.step(said, least_pct, "%", 0)
    work.step(
        "Likely still out in a fortnight = sum of (value - deposit + hire) x chance", worth, "£", 0
    )
    work.step(
        "Likely lost = sum of (value - deposit + hire) x chance never to be back", loss, "£", 0
    )
    return work.done(
        {
            "worth_pence": half_up_whole(worth * 100),
            "loss_pence": half_up_whole(loss * 100),
            "worth_calling": half_up(worth, 2) >= work.setting("call_worth_least_pounds"),
            "late": len(late),
            "longest_days": max((row["days_out"] for row in rows), default=0),
            "judged_by": evidence.by,
            "least_back_pct": min(chances.values(), default=None),
            "out": rows,
        }
    )
