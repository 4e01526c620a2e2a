"""Medians of several runs, ours and the floor in turn, so that a busy machine slows both."""

from collections.abc import Callable
from statistics import median
from time import perf_counter


def once_ms(work: Callable[[], object]) -> float:
    start = perf_counter()
    work()
    return (perf_counter() - start) * 1000


def compare(
    ours: Callable[[], object], floor: Callable[[], object], runs: int = 9
) -> tuple[float, float]:
    """The medians of both in ms, the first run of each left out."""
    pairs = [(once_ms(ours), once_ms(floor)) for _ in range(runs + 1)][1:]
    return median(a for a, _ in pairs), median(b for _, b in pairs)


def say(what: str, ours_ms: float, floor_ms: float, floor: str) -> None:
    print(
        f"{what:44} {ours_ms:9.1f} ms {floor_ms:9.1f} ms  x {ours_ms / floor_ms:5.2f}  ({floor})",
        flush=True,
    )
