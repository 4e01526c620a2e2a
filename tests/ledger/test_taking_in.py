"""Verdicts: each element gets its own, whatever is beside it."""

import json
from datetime import timedelta

import pytest
from flask import Flask
from sqlalchemy import update

from cellarapp.accounts.rights import RightsOf
from cellarapp.ledger.check import check
from cellarapp.ledger.history import held
from cellarapp.ledger.rebuild import rebuild
from cellarapp.ledger.release import release_held
from cellarapp.ledger.take_in import take_in
from cellarapp.storage.db import db
from cellarapp.storage.models import Row
from cellarapp.storage.work import reading

from ..making import NOW, Phone, batch, made_id
from .looking import docs, head_position, standing, words

pytestmark = pytest.mark.usefixtures("app")


def test_accepted_entry_steps_its_container_forward() -> None:
    """LIFE-4: the contents, and what was drawn from the gyle."""
    assert words(Phone().filled("117")) == ["accepted"]
    assert standing("117")["contents"]["volume_ml"] == 40_000
    assert json.loads(docs()["gyle", made_id("gyle 1")])["drawn_ml"] == 40_000


def test_same_push_again_is_known_at_its_first_position_and_changes_nothing() -> None:
    """ORD-2: an answer that was lost on its way does no harm."""
    push = batch([Phone("a").filled("117"), Phone("b").filled("118")])
    first = take_in(push)
    before = docs(), head_position()
    again = take_in(push)
    assert [v.word for v in again.verdicts] == ["known", "known"]
    assert [v.position for v in again.verdicts] == [v.position for v in first.verdicts]
    assert (docs(), head_position()) == before


def test_phone_that_numbers_anew_loses_nothing() -> None:
    """ORD-1: put back from a copy it gives a number twice; both count, in one order everywhere."""
    noted = [Phone().entry("noted", "117", words=said) for said in ("before", "after")]
    noted[1]["id"] = made_id("made after the copy was put back")
    assert [one["seq"] for one in noted] == [1, 1]
    assert words(*noted) == ["accepted", "accepted"]
    assert check() == []


def test_entry_made_under_older_rules_folds_by_those_of_now() -> None:
    """A phone that was not updated for months has entries waiting."""
    assert words(Phone().filled("117") | {"rules": 0}, Phone("b").filled("118")) == [
        "accepted",
        "accepted",
    ]
    older, newer = standing("117"), standing("118")
    assert older["contents"]["volume_ml"] == newer["contents"]["volume_ml"] == 40_000
    assert check() == []


def test_entry_twice_in_one_push_counts_once() -> None:
    """ORD-2: two tabs may have put the same thing into one request."""
    entry = Phone().filled("117")
    verdicts = take_in(batch([entry, entry])).verdicts
    assert [(v.word, v.position) for v in verdicts] == [("accepted", 1), ("known", 1)]
    assert standing("117")["fills"] == 1


def test_effect_of_a_known_entry_stays_as_it_was_at_first() -> None:
    """A second receipt, hours later, is not another one."""
    entry = Phone().filled("117", at="2026-11-25T15:00:00.000Z")
    words(entry)
    before = standing("117")
    words(entry, received_at=NOW + timedelta(hours=5))
    assert standing("117") == before
    assert before["contents"]["since"] == "2026-11-25T12:00:00.000Z"


@pytest.mark.parametrize("together", [True, False])
def test_same_id_with_other_content_is_held(together: bool) -> None:
    """ORD-2: never folded, never dropped."""
    first = Phone().filled("117")
    second = first | {"subject": "118"}
    found = words(first, second) if together else words(first) + words(second)
    assert found == ["accepted", "held"]
    assert ("container", "118") not in docs()
    assert [(h.entry_id, h.reason) for h in held()] == [(first["id"], "other-content")]


def test_what_is_held_is_held_once_however_often_it_comes() -> None:
    """The device may not have heard the answer."""
    unknown = Phone().entry("blessed", "117")
    assert words(unknown, unknown) + words(unknown) == ["held"] * 3
    assert len(held()) == 1


def test_one_bad_entry_leaves_its_neighbours_alone() -> None:
    """299 of 300 are accepted, and one is refused with its reason."""
    phone = Phone()
    entries = [phone.filled(f"F{number}") for number in range(300)]
    entries[117]["facts"]["volume_ml"] = "a firkin"
    verdicts = take_in(batch(entries)).verdicts
    assert [i for i, v in enumerate(verdicts) if v.word != "accepted"] == [117]
    assert verdicts[117].word == "refused"
    assert len(docs()) == 300


def test_verdicts_come_in_the_order_of_the_request_under_the_ids_that_were_sent() -> None:
    """Also those that have no id to speak of."""
    a, b = Phone("a").filled("117"), Phone("b").entry("blessed", "117")
    verdicts = take_in(batch([b, {"id": 5}, a, {"id": "x"}, None])).verdicts
    assert [(v.id, v.word) for v in verdicts] == [
        (b["id"], "held"), (None, "refused"), (a["id"], "accepted"), ("x", "refused"),
        (None, "refused"),
    ]  # fmt: skip


