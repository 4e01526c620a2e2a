"""Sheets that a brewery brings along: its containers, its customers, and what is out with whom.

A sheet is read whole and changes nothing. What it says comes back as drafts, which a phone shows
and then records like anything else a person notes; so there is one way into the ledger.
The same sheets are given out again, so that a brewery can leave with all it has.
"""

from cellarapp.documents.sheets.kinds import SHEETS, Known, known_from
from cellarapp.documents.sheets.reading import Reading, read_sheet
from cellarapp.documents.sheets.table import SheetNotReadable
from cellarapp.documents.sheets.writing import TYPES, write_sheet

__all__ = [
    "SHEETS",
    "TYPES",
    "Known",
    "Reading",
    "SheetNotReadable",
    "known_from",
    "read_sheet",
    "write_sheet",
]
