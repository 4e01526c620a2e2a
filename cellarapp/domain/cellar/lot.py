"""LOT: the lot mark. A lot is one racking run of one gyle, so that a recall stays small."""

import re

from cellarapp.domain.cellar.asked import CellarAsked
from cellarapp.domain.cellar.date_mark import FORMS
from cellarapp.domain.figures import Settings
from cellarapp.domain.inputs import Inputs
from cellarapp.domain.working import Worked, Working

GYLE_NUMBER = re.compile("[A-Za-z0-9][A-Za-z0-9 ./-]{0,19}")
GYLE_NUMBER_WHY = "A gyle's number: up to twenty letters, digits, blanks, dots, strokes, hyphens."
DATED = (*FORMS, "none")
DATED_WHY = "How the date stands on the container, or that none does."


def lot_mark(inputs: Inputs, settings: Settings | None = None) -> Worked:
    """LOT-1: L, the gyle, and the run; printed even where the date would do.

    Asked: gyle_number, run; dated, how the date is shown. Twin: lot.ts.
    """
    asked, work = CellarAsked(inputs, "gyle_number", "run", "dated"), Working(settings)
    gyle = asked.words("gyle_number", GYLE_NUMBER, GYLE_NUMBER_WHY)
    run = asked.whole("run")
    dated = asked.choice("dated", DATED, DATED_WHY) if asked.has("dated") else "none"
    code = re.sub(" +", "", gyle).upper()
    work.step("Lot = L, the gyle's number, the run", run, "run", 0)
    work.caution("check_food_law")
    return work.done(
        {
            "mark": f"{work.figure('lot_mark_prefix')}{code}-{run}",
            "must_be_shown": dated not in ("day_month_year", "day_month"),
        }
    )
