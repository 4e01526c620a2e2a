"""LOT: the lot mark. A lot is what was racked from one gyle on one day: a recall stays small.

It follows from the fill alone, so that no two phones mark one container in two ways and no entry
that comes late moves a mark that is printed.
"""

import re

from cellarapp.domain.cellar.asked import CellarAsked
from cellarapp.domain.cellar.date_mark import FORMS
from cellarapp.domain.cellar.times import say_day
from cellarapp.domain.figures import Settings
from cellarapp.domain.inputs import Inputs
from cellarapp.domain.working import Worked, Working

GYLE_NUMBER = re.compile("[A-Za-z0-9][A-Za-z0-9 ./-]{0,19}")
GYLE_NUMBER_WHY = "A gyle's number: up to twenty letters, digits, blanks, dots, strokes, hyphens."
DATED = (*FORMS, "none")
DATED_WHY = "How the date stands on the container, or that none does."


def lot_mark(inputs: Inputs, settings: Settings | None = None) -> Worked:
    """LOT-1: L, the gyle, and the day of racking; printed even where the date would do.

    Asked: gyle_number, racked_on; dated, how the date is shown. Twin: lot.ts.
    """
    asked, work = CellarAsked(inputs, "gyle_number", "racked_on", "dated"), Working(settings)
    gyle = asked.words("gyle_number", GYLE_NUMBER, GYLE_NUMBER_WHY)
    racked_on = asked.day("racked_on")
    dated = asked.choice("dated", DATED, DATED_WHY) if asked.has("dated") else "none"
    code = re.sub(" +", "", gyle).upper()
    day = racked_on[8:] + racked_on[5:7] + racked_on[2:4]
    work.step(f"Lot = L, the gyle's number, the day of racking: {say_day(racked_on)}", 1, "lot", 0)
    work.caution("check_food_law")
    return work.done(
        {
            "mark": f"{work.figure('lot_mark_prefix')}{code}-{day}",
            "must_be_shown": dated not in ("day_month_year", "day_month"),
        }
    )