def test_positions_follow_the_order_of_the_request_and_rows_come_after() -> None:
    """A row is never older than the entries that it shows."""
    phone = Phone()
    verdicts = take_in(batch([phone.filled("118"), phone.filled("117")])).verdicts
    assert [v.position for v in verdicts] == [1, 2]
    with reading() as work:
        assert sorted(row.position for row in work.rows.all()) == [3, 4, 5]
    assert head_position() == 5


def test_entry_that_shows_nowhere_leaves_rows_at_their_positions() -> None:
    """A late note changes no standing, so phones have nothing to fetch."""
    phone = Phone()
    words(phone.filled("117"))
    with reading() as work:
        before = {row.key: row.position for row in work.rows.all()}
    words(phone.entry("noted", "117", at="2026-11-24T09:00:00.000Z", words="dented"))
    with reading() as work:
        assert {row.key: row.position for row in work.rows.all()} == before


TOO_MUCH = "volume_ml must be between 1 and 45006 mL: 117 is a firkin and holds 40915 mL."


@pytest.mark.parametrize("together", [True, False])
def test_volume_beyond_a_known_container_is_sent_back(together: bool) -> None:
    """A slip of the finger, told with what the container holds."""
    phone = Phone()
    pushed = [phone.registered("117"), phone.filled("117", volume_ml=45_007)]
    if not together:
        words(pushed.pop(0))
    verdict = take_in(batch(pushed)).verdicts[-1]
    assert verdict.word == "refused"
    assert verdict.problem is not None
    assert verdict.problem.errors == [("#/facts/volume_ml", TOO_MUCH)]


@pytest.mark.parametrize(
    ("kind", "fact", "most"), [("filled", "volume_ml", 45_006), ("dipped", "left_ml", 45_006)]
)
def test_volume_that_some_brewery_may_have_set_is_believed(kind: str, fact: str, most: int) -> None:
    """Brimful and a little more is what happens at a bench; how much more, the brewery sets."""
    phone = Phone()
    words(phone.registered("117"), phone.filled("117"))
    entry = phone.filled("117") if kind == "filled" else phone.entry(kind, "117")
    assert words(entry | {"facts": entry["facts"] | {fact: most}}) == ["accepted"]


def test_container_not_registered_may_be_as_large_as_the_largest_kind() -> None:
    """The bench does not wait for the office to register it."""
    phone = Phone()
    assert words(phone.filled("117", volume_ml=270_037)) == ["accepted"]
    verdict = take_in(batch([phone.filled("118", volume_ml=270_038)])).verdicts[0]
    assert verdict.problem is not None
    assert verdict.problem.detail == (
        "volume_ml must be between 1 and 270037 mL: 118 is not registered yet."
    )


def test_refused_entry_makes_no_row() -> None:
    """Nothing of it is kept."""
    words(Phone().filled("118", volume_ml=270_038))
    assert docs() == {}
    assert head_position() == 0


def damage(number: str) -> None:
    """A row that the rules cannot step forward: a fault of ours, and a real one."""
    with db.engine.begin() as connection:
        connection.execute(update(Row).where(Row.id == number).values(doc="{}"))


def test_entry_that_the_server_cannot_handle_is_held_and_the_others_go_on() -> None:
    """Found by halves; it carries the name under which the log tells the rest."""
    phone = Phone()
    words(phone.filled("117"))
    damage("117")
    entries = [phone.filled(f"F{number}") for number in range(30)]
    entries[17] = phone.entry("tapped", "117")
    verdicts = take_in(batch(entries)).verdicts
    assert [i for i, v in enumerate(verdicts) if v.word != "accepted"] == [17]
    assert (verdicts[17].id, verdicts[17].word) == (entries[17]["id"], "held")
    assert verdicts[17].problem is not None
    assert verdicts[17].problem.slug == "own-fault"
    assert verdicts[17].problem.incident == held()[0].incident is not None


def test_what_the_server_could_not_handle_is_taken_in_once_it_can() -> None:
    """With the time it came with, and without its author doing anything."""
    phone = Phone()
    words(phone.filled("117"))
    damage("117")
    words(phone.entry("tapped", "117", at="2026-11-25T11:00:00.000Z"))
    assert release_held(RightsOf) == 0
    rebuild()
    assert release_held(RightsOf) == 1
    assert held() == []
    assert standing("117")["serving"]["tapped"]["since"] == "2026-11-25T11:00:00.000Z"
    assert check() == []


def test_many_entries_about_one_damaged_row_are_all_held() -> None:
    """The halves end with single entries, and nothing is lost."""
    phone = Phone()
    words(phone.filled("117"))
    damage("117")
    assert words(*[phone.entry("tapped", "117") for _ in range(20)]) == ["held"] * 20
    assert len(held()) == 20


def test_empty_push_is_answered(app: Flask) -> None:
    """A phone may ask in this way how far the ledger is."""
    assert take_in(batch([])).verdicts == []
