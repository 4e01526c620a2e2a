"""What happened to containers as EPCIS 2.0 events (ISO/IEC 19987), for those who ask for them."""

from cellarapp.documents.epcis.document import CannotTell, events_document

__all__ = ["CannotTell", "events_document"]
