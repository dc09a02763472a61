"""A sheet off the barn wall: a heading that says what its lines are about, and lines that say only whose and how many.

    Body condition, 11/25
    Flint 3                      reads as `11/25: Flint bcs 3`

A heading's day holds for its lines, but for those with a day of their own. Numbers that only count the lines of a list are left out.
A line that doesn't fit its heading is read as it stands.

Over 300 lines: all headings in one table, and beside it how the lines of each are told.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import dataclass
from itertools import pairwise
from typing import Final

from core.notes.slots.animals import HerdWords

_WEEKDAY: Final = (
    r"(?:mon|tues?|wed(?:nes)?|thu(?:rs?)?|fri|sat(?:ur)?|sun)(?:day)?|today|tonight|yesterday|last night|this (?:morning|evening)"
)
_MONTH: Final = r"(?:jan|feb|mar|apr|may|june?|july?|aug|sept?|oct|nov|dec)[a-z]*\.?"
_ONE_DAY: Final = (
    rf"(?:{_WEEKDAY}|\d{{1,2}}/\d{{1,2}}(?:/\d{{2,4}})?|\d{{4}}-\d{{2}}-\d{{2}}|\d{{1,2}}(?:st|nd|rd|th)? {_MONTH}(?: \d{{4}})?"
    rf"|{_MONTH} \d{{1,2}}(?:st|nd|rd|th)?(?:,? \d{{4}})?)(?: (?:morning|night|evening|afternoon|am|pm))?"
)
_DAYS: Final = rf"(?P<day>(?:{_ONE_DAY})(?:,? (?:{_ONE_DAY}))*(?P<span> ?(?:-|to|through|thru) ?(?:{_ONE_DAY}))?|(?:next )?{_MONTH})"
_DAY_OF_LINE: Final = re.compile(rf"^({_ONE_DAY})[ :,-]+(?=\S)", re.IGNORECASE)
_DAY: Final = re.compile(rf"\b(?:{_ONE_DAY})\b")
_DAY_LAST: Final = re.compile(rf"[ ,:(-]+(?:(?:on|for|from|of|as of|starting) )?{_DAYS}\)?$")
_DAY_FIRST: Final = re.compile(rf"^{_DAYS}[ ,:-]+")
#: `losses, Sorrel`, `condition of 12`; a title has one word or two.
_OF_WHOM: Final = re.compile(r"^([a-z]+(?: [a-z]+)?)(?:,| -| of| for| under) ((?:doe |buck )?[\w']+(?: [\w']+)?)$")
_LATELY: Final = re.compile(r" (?:this week|this month|so far|lately|recently|today|tonight|please|pls)$")
_OWNERS: Final = re.compile(r"^(?:today'?s|tonight'?s|this week'?s|our|my|the) ")
_BULLET: Final = re.compile(r"^(?:[-+>~]|\d{1,2}[.)](?=\s))\s*")
_MONTHS: Final = ("jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec")
_COUNTED: Final = re.compile(r"^(\d{1,2})[.)]\s+(?=\S)")
_DAY_OF_MONTH: Final = re.compile(
    r"^(?P<day>([1-9]|[12]\d|3[01])(?:st|nd|rd|th)?)\s*[-:]?\s+(?:butcher|cull|sell|breed|rebreed|retire|review|keep|replace) +"
)
_UNIT_LAST: Final = re.compile(r"[ ,(/]+(?:in )?(lb|lbs|pounds|oz|ounces|kg|kilos|g|grams)\)?$")
_PARTING: Final = re.compile(r"^\s*(?:->|=>|[:=,>]|-(?=\s|$)|\.{2,})?\s*")
_TAG: Final = re.compile(
    r"#?([a-z]{0,3}-?\d{1,4}[a-z]?)(?![\w/.,]*\d)(?![\w/-])"
    r"(?! ?(?:days?|wks?|weeks?|months?|hours?|lbs?|oz|kgs?|g|grams|kits?|babies|cups?|ml|cc|bags?|ft|bucks?|does|more|times|falls?|%|st|nd|rd|th|jan|feb|mar|apr|may|june?|july?|aug|sept?|oct|nov|dec)\b)"
)
_SEX: Final = re.compile(r"(?:doe|buck|tag|rabbit) (?=\S)")
_AGAIN: Final = re.compile(r"^\s*\(([^()]*)\)")
_NUM: Final = r"(?:\d{1,2}|one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve)"
_AMOUNT: Final = r"(?:\d+(?: \d/\d|\.\d+|/\d)?|\.\d+|a|one|two|three|half a) ?(?:cups?|c|oz|ounces?|g|grams|lbs?|kg)\b"
LONGEST_TITLE: Final = 48  # not a figure: letters: a heading is short
FEWEST_LINES: Final = 2

Row = Callable[[str, str], str | None]  # an animal and the rest of its line -> the line in words, None where it doesn't fit


@dataclass(frozen=True, slots=True)
class Sheet:
    """What the lines below a heading say of the animals that they begin with.

    row   how such a line is told
    line  how a line is told that begins with none
    whole whether the heading is left out even where its lines fit none of the two
    """

    row: Row | None = None
    line: Callable[[str], str | None] | None = None
    whole: bool = False


def _telling(wants: str, told: str) -> Row:
    """Lines whose rest looks so, told so."""
    looks = re.compile(wants, re.IGNORECASE)

    def row(who: str, rest: str) -> str | None:
        return told.format(who=who, rest=rest) if looks.match(rest) else None

    return row


def _lost(who: str, rest: str) -> str | None:
    found = re.match(rf"^({_NUM})(?: kits?)?(?:[ ,(-]+([a-z ]+?)\)?)?$", rest)
    return f"{who} lost {found[1]} kits{', ' + found[2] if found[2] else ''}" if found else None


def _dead(who: str, rest: str) -> str | None:
    """`R22 11/23 bloat`, `R22 - found dead 11/24`."""
    day = _DAY.search(rest.lower())
    cause = (rest[: day.start()] + rest[day.end() :] if day else rest).replace("found dead", "").strip(" ,-:()")
    if cause[:1].isdigit():
        return None  # kits of a doe
    return f"{day[0] + ': ' if day else ''}{who} died{' of ' + cause if cause else ''}"


def _felt(line: str) -> str | None:
    """`22 +`, `15: neg`: whose, and how she felt."""
    found = re.match(r"^(?:doe )?(\w+) *[:=]? *([-+?]|pos(?:itive)?|neg(?:ative)?|empty|yes|no)$", line, re.IGNORECASE)
    return f"palpated {found[1]} {FELT[found[2].lower()[:1]]}" if found else None


def _in_store(line: str) -> str | None:
    found = re.match(r"^(?:pellets|feed|grain)\W+(\d[\w .]*)$", line, re.IGNORECASE)
    return f"{found[1]} of feed left" if found else None


def _delivered(line: str) -> str | None:
    """`4 bags @ 18.50`: what a bill for feed says."""
    found = re.match(r"^(\d+) bags?\b(?: of (?:feed|pellets))? *(.*)$", line, re.IGNORECASE)
    return f"bought {found[1]} bags of feed {found[2]}" if found else None


FELT: Final = {"+": "bred", "-": "open", "?": "unsure", "p": "bred", "n": "open", "e": "open", "y": "bred"}


def _ailing(who: str, rest: str) -> str | None:
    """`22 - ear mites - ivermectin 0.2 ml, 28 day withdrawal`: what ails it, and what it got."""
    sign, parted, given = re.sub(r"\s+-+>?\s+|\s*>\s*|:\s+|;\s*", "\n", rest, count=1).partition("\n")
    if not parted or any(letter.isdigit() for letter in sign):
        return None
    if re.match(r"(?:gave|put|treated|dosed|rubbed|used|started|cleaned|trimmed|on )", given):
        return f"{who} has {sign}, {given}{' ' + who if given.endswith(' on') else ''}"
    return f"{who} has {sign}, gave {who} {given}"


def _moved(who: str, rest: str) -> str | None:
    """`31 -> B3`, `31: A1 -> B3`."""
    found = re.match(r"^(?:([a-z]?-?\d{1,3}) *(?:->|>|to) *)?([a-z]?-?\d{1,3})$", rest, re.IGNORECASE)
    if found is None:
        return None
    return f"moved {who} from {found[1]} to {found[2]}" if found[1] else f"{who} to cage {found[2]}"


def _newcomer(who: str, rest: str) -> str | None:
    """`53: Mini Rex doe, blue, born 7/1/26`."""
    if who.lower().startswith(("doe ", "buck ")):
        return f"new {who} {rest}"
    sex = re.search(r"\b(doe|buck)\b,? ?", rest, re.IGNORECASE)
    return f"new {sex[1].lower()} {who} {(rest[: sex.start()] + rest[sex.end() :]).strip()}" if sex else None


def _sexed_newcomer(line: str) -> str | None:
    """`47 buck mini rex castor`."""
    found = re.match(r"^#?([a-z]{0,3}\d{1,4}),? (buck|doe)\b,? ?", line, re.IGNORECASE)
    return f"new {found[2].lower()} {found[1]} {line[found.end() :]}" if found else None


def _boxed(who: str, rest: str) -> str | None:
    return f"box {rest} {who}" if rest in {"in", "out"} else None


def _box_line(line: str) -> str | None:
    found = re.match(r"^(?:put |taken |pulled |took )?(in|out)\s*(?:[:=-]|->)*\s*(?=\S)", line)
    return f"box {found[1]} {line[found.end() :]}" if found else None


def _paired(line: str) -> str | None:
    found = re.match(r"^(?:breed )?(.{1,24}?) (?:x|to|with) (?=\S)", line)
    return f"plan to breed {found[1]} to {line[found.end() :]}" if found else None


def _planned(line: str) -> str | None:
    """`breed 15 to Flint`, `15 x Flint`."""
    if re.match(r"(?:butcher|cull|keep|sell|breed|retire|replace|review)\b", line, re.IGNORECASE):
        return f"plan to {line}"
    behind = re.match(r"((?:doe |buck )?\w+) (butcher|cull|keep|sell|breed|retire|review)\b(.*)", line)
    if behind:
        return f"plan to {behind[2]} {behind[1]}{behind[3]}"  # "9 breed to Moss"
    return _paired(line) if " x " in line else None


def _reminding(line: str) -> str | None:
    """`Friday: trim nails on 9`, `trim nails on 9 - Friday`."""
    day = _DAY_OF_LINE.match(line)
    if day:
        return f"remind me {day[1]} to {line[day.end() :]}"
    last = _DAY_LAST.search(line.lower())
    return f"remind me {last['day']} to {line[: last.start()]}" if last else None


def _sold(who: str, rest: str) -> str | None:
    found = re.match(r"^(?:sold )?(?:for )?(\$? ?\d+(?:\.\d\d)?)", rest)
    return f"sold {who} for {found[1]}{rest[found.end() :]}" if found else None


def _skipped(line: str) -> str | None:
    """`nail trim, Moss`, `nest check on 12`."""
    return "skip " + re.sub(r", (?=[A-Z][\w']*$|\w*\d+$)", " on ", line)


def _open_box(line: str) -> str | None:
    return None if line.startswith("[") else f"[ ] {line}"


def _chore(line: str) -> str | None:
    """A chore by its bare verb; what tells of itself as past stays."""
    word = line.split(" ", 1)[0]
    return f"done {line}" if word in CHORES else None


CHORES: Final = frozenset(
    {"trim", "clean", "scrub", "fill", "fix", "sweep", "wash", "order", "check", "empty", "rake", "oil", "mend", "water", "dump", "haul"}
)
_BIRTHS: Final = _telling(rf"^(?:born |live |alive |total )?{_NUM}\b(?! ?(?:lbs?|oz|kg|g|days?|weeks?|/|-))", "{who} kindled {rest}")
_SURVEYED: Final = _telling(rf"^(?:born |live |alive ){_NUM}\b|^{_NUM} (?:born|live|alive)\b", "{who} kindled {rest}")
_COLORED_AS: Final = r"^[a-z][a-z ]{2,24}$"
_colored: Final = _telling(_COLORED_AS, "{who} is {rest}")
_litter_colored: Final = _telling(r"^\d{1,2} [a-z]", "{who} litter {rest}")
_litter_weighed: Final = _telling(r"^(?:litter )?\d+(?:\.\d+)?(?:-\d| ?(?:lbs?|pounds|oz|kg|g|grams)\b)", "{who} litter {rest}")
_mated: Final = _telling(r"^(?:x|to|with|bred) ", "{who} {rest}")
_SCORED: Final = _telling(r"^[1-5](?:\.5| 1/2|\.0)?(?:/5)?$", "{who} bcs {rest}")
_COUNTED_KITS: Final = _telling(rf"^{_NUM}(?:(?: kits| alive)?$| kits\b(?! lost| died| dead))", "{who} has {rest}")
_FED: Final = _telling(rf"^{_AMOUNT}", "{who} get {rest}")
_GONE: Final = _telling(r"^(?:live |dressed )?\d", "butchered {who}: {rest}")
_LEFT_OFF: Final = r"^(?:\W|\w+ \d|[a-z]?\d|[a-z ]*$)"  # a day, further animals, or a reason


def _plan(what: str) -> Sheet:
    return Sheet(_telling(_LEFT_OFF, f"plan to {what} {{who}}, {{rest}}"))


#: Titles, parted by ` | ` -> their sheet.
_SHEETS: Final = {
    "litter log | litter record | litter records | litter book | new litters | litters born | births | birth log | kindlings | kindling log | kindling"
    " | kindling record | kindling records | kindled": Sheet(_BIRTHS),
    "litters": Sheet(_SURVEYED),
    "body condition | condition | conditions | condition scores | body condition scores | body scores | bcs | bcs scores | body condition score": Sheet(_SCORED),
    "nest boxes | nest box | boxes | nestboxes | nest box log": Sheet(_boxed, _box_line),
    "breeding plan | breeding plans | planned breedings | planned matings | mating plan | breed plan | to breed | breeding schedule | breedings planned"
    " | planned pairings | pairings planned": Sheet(None, _paired),
    "plan | plans | plan for the week | plans for the week | weekly plan": Sheet(None, _planned, whole=True),
    "this week | schedule": Sheet(None, _planned),
    "reminders | reminder list | remind me": Sheet(None, _reminding),
    "deaths | died | dead | found dead | death": Sheet(_dead),
    "palpation | palpations | palpated | palpation results | palp results | palps | palp": Sheet(None, _felt),
    "inventory | feed inventory | on hand | feed on hand | in stock | stock": Sheet(None, _in_store),
    "feed bill | feed bought | feed purchase | feed order | bought feed": Sheet(None, _delivered),
    "litter colors | litter colours | kit colors": Sheet(_litter_colored),
    "litter update | litter updates | litter check | litter checks | litter report": Sheet(_COUNTED_KITS),
    "new arrivals | new animals | new stock | new rabbits | newcomers | bought rabbits": Sheet(_newcomer, _sexed_newcomer),
    "color | colour | colors | colours | coat color | coat colour | coat colors | coats": Sheet(_colored),
    "litter weights | litter weight": Sheet(_litter_weighed),
    "breedings | matings | bred | breeding log | mating log | breeding record | mating record": Sheet(_mated),
    "status | status report | weekly report | daily report | weekly notes | daily notes | journal": Sheet(None, None, whole=True),
    "cull list | to cull | to butcher | butcher list | freezer list | cull plan": _plan("cull"),
    "keep list | keepers | to keep | keeping": _plan("keep"),
    "sell list | to sell | selling": _plan("sell"),
    "medical | medical log | medical notes | meds | medication | medications | health log | health notes | health | vet log | sick bay | sick list | sick"
    " | treatment log | hospital | ailments": Sheet(_ailing, None, whole=True),
    "health check | health checks": Sheet(_ailing, None, whole=True),
    "kit counts | kit count | litter counts | litter count | nest counts | nest count | counts | kits | nest checks | nest check": Sheet(_COUNTED_KITS),
    "rations | ration | feeding | feed rations | feed amounts | feedings": Sheet(_FED),
    "sold | sales": Sheet(_sold),
    "moves | moved | cage moves | cage changes | cage cards | cage list | cage chart | cages": Sheet(_moved),
    "butchered | culled | processed | butcher day | butchering": Sheet(_GONE),
    "losses | kit losses | kits lost | lost kits | lost": Sheet(_lost),
    "skip | skipped | skipping | skips | skip list": Sheet(None, _skipped),
    "to do | todo | to-do | to do list | todo list | to-do list | still to do | left to do | still need to do | need to do | things to do": Sheet(None, _open_box, whole=True),
    "done | finished | completed | all done | chores done | done list": Sheet(None, _chore, whole=True),
    "am | pm | morning | afternoon | evening | rounds | round | evening round | evening rounds | morning round | morning rounds | night round | night rounds | barn round | barn rounds | barn check"
    " | barn notes | barn report | barn log | notes | report | update | log | evening report | night check | evening check | morning check": Sheet(None, None, whole=True),
    "chores | tasks | jobs | checklist | check list | chore list": Sheet(None, None, whole=True),
}  # fmt: skip
SHEETS: Final = {title: sheet for titles, sheet in _SHEETS.items() for title in titles.split(" | ")}
#: They name the chores themselves: without a box before them, their lines may be done or not.
BOXED: Final = frozenset({"chores", "tasks", "jobs", "checklist", "check list", "chore list"})
AHEAD: Final = frozenset(title for titles in _SHEETS if titles.startswith("to do") for title in titles.split(" | ")) | BOXED
WEIGHTS: Final = frozenset({"weights", "weight", "weigh-in", "weigh in", "weigh day", "wts", "weighed"})
TITLE_WORDS: Final = frozenset(word for title in (*SHEETS, *WEIGHTS) for word in title.split(" "))
_WORDS: Final = re.compile(r"[a-z-]+")
_UNIT_OF_WEIGHTS: Final = re.compile(r"^(\d+(?:\.\d+)?)$")


def sheet_told(text: str, words: HerdWords) -> str | None:
    """The note with the lines below its headings told in words; None where it has no heading that is known."""
    if "\n" not in text:
        return _one_line(text, words)
    lines = _blocks(_without_count([line.strip() if line[:1] != " " else line.rstrip() for line in text.split("\n")]), words)
    told: list[str] = []
    begun = 0
    for place, line in enumerate(lines):
        if place >= begun and (title := _title(line, words)) is not None:
            end = next((i for i in range(place + 1, len(lines)) if _title(lines[i], words) is not None), len(lines))
            section = _section(title, lines[place + 1 : end], words)
            told += section if section is not None else lines[place:end]
            begun = end
        elif place >= begun:
            told.append(line)
    return "\n".join(told) if told != [line.strip() for line in text.split("\n")] else None


#: What begins a line that only goes on with the counts of the line above.
_COUNTED_FIRST: Final = re.compile(r"^\d+ (?:kits?|born|live|alive|dead|bucks?|does?|doa|stillborn)\b", re.IGNORECASE)


def _blocks(lines: list[str], words: HerdWords) -> list[str]:
    """The lines below an animal's own line, or set in below one that begins with it, told of that animal: `Juno`, `kindled 8`, `2 dead`."""
    told: list[str] = []
    several = sum(1 for line in lines if (known := _known_first(line, words)) is not None and not known[1].strip(" :-")) >= FEWEST_LINES
    head, alone, empty = "", False, False  # the animal of the block, whether it has a line of its own, and none below it yet
    for line in lines:
        bare = _BULLET.sub("", line.strip())
        known = None if _COUNTED_FIRST.match(bare) else _known_first(bare, words)
        inside = bool(bare) and known is None and bool(head) and (alone or line[:1] == " ")
        if empty and bare and not inside:
            return [line.strip() for line in lines]  # a list of animals, and no blocks
        empty = empty and not inside
        if inside and _COUNTED_FIRST.match(bare) and told and told[-1].startswith(head):
            told[-1] += f", {bare}"
        elif inside:
            told.append(f"{head} {bare}")
        elif known is not None and not known[1].strip(" :-") and line[:1] != " " and (several or not (told and told[-1])):
            head, alone, empty = known[0], True, True
            told.append("")
        else:
            head, alone = (known[0], False) if known is not None else (head if line[:1] == " " else "", False)
            told.append(line.strip())
    return told if not empty else [line.strip() for line in lines]


