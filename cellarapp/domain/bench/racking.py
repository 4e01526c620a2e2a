"""Which containers to fill from a vessel so that wishes are met and the least is left."""

from typing import Any, NamedTuple

from cellarapp.domain.errors import OutOfRange
from cellarapp.domain.figures import Settings
from cellarapp.domain.inputs import Asked, Inputs, number_in
from cellarapp.domain.working import Worked, Working

MOST_SIZES = 40
MOST_CONTAINERS = 200


class Size(NamedTuple):
    """Containers of one size that are clean and here, and how many of them must be filled."""

    capacity_ml: int
    available: int
    wished: int


def granted_wishes(sizes: list[Size], usable_ml: int) -> list[int]:
    """How many of each size the wishes take, in the order in which they are written."""
    granted = []
    for size in sizes:
        count = min(size.wished, size.available, usable_ml // size.capacity_ml)
        usable_ml -= count * size.capacity_ml
        granted.append(count)
    return granted


def fullest(sizes: list[tuple[int, int]], room_ml: int) -> list[int]:
    """How many of each (capacity, available) to fill so that most goes into them, exactly.

    All the sums that can be reached stand as bits of one whole number: bit n is set when n mL can
    be filled. Of several ways to the same sum the one with most of the largest size is taken,
    then of the next. Twin: static/src/domain/bench/racking.ts#fullest.
    """
    ascending = sorted(range(len(sizes)), key=lambda index: sizes[index][0])
    within = (1 << (room_ml + 1)) - 1
    reached = 1
    before = []
    for index in ascending:
        before.append(reached)
        capacity, left = sizes[index]
        chunk = 1
        while left > 0:
            taken = min(chunk, left)
            reached = (reached | reached << (taken * capacity)) & within
            left, chunk = left - taken, chunk * 2
    sum_ml = reached.bit_length() - 1
    counts = [0] * len(sizes)
    for index in reversed(ascending):
        smaller = before.pop()
        capacity, available = sizes[index]
        count = min(available, sum_ml // capacity)
        while not smaller >> (sum_ml - count * capacity) & 1:
            count -= 1
        counts[index] = count
        sum_ml -= count * capacity
    return counts


def asked_sizes(asked: Asked) -> list[Size]:
    """The rows asked about; no more than 200 containers in all."""
    sizes = []
    for index, row in enumerate(asked.parts("sizes", MOST_SIZES, "sizes")):
        part = Asked(row, "capacity_ml", "available", "wished", at=f"sizes[{index}].")
        sizes.append(Size(part.whole("capacity_ml"), part.whole("available"), part.whole("wished")))
    total = sum(size.available for size in sizes)
    if total > MOST_CONTAINERS:
        raise OutOfRange(
            field="sizes",
            given=total,
            low=0,
            high=MOST_CONTAINERS,
            unit="whole containers",
            why="So many are planned at once.",
        )
    return sizes


def shortest(sizes: list[Size], fills: list[int], left_ml: int) -> dict[str, int] | None:
    """The container that what is left comes nearest to filling, and the headspace it would have."""
    open_ml = [
        size.capacity_ml for size, fill in zip(sizes, fills, strict=True) if fill < size.available
    ]
    if left_ml == 0 or not open_ml:
        return None
    capacity_ml = min(open_ml)
    return {
        "capacity_ml": capacity_ml,
        "volume_ml": left_ml,
        "headspace_ml": capacity_ml - left_ml,
    }


def volume_ml(sizes: list[Size], counts: list[int]) -> int:
    """What so many of each size hold."""
    return sum(size.capacity_ml * count for size, count in zip(sizes, counts, strict=True))


def warn_of(work: Working, unmet: list[int], left_ml: int, short: dict[str, int] | None) -> None:
    """Wishes not met; a container that what is left would all but fill; beer and no container."""
    if any(unmet):
        work.caution("wishes_unmet")
    if short is None:
        if left_ml > 0:
            work.caution("no_container_left")
    elif left_ml * 100 >= work.setting("short_fill_worth_pct") * short["capacity_ml"]:
        work.caution("short_of_a_container")


def racking_plan(inputs: Inputs, settings: Settings | None = None) -> Worked:
    """RACK-1: how many of each size to fill: wishes first, then so that least is left.

    Wishes are met in the order in which the sizes are written. Asked: vessel_ml, loss_ml to leave
    behind, sizes with capacity_ml, available (clean and here) and wished.
    """
    asked, work = Asked(inputs, "vessel_ml", "loss_ml", "sizes"), Working(settings)
    vessel_ml = asked.whole("vessel_ml")
    why = "No more is left behind than is there."
    loss_ml = int(number_in("loss_ml", asked.whole("loss_ml"), 0, vessel_ml, "whole mL", why))
    sizes = asked_sizes(asked)
    usable_ml = vessel_ml - loss_ml
    work.step("To rack = vessel - left behind", usable_ml, "mL", 0)
    granted = granted_wishes(sizes, usable_ml)
    wished_ml = volume_ml(sizes, granted)
    work.step("Wishes take", wished_ml, "mL", 0)
    spare = [
        (size.capacity_ml, size.available - taken)
        for size, taken in zip(sizes, granted, strict=True)
    ]
    more = fullest(spare, usable_ml - wished_ml)
    fills = [taken + extra for taken, extra in zip(granted, more, strict=True)]
    racked_ml = volume_ml(sizes, fills)
    left_ml = usable_ml - racked_ml
    work.step("Left over = to rack - racked", left_ml, "mL", 0)
    short = shortest(sizes, fills, left_ml)
    unmet = [size.wished - taken for size, taken in zip(sizes, granted, strict=True)]
    warn_of(work, unmet, left_ml, short)
    rows: list[dict[str, Any]] = [
        {"capacity_ml": size.capacity_ml, "fill": fill, "unmet": missing}
        for size, fill, missing in zip(sizes, fills, unmet, strict=True)
    ]
    return work.done(
        {
            "usable_ml": usable_ml,
            "racked_ml": racked_ml,
            "left_ml": left_ml,
            "containers": sum(fills),
            "sizes": rows,
            "short": short,
        }
    )
