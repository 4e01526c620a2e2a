"""What a page's form says that stands on record in the same words: sent twice, it is said once.

A page has no outbox that knows what it has sent: somebody taps twice, or loads the page again.
"""

import json

from cellarapp.domain.entries import Entry
from cellarapp.domain.queries import open_queries
from cellarapp.domain.standing import Standing
from cellarapp.storage.work import Work


def stands_already(work: Work, entry: Entry) -> bool:
    """Whether a report waits as a question, or a customer's word stands, in the same words."""
    key = ("container", entry["subject"])
    row = work.rows.load([key]).get(key)
    if row is None:
        return False
    standing: Standing = json.loads(row.doc)
    facts = entry["facts"]
    if entry["kind"] == "reported":
        waiting = (q["facts"] for q in open_queries(standing) if q["rule"] == "reported")
        return any(all(facts.get(name, "") == said[name] for name in said) for said in waiting)
    trip = standing["trip"]
    if entry["kind"] != "told" or trip is None or trip["customer"] != facts["customer"]:
        return False
    stands = trip["told"]["says"] if "told" in trip else "here"
    return stands == str(facts["says"])
