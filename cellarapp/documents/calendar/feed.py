"""Writes jobs as iCalendar (RFC 5545), with the name and pace of RFC 7986."""

from datetime import date, datetime, timedelta
from importlib.metadata import version

from icalendar import Calendar, Event

from cellarapp.documents.calendar.due import Rows, all_due, changed_at
from cellarapp.domain.calendar import parse_instant
from cellarapp.domain.figures import Settings

ASK_AGAIN = timedelta(hours=4)
"""What is asked of calendar programs; each goes by its own pace in the end."""


def feed(rows: Rows, now: str, settings: Settings) -> bytes:
    """The calendar. The same ledger gives the same bytes, but for what moves with the clock."""
    brewery = rows["brewery"].get("brewery", {"fields": {}})["fields"].get("name")
    name = f"{brewery}: jobs due" if brewery else "Jobs due"
    calendar = Calendar()
    calendar.add("prodid", f"-//cellarapp//{version('cellarapp')}//EN")
    calendar.add("version", "2.0")
    # RFC 7986, and the older names that calendar programs go by.
    calendar.add("name", name)
    calendar.add("x-wr-calname", name)
    calendar.add("refresh-interval", ASK_AGAIN, parameters={"VALUE": "DURATION"})
    calendar.add("x-published-ttl", "PT4H")
    stamp = parse_instant(changed_at(rows))
    for due in all_due(rows, now, settings):
        when: date | datetime = due.when if isinstance(due.when, date) else parse_instant(due.when)
        event = Event()
        event.add("uid", due.uid)
        event.add("dtstamp", stamp)
        event.add("dtstart", when)
        event.add("summary", due.summary)
        event.add("description", due.says)
        event.add("categories", [due.what])
        event.add("transp", "TRANSPARENT")
        calendar.add_component(event)
    return bytes(calendar.to_ical())
