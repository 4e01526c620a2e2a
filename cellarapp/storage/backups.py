"""The folder of backups: what they are called, and which of them are kept."""

from collections.abc import Callable, Iterable
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta
from pathlib import Path

FORM = "%Y-%m-%dT%H-%M-%SZ"
FIRST, SUFFIX = "cellarapp-", ".sqlite"


@dataclass(frozen=True, slots=True)
class Keeping:
    """How many backups are kept: the last of each hour, day and week (UTC) that has one."""

    hourly: int
    daily: int
    weekly: int

    @property
    def every(self) -> timedelta | None:
        """How often one is due; never, if none is kept."""
        if self.hourly:
            return timedelta(hours=1)
        if self.daily:
            return timedelta(days=1)
        return timedelta(weeks=1) if self.weekly else None

    def chosen(self, moments: Iterable[datetime]) -> set[datetime]:
        """Those that are kept: always the newest, and what the numbers ask for."""
        newest_first = sorted(moments, reverse=True)
        return {
            *newest_first[:1],
            *_last_of_each(newest_first, lambda m: (m.date(), m.hour), self.hourly),
            *_last_of_each(newest_first, lambda m: m.date(), self.daily),
            *_last_of_each(newest_first, lambda m: m.isocalendar()[:2], self.weekly),
        }


def _last_of_each(
    newest_first: list[datetime], spell: Callable[[datetime], object], count: int
) -> list[datetime]:
    found: dict[object, datetime] = {}
    for moment in newest_first:
        found.setdefault(spell(moment), moment)
    return list(found.values())[:count]


def backup_path(folder: Path, moment: datetime) -> Path:
    """What a backup of this moment is called."""
    return folder / f"{FIRST}{moment.astimezone(UTC):{FORM}}{SUFFIX}"


def backups_in(folder: Path) -> dict[datetime, Path]:
    """The backups in a folder by their moments. Whatever is called otherwise is not one."""
    found = {}
    for path in folder.glob(f"{FIRST}*{SUFFIX}"):
        try:
            moment = datetime.strptime(path.name, f"{FIRST}{FORM}{SUFFIX}").replace(tzinfo=UTC)
        except ValueError:
            continue
        found[moment] = path
    return found


def rotate(folder: Path, keeping: Keeping) -> list[Path]:
    """Remove the backups that are not kept any longer; answer which they were."""
    found = backups_in(folder)
    gone = [found[moment] for moment in sorted(found.keys() - keeping.chosen(found))]
    for path in gone:
        path.unlink()
    return gone
