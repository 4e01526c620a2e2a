"""`cellarapp backup`: a copy of the database, which may be in use, that is proved to be good."""

import sys
from collections.abc import Callable
from dataclasses import replace
from datetime import UTC, datetime
from pathlib import Path

from cellarapp.app import opened
from cellarapp.config import Config
from cellarapp.ledger.check import check
from cellarapp.storage.backups import Keeping, backup_path, rotate
from cellarapp.storage.copies import copy_database, sound
from cellarapp.storage.migrate import is_up_to_date


def back_up(config: Config, folder: Path | None) -> int:
    """Make a backup in a folder, that of the settings unless one is given; 1 if it is not good.

    In the folder of the settings older ones make room, once the new one is there.
    """
    target = backup_path(folder or config.backups, datetime.now(UTC))
    file = config.database_file
    if file is None or not file.is_file():
        print(f"cellarapp: {_why_not(file)}", file=sys.stderr)
        return 1
    target.parent.mkdir(parents=True, exist_ok=True, mode=0o700)
    differences: list[str] = []
    copy_database(file, target, judge=_proving(config, differences))
    print(f"backup: {target}")
    if differences:
        print(
            f"cellarapp: the backup is whole, but {len(differences)} rows of this ledger are not "
            "what its entries say. Call `cellarapp check` to see which, and `cellarapp rebuild` "
            "to put them right. No older backup was removed.",
            file=sys.stderr,
        )
        return 1
    if folder is None:
        rotate(config.backups, Keeping(*config.keep))
    return 0


def _proving(config: Config, differences: list[str]) -> Callable[[Path], None]:
    """Opens a copy as the application would, reads every page, and replays the ledger."""

    def prove(copy: Path) -> None:
        sound(copy)
        with opened(replace(config, database_url=f"sqlite:///{copy.absolute()}"), migrate=False):
            if is_up_to_date():
                differences.extend(check())
            else:
                print("The tables are another release's: read through, but not replayed.")

    return prove


def _why_not(file: Path | None) -> str:
    if file is None:
        return (
            "this database is kept by PostgreSQL. Back it up with pg_dump --format=custom, "
            "which makes a copy of one moment while it is in use."
        )
    return f"there is no database at {file}; nothing was backed up."
