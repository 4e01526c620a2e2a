"""How customers are: what they take, how fast they drink, and how they give containers back."""

from dataclasses import dataclass
from datetime import date


@dataclass(frozen=True)
class Habit:
    """A sort of customer."""

    every_weeks: int
    """How often the van calls."""
    share: int
    """How much of what there is they take, beside the others."""
    takes: tuple[str, ...]
    drinks_days: tuple[int, int]
    """Within how many days a container is empty, least and most."""
    gives_back: float
    """How likely an empty one is handed over when the van calls."""
    lot: int = 1
    """They give none back before they have so many."""
    keeps_promises: float = 0.9
    puts_off_weeks: int = 0
    """How many of the van's days they let pass before the one they name."""
    agreed_days: int = 42
    names_days: bool = True
    """Whether they ever promise a day."""


CASKS = ("firkin", "firkin", "firkin", "pin", "kilderkin")
MIXED = ("firkin", "firkin", "keg_30", "keg_50", "pin")
KEGS = ("keg_30", "keg_50", "keg_30", "firkin")
LARGE = ("kilderkin", "firkin", "keg_50", "firkin")

HABITS: dict[str, Habit] = {
    "prompt": Habit(2, 2, CASKS, (10, 20), 0.97),
    "steady": Habit(3, 2, MIXED, (16, 44), 0.55),
    "slow": Habit(4, 2, MIXED, (24, 50), 0.3, keeps_promises=0.5, puts_off_weeks=1),
    "keeper": Habit(
        5, 1, KEGS, (10, 30), 0.0, keeps_promises=0.0, agreed_days=28, names_days=False
    ),
    "lots": Habit(2, 3, KEGS, (10, 25), 1.0, lot=16, agreed_days=56),
    "festival": Habit(13, 6, LARGE, (3, 5), 1.0, agreed_days=14),
}


@dataclass
class Customer:
    """One customer: their record in the ledger, and what stands between us and their empties."""

    id: str
    index: int
    habit: Habit
    delivery_day: int
    first_week: int
    chased_on: date = date.min
    promised_on: date | None = None
    will_keep: bool = False

    def called_on(self, week: int) -> bool:
        """Whether the van calls in this week."""
        return (week + self.first_week) % self.habit.every_weeks == 0
