"""What a column is: by the words in its heading, and where these may mean several things, by what stands below."""

from __future__ import annotations

import re
from collections.abc import Sequence
from datetime import date, datetime
from typing import Final

from core.handbook import breeds, colors
from core.notes.moving.amounts import cents_of, count_of, grams_of, is_blank, is_yes, sex_of
from core.notes.moving.days import day_of, is_day
from core.notes.moving.table import Cell

#: What a column can be, with a breeder's word for it. `ignore` leaves a column out; `remark` keeps its words.
MEANINGS: Final = {
    "tag": "tag", "name": "name", "sex": "sex", "breed": "breed", "color": "color", "born": "birth day", "sire": "sire", "dam": "dam",
    "came": "day it came", "paid": "price paid", "cage": "cage", "weight": "weight", "ounces": "ounces behind the pounds", "date": "day",
    "doe": "doe", "buck": "buck", "bred": "day bred", "box_in": "nest box in", "kindled": "day kindled", "born_kits": "kits born",
    "alive": "born alive", "dead": "born dead", "weaned": "kits weaned", "weaned_on": "day weaned", "sold_on": "day sold",
    "sold_for": "price sold for", "buyer": "buyer", "died_on": "day it died", "culled_on": "day butchered", "status": "whether it is still here",
    "remark": "remark",
    "ignore": "left out",
}  # fmt: skip

#: Heading -> what it is. A question mark: the cells decide (`_BY_CELLS`).
_HEADS: Final = {
    "tag": "tag|tag no|tag number|tag id|tattoo|ear tattoo|ear no|ear number|ear|ear tag|ear id|id|rabbit id|animal id|animal|rabbit|rabbit no|no|number|nr|who|left ear|tatoo|rabbit tag|id no|animal tag",
    "name": "name|rabbit name|called|animal name",
    "sex": "sex|gender|b/d|m/f|buck/doe|d/b|f/m|sx",
    "breed": "breed|breeds",
    "color": "color|colour|variety|coat|color/variety|coat color|var",
    "born": "born|dob|d.o.b|d o b|date of birth|birth date|birthdate|birthday|date born|birth|bday|hatched",
    "sire": "sire|father|sire tag|sire no|sire name|sire id|dad",
    "dam": "dam|mother|dam tag|dam no|dam name|dam id|mom|mum",
    "came": "acquired|date acquired|purchased|purchase date|date bought|bought on|arrived|bought|date purchased|came|came on",
    "paid": "paid|price paid|cost|purchase price|bought for",
    "cage": "cage|pen|hole|hutch|cage no|pen no|location|cage number",
    "weight": "weight|wt|wgt|weights|lb|lbs|kg|g|grams|oz|weighed|weight lb|live weight|body weight",
    "date": "date|day|when|date weighed|weigh date|weighing date|weight date|on",
    "doe": "doe|doe tag|doe no|doe name|doe id|female",
    "buck": "buck|buck tag|buck no|buck name|stud|bred to|buck used|male|buck id",
    "bred": "bred|date bred|breeding date|bred on|breed date|mated|mating date|service date|date of breeding|bred date|served|covered|date mated",
    "box_in": "box in|nest box|nestbox|nest box in|nestbox in|box date",
    "kindled": "kindled|date kindled|kindle date|kindling date|litter date|kindled on|actual|actual date|delivered|kindle|date of kindling|kindling",
    "born_kits": "kits|total born|litter size|total|kits born|number born|no born|total kits|no kits|kits total|nb|count|no of kits",
    "alive": "alive|born alive|live|live born|kits alive|living|no alive|live kits|alive at birth|bda",
    "dead": "dead|stillborn|doa|born dead|kits dead|dead at birth|still born|no dead|sb",
    "weaned": "weaned|kits weaned|number weaned|no weaned|weaned kits|wean",
    "weaned_on": "date weaned|wean date|weaned on|weaning date|weaned date",
    "sold_on": "sold|date sold|sale date|sold on|sold date",
    "sold_for": "sale price|sold for|selling price|price",
    "buyer": "buyer|sold to|customer|purchaser",
    "died_on": "died|date died|death|dod|date of death|died on|death date|deceased",
    "culled_on": "culled|butchered|processed|date culled|butcher date|date butchered|culled on|slaughtered",
    "remark": "notes|note|comments|comment|remarks|remark|other|memo",
    "status": "status|disposition|fate|outcome",
    "ignore": "age|age days|age weeks|due|due date|date due|kindle due|expected|due to kindle|coi|inbreeding|row|palpate|box due|wean due|stage|sort|nestbox due",
}
WORDS: Final[dict[str, str]] = {word: meaning for meaning, words in _HEADS.items() for word in words.split("|")}

