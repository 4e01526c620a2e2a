"""Marshmallow fields for what an entry may hold."""

from cellarapp.ledger.fields.spoken import Choice, Spoken, Whole, YesNo
from cellarapp.ledger.fields.text import ID_PATTERN, IS_ID, Id, Number, Pattern, Secret, Way, Words
from cellarapp.ledger.fields.time import Day, Instant, Moment, Series

__all__ = [
    "ID_PATTERN",
    "IS_ID",
    "Choice",
    "Day",
    "Id",
    "Instant",
    "Moment",
    "Number",
    "Pattern",
    "Secret",
    "Series",
    "Spoken",
    "Way",
    "Whole",
    "Words",
    "YesNo",
]
