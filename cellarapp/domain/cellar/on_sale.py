"""SALE: the clock after tapping. It starts at the first draw or when the line is connected."""

from cellarapp.domain.cellar.asked import CellarAsked
from cellarapp.domain.cellar.days import after_days, days_on_sale
from cellarapp.domain.cellar.times import say_at
from cellarapp.domain.figures import Settings
from cellarapp.domain.inputs import Inputs
from cellarapp.domain.working import Worked, Working


def off_by(inputs: Inputs, settings: Settings | None = None) -> Worked:
    """SALE-3: when a container that is on sale is to be taken off.

    Where the first draw is not known tapping stands for it, which is never too late.
    Asked: tapped_at, shape; first_drawn_at, on_sale_days. Twin: on_sale.ts.
    """
    fields = ("tapped_at", "first_drawn_at", "shape", "on_sale_days")
    asked, work = CellarAsked(inputs, *fields), Working(settings)
    tapped_at, shape = asked.instant("tapped_at"), asked.shape()
    since = asked.maybe_instant("first_drawn_at", tapped_at, "Not before it was tapped.")
    days = days_on_sale(work, shape, asked.maybe_whole("on_sale_days"))
    off_at = after_days(since or tapped_at, days)
    says = f"Off by = {'first draw' if since else 'tapping'} {say_at(since or tapped_at)} + days"
    work.step(f"{says}: {say_at(off_at)}", days, "days", 0)
    return work.done(
        {
            "off_by_at": off_at,
            "on_sale_days": days,
            "counted_from": "first_draw" if since else "tapping",
        }
    )
