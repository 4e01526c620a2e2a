"""Links that let somebody in once."""

from dataclasses import asdict, dataclass

from sqlalchemy import Connection, delete, insert, select

from cellarapp.storage.account_models import Invite


@dataclass(frozen=True, slots=True)
class StoredInvite:
    """One link. `token` is a hash; `person` whom it is for, none where it makes an owner."""

    token: str
    person: str | None
    expires_at: str


class InviteStore:
    """Makes and spends links."""

    def __init__(self, connection: Connection) -> None:
        self._connection = connection

    def add(self, invite: StoredInvite) -> None:
        """Keep a new one."""
        self._connection.execute(insert(Invite), [asdict(invite)])

    def spend(self, token: str) -> StoredInvite | None:
        """Take one away for good; None when it is not there, or another one was faster."""
        asked = select(Invite.token, Invite.person, Invite.expires_at).where(Invite.token == token)
        row = self._connection.execute(asked).first()
        gone = self._connection.execute(delete(Invite).where(Invite.token == token))
        return StoredInvite(*row) if row is not None and gone.rowcount == 1 else None

    def forget(self, *, before: str, making_owners: bool = False) -> None:
        """Take away those that have run out, and perhaps all that make owners."""
        self._connection.execute(delete(Invite).where(Invite.expires_at < before))
        if making_owners:
            self._connection.execute(delete(Invite).where(Invite.person.is_(None)))