def _known_first(line: str, words: HerdWords) -> tuple[str, str] | None:
    """The animal of the book that a line begins with, as it is said there, and the rest of the line."""
    led = _led(line, words)
    return led if led is not None and _animal_of(led[0], words) is not None else None


def _one_line(text: str, words: HerdWords) -> str | None:
    """`Skip today: nest check on 12; palpation on 22`, `BCS 11/25: Flint 3, Moss 2.5`."""
    head, colon, rest = text.partition(":")
    if not colon or len(head) > LONGEST_TITLE or head[:1].isdigit() or (title := _title(head, words)) is None:
        return None
    rows = [row.strip(" .") for row in re.split(r";" if ";" in rest else r",(?=\s)", rest)]
    if len(rows) < FEWEST_LINES or (";" not in rest and not all(_led(row, words) and _row(title, row, words) for row in rows)):
        return None
    section = _section(title, rows, words, in_line=True)
    return "\n".join(section) if section is not None else None


def _without_count(lines: list[str]) -> list[str]:
    """The lines without the numbers that count them from one."""
    said = [(place, int(found[1])) for place, line in enumerate(lines) if (found := _COUNTED.match(line))]
    counts = len(said) >= FEWEST_LINES and said[0][1] == 1 and all(b[1] == a[1] + 1 for a, b in pairwise(said))
    for place, _ in said if counts else ():
        lines[place] = _COUNTED.sub("", lines[place])
    return lines


