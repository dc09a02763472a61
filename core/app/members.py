"""Who belongs to the farm: the owner comes in by the set-up code, everybody else is refused in plain words."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime

from sqlalchemy import Connection

from core.app.room import Room
from core.reply import Reply
from core.store import people
from core.store.people import Member

OWNER = "owner"

WELCOME = "Welcome. This farm's book is yours now."
FIRST_STEPS = "Text me notes as things happen: 'new doe 14 mini rex born 3/4', 'bred 14 to Flint', '14 kindled 8, 2 dead'. Ask 'who is due' or 'help'."
REFUSED = "This is a private bot for one rabbitry. If it is yours, send me the set-up code that it printed when it started."


class People(Room):
    """A farm's members."""

    def member(self, account: str) -> Member | None:
        """The person of that account; None for a stranger."""
        with self._engine.begin() as connection:
            return people.member_of(connection, self._farm, account)

    def members(self) -> tuple[Member, ...]:
        """Everyone on the farm."""
        with self._engine.begin() as connection:
            return people.members_of(connection, self._farm)

    def setup_code(self, now: datetime, *, anew: bool = False) -> str | None:
        """A fresh set-up code, to be shown once; None where the farm has its owner, unless another is wanted (`anew`)."""
        with self._engine.begin() as connection:
            owned = any(member.role == OWNER for member in people.members_of(connection, self._farm))
            return None if owned and not anew else people.new_code(connection, self._farm, OWNER, now)


@dataclass(frozen=True, slots=True)
class Knock:
    """A stranger at the door: who, in which chat, with which words."""

    member: Member
    chat: str
    code: str


def admitted(connection: Connection, farm: int, knock: Knock, now: datetime) -> Reply:
    """What a stranger reads: a welcome if what they sent is the set-up code, else a refusal."""
    role = people.use_code(connection, farm, knock.code, now)
    if role is None:
        return Reply((REFUSED,))
    people.add_member(connection, farm, Member(knock.member.account, knock.member.name, role), now)
    people.know_chat(connection, farm, knock.chat)
    return Reply((WELCOME, FIRST_STEPS))
