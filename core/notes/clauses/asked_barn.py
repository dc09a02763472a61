"""Questions about the barn as a whole, in words that nothing else begins with: the herd as a list, the cages, the settings.

The contract has no subject of its own for them: a list of the herd or of the cages is a `count`, the settings are a `help`.
"""

from __future__ import annotations

import re
from typing import Final

_ALL: Final = r"(?:all |of |the |my |our |me |us |out )*"
_WHOM: Final = r"(?P<who>rabbits|animals|bunnies|buns|everybody|everyone|all|bucks|does|grow-?outs|growers|kits|babies)"
_NOW: Final = r"(?: (?:now|here|left|right now|in the barn|on the farm|in the herd|in my herd|around here))*"
#: The herd as a list. `list him` and `list 14` are offers for sale, so a list alone or with a word for many is all that asks.
HERD: Final = tuple(
    re.compile(said)
    for said in (
        r"list",
        rf"(?:list|show me|show|give me|tell me|let me see|can i see|could i see|see|display|pull up|send me|name) {_ALL}(?:(?:a |the )?list of )?{_ALL}{_WHOM}{_NOW}",
        rf"(?:a |the )?list of {_ALL}{_WHOM}{_NOW}",
        rf"(?:a |the )?{_ALL}(?P<who>rabbits|bunnies|animals)(?: list)?{_NOW}",
        rf"(?:who|whom|who all|what) (?:all )?(?:do|have) (?:i|we) (?:have|got|own|keep){_NOW}",
        rf"(?:what|which) {_WHOM} (?:do|have) (?:i|we) (?:have|got|own|keep){_NOW}",
        r"(?:whos|who is|who all is|who are) (?:here|on the farm|in the barn|in (?:my|our|the) herd)",
    )
)
CAGES: Final = tuple(
    re.compile(said)
    for said in (
        rf"(?:(?:show me|show|list|give me|tell me) )?{_ALL}(?:cages|cage list|cage map|empty cages|free cages)",
        r"(?:which|what|any|how many|are any|are there any) (?:cages|cage)(?: (?:are|is|do i have|do we have))?(?: (?:still |all )?(?:empty|free|open|left|full|taken|used))?",
        r"(?:whos|who is|who lives|who sits|anybody|anyone|is anybody|is anyone) in (?:(?:cage|hutch|pen|hole|stall) )?(?P<cage>[a-z]{0,2}[ -]?\d{1,3})",
        r"(?:whats|what is) in (?:cage|hutch|pen|hole|stall) (?P<cage>[a-z]{0,2}[ -]?\d{1,3})",
        r"(?:whos|who is|who sits|who lives) (?:where|in (?:which|what) cage)",
        r"where (?:is|are) (?:everybody|everyone|they all|all of them|all the rabbits|my rabbits|the rabbits)",
    )
)
SETTINGS: Final = re.compile(
    rf"(?:(?:show me|show|list|see|give me|tell me|let me see|can i see|whats|what are|how are) )?{_ALL}settings(?: set| now)?"
)

#: The words that such a question can begin with: any other message is passed by at once.
FIRST: Final = frozenset(
    {
        "list", "show", "give", "tell", "let", "can", "could", "see", "display", "pull", "send", "name", "a", "the", "all", "of", "my", "our",
        "me", "us", "out", "rabbits", "bunnies", "animals", "who", "whom", "what", "which", "whos", "whats", "any", "how", "are", "is", "anybody",
        "anyone", "where", "cages", "cage", "empty", "free", "settings",
    }
)  # fmt: skip
LONGEST: Final = 120  # not a figure: letters: such a question is short
SCOPES: Final = {"bucks": "bucks", "does": "does", "growouts": "grow-outs", "grow-outs": "grow-outs", "growers": "grow-outs"}
KITS: Final = frozenset({"kits", "babies"})


def plainly(text: str) -> str:
    """The words as they are compared here: lower case, no marks, single spaces, no `please`."""
    bare = re.sub(r"[^a-z0-9 -]+", " ", text.lower().replace("'", "").replace("\u2019", ""))
    return " ".join(word for word in bare.split() if word not in {"please", "pls", "hey", "ok", "okay", "and"})


def herd_asked(text: str) -> str | None:
    """The word for those to be listed, `all` where none is said; None where no list of the herd is asked for."""
    return _herd(plainly(text))


def cage_asked(text: str) -> str | None:
    """The cage that is asked about, nothing where all are; None where no cage is."""
    return _cage(plainly(text))


def settings_asked(text: str) -> bool:
    """Whether the farm's settings are asked for."""
    return SETTINGS.fullmatch(plainly(text)) is not None


def barn_asked(text: str) -> dict[str, object] | None:
    """The fields of the question about the barn; None where it is none."""
    if len(text) > LONGEST:
        return None
    said = plainly(text)
    if said.partition(" ")[0] not in FIRST:
        return None
    if SETTINGS.fullmatch(said):
        return {"about": "help"}
    if _cage(said) is not None:
        return {"about": "count"}
    who = _herd(said)
    if who is None:
        return None
    return {"about": "litters"} if who in KITS else {"about": "count", "scope": SCOPES.get(who, "all")}


def _herd(said: str) -> str | None:
    found = next((match for pattern in HERD if (match := pattern.fullmatch(said))), None)
    return None if found is None else found.groupdict().get("who") or "all"


def _cage(said: str) -> str | None:
    found = next((match for pattern in CAGES if (match := pattern.fullmatch(said))), None)
    return None if found is None else (found.groupdict().get("cage") or "").replace(" ", "").replace("-", "")