@dataclass(frozen=True, slots=True)
class _Title:
    sheet: Sheet
    day: str
    ahead: bool  # it heads what is still to be done
    dated: bool  # it names a single day, or none
    who: str  # whose lines it heads, empty where each names its own
    boxed: bool  # its lines are to be done, or done, by the box before them


def _title(line: str, words: HerdWords) -> _Title | None:
    """What the line heads, if it is a heading."""
    if not line or len(line) > LONGEST_TITLE or (_BULLET.match(line) and not line.endswith(("-", ":"))):
        return None
    said = line.lower().strip("#=-:. ")
    if TITLE_WORDS.isdisjoint(_WORDS.findall(said)):
        return None
    day, dated = "", True
    for looks in (_DAY_LAST, _DAY_FIRST):
        if said not in SHEETS and (found := looks.search(said)):
            dated = not found["span"]
            day, said = found["day"], (said[: found.start()] + said[found.end() :]).strip(" :,-.(")
            break
    said = _LATELY.sub("", _OWNERS.sub("", said))
    who = ""
    if said not in SHEETS and (found := _OF_WHOM.match(said)):
        if _animal_of(found[2], words) is None:
            return None
        said, who = found[1], found[2]
    sheet = SHEETS.get(said)
    if sheet is not None:
        return _Title(sheet, day if dated else "", said in AHEAD, dated, who, said in BOXED)
    unit = _UNIT_LAST.search(said)
    if unit and _OWNERS.sub("", said[: unit.start()]) in WEIGHTS:
        return _Title(Sheet(_weighed(unit[1])), day, ahead=False, dated=dated, who="", boxed=False)
    return None


