"""A spell of work at a brewery where everything fails that can, as Hypothesis draws it.

Phones are the real client in Node, the server is the real one in this process, and what goes
between them is held here, so that it can be lost, doubled, late, cut and in the wrong order.
"""

import json
import shutil
import tempfile
from collections import Counter
from datetime import UTC, datetime, timedelta
from pathlib import Path
from typing import Any, ClassVar

from freezegun.api import FrozenDateTimeFactory
from hypothesis import strategies as st
from hypothesis.stateful import RuleBasedStateMachine, initialize, invariant, precondition, rule

from ..making import made_id
from .brewery import Brewery
from .handsets import Handsets

PHONES = 3
NUMBERS = ["1", "2", "F3", "K4", "5"]
GYLES = [made_id("gyle 1"), made_id("gyle 2")]
HOUR_MS = 3_600_000
YEAR_MS = 365 * 24 * HOUR_MS

FAULTS = [
    "question lost",
    "question late",
    "question doubled",
    "answer lost",
    "answer cut half way",
    "answers in another order",
    "gateway page",
    "busy",
    "phone crashed in a save",
    "phone crashed in a round",
    "phone crashed in two tabs",
    "phone full",
    "power cut before commit",
    "power cut after commit",
    "restored from a copy",
    "clock set",
    "slept",
    "file carried",
    "refused",
    "settled by two at once",
]
"""Each has to happen, or the test says nothing about it."""

phones = st.integers(0, PHONES - 1)
tabs = st.integers(0, 1)
picks = st.integers(0, 60)
crashes = st.one_of(st.just(0), st.just(0), st.just(0), st.integers(1, 30))
subjects = st.sampled_from(NUMBERS)
volumes = st.integers(40_000, 40_900)


def _draft(kind: str, subject: st.SearchStrategy[str], /, **facts: Any) -> st.SearchStrategy[Any]:
    given = {
        name: fact if isinstance(fact, st.SearchStrategy) else st.just(fact)
        for name, fact in facts.items()
    }
    made = st.fixed_dictionaries(given)
    return st.builds(lambda s, f: {"kind": kind, "subject": s, "facts": f}, subject, made)


drafts = st.one_of(
    _draft("registered", subjects, kind="firkin", capacity_ml=40_915),
    _draft(
        "filled",
        subjects,
        gyle=st.sampled_from(GYLES),
        volume_ml=volumes,
        best_before="2027-01-30",
    ),
    _draft("washed", subjects),
    _draft("tapped", subjects),
    _draft("emptied", subjects),
    _draft("sent", subjects, customer=made_id("customer"), due_on=None),
    _draft("returned", subjects),
    _draft("noted", subjects, words=st.sampled_from(["fine", "x" * 5000])),
    _draft("beer", st.just(made_id("beer")), name=volumes.map(lambda n: f"Beer {n}")),
    _draft("gyle", st.sampled_from(GYLES), volume_ml=volumes),
    _draft("chased", st.just(made_id("customer")), words="asked"),
)


