"""What there is to say, by what is going on in the barn: the order of the page of notes, of the crib on the barn wall, and of `help` in the chat."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final


@dataclass(frozen=True, slots=True)
class Situation:
    """Something that goes on in a barn.

    name     its heading; `help` and its first word ask for it
    kinds    the kinds of notes that it gives
    sayings  short notes that tell it, at least one of each kind; a test reads each of them
    """

    name: str
    kinds: tuple[str, ...]
    sayings: tuple[str, ...]


#: In the order of a rabbit's life, then the farm's.
SITUATIONS: Final = (
    Situation(
        "animals and cages",
        ("animal", "moved"),
        (
            "new doe 40 mini rex opal born 3/4",
            "N4 Olive red satin doe, 8 months old",
            "bought doe 41 satin for 45",
            "new buck 43 mini rex out of 14 and 3",
            "new does 44 Tulip and 45 Fern, mini lop",
            "33 sire 3 dam 14",
            "15 is named Ivy",
            "14 to cage B3",
        ),
    ),
    Situation(
        "breeding",
        ("bred", "refused", "palpated", "missed"),
        ("bred 15 to Flint, 2 falls", "15 x 3", "12 refused Moss", "22 palpated open", "palp 14 bred", "14 missed"),
    ),
    Situation("birth", ("nest_box", "kindled"), ("box in 14", "box out 16", "doe 14 kindled 8, 2 dead", "14 k8 2d")),
    Situation(
        "nest and kits",
        ("nest_manners", "kit_count", "kits_lost", "fostered"),
        ("9 made a good nest", "14 pulled no fur", "12 has 6 kits", "12 lost 2 kits froze", "moved 2 kits from 12 to 16"),
    ),
    Situation(
        "weaning and tattoos",
        ("weaned", "tagged", "litter_colors"),
        ("weaned 16", "weaned 16: 3 bucks 2 does", "16 litter 3 castor 2 black", "tattooed R30 out of 16, buck, black"),
    ),
    Situation(
        "weights and condition",
        ("weighed", "litter_weighed", "condition"),
        ("31 4-6", "31 4-6, 32 3-15, 33 4 lb", "12 litter weighed 3 lb 12", "22 bcs 3"),
    ),
    Situation(
        "looks and shows",
        ("fault", "scored", "color", "shown"),
        ("31 white toenail dq", "33 type 4 fur 5", "33 is black", "3 best of breed"),
    ),
    Situation(
        "health and temper",
        ("ailment", "treated", "died", "temper"),
        ("5 snotty nose", "gave 22 ivermectin", "found R22 dead", "22 bit me", "9 is sweet"),
    ),
    Situation(
        "feed and weather",
        ("ration", "feed_bought", "feed_left", "weather"),
        ("moss gets 1/2 cup", "bought 4 bags feed 50 lb 18.50 each", "120 lb feed left", "cold snap tonight 15F", "frost last night"),
    ),
    Situation(
        "sale and leaving",
        ("for_sale", "sold", "given_away", "culled"),
        ("list 32 for 60 until dec 20", "sold R23 $40", "gave R22 to the neighbor", "butchered 32 5-2 dressed 2-12"),
    ),
    Situation(
        "plans and chores",
        ("planned", "remind", "done", "skipped"),
        (
            "butcher 12 on dec 3",
            "sell 31",
            "keep 7 til he's proven",
            "breed 16 to 7 in january",
            "remind me friday to trim nails on 9",
            "done trimming nails 9",
            "skip the nest check on 12",
        ),
    ),
    Situation("anything else", ("remark",), ("16 looks rough today", "the fan quit in the barn")),
    Situation(
        "questions",
        ("query",),
        (
            "who's due this week",
            "calendar",
            "cage cards",
            "digest",
            "who should I keep",
            "why 14",
            "15 x 7?",
            "compare 31 and 33",
            "card 14",
            "pedigree of R22 as pdf",
            "weights 31",
            "litters of 14",
            "which does are open",
            "flags",
            "feed",
            "sales",
            "how many does",
            "journal",
            "winter plan",
            "what if I sold Flint",
            "picture of 31",
            "help",
        ),
    ),
    Situation(
        "corrections",
        ("correct", "undo"),
        ("no, 15 not 14", "make that 7", "that was 3-12", "yesterday not today", "undo", "undo the weight on 31"),
    ),
    Situation(
        "settings",
        ("setting",),
        ("keep two bucks a breed", "feed is 22 a bag", "cup = 5 oz", "winter starts dec 15", "reminders at 8 am", "timezone America/Denver"),
    ),
)  # fmt: skip


def situation_named(words: str) -> Situation | None:
    """The situation whose name has one of the words, or whose kind is one: `help weights`, `help sale`, `how do i undo`; None where there is none."""
    said = {word.strip("?.!,") for word in words.lower().split()}
    by_name = next((one for one in SITUATIONS if said & {word for word in one.name.split() if word != "and"}), None)
    return by_name or next((one for one in SITUATIONS if said & {*one.kinds}), None)