def _weighed(unit: str) -> Row:
    def row(who: str, rest: str) -> str | None:
        return f"{who} weighed {rest} {unit}" if _UNIT_OF_WEIGHTS.match(rest) else None

    return row


def _section(title: _Title, lines: list[str], words: HerdWords, *, in_line: bool = False) -> list[str] | None:
    """The lines below a heading, told; None where none of them fits it."""
    if title.boxed and not any(re.match(r"\W*\[", line) for line in lines):
        return None
    if not title.dated and not all(_DAY.search(line.lower()) for line in lines if line):
        return None  # which of the days is a line's own?
    told: list[str] = []
    fits = title.sheet.whole and any(lines) and not in_line
    for line in lines:
        bare = _BULLET.sub("", line)
        if title.sheet.line is _planned and title.day.isalpha():
            bare = _with_month(bare, title.day, words)
        own = _DAY_OF_LINE.match(bare) if title.sheet.line is not _reminding else None
        said = _row(title, bare[own.end() :] if own else bare, words) if bare else None
        if said is None and (own or title.sheet.whole) and title.sheet.line is _planned and bare and "skip" not in bare:
            said, own = bare if bare.startswith("[") else f"[ ] {bare}", None  # what is planned otherwise is not done yet
        if said is not None and own and _DAY.search(said.lower()):
            said = None  # two days: it is asked which
        fits = fits or said is not None
        if said is None:
            told.append(_dated(bare, title.day, title))
        else:
            told.append(_dated(said, own[1] if own else title.day, title))
    return [line.rstrip(" ,") for line in told] if fits else None


