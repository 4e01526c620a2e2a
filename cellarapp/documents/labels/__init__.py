"""Labels as PDF: the plate a container carries for life, and the label of one fill."""

from cellarapp.documents.labels.collect import (
    TYPES,
    CannotLabel,
    collect_fill_labels,
    collect_plates,
)
from cellarapp.documents.labels.fill import FillLabel, fill_labels
from cellarapp.documents.labels.plate import Plate, plates
from cellarapp.documents.labels.stock import STOCKS

__all__ = [
    "STOCKS",
    "TYPES",
    "CannotLabel",
    "FillLabel",
    "Plate",
    "collect_fill_labels",
    "collect_plates",
    "fill_labels",
    "plates",
]
