"""Days that a beer, its container or the brewery sets: to condition, to keep, to be on sale.

What lists of hundreds ask for stands here by itself, so that a phone's first screen carries no
more than that.
"""

from cellarapp.domain.calendar import same_time_after
from cellarapp.domain.working import Working

WINDOWS = (
    "window_under_4_days", "window_4_to_5_days", "window_over_5_days", "window_over_7_days",
)  # fmt: skip
ON_SALE = {"cask": "on_sale_days", "keg": "keg_on_sale_days"}


def window_days(
    work: Working, shape: str | None, abv_tenths: int | None, own_days: int | None
) -> int:
    """SHELF-1: a beer's own window; a keg's; or the one for its strength.

    Of a beer whose strength is not known the window for any beer is taken.
    Twin: static/src/domain/cellar/days.ts.
    """
    if own_days is not None:
        work.step("Window: the beer's own", own_days, "days", 0)
        return own_days
    name, says = "best_before_days", "Window: of a beer whose strength is not known"
    if shape == "keg":
        name, says = "keg_window_days", "Window: in a keg"
    elif abv_tenths is not None:
        classes = work.setting_list("strength_classes")
        name = WINDOWS[sum(abv_tenths / 10 > up_to for up_to in classes)]
        says = f"Window: of a cask of {abv_tenths // 10}.{abv_tenths % 10} % vol"
    return int(work.step(says, int(work.setting(name)), "days", 0))


def days_to_condition(work: Working, own_days: int | None) -> int:
    """COND-1: the beer's own days, or the brewery's."""
    return int(work.setting("conditioning_days")) if own_days is None else own_days


def days_on_sale(work: Working, shape: str, own_days: int | None) -> int:
    """SALE-1: the beer's own days, or those of its kind of container."""
    return int(work.setting(ON_SALE[shape])) if own_days is None else own_days


def after_days(since_at: str, days: int) -> str:
    """COND-2, SALE-2: the same time on a London clock so many days later."""
    return same_time_after(since_at, days)