def _with_month(line: str, month: str, words: HerdWords) -> str:
    """`3 - butcher 12` below `Plan for December`: the number is a day of that month, the deed and its animal stand behind it."""
    found = _DAY_OF_MONTH.match(line.lower())
    if found is None or not month.startswith(_MONTHS) or _led(line[found.end() :], words) is None:
        return line
    return f"{month} {found[2]}: {line[found.end('day') :].lstrip(' -:')}"


def _row(title: _Title, line: str, words: HerdWords) -> str | None:
    sheet = title.sheet
    low = line.lower()
    led = _led(line, words) if sheet.row is not None else None
    if title.who and (led is None or line[:1].isdigit()):
        led = (title.who, line)
    if sheet.row is not None and led is not None:
        return sheet.row(*led)
    group = re.match(r"(bucks|does|grow-?outs|everybody|all) *[:=-] *(?=\S)", low) if sheet.row is _FED else None
    if group:
        return sheet.row(group[1], low[group.end() :]) if sheet.row is not None else None
    return sheet.line(low if sheet.line is _box_line or sheet.line is _chore else line) if sheet.line is not None else None


def _led(line: str, words: HerdWords) -> tuple[str, str] | None:
    """The animal that a line begins with, and the rest of the line."""
    low = line.lower()
    begin = found.end() if (found := _SEX.match(low)) else 0
    end = _name_end(low, begin, words)
    if end is None and (tag := _TAG.match(low, begin)):
        end = tag.end() if tag[1].isdigit() or words.tagged(tag[1]) is not None else None
    if end is None:
        return None
    again = _AGAIN.match(low[end:])
    rest = end + again.end() if again and _says_again(again[1], line[:end], words) else end
    parting = _PARTING.match(low[rest:])
    return line[:end], line[rest + (parting.end() if parting else 0) :].rstrip(" .")


