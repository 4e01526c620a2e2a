"""The cellar's calculations by the names under which they are offered."""

from cellarapp.domain.cellar.ageing import ageing, q10_between
from cellarapp.domain.cellar.cooling import cooled, cooling
from cellarapp.domain.cellar.date_mark import date_mark
from cellarapp.domain.cellar.label import label, label_strength
from cellarapp.domain.cellar.left import left_by_dip, left_by_weight
from cellarapp.domain.cellar.logger import read_log
from cellarapp.domain.cellar.lot import lot_mark
from cellarapp.domain.cellar.on_sale import off_by
from cellarapp.domain.cellar.plan import plan_back, todays_jobs
from cellarapp.domain.cellar.ready import ready
from cellarapp.domain.cellar.run_out import run_out
from cellarapp.domain.cellar.sediment import sediment
from cellarapp.domain.cellar.shelf_life import best_before, life_left
from cellarapp.domain.working import Rule

CELLAR: dict[str, tuple[str, Rule]] = {
    "best_before": ("Best before", best_before),
    "life_left": ("Life left on delivery", life_left),
    "date_mark": ("How the date is written", date_mark),
    "lot_mark": ("Lot mark", lot_mark),
    "label": ("Words for a label", label),
    "label_strength": ("Strength on a label", label_strength),
    "off_by": ("Off sale by", off_by),
    "ageing": ("Life that warmth has cost", ageing),
    "q10_between": ("Ageing from two trials of your own", q10_between),
    "cooling": ("Time to cool or warm", cooling),
    "cooled": ("Temperature after a time", cooled),
    "read_log": ("Readings of a logger", read_log),
    "ready": ("Ready", ready),
    "plan_back": ("Plan for a sale", plan_back),
    "todays_jobs": ("Today's jobs", todays_jobs),
    "left_by_dip": ("Left, by a dip", left_by_dip),
    "left_by_weight": ("Left, by weight", left_by_weight),
    "sediment": ("Sediment", sediment),
    "run_out": ("When it runs out", run_out),
}
"""Name, title, rule."""
