"""Order and arrival: the same entries give the same standings, however they came."""

from hypothesis import given
from hypothesis import strategies as st

from cellarapp.domain.corrections import resolve
from cellarapp.domain.entries import Entry, order_key
from cellarapp.domain.fold import fold, step
from cellarapp.domain.standing import blank

from .histories import arrivals, canonical, entry_sets, of_one, standings, uncorrected


@given(data=st.data(), entries=entry_sets)
def test_arrival_in_any_order_and_number_changes_nothing(
    data: st.DataObject, entries: list[Entry]
) -> None:
    """ORD-1, ORD-2, ORD-3: also with voids of voids, renumbers to and fro, two ways of settling."""
    arrived = data.draw(arrivals(entries))
    assert standings(arrived) == standings(entries)


@given(data=st.data(), entries=entry_sets)
def test_corrections_say_the_same_in_any_order(data: st.DataObject, entries: list[Entry]) -> None:
    """ORD-3: what an entry counts for, and what took it out, is one answer."""
    arrived = data.draw(arrivals(entries))
    assert resolve(arrived) == resolve(entries)


@given(entries=uncorrected.map(of_one), data=st.data())
def test_folding_in_any_split_equals_folding_at_once(
    entries: list[Entry], data: st.DataObject
) -> None:
    """ORD-4: a standing put away and taken up again goes on as if it had never been put away."""
    in_order = sorted(entries, key=order_key)
    cut = data.draw(st.integers(0, len(in_order)))
    standing = fold("117", in_order[:cut])
    for entry in in_order[cut:]:
        standing = step(standing, entry).standing
    assert canonical(standing) == canonical(fold("117", entries))


@given(entries=uncorrected.map(of_one))
def test_a_step_leaves_the_standing_before_it_alone(entries: list[Entry]) -> None:
    """ORD-4: the phone keeps the standing from before each entry to undo to."""
    chain = [blank("117")]
    texts = [canonical(chain[0])]
    for entry in sorted(entries, key=order_key):
        chain.append(step(chain[-1], entry).standing)
        texts.append(canonical(chain[-1]))
    assert [canonical(standing) for standing in chain] == texts


@given(entries=entry_sets)
def test_folding_leaves_the_entries_alone(entries: list[Entry]) -> None:
    """ORD-4: entries are never edited, not even in passing."""
    before = canonical(entries)
    standings(entries)
    assert canonical(entries) == before