def _name_end(low: str, begin: int, words: HerdWords) -> int | None:
    first = re.match(r"[^\W\d]+(?:'[^\W\d]+)?", low[begin:])
    for rest, _ in words.names.get(first[0].replace("'", ""), ()) if first else ():
        end = begin + (first.end() if first else 0)
        for word in rest:
            end = end + 1 + len(word) if low[end:].startswith(" " + word) else -1
            if end < 0:
                break
        if end > 0 and not low[end : end + 1].isalnum():
            return end
    return None


def _says_again(said: str, who: str, words: HerdWords) -> bool:
    """Whether the words in brackets only name the animal once more."""
    one, other = (_animal_of(part, words) for part in (said, who))
    return one is not None and one == other


def _animal_of(said: str, words: HerdWords) -> str | None:
    """The tag of the one animal that the words name."""
    low = _SEX.sub("", said.lower().strip(), count=1).lstrip("#")
    known = words.tagged(low)
    if known is not None:
        return known.tag
    named = [
        tags for rest, tags in words.names.get(low.split(" ", maxsplit=1)[0].replace("'", ""), ()) if _name_end(low, 0, words) == len(low)
    ]
    return named[0][0] if named and len(named[0]) == 1 else None


def _dated(line: str, day: str, title: _Title) -> str:
    if not line or not day or _DAY.search(line.lower()):
        return line
    if title.ahead:
        ticked = re.match(r"\[ ?x ?\]", line.lower())
        return f"[x] {day}: {line[ticked.end() :].strip()}" if ticked and day[-1].isdigit() else line
    if line.startswith("plan to "):
        return f"{line} in {day}" if day.isalpha() and day.startswith(_MONTHS) else f"{line} on {day}"
    return f"{day}: {line}"
