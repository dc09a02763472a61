"""Who belongs to the farm: the owner comes in by the set-up code, others by an invitation; everybody else is refused in plain words."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from datetime import datetime

from core.app.room import Room
from core.reply import Reply
from core.store import people
from core.store.names import Connection
from core.store.people import Member
from core.words import listed

OWNER = "owner"
LOOKER = "looker"
#: Whom an owner can invite, and what they may do.
ROLES = {OWNER: "does everything", "helper": "writes notes and asks", LOOKER: "asks, and writes nothing"}

WELCOME = "Welcome. This farm's book is yours now."
WELCOMES = {
    OWNER: WELCOME,
    "helper": "Welcome to the farm. You can write notes and ask.",
    LOOKER: "Welcome to the farm. You can ask about every animal; notes are written by others.",
}
FIRST_STEPS = (
    "Text me notes as things happen: 'new doe 14 mini rex born 3/4', 'bred 14 to Flint', '14 kindled 8, 2 dead'. "
    "Ask 'who is due' or 'help'. A list of your animals can come as a spreadsheet, or pasted."
)
FIRST_LOOK = "Ask 'who is due', 'feed' or 'card of 14', or say 'help'."
REFUSED = "This is a private bot for one rabbitry. If it is yours, send me the set-up code that it printed when it started."
LOOKS_ONLY = "You can ask about everything here, but notes are written by others. An owner can invite you as a helper."
OWNERS_ONLY = "Only an owner of the farm can do that."


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
    return Reply((WELCOMES.get(role, WELCOME), FIRST_LOOK if role == LOOKER else FIRST_STEPS))


@dataclass(frozen=True, slots=True)
class Wish:
    """What a person wants done about the farm's people, and when: `invite` (a role), `remove` (a name), `people` or `leave`."""

    who: Member
    at: datetime
    what: str
    about: str = ""


def done_about_people(connection: Connection, farm: int, wish: Wish, link: Callable[[str], str]) -> Reply:
    """What came of it; `link` makes an address that sends a code to the bot."""
    if wish.what == "people":
        return Reply(tuple(f"{each.name}: {each.role}, {ROLES.get(each.role, '')}." for each in people.members_of(connection, farm)))
    if wish.what == "leave":
        return _removed(connection, farm, wish.who, "You are not on the farm any more. What you wrote stays in its book.")
    if wish.who.role != OWNER:
        return Reply((OWNERS_ONLY,))
    return _invited(connection, farm, wish, link) if wish.what == "invite" else _sent_off(connection, farm, wish.about)


def farms_of(names: tuple[str, ...], meant: str, wanted: str, *, group: bool) -> Reply:
    """Which farm is meant in a chat, once one was wanted or none was named; `names` are those that the person is on."""
    if group:
        return Reply((f"This group belongs to {meant}. In our own chat you can change farms.",))
    if wanted.casefold() == meant.casefold():
        return Reply((f"This chat is about {meant} now.",))
    if wanted.casefold() in {name.casefold() for name in names}:
        return Reply((f"This bot speaks for {meant} alone.",))
    unknown = (f"You are on no farm called {wanted}.",) if wanted else ()
    if len(names) < 2:
        return Reply((*unknown, f"You are on one farm: {meant}."))
    return Reply((*unknown, f"You are on {listed(names)}. This chat is about {meant}. To change: “/farm {names[0]}”."))


def _invited(connection: Connection, farm: int, wish: Wish, link: Callable[[str], str]) -> Reply:
    role = wish.about
    if role not in ROLES:
        words = listed((f"“invite {each}”" for each in ROLES), "or")
        return Reply((f"Invite whom? Say {words}.", *(f"{each}: {does}." for each, does in ROLES.items())))
    code = people.new_code(connection, farm, role, wish.at, ends_others=False)
    return Reply((f"This lets one person in as {role}, who {ROLES[role]}. It works once, until this time tomorrow:", link(code)))


def _sent_off(connection: Connection, farm: int, name: str) -> Reply:
    named = [each for each in people.members_of(connection, farm) if each.name.lower() == name.lower()]
    if len(named) != 1:
        all_ = listed(each.name for each in people.members_of(connection, farm))
        return Reply((f"{'Several people are' if named else 'Nobody on the farm is'} called {name}. On the farm: {all_}.",))
    return _removed(connection, farm, named[0], f"{named[0].name} is not on the farm any more. What they wrote stays in its book.")


def _removed(connection: Connection, farm: int, member: Member, said: str) -> Reply:
    """The farm keeps an owner, whatever is wished."""
    owners = [each.account for each in people.members_of(connection, farm) if each.role == OWNER]
    if owners == [member.account]:
        return Reply(("The farm needs an owner. First let another in: “invite owner”.",))
    people.remove_member(connection, farm, member.account)
    return Reply((said,))
