"""Queries settled: by one, by two in one way, by two in two ways, and by a third who decides."""

from hypothesis import given
from hypothesis import strategies as st

from cellarapp.domain.entries import Entry
from cellarapp.domain.fold import entries_by_subject, fold
from cellarapp.domain.numbers import is_number
from cellarapp.domain.queries import open_queries

from .histories import TIMES, faces, later, queries_of, uncorrected

with_a_query = uncorrected.filter(queries_of)


def settling(
    entries: list[Entry], raised: tuple[str, str], way: str, replaces: list[str] | None = None
) -> list[Entry]:
    number, query = raised
    facts = {"query": query, "way": way, **({"replaces": replaces} if replaces else {})}
    return later(entries, "settled", number, facts)


def open_in(entries: list[Entry]) -> list[str]:
    return [
        query["id"]
        for number, counting in entries_by_subject(entries).items()
        if is_number(number)
        for query in open_queries(fold(number, counting))
    ]


@st.composite
def quarrels(draw: st.DrawFn) -> tuple[list[Entry], tuple[str, str]]:
    """Entries that raise queries, and one of these with its container."""
    entries = draw(with_a_query)
    return entries, draw(st.sampled_from(queries_of(entries)))


@given(quarrels())
def test_query_waits_until_it_is_settled(quarrel: tuple[list[Entry], tuple[str, str]]) -> None:
    """LIFE-21: open at first; said to be right, closed, and nothing else has changed."""
    entries, raised = quarrel
    settled = settling(entries, raised, "right")
    assert raised[1] in open_in(entries)
    assert sorted(open_in(settled)) == sorted({*open_in(entries)} - {raised[1]})


@given(quarrels())
def test_settled_twice_in_one_way_is_settled(quarrel: tuple[list[Entry], tuple[str, str]]) -> None:
    """LIFE-21: two phones with no signal may both say so."""
    entries, raised = quarrel
    twice = settling(settling(entries, raised, "right"), raised, "right")
    assert raised[1] not in open_in(twice)


@given(quarrels())
def test_settled_in_two_ways_is_a_query_again(quarrel: tuple[list[Entry], tuple[str, str]]) -> None:
    """LIFE-21: neither way is taken until somebody decides between them."""
    entries, raised = quarrel
    target = raised[1].split(":")[-1]
    once = settling(entries, raised, f"void:{target}")
    twice = settling(once, raised, "right")
    assert raised[1] in open_in(twice)
    assert contents_of(twice) == contents_of(entries)


@given(quarrels())
def test_later_settlement_replaces_both(quarrel: tuple[list[Entry], tuple[str, str]]) -> None:
    """LIFE-21: a third, made with both in sight, ends it."""
    entries, raised = quarrel
    target = raised[1].split(":")[-1]
    once = settling(entries, raised, f"void:{target}")
    twice = settling(once, raised, "right")
    third = settling(twice, raised, "right", [once[-1]["id"], twice[-1]["id"]])
    assert raised[1] not in open_in(third)
    assert contents_of(third) == contents_of(entries)


@given(quarrels(), st.data())
def test_way_out_by_void_does_what_a_void_does(
    quarrel: tuple[list[Entry], tuple[str, str]], data: st.DataObject
) -> None:
    """LIFE-21: any of the entries that quarrel may be the wrong one."""
    entries, raised = quarrel
    target = data.draw(st.sampled_from(raised[1].split(":")[1:]))
    settled = settling(entries, raised, f"void:{target}")
    voided = later(entries, "voided", raised[0], {"target": target})
    assert contents_of(settled) == contents_of(voided)
    assert raised[1] not in open_in(settled)


@given(quarrels(), st.data())
def test_way_out_by_renumber_does_what_a_renumber_does(
    quarrel: tuple[list[Entry], tuple[str, str]], data: st.DataObject
) -> None:
    """LIFE-21: that one was another number."""
    entries, raised = quarrel
    target = data.draw(st.sampled_from(raised[1].split(":")[1:]))
    settled = settling(entries, raised, f"renumber:{target}:99")
    renumbered = later(entries, "renumbered", raised[0], {"target": target, "to": "99"})
    assert contents_of(settled) == contents_of(renumbered)


@given(uncorrected)
def test_way_out_touches_only_entries_that_quarrel(entries: list[Entry]) -> None:
    """LIFE-21: a settlement that names any other entry changes nothing."""
    other = entries[0]["id"]
    for way in (f"void:{other}", f"renumber:{other}:99"):
        settled = settling(entries, ("117", "unwashed:not-here"), way)
        assert contents_of(settled) == contents_of(entries)


@given(quarrels())
def test_way_that_is_not_known_is_not_taken(
    quarrel: tuple[list[Entry], tuple[str, str]],
) -> None:
    """LIFE-22: a later release may offer other ways; here the query just stays open."""
    entries, raised = quarrel
    settled = settling(entries, raised, f"swap:{raised[1].split(':')[-1]}")
    assert contents_of(settled) == contents_of(entries)
    assert raised[1] in open_in(settled)


@given(quarrels())
def test_voided_settlement_leaves_the_query_open(
    quarrel: tuple[list[Entry], tuple[str, str]],
) -> None:
    """LIFE-21: settling is an entry too, and can be undone."""
    entries, raised = quarrel
    settled = settling(entries, raised, "right")
    undone = later(settled, "voided", raised[0], {"target": settled[-1]["id"]}, TIMES[0])
    assert raised[1] in open_in(undone)


def contents_of(entries: list[Entry]) -> dict[str, object]:
    """The standings apart from who settled what; containers that hold nothing else left out."""
    bare = {n: {**s, "settlements": {}} for n, s in faces(entries).items()}
    return {n: s for n, s in bare.items() if s["contents"] or s["place"] or s["queries"]}
