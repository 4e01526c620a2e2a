"""The real server in this process: its power can be cut, and its ledger put back to a copy."""

import json
import sqlite3
from pathlib import Path
from typing import Any

from flask.testing import FlaskClient
from sqlalchemy import Connection, event

from cellarapp import create_app
from cellarapp.api.cookie import NAME
from cellarapp.ledger.check import check
from cellarapp.ledger.opening import begin_another_life
from cellarapp.storage.db import WRITING, close_connections, db
from cellarapp.storage.work import reading

from ..conftest import config_in
from ..signed_in import owner_in


class PowerCut(BaseException):
    """Nothing in the server can hear it."""


class Brewery:
    """One ledger, over restarts."""

    def __init__(self, folder: Path) -> None:
        self._folder = folder
        self._copy: Path | None = None
        self._cut = False
        self._cookie = owner_in(config_in(folder))
        self.start()

    def start(self) -> None:
        self._app = create_app(config_in(self._folder))
        self._client: FlaskClient = self._app.test_client()
        self._client.set_cookie(NAME, self._cookie)
        with self._app.app_context():
            event.listen(db.engine, "commit", self._on_commit)

    def stop(self) -> None:
        with self._app.app_context():
            close_connections()

    def lose_power(self) -> None:
        """What was not committed is gone. Making the application anew takes long; restores do."""
        self.stop()

    def _on_commit(self, connection: Connection) -> None:
        if self._cut and connection.get_execution_options().get(WRITING):
            raise PowerCut

    def answer(self, question: dict[str, Any]) -> dict[str, Any]:
        """What a phone is told, as its transport would read it."""
        path, body = question["path"], question.get("body")
        said = (
            self._client.get(path)
            if body is None
            else self._client.post(path, data=body, content_type="application/json")
        )
        return {"status": said.status_code, "body": json.loads(said.data), "retryAfterMs": None}

    def cut_before_commit(self, question: dict[str, Any]) -> bool:
        """Work on a request until all of it is about to be kept; whether that was reached."""
        self._cut = True
        try:
            self.answer(question)
        except PowerCut:
            return True
        finally:
            self._cut = False
            self.lose_power()
        return False

    def keep_copy(self) -> None:
        """A copy made while it serves."""
        self._copy = self._folder / "copy"
        with sqlite3.connect(self._file) as live, sqlite3.connect(self._copy) as copy:
            live.backup(copy)
        live.close()
        copy.close()

    def restore(self) -> bool:
        """Put the ledger back to the copy, if there is one: another life of it begins."""
        if self._copy is None:
            return False
        self.stop()
        for beside in ("-wal", "-shm"):
            Path(f"{self._file}{beside}").unlink(missing_ok=True)
        self._file.write_bytes(self._copy.read_bytes())
        self.start()
        with self._app.app_context():
            begin_another_life()
        return True

    @property
    def _file(self) -> Path:
        return self._folder / "cellarapp.sqlite"

    def entries(self) -> dict[str, dict[str, Any]]:
        """Every entry of the ledger by id."""
        with sqlite3.connect(self._file) as live:
            live.row_factory = sqlite3.Row
            found = {row["id"]: dict(row) for row in live.execute("SELECT * FROM entry")}
        live.close()
        return found

    def rows(self) -> dict[str, Any]:
        """Every row's document by its key on the phones."""
        with self._app.app_context(), reading() as work:
            return {f"{row.type}:{row.id}": json.loads(row.doc) for row in work.rows.all()}

    def faults(self) -> list[str]:
        """What `cellarapp check` finds."""
        with self._app.app_context():
            return check()
