"""`cellarapp restore`: puts a backup in the place of the database."""

import sys
from dataclasses import replace
from datetime import UTC, datetime
from pathlib import Path

from cellarapp.accounts.rights import RightsOf
from cellarapp.app import opened
from cellarapp.config import Config
from cellarapp.ledger.check import check
from cellarapp.ledger.opening import begin_another_life, open_ledger
from cellarapp.ledger.pulling import current_head
from cellarapp.ledger.rebuild import rebuild
from cellarapp.storage.backups import FORM
from cellarapp.storage.copies import (
    close_for_good,
    copy_database,
    remove_database,
    replace_database,
    sound,
    unused,
)
from cellarapp.storage.errors import StorageBusy, StorageDamaged, StorageError, StorageTrouble
from cellarapp.storage.migrate import applied_revision, bring_up_to_date

IN_USE = "the database is in use. Stop cellarapp, restore, and start it again."
THEN = (
    "Start cellarapp again. Phones notice by themselves, and send again what they sent in the "
    "last 30 days. A phone that was revoked after the backup was made has to be revoked again."
)


def restore(config: Config, backup: Path) -> int:
    """Restore; 1 if it could not be done, and then the database is as it was."""
    file = config.database_file
    try:
        if file is None:
            raise StorageTrouble(
                "this database is kept by PostgreSQL; a backup of it is put back with pg_restore"
            )
        kept, position = _restore(config, file, backup)
    except StorageBusy:
        return _refuse(IN_USE)
    except StorageError as fault:
        return _refuse(f"{fault}. Nothing was changed.")
    print(f"restored: the ledger up to position {position}, from {backup}")
    if kept is not None:
        print(f"what was there before is kept: {kept}")
    print(THEN)
    return 0


def _restore(config: Config, file: Path, backup: Path) -> tuple[Path | None, int]:
    """Everything that may go wrong is done on a copy, before the database is touched."""
    if not backup.is_file():
        raise StorageTrouble(f"there is no file {backup}")
    if file.exists() and backup.samefile(file):
        raise StorageTrouble(f"{backup} is the database itself")
    _nobody_has(file)
    file.parent.mkdir(parents=True, exist_ok=True)
    prepared = file.with_name(f"{file.stem}.restoring{file.suffix}")
    try:
        copy_database(backup, prepared, judge=sound)
        head = _made_ready(config, prepared)
        close_for_good(prepared)
        _nobody_has(file)
        moment = datetime.now(UTC).strftime(FORM)
        kept = unused(file.with_name(f"{file.stem}.replaced-{moment}{file.suffix}"))
        if not file.exists():
            prepared.replace(file)
            return None, head
        replace_database(file, prepared, kept=kept)
        return kept, head
    finally:
        remove_database(prepared)


def _nobody_has(file: Path) -> None:
    """Raises: StorageBusy. A damaged file is no reason not to replace it."""
    if not file.exists():
        return
    try:
        close_for_good(file)
    except StorageDamaged:
        return


def _made_ready(config: Config, prepared: Path) -> int:
    """Bring the copy up to this release, prove it, and give it another life."""
    with opened(replace(config, database_url=f"sqlite:///{prepared.absolute()}"), migrate=False):
        if applied_revision() is None:
            raise StorageTrouble("it is a database, but none of cellarapp")
        bring_up_to_date(None)
        open_ledger(RightsOf)
        if check():
            rebuild()
        differences = check()
        if differences:
            raise StorageTrouble(f"its ledger contradicts itself: {differences[0]}")
        begin_another_life()
        return current_head().position


def _refuse(words: str) -> int:
    print(f"cellarapp: {words}", file=sys.stderr)
    return 1
