"""Lists given out: they can be brought in again, and do no harm in an office program."""

import csv
import io
import json
from collections import Counter
from typing import Any

from flask.testing import FlaskClient

from cellarapp.ledger.take_in import take_in

from ..making import Phone, batch, made_id

FILE = "application/octet-stream"
HOSTILE = '=HYPERLINK("http://example.com","The Mitre")'


def record() -> None:
    phone = Phone()
    mitre, beer, gyle, room = map(made_id, ["mitre", "beer", "gyle 1", "cold room"])
    take_in(
        batch(
            [
                phone.entry("customer", mitre, name=HOSTILE, delivery_day=1, agreed_days=28),
                phone.entry("customer", made_id("gone"), name="Gone", retired=True),
                phone.entry("place", room, name="Cold room", role="store"),
                phone.entry("beer", beer, name="Ember"),
                phone.entry("gyle", gyle, number="=9+9", beer=beer),
                phone.registered("7", tare_g=10_500, limit_millibar=1500),
                phone.registered("8", "pin", capacity_ml=20_457, owner="-Hire yard"),
                phone.filled("7", gyle=gyle, best_before="2027-01-05"),
                phone.filled("8", gyle=gyle, place=room, volume_ml=20_000),
                phone.entry("sent", "7", customer=mitre, due_on="2026-12-23"),
            ]
        )
    )


def csv_of(client: FlaskClient, kind: str) -> tuple[bytes, list[dict[str, str]]]:
    answer = client.get(f"/api/sheets/{kind}.csv")
    assert answer.content_type == "text/csv; charset=utf-8"
    assert f'filename="{kind}.csv"' in answer.headers["Content-Disposition"]
    assert answer.data.startswith(b"\xef\xbb\xbf")
    return answer.data, list(csv.DictReader(io.StringIO(answer.data.decode("utf-8-sig"))))


def test_containers_with_what_is_known_of_each(client: FlaskClient) -> None:
    record()
    _, lines = csv_of(client, "containers")
    assert lines == [
        {
            "Number": "7", "Kind": "Firkin", "Litres": "40.915", "Empty weight kg": "10.5",
            "Pressure limit bar": "1.5", "Owner": "", "Where": f"'{HOSTILE}",
            "Out since": "2026-11-25", "Holds beer": "Ember",
            "Gyle": "'=9+9", "Racked": "2026-11-25", "Best before": "2027-01-05",
            "Left litres": "40", "Kept out of use": "",
        },
        {
            "Number": "8", "Kind": "Pin", "Litres": "20.457", "Empty weight kg": "",
            "Pressure limit bar": "", "Owner": "'-Hire yard", "Where": "Cold room",
            "Out since": "", "Holds beer": "Ember",
            "Gyle": "'=9+9", "Racked": "2026-11-25", "Best before": "", "Left litres": "20",
            "Kept out of use": "",
        },
    ]  # fmt: skip


def test_what_is_given_out_can_be_brought_in_again(client: FlaskClient) -> None:
    """Nothing of it is new, and nothing is wrong with it."""
    record()
    for kind, rows in [("containers", 2), ("customers", 1), ("out", 1)]:
        data, lines = csv_of(client, kind)
        assert len(lines) == rows
        told: Any = client.post(f"/api/sheets/{kind}", data=data, content_type=FILE).json
        assert (told["drafts"], told["faults"], told["on_record"]) == ([], [], rows)


def test_no_such_list(client: FlaskClient) -> None:
    assert client.get("/api/sheets/beers.csv").status_code == 404


def test_everything_in_one_file(client: FlaskClient) -> None:
    """Rows as phones pull them, entries as they were taken in, and what is held."""
    record()
    take_in(batch([Phone("other").entry("brewed", made_id("gyle 1"))]))
    answer = client.get("/api/ledger.json")
    assert 'filename="ledger.json"' in answer.headers["Content-Disposition"]
    told = json.loads(answer.data)
    pulled: Any = client.get("/api/pull?since=0&limit=1000").json
    assert (told["epoch"], told["head"]) == (pulled["epoch"], pulled["head"])
    assert sorted(told["rows"], key=lambda row: row["position"]) == pulled["rows"]
    assert Counter(one["kind"] for one in told["entries"]) == {
        "customer": 2, "place": 1, "beer": 1, "gyle": 1, "registered": 2, "filled": 2, "sent": 1,
    }  # fmt: skip
    assert [one["kind"] for one in told["held"]] == ["brewed"]