class Spell(RuleBasedStateMachine):
    """Steps of one spell; its end is in `teardown`."""

    seen: ClassVar[Counter[str]] = Counter()
    """How often each kind of fault has happened, over all spells."""
    steps: ClassVar[int] = 0
    handsets: ClassVar[Handsets]
    clock: ClassVar[FrozenDateTimeFactory]

    def __init__(self) -> None:
        super().__init__()
        self.folder = Path(tempfile.mkdtemp())
        self.brewery = Brewery(self.folder)
        self.open = [1] * PHONES
        """Tabs of each phone."""
        self.asking: dict[int, dict[str, Any]] = {}
        """Questions on their way, by id."""
        self.late: list[dict[str, Any]] = []
        """Questions that nobody waits for any more, and that still arrive."""
        self.answers: dict[int, dict[str, Any]] = {}
        """Answers on their way."""
        self.saved: dict[str, tuple[int, datetime]] = {}
        """What a person was told is saved: on which phone, and when that was."""
        self.tried = 0
        self.full: set[int] = set()

    @initialize(seed=st.integers(0, 2**20))
    def begin(self, seed: int) -> None:
        now_ms = round(self.now().timestamp() * 1000)
        self._tell("begin", phones=PHONES, seed=seed, now_ms=now_ms)

    @invariant()
    def step(self) -> None:
        Spell.steps += 1

    def now(self) -> datetime:
        return datetime.now(UTC)

    def _count(self, fault: str) -> None:
        Spell.seen[fault] += 1

    def _tell(self, deed: str, phone: int = 0, **more: Any) -> dict[str, Any]:
        """A command to the phones, and what has come of it."""
        told = Spell.handsets.ask(deed, phone, **more)
        for question in told["questions"]:
            self.asking[question["id"]] = question
        for entry in told["saved"]:
            self.saved[entry] = (phone, self.now())
        self.tried += told["tried"]
        for dead in told["crashed"]:
            self._crashed(dead)
        return told

    def _crashed(self, phone: int) -> None:
        """What the phone waited for still arrives, and the answers come to nobody."""
        for question in [q for q in self.asking.values() if q["phone"] == phone]:
            del self.asking[question["id"]]
            self.late.append(question)
        for asked in [n for n, a in self.answers.items() if a["phone"] == phone]:
            del self.answers[asked]
        if self.open[phone] > 1:
            self._count("phone crashed in two tabs")
        Spell.handsets.ask("open", phone)
        self.open[phone] = 1

    # What people do

    @rule(phone=phones, tab=tabs, made=st.lists(drafts, min_size=1, max_size=4), crash_at=crashes)
    def save(self, phone: int, tab: int, made: list[Any], crash_at: int) -> None:
        told = self._tell("save", phone, tab=tab, drafts=made, crash_at=crash_at)
        if told["crashed"]:
            self._count("phone crashed in a save")
        if phone in self.full and not told["crashed"]:
            assert (told["saved"], told["trouble"]) == ([], "full")
            self._count("phone full")

    @rule(phone=phones, tab=tabs, pick=picks, crash_at=crashes)
    def correct(self, phone: int, tab: int, pick: int, crash_at: int) -> None:
        """Undo, move, or settle a query."""
        self._tell("correct", phone, tab=tab, pick=pick, crash_at=crash_at)

    @rule(one=phones, other=phones, pick=picks)
    def settle_both(self, one: int, other: int, pick: int) -> None:
        if one != other and not self.full & {one, other}:
            settled = self._tell("settle_both", one, to=other, pick=pick)["value"]
            for entry, phone in zip(settled, (one, other), strict=False):
                self.saved[entry] = (phone, self.now())
            self.seen["settled by two at once"] += len(settled) == 2

    @rule(phone=phones, tab=tabs, made=st.lists(drafts, min_size=1, max_size=2))
    def save_and_go(self, phone: int, tab: int, made: list[Any]) -> None:
        """A save sets a round going."""
        self.save(phone, tab, made, 0)
        self.go(phone, tab)

    @rule(phone=phones, tab=tabs)
    def go(self, phone: int, tab: int) -> None:
        """Begin a round with the brewery."""
        self._tell("go", phone, tab=tab)

    @rule(one=phones, other=phones, tab=tabs)
    def carry(self, one: int, other: int, tab: int) -> None:
        """A phone's entries go to another one in a file, and perhaps by themselves as well."""
        if one != other and other not in self.full:
            added = self._tell("carry", one, to=other, tab=tab)["value"]
            self.seen["file carried"] += 1 if added else 0

    # What the network does

    def _asked(self, pick: int) -> dict[str, Any]:
        return self.asking.pop(sorted(self.asking)[pick % len(self.asking)])

    def _deliver(self, question: dict[str, Any]) -> dict[str, Any]:
        reply = self.brewery.answer(question)
        results = reply["body"].get("results") or []
        self.seen["refused"] += sum(one["verdict"] == "refused" for one in results)
        return reply

    def _reply(self, question: dict[str, Any], reply: object, crash_at: int = 0) -> None:
        told = self._tell(
            "answer", question["phone"], question=question["id"], reply=reply, crash_at=crash_at
        )
        if told["crashed"]:
            self._count("phone crashed in a round")

    @precondition(lambda self: self.asking)
    @rule(pick=picks, crash_at=crashes)
    def exchange(self, pick: int, crash_at: int) -> None:
        """All goes well, but for the phone perhaps."""
        question = self._asked(pick)
        self._reply(question, self._deliver(question), crash_at)

    @precondition(lambda self: self.asking)
    @rule()
    def exchange_all(self) -> None:
        """A spell of good signal: for some time everything gets through."""
        for _ in range(12):
            if self.asking:
                self.exchange(0, 0)

    @precondition(lambda self: self.asking)
    @rule(pick=picks)
    def arrive(self, pick: int) -> None:
        """The brewery has acted, and its answer is on its way."""
        question = self._asked(pick)
        self.answers[question["id"]] = question | {"reply": self._deliver(question)}

    @precondition(lambda self: self.answers)
    @rule(pick=picks, crash_at=crashes)
    def hear(self, pick: int, crash_at: int) -> None:
        asked = sorted(self.answers)[pick % len(self.answers)]
        answer = self.answers.pop(asked)
        self._reply(answer, answer["reply"], crash_at)

    @precondition(lambda self: len(self.answers) > 1)
    @rule(crash_at=crashes)
    def hear_the_last_first(self, crash_at: int) -> None:
        self._count("answers in another order")
        answer = self.answers.pop(max(self.answers))
        self._reply(answer, answer["reply"], crash_at)

    @precondition(lambda self: self.answers)
    @rule(pick=picks, cut=st.booleans())
    def lose_answer(self, pick: int, cut: bool) -> None:
        answer = self.answers.pop(sorted(self.answers)[pick % len(self.answers)])
        self._count("answer cut half way" if cut else "answer lost")
        half = {"status": 200, "retryAfterMs": None}  # what is not JSON reads as nothing
        self._reply(answer, half if cut else None)

    @precondition(lambda self: self.asking)
    @rule(pick=picks)
    def lose_question(self, pick: int) -> None:
        self._reply(self._asked(pick), None)
        self._count("question lost")

    @precondition(lambda self: self.asking)
    @rule(pick=picks)
    def delay_question(self, pick: int) -> None:
        """The phone gives up waiting, and the question arrives all the same, some time."""
        question = self._asked(pick)
        self.late.append(question)
        self._reply(question, None)

    @precondition(lambda self: self.late)
    @rule(pick=picks)
    def deliver_late(self, pick: int) -> None:
        self._deliver(self.late.pop(pick % len(self.late)))
        self._count("question late")

    @precondition(lambda self: self.asking)
    @rule(pick=picks)
    def double_question(self, pick: int) -> None:
        question = self._asked(pick)
        self._deliver(question)
        self._reply(question, self._deliver(question))
        self._count("question doubled")

    @precondition(lambda self: self.asking)
    @rule(pick=picks, page=st.booleans())
    def answered_by_another(self, pick: int, page: bool) -> None:
        """A gateway answers in place of the brewery."""
        welcome = {"status": 200, "body": {"welcome": "Sign in to this network"}}
        busy = {"status": 503, "body": {"type": "about:blank"}}
        self._reply(self._asked(pick), (welcome if page else busy) | {"retryAfterMs": None})
        self._count("gateway page" if page else "busy")

    # What happens to machines

    @precondition(lambda self: self.asking or self.answers)
    @rule(pick=picks)
    def cut_power(self, pick: int) -> None:
        """While it works on a push, or when it has answered and nobody has heard yet."""
        pushes = [n for n, asked in self.asking.items() if asked["path"] == "/api/push"]
        if pushes and pick % 2:
            question = self.asking.pop(pushes[0])
            if self.brewery.cut_before_commit(question):
                self._count("power cut before commit")
            self._reply(question, None)
        elif self.answers:
            self.brewery.lose_power()
            for asked in sorted(self.answers):
                if asked in self.answers:
                    self._reply(self.answers.pop(asked), None)
            self._count("power cut after commit")

    @rule(phone=phones, what=st.sampled_from(["tab", "crash", "room", "copy", "restore"]))
    def happen(self, phone: int, what: str) -> None:
        """What is rare beside the rest."""
        if what == "tab" and self.open[phone] == 1:
            self._tell("open", phone)
            self.open[phone] += 1
        elif what == "crash":
            self._tell("crash", phone)
        elif what == "room":  # there is none for anything, until somebody makes some
            self.full ^= {phone}
            self._tell("fill_up", phone, full=phone in self.full)
        elif what == "copy":
            self.brewery.keep_copy()
        elif what == "restore" and self.brewery.restore():
            self._count("restored from a copy")

    @rule(
        phone=st.integers(1, PHONES - 1),
        ms=st.sampled_from([1000, 60_000, HOUR_MS]),
        how=st.sampled_from(["awake", "asleep", "set"]),
        set_ms=st.sampled_from([YEAR_MS, -YEAR_MS, 3 * HOUR_MS, -3 * HOUR_MS]),
    )
    def time_goes_by(self, phone: int, ms: int, how: str, set_ms: int) -> None:
        """For everybody; and now and then somebody sets a clock, but never the first phone's."""
        if ms >= 60_000:
            self._lose_patience()
        self._tell("wait", ms=ms, asleep=how == "asleep")
        Spell.clock.tick(timedelta(milliseconds=ms))
        if how == "asleep" and ms > 60_000:
            self._count("slept")
        if how == "set":
            self._tell("set_clock", phone, ms=set_ms)
            self._count("clock set")

    def _lose_patience(self) -> None:
        """No phone waits for a minute, and nothing is on its way for longer than that."""
        for question in list(self.asking.values()):
            self.late.append(self.asking.pop(question["id"]))
            self._reply(question, None)
        for answer in list(self.answers.values()):
            self._reply(self.answers.pop(answer["id"]), None)
        while self.late:
            self._deliver(self.late.pop(0))

    # The end

    def teardown(self) -> None:
        try:
            self._heal()
            self._everything_stands_once()
        finally:
            self.brewery.stop()
            shutil.rmtree(self.folder)

    def _heal(self) -> None:
        """The network is good, there is room, and everybody has time."""
        for question in self.late:
            self._deliver(question)
        for answer in list(self.answers.values()):
            self._reply(answer, None)
        for phone in range(PHONES):
            self._tell("fill_up", phone, full=False)
            self.full.discard(phone)
        for _ in range(3):
            for phone in range(PHONES):
                self._quiet()
                self._tell("go", phone)
        self._quiet()

    def _quiet(self) -> None:
        for _ in range(200):
            if not self.asking:
                return
            self.exchange(0, 0)
        raise AssertionError("the phones do not come to rest")

    def _everything_stands_once(self) -> None:
        assert self.brewery.faults() == []
        rows, entries = self.brewery.rows(), self.brewery.entries()
        attention: Counter[str] = Counter()
        numbers: dict[str, list[int]] = {}
        for entry in entries.values():
            numbers.setdefault(entry["device"], []).append(entry["seq"])
        for phone in range(PHONES):
            looked = Spell.handsets.ask("look", phone)["value"]
            assert looked["count"] == 0, "something still waits"
            shown = {key: json.loads(doc) for key, doc in looked["rows"].items()}
            assert shown == rows, "a phone holds something else than the brewery"
            kept = Counter(entry for entry, _ in looked["own"])
            assert not kept or max(kept.values()) == 1, "a phone holds an entry twice"
            attention.update(entry for entry, where in looked["own"] if where == "attention")
            for entry, (which, _) in self.saved.items():
                assert which != phone or entry in kept, f"{entry} is not on its phone"
        for entry in self.saved:
            assert (entry in entries) + (entry in attention) == 1, f"{entry} is not there once"
        for device, given in numbers.items():
            assert len(given) == len(set(given)), f"{device} has an entry twice"
        assert len(entries) <= self.tried
        self._took_effect_when_it_happened(entries)

    def _took_effect_when_it_happened(self, entries: dict[str, dict[str, Any]]) -> None:
        """On the phone whose clock nobody has set."""
        for entry, (phone, at) in self.saved.items():
            if entry in entries and phone == 0:
                taken = datetime.fromisoformat(entries[entry]["effective_at"])
                assert abs(taken - at) < timedelta(seconds=130), entries[entry]
