"""`cellarapp move`: from a SQLite file into PostgreSQL, all of it or nothing."""

import sys
from dataclasses import replace
from pathlib import Path

from cellarapp.app import opened
from cellarapp.config import Config, ConfigError, database_url
from cellarapp.ledger.check import differences
from cellarapp.ledger.opening import begin_another_life
from cellarapp.storage.copies import close_for_good
from cellarapp.storage.errors import StorageBusy, StorageError, StorageTrouble
from cellarapp.storage.migrate import bring_up_to_date
from cellarapp.storage.moving import moved_from
from cellarapp.storage.work import connection_for_writing

IN_USE = "the database is in use. Stop cellarapp, move, and start it again."


def move(config: Config, address: str) -> int:
    """Move; 1 if it could not be done, and then the file is as it was and the target is empty.

    Raises: ConfigError when the address is not one of a PostgreSQL server.
    """
    target = replace(config, database_url=database_url(address, config.data))
    if target.database_file is not None:
        raise ConfigError("Move to an address that begins with postgresql+psycopg://.")
    try:
        counts = _move(config, _file(config), target)
    except StorageBusy:
        return _refuse(IN_USE)
    except StorageError as fault:
        return _refuse(f"{fault}. Nothing was moved.")
    print("moved: " + ", ".join(f"{rows} of {table}" for table, rows in counts.items()))
    print("Every row was compared, and the ledger replayed: all rows are what the ledger says.")
    print("Set CELLAR_DATABASE to the new address and start cellarapp again.")
    print(f"The file is kept: {config.database_file}. Do not serve it any more.")
    return 0


def _file(config: Config) -> Path:
    file = config.database_file
    if file is None:
        raise StorageTrouble("this database is kept by PostgreSQL already")
    if not file.is_file():
        raise StorageTrouble(f"there is no database at {file}")
    return file


def _move(config: Config, file: Path, target: Config) -> dict[str, int]:
    close_for_good(file)  # when somebody has it open, this says so
    with opened(config):
        with connection_for_writing() as source, opened(target, migrate=False):
            bring_up_to_date(None)
            with moved_from(source) as (work, counts):
                wrong = differences(work)
                if wrong:
                    raise StorageTrouble(
                        f"{len(wrong)} rows are not what the ledger says ({wrong[0]}); "
                        "call `cellarapp rebuild` first"
                    )
        # Should a phone ever meet the file again, it notices, and sends what it sent there to the
        # ledger that goes on.
        begin_another_life()
    return counts


def _refuse(words: str) -> int:
    print(f"cellarapp: {words}", file=sys.stderr)
    return 1