#: A weight's column that says when: `8 wk wt`, `Wt 3/1`, `56 days`.
_AGE: Final = re.compile(r"(\d{1,3}) ?(w|wk|wks|week|weeks|d|day|days)\b")
_WEIGHT_WORD: Final = re.compile(r"\b(?:weight|wt|wgt|lbs?|oz|kg|g|grams|weigh|weighed)\b")
_UNIT_LAST: Final = re.compile(r" (?:lbs?|pounds|oz|ounces|kg|g|grams)$")
_HEADING_DAY: Final = re.compile(r"\d{1,4}[-/.]\d{1,2}[-/.]\d{2,4}")
#: Shares of a column's cells that make it one thing.
MOST: Final = 0.6  # not a figure: a way of keeping sheets
SOME: Final = 0.3  # not a figure: a way of keeping sheets
#: So many cells of a long column, and fewer than twice as many, say what it is.
ASKED: Final = 500  # not a figure: cells
_WEEK: Final = 7  # not a figure: days


def plain(head: str) -> str:
    """A heading as `WORDS` has it: lower case, signs and units out."""
    bare = re.sub(r"[(\[][^)\]]*[)\]]|[#:?*_\u2116]", " ", head.lower().replace(".", " " if len(head) > len("d.o.b.") else ""))
    return " ".join(bare.split())


def word_meaning(head: Cell) -> str | None:
    """What the words of a heading say the column is; None where they are no heading that anybody knows."""
    if not isinstance(head, str):
        return None
    if head.strip() == "#":
        return "tag"
    said = plain(head)
    known = WORDS.get(said) or WORDS.get(said.removesuffix(" date").strip())
    weighs = weighing_head(head) or WORDS.get(_UNIT_LAST.sub("", said)) == "weight"
    return known or ("weight" if weighs else None)


def weighing_head(head: Cell) -> tuple[int | None, str | date | None] | None:
    """The age [days] or the day that the heading of a column of weights tells; None where it heads no such column."""
    if isinstance(head, date):
        return None, head.date() if isinstance(head, datetime) else head
    said = str(head or "").lower()
    day = _HEADING_DAY.search(said)
    if day and (_WEIGHT_WORD.search(said) or day[0] == said.strip()):
        return None, day[0]
    age = _AGE.search(said)
    if age and (_WEIGHT_WORD.search(said) or age[0] == said.strip()):
        return int(age[1]) * (_WEEK if age[2].startswith("w") else 1), None
    return None


def share(cells: Sequence[Cell], fits: object) -> float:
    """The share of the cells that say something which are so; of a long column every so many are asked."""
    told = [cell for cell in cells if not is_blank(cell)]
    told = told[:: max(1, len(told) // ASKED)]
    return sum(bool(fits(cell)) for cell in told) / len(told) if told and callable(fits) else 0.0


def goes_on(cell: Cell, others: Sequence[Cell]) -> bool:
    """Whether a cell says what the others of its column say: a sex among sexes, a day among days."""
    looks = (lambda each: sex_of(each) is not None, is_day)
    return any(fits(cell) and share(others, fits) > MOST for fits in looks)


def by_cells(cells: Sequence[Cell]) -> str | None:
    """What a column without a heading may be, by its cells alone."""
    looks = (
        ("sex", lambda cell: sex_of(cell) is not None),
        ("born", is_day),
        ("breed", lambda cell: breeds.breed(str(cell)) is not None or str(cell).lower() in breeds.breed_color_words()),
        ("color", lambda cell: colors.color(str(cell)) is not None),
        ("weight", lambda cell: count_of(cell) is None and grams_of(cell, "lb", None) is not None),
    )
    return next((meaning for meaning, fits in looks if share(cells, fits) > MOST), None)


def settled(means: str | None, cells: Sequence[Cell], head: str) -> str | None:
    """The meaning of a heading with what its cells say: `Born` over days and `Born` over numbers are two things."""
    days = share(cells, lambda cell: is_day(cell) or isinstance(cell, date)) > MOST
    counts = share(cells, lambda cell: count_of(cell) is not None) > MOST
    said = plain(head)
    if said == "born":
        return "born_kits" if counts and not days else "born"
    swaps = {
        ("weaned", True): "weaned_on", ("kindled", False): "born_kits" if counts else "kindled", ("bred", False): None if counts else "buck",
        ("sold_on", False): "sold_for" if share(cells, lambda cell: cents_of(cell) is not None) > MOST else "remark",
        ("died_on", False): "remark", ("culled_on", False): "remark", ("came", False): "remark", ("box_in", False): "remark",
    }  # fmt: skip
    told = any(not is_blank(cell) for cell in cells)
    counted = days or share(cells, lambda cell: is_day(cell) or (day_of(cell, "MDY") is not None and not is_yes(cell))) > SOME
    ticks = means in {"sold_on", "died_on", "culled_on"} and share(cells, is_yes) > MOST
    return swaps.get((means or "", counted), means) if told and not ticks else means
