"""How the log is written: plain lines for people, or JSON lines for a machine."""

import json
import logging
from datetime import UTC, datetime
from typing import Literal

from typing_extensions import override

LogForm = Literal["plain", "json"]
PLAIN = "%(asctime)s %(levelname)s %(name)s: %(message)s"
FACTS = "facts"
"""The attribute of a log record that holds members of its own for the JSON line."""


class JsonLine(logging.Formatter):
    """One JSON object a line: time, level, logger, message, the facts, and the traceback if any."""

    @override
    def format(self, record: logging.LogRecord) -> str:
        moment = datetime.fromtimestamp(record.created, UTC)
        line = {
            "time": moment.isoformat(timespec="milliseconds").replace("+00:00", "Z"),
            "level": record.levelname.lower(),
            "logger": record.name,
            "message": record.getMessage(),
            **getattr(record, FACTS, {}),
        }
        if record.exc_info:
            line["traceback"] = self.formatException(record.exc_info)
        return json.dumps(line)


def set_up_logging(form: LogForm) -> None:
    """Write to standard error in this form, unless somebody has set up logging already."""
    handler = logging.StreamHandler()
    handler.setFormatter(JsonLine() if form == "json" else logging.Formatter(PLAIN))
    logging.basicConfig(handlers=[handler], level=logging.INFO)
    logging.getLogger("alembic").setLevel(logging.WARNING)
