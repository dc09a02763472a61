"""A message cut into its statements: one verb, its animal and its numbers each.

`weighed 31 4-6, 32 3-15` is two with one verb; a form of several lines is one. A date or a doe said first holds for what follows.

Over 300 lines: where one statement ends and the next begins, one case after the other.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Final

from core.herd.litters import the_litter
from core.notes.clauses.clause import LOOKS, WELL, Clause, Scene
from core.notes.clauses.headings import leading_date, round_date, title_date
from core.notes.clauses.others import BEFALLEN, of_somebody_else, shop_or_vet
from core.notes.clauses.run_on import begins_anew, may_begin
from core.notes.slots.dates import Said
from core.notes.slots.items import SIGNS, Item, marks_of, only_signs

HARD: Final = frozenset({".", ";", "!", "?", "|", "~"})
SOFT: Final = frozenset(
    {
        ",",
        "and",
        "but",
        "so",
        "then",
        "also",
        "plus",
        "while",
        "&",
        "because",
        "cause",
        "cuz",
        "since",
        "although",
        "though",
        "and then",
        "-",
        "/",
    }
)
#: Behind `so` they tell how much, not what follows from it.
DEGREES: Final = frozenset(
    {
        "many",
        "much",
        "far",
        "few",
        "good",
        "bad",
        "big",
        "small",
        "tiny",
        "cold",
        "hot",
        "mean",
        "long",
        "little",
        "nice",
        "well",
        "fat",
        "thin",
        "sweet",
        "gentle",
        "calm",
        "cute",
        "hard",
    }
)
NUMBERS: Final = frozenset({"num", "weight", "pair", "clock", "money", "temp", "span", "dose", "cup", "sum", "percent"})
VALUES: Final = NUMBERS | {"cage"}
#: Marks of words that say nothing of the animal before them, and of those that only say which it is.
SAYING_NOTHING: Final = frozenset({"negation", "pronoun", "to", "from", "question", "all", "none"})
OF_ITSELF: Final = frozenset({"doe_word", "buck_word", "kits"})
SMALL: Final = frozenset(
    {
        ",",
        ":",
        "-",
        "(",
        ")",
        "and",
        "and then",
        "so",
        "then",
        "also",
        "but",
        "the",
        "ok",
        "well",
        "plus",
        "=",
        "&",
        "/",
        '"',
        "'",
        "...",
        "~",
        "while",
        "because",
        "since",
    }
)
#: What may stand before the animal that a piece begins with.
BEFORE_ANIMAL: Final = SMALL | HARD | {"doe", "buck", "tag", "on", "that"}
#: Words that may begin a new statement without a verb, and words behind which others may.
TURNING: Final = frozenset({"put", "in_with", "tentative", "negation"})
TURNED: Final = frozenset({"refuse", "ail"})
WORDS_AND_MARKS: Final = frozenset({"word", "mark"})
#: No verbs, but held for the rest of a list too.
CARRIED: Final = frozenset({"drug", "show_place"})
BIRTHS: Final = frozenset({"kindle", "had", "litter_born"})
#: They take no weight: an animal with one behind them has nothing to do with them.
WEIGHTLESS: Final = BIRTHS | {
    "die",
    "lose",
    "step",
    "eat",
    "miss",
    "count",
    "palpate",
    "breed",
    "refuse",
    "box",
    "foster",
    "bite",
    "temper",
}
BESIDE: Final = 5  # items: as far as a number is looked at with what follows it
MOST_STATEMENTS: Final = 250  # not a figure: a whole page of a litter book has fewer
SHORT: Final = 6  # words: a sentence without a verb of the barn that is longer stands on its own

#: What a verb takes as its own: `kindled 8, lost 2` is one birth.
ABSORBED: Final[Mapping[str, frozenset[str]]] = {
    "kindle": frozenset({"die", "lose", "count", "had", "litter_born", "froze"}),
    "had": frozenset({"die", "lose", "litter_born", "froze", "count"}),
    "lose": frozenset({"count", "die", "cold", "cause", "froze", "lose", "eat", "step"}),
    "step": frozenset({"die", "lose", "step"}),
    "eat": frozenset({"die", "lose", "eat"}),
    "die": frozenset({"cause", "lose", "froze", "die"}),
    "breed": frozenset({"falls", "breed"}),
    "cull": frozenset({"weigh", "cull", "dress"}),
    "treat": frozenset({"withdrawal", "treat"}),
    "wean": frozenset({"count", "litter_weight"}),
    "new": frozenset({"buy", "purchase", "sell", "give", "given", "tag", "new", "trait", "plan"}),
    "tag": frozenset({"color_is"}),
    "list": frozenset({"ask", "list", "plan", "sell"}),
    "sell": frozenset({"sell", "buy", "give"}),
    "palpate": frozenset({"count", "open", "pregnant", "unsure", "palpate", "miss"}),
    "buy": frozenset({"feed_left", "buy"}),
    "bite": frozenset({"temper"}),
    "fault": frozenset({"fault", "dq"}),
    "feed": frozenset({"ration"}),
    "ration": frozenset({"feed", "ration"}),
    "weigh": frozenset({"weigh"}),
    "show": frozenset({"show"}),
    "remind": frozenset({"done", "weigh", "breed", "palpate", "box", "wean", "move", "clean", "treat", "plan", "tag", "buy", "show", "remind", "feed", "sell"}),
    "foster": frozenset({"foster", "move"}),
    "fostered": frozenset(),
}  # fmt: skip


SEX_MARKS: Final = frozenset({"buck_word", "doe_word"})


class Cutter:
    """Cuts one message."""

    def __init__(self, scene: Scene, opens: frozenset[str]) -> None:
        self.scene = scene
        self.opens = opens
        self.clauses: list[Clause] = []
        self.header: Said | None = None  # the day of a heading, for all lines below it
        self.two_days: list[Item] = []  # a heading with more than one day: the next statement has to choose
        self.line: Said | None = None  # the day of a heading, for the rest of its line

    def cut(self, items: list[Item]) -> list[Clause]:
        """The message's statements, in order."""
        start = 0
        for i, item in enumerate(items):
            if item.sort == "break" or (item.sort == "mark" and item.said in HARD and not _inside(items, i)):
                read = self._segment(items[start:i], ends_line=item.sort == "break")
                if len(self.clauses) >= MOST_STATEMENTS:
                    return self._beyond(items[start + read :])
                start = i
                if item.sort == "break":
                    self.line = None
        read = self._segment(items[start:])
        return self._beyond(items[start + read :])

    def _beyond(self, items: list[Item]) -> list[Clause]:
        """The statements, and behind them in one what is more than a message may tell."""
        if not only_signs(items):
            self.clauses.append(Clause(items, self.scene))
            self.clauses[-1].beyond = True
        return self.clauses

    def _segment(self, items: list[Item], *, ends_line: bool = False) -> int:
        """Cut one sentence; how many of its items were cut, all of them unless the message is full."""
        sorts = [item.sort for item in items]
        if SIGNS.issuperset(sorts):
            if self.clauses:
                self.clauses[-1].items.extend(items)
            return len(items)
        leading = self._days_at_its_head(items, ends_line=ends_line) if "date" in sorts else None
        first = True
        anew = False
        start = 0
        for i, item in enumerate(items):
            if (
                item.said in SOFT
                and i > start
                and _parts(items, i)
                and not all(each.said in SMALL or each.sort in {"mark", "break"} for each in items[start:i])
            ):
                first = self._chunk(items[start:i], items, start, leading, hard=first, anew=anew)
                start, anew = i, False
            elif (
                i > start + 1
                and (item.marks or item.sort in ANIMAL_PLACES)
                and may_begin(item)
                and begins_anew(items, start, i, self.scene)
            ):
                first = self._chunk(items[start:i], items, start, leading, hard=first, anew=anew)
                start, anew = i, True
            if i == start and len(self.clauses) >= MOST_STATEMENTS:
                return start
        self._chunk(items[start:], items, start, leading, hard=first, anew=anew)
        return len(items)

    def _days_at_its_head(self, items: list[Item], *, ends_line: bool) -> Said | None:
        """The day that a sentence begins with; one that heads more than the sentence is kept for what follows."""
        leading, heads = leading_date(items)
        if heads:
            self.line = leading
        if (ends_line or "chore_word" in items[0].marks) and (title := title_date(items)):
            self.header = title
        if not self.clauses and self.header is None and not heads and (told := round_date(items)):
            self.header = told
        return leading

    def _chunk(self, items: list[Item], sentence: list[Item], start: int, leading: Said | None, *, hard: bool, anew: bool = False) -> bool:
        """Take one piece of a sentence, from `start` on; whether it only heads what follows."""
        marks = marks_of(items)
        last = self.clauses[-1] if self.clauses and not self.clauses[-1].overfull() else None
        if last is not None and not hard and not anew and self._rambles_on(last, items, marks):
            self._extend(last, items)
            return False
        opens = marks & self.opens
        rest = sentence[start:]
        anew = anew or (last is not None and not hard and _apart(last, items, marks, self.opens))
        if not hard and (weighed := self._weighed_before(items, marks)) is not None:
            self._extend(weighed, items)
            return False
        birth = self._birth_told_on(items, marks)
        if birth is not None and not anew:
            self._extend(birth, items)
            return False
        if hard and all(item.sort in {"date", "mark", "break"} or item.said in SMALL_OR_DATE for item in items):
            return self._date_alone(items, rest, last)
        if last is not None and not anew and not self._dated_anew(last, items, opens, hard=hard):
            felt = "palpate" in last.virtual and opens <= {"breed"} and not any(item.sort in NUMBERS for item in items)
            if opens and last.virtual and not hard and not felt and not self._has_value_said(last):
                self._said_at_last(last, items)
                return False
            if self._continues(last, items, rest, marks, hard=hard):
                self._extend(last, items)
                return False
        self._open(items, rest, opens, last, leading, hard=hard, anew=anew)
        return False

    def _rambles_on(self, last: Clause, items: list[Item], marks: frozenset[str]) -> bool:
        """Whether a piece is words of no barn's verb, guess, animal or number: most of a long story, and quickly passed."""
        return (
            marks.isdisjoint(self.opens)
            and marks.isdisjoint(TURNING)
            and last.marks.isdisjoint(TURNED)
            and WORDS_AND_MARKS.issuperset([item.sort for item in items])
            and any(item.said not in BEFORE_ANIMAL for item in items)
            and not _apart(last, items, marks, self.opens)
        )

    def _dated_anew(self, last: Clause, items: list[Item], opens: frozenset[str], *, hard: bool) -> bool:
        """`1 kit lost 19 Nov; 1 kit lost 22 Nov`: a day of its own behind a statement that has one already."""
        return (
            hard
            and bool(opens)
            and bool(last.marks & self.opens)
            and bool(last.dates())
            and self._has_value(last)
            and any(item.sort == "date" and "due" not in items[i - 1].said for i, item in enumerate(items))
        )

    def _has_value_said(self, last: Clause) -> bool:
        """Whether a listed statement says something of its animal already."""
        return self._has_value(last) or not self._has_animal(last)

    def _said_at_last(self, last: Clause, items: list[Item]) -> None:
        """`14 palpated bred; 9, box in`: the animal took up no verb of the list, it has its own."""
        last.virtual = frozenset()
        last.marks = marks_of(last.items)
        self._extend(last, items)

    def _weighed_before(self, items: list[Item], marks: frozenset[str]) -> Clause | None:
        """`I weighed 33 and I know I'm not supposed to have favorites, but three pounds twelve`: the weight behind an aside."""
        if len(self.clauses) < 2 or "tentative" not in self.clauses[-1].marks:  # not a figure: the weighing and the aside
            return None
        weighing, aside = self.clauses[-2:]
        if not (marks & self.opens or aside.marks & self.opens or aside.placed(VALUES) or aside.holds("animal", "code")):
            sorts = {item.sort for item in items}
            lacks = "weigh" in weighing.marks and not weighing.holds("weight", "pair")
            return weighing if lacks and sorts & {"weight", "pair"} and sorts.isdisjoint({"animal", "code"}) else None
        return None

    def _birth_told_on(self, items: list[Item], marks: frozenset[str]) -> Clause | None:
        """The birth told of a moment ago, where a piece only adds how many of its kits live or are dead."""
        if not self.clauses or not (marks & self.opens) <= {"die"} or all(clause.marks.isdisjoint(BIRTHS) for clause in self.clauses[-3:]):
            return None
        if NUMBERS.isdisjoint([item.sort for item in items]):
            return None
        rest_of_them = next((items[i + 1 : i + 3] for i, item in enumerate(items) if item.sort == "num"), [])
        of_them = [item.said for item in rest_of_them] in (["of", "them"], ["of", "those"], ["of", "em"])
        if not (of_them or marks & {"dead", "alive", "nest_place"}):
            return None
        if self._has_animal(Clause([item for item in items if item.sort != "num"], self.scene)):
            return None
        births = [
            clause
            for clause in self.clauses[-3:]
            if clause.marks & BIRTHS
            and (
                any(item.sort in NUMBERS for item in clause.items) == (of_them or bool(marks & {"dead", "alive"}))
                or (of_them and not any(item.sort in NUMBERS for item in clause.items))
                or marks >= {"dead", "nest_place"}
            )
        ]
        return (
            births[-1]
            if births and len(births) == 1 and births[0] is not self.clauses[-1] and not self._has_numbers(self.clauses[-1])
            else None
        )

    def _date_alone(self, items: list[Item], rest: list[Item], last: Clause | None) -> bool:
        tells = len(rest) > len(items) and (bool(self._opens(rest)) or self._begins_with_animal(rest, last, hard=True))
        if last is not None and last.marks & self.opens and not last.dates() and last.header is None and not tells:
            self._extend(last, items)
            return False
        days = [item for item in items if item.sort == "date"]
        if len(days) > 1:
            self.two_days = days
            return False
        self.header = days[0].value if days else self.header
        return tells

    def _opens(self, items: list[Item]) -> frozenset[str]:
        return marks_of(items) & self.opens

    def _continues(self, last: Clause, items: list[Item], rest: list[Item], marks: frozenset[str], *, hard: bool) -> bool:
        had, opens = last.marks & self.opens, marks & self.opens
        if "breed" in opens and not had and "open" in last.items[-1].marks and items[0].said in {"so", "and"} and self._has_animal(last):
            return False  # "Biscuit is open so I bred her to Moss"
        begins = self._begins_with_animal(rest, last, hard=hard) and not (
            had & BIRTHS
            and (_counts_kits(items) or self._buck_number(rest) or _names_sire(items) or (not hard and self._count_alone(last, items)))
        )
        if not hard and "refuse" in had and any("put" in item.marks for item in items) and any("in_with" in item.marks for item in items):
            return False  # "... so I put her in with Moss"
        if not hard and _more_cages(last, items):
            return True
        if not hard and "ail" in last.marks and self._has_animal(last) and _treats(items):
            return False  # "Moss has sore hocks so I put some salve on him"
        if not hard and had and marks >= {"put", "in_with"} and self._put_to_a_buck(items):
            return False  # "Thistle's five got weaned, then I put 15 in with Flint"
        if begins and hard and items[0].sort == "break" and last.items[0].said in SOFT and not self._has_animal(last):
            return False  # "9 - day 28, box in", and another animal's line below it
        if hard and items[0].sort == "break" and "done" in opens and "done" in had and self._chore_told(last):
            return False  # two chores, a line each
        if begins and items[0].sort == "break" and "box" in had and "box" not in opens and "kits" in marks and self._has_animal(last):
            return False  # a box for one doe, and another's kits below it
        if (
            begins
            and hard
            and (_nothing_befell(last) or (items[0].sort == "break" and not self._has_animal(last) and self._has_numbers(last)))
        ):
            return False  # "nothing dead. 14 due", "feed 140 lb left", and an animal's line below it
        if begins and hard and self._tells_plainly(last):
            return False  # "22 ok", and another animal's line below it
        if hard and (_of_the_weather(last, items) or _degrees_apart(last, items)):
            return False
        if not hard and not had and not last.marks.isdisjoint(WEATHER) and _degrees_only(items):
            return True  # "cold one tonight, they say down to 18"
        if last.marks & {"buy", "purchase"} and _left_over(items) and self._has_numbers(last):
            return False  # "bought 3 bags at 19.25, 190 lb left"
        if "palpate" in had and opens == {"breed"} and all(item.sort in {"word", "mark", "date", "break"} for item in items):
            return True  # "palpated 9, bred" tells how she felt
        if opens == {"tag"} and not hard and not last.marks.isdisjoint(SEX_MARKS) and not self._has_animal(last):
            return True  # "a friend gave me a doe, tag 46, New Zealand"
        if opens:
            return self._verb_continues(last, items, rest, had, opens, begins=begins, hard=hard)
        if (
            begins
            and "tag" in had
            and not any(item.sort == "code" or (item.sort == "animal" and not item.value.tags) for item in last.items)
        ):
            return True
        if begins and hard and "tentative" in last.marks and self._has_animal(last):
            return False  # "may replace buck 5 next year. Doe 15 not bred"
        if begins:
            told = had or hard or _tells_of_itself(items)
            if not hard and self._done_for_another(last, had):
                return False
            return not (told and self._has_animal(last) and self._has_value(last, listing=not hard))
        if not hard or ("palpate" in had and _only_result(last, items)):
            return True
        if last.marks & {"lose", "fewer", "dead", "die", "took_kits"} and last.marks & {"kits", "litter"} and _only_cause(items):
            return True
        if "new" in had and _describes(items):
            return True
        label = all(item.sort in {"word", "mark"} for item in items) and rest[len(items) : len(items) + 2]
        numbers = any(item.sort in NUMBERS for item in [*items, *(label or [])]) or any(
            item.marks & {"alive", "dead", "born", "bucks_word", "does_word", "each", "dq", "not_dq"} for item in items
        )
        plain = sum(1 for item in items if item.sort == "word" and not item.marks)
        form = any(item.said in {":", "="} for item in items[1:3])
        return (numbers and plain <= SHORT and bool(had or self._has_animal(last))) or (form and bool(had))

    def _count_alone(self, last: Clause, items: list[Item]) -> bool:
        """`Juno finally had them, nine, all pink`: a number between commas behind a birth that has none is how many."""
        told = [item for item in items if item.sort != "mark" and item.said not in SMALL]
        return len(told) == 1 and told[0].sort == "num" and len(last.places("animal")) == 1 and not self._has_numbers(last)

    def _verb_continues(
        self, last: Clause, items: list[Item], rest: list[Item], had: frozenset[str], opens: frozenset[str], *, begins: bool, hard: bool
    ) -> bool:
        named = any(
            item.sort in {"animal", "code"} or (item.sort == "num" and Clause(items, self.scene).known(i)) for i, item in enumerate(items)
        )
        if opens <= {"die", "lose"} and not named and not hard and not had and self._has_animal(last):
            return not (opens == {"lose"} and "kits" in last.marks and _figures(items) and self._nurses(last))  # "12 - 7 kits, lost 1"
        if not hard and not had and items[0].said in {"and", "&", ","} and self._only_animals(last):
            return True  # "31, 32 and 33: weights 4-1, 4-2, 4-0"
        if not had and not hard and begins and self._has_animal(last) and self._has_value(last):
            return False
        if not had:
            alone = not self._has_numbers(last)
            if "kindle" in opens and not any(item.sort in NUMBERS for item in items) and not hard and not begins:
                return True
            return alone and (not hard or (self._has_animal(last) and len(last.items) <= SHORT // 2 + 1))
        if hard and opens & had and self._has_animal(last) and self._has_animal(Clause(rest, self.scene)):
            return False
        if had & {"die", "lose"} and any(item.said == "cause" for item in items[:3]):
            return True
        if "skip" in had or ("plan" in had and items[0].said in {"because", "since", "cause", "cuz"}):
            return True
        if hard and self._has_animal(last) and self._has_value(last) and self._has_animal(Clause(rest, self.scene)):
            return False
        if begins and not hard and not opens & had and self._done_for_another(last, had):
            return False  # "scrubbed her tray, and then Biscuit bit"
        if begins:
            listed = not hard and self._ends_with_animal(last) and items[0].said in {"and", "&", ","} and not self._has_value(last)
            return listed or (not self._has_animal(last) and not self._has_value(last))
        if opens <= {"die", "lose"} and not named and not any(item.sort in NUMBERS for item in items):
            return True
        if had & {"die", "lose", "eat", "step"} and not named and any(mark.startswith("cause:") for item in items for mark in item.marks):
            return True
        if (
            had & BIRTHS
            and not self._has_numbers(last)
            and any(item.marks & {"born", "alive"} for item in items)
            and any(item.sort in NUMBERS for item in items)
        ):
            return True
        if "kindle" in opens and had <= {"die", "lose", "count", "newborn", "had"} and not any(item.sort in NUMBERS for item in items):
            return True
        if (
            named
            and self._has_animal(last)
            and (opens & {"plan"} or ("list" in had and "sell" in opens - had) or ("sell" in had and "give" in opens - had))
        ):
            return False
        absorbed = frozenset().union(*(ABSORBED.get(mark, frozenset()) for mark in had))
        if opens <= absorbed | (had if not self._has_value(last) else frozenset()):
            return True
        return hard and not self._has_animal(last) and bool(opens & had)

    def _nurses(self, clause: Clause) -> bool:
        """Whether the first animal of the statement has a litter: the kits under her are counted, and not just born."""
        animal = next((animal for i in range(len(clause.items)) if (animal := clause.known(i)) is not None), None)
        return animal is not None and the_litter(self.scene.herd, animal.key, self.scene.today) is not None

    def _done_for_another(self, last: Clause, had: frozenset[str]) -> bool:
        """`scrubbed her tray` is of the animal spoken of before, whoever is named next."""
        return "done" in had and "pronoun" in last.marks and not self._has_animal(last)

    def _chore_told(self, clause: Clause) -> bool:
        """Whether a chore already names what it was done to."""
        return "chore_word" in clause.marks or self._has_animal(clause)

    @staticmethod
    def _tells_plainly(clause: Clause) -> bool:
        """`22 ok`, `9: eating well`: an animal, and words that no kind knows."""
        told = [i for i, item in enumerate(clause.items) if item.sort not in {"mark", "break", "date"}]
        if len(told) < 2 or clause.known(told[0]) is None:  # not a figure: an animal and a word
            return False
        word = clause.items[told[1]]
        return word.sort == "word" and (word.said in {"ok", "well"} or word.said not in SMALL)

    def _put_to_a_buck(self, items: list[Item]) -> bool:
        """`then I put 15 in with Flint`: a mating told without its verb."""
        beside = Clause(items, self.scene)
        sexes = {animal.sex for i in range(len(items)) if (animal := beside.known(i)) is not None and not beside.counted(i)}
        return sexes == {"doe", "buck"}

    @staticmethod
    def _ends_with_animal(clause: Clause) -> bool:
        """`weigh-in day, 31` goes on with `and 32 came in at ...`: the first of a row of animals."""
        i = len(clause.items) - 1
        return clause.known(i) is not None and clause.said(i - 1) in {",", ":", "-"}

    def _only_animals(self, clause: Clause) -> bool:
        """Whether the statement so far is nothing but a row of animals."""
        told = [i for i, item in enumerate(clause.items) if item.said not in SMALL and item.sort not in {"mark", "break"}]
        return len(told) > 1 and all(clause.known(i) is not None and not clause.counted(i) for i in told)

    def _has_numbers(self, clause: Clause) -> bool:
        mentioned = False
        for i in clause.placed(NUMBERS):
            item = clause.items[i]
            if not (item.spoken and item.value == 1) and clause.said(i + 1) != "of" and not item.said.startswith("day "):
                if mentioned or item.sort != "num" or not clause.known(i):
                    return True
                mentioned = True
        return False

    def _has_animal(self, clause: Clause) -> bool:
        return clause.holds("animal", "code") or any(not clause.counted(i) for i in clause.tags())

    def _has_value(self, clause: Clause, *, listing: bool = False) -> bool:
        """Whether the statement says something of its animal already; in a list further animals are nothing said."""
        places = clause.placed(VALUES)
        named = min([*clause.places("animal"), *clause.places("code"), *clause.tags()], default=len(clause.items))
        if any(i < named or (i > named and not (listing and self._listed(clause, i))) for i in places):
            return True
        return any(
            item.said == "+"
            or (item.marks and item.said not in SMALL and not item.marks <= SAYING_NOTHING and item.marks.isdisjoint(OF_ITSELF))
            for item in clause.items[named + 1 :]
            if item.sort != "num"
        )

    @staticmethod
    def _listed(clause: Clause, i: int) -> bool:
        """Whether the number is one more animal of a list."""
        return clause.said(i - 1) in {",", "and", "&"} and clause.known(i) is not None and not clause.counted(i)

    def _begins_with_animal(self, items: list[Item], last: Clause | None, *, hard: bool) -> bool:
        """Whether a piece starts with an animal of its own, and says something of it."""
        for i, item in enumerate(items):
            if (
                item.said in SMALL
                or item.said in HARD
                or item.sort in {"date", "break"}
                or (item.said in {"doe", "buck", "tag", "on", "that"} and i < len(items) - 1)
            ):
                continue
            if item.sort in {"animal", "code"}:
                return len(items) - i > 1 or hard
            if item.sort != "num":
                return False
            beside = Clause(items[i : i + BESIDE], self.scene, None, last.marks if last else frozenset())
            return (
                beside.known(0) is not None
                and not beside.counted(0)
                and any(after.said not in SMALL or after.said == "ok" for after in items[i + 1 :])
            )
        return False

    def _buck_number(self, items: list[Item]) -> bool:
        """Whether a bare number that begins a piece is only a buck's: behind a birth it counts kits."""
        first = next((item for item in items if item.said not in SMALL and item.sort != "break"), None)
        if first is None or first.sort != "num":
            return False
        animal = Clause([first], self.scene).known(0)
        return animal is not None and animal.sex == "buck" and any(item.marks & {"dead", "alive"} for item in items)

    def _extend(self, clause: Clause, items: list[Item]) -> None:
        clause.items.extend(items)
        clause.marks = marks_of(items, clause.marks)

    def _open(
        self,
        items: list[Item],
        rest: list[Item],
        opens: frozenset[str],
        last: Clause | None,
        leading: Said | None,
        *,
        hard: bool,
        anew: bool = False,
    ) -> None:
        items, self.two_days = [*self.two_days, *items], []
        virtual: frozenset[str] = frozenset()
        felt = (
            last is not None
            and "palpate" in last.marks
            and opens == {"breed"}
            and not any(item.said in {"to", "x", "with"} for item in items)
        )
        listed = not anew and last is not None and (not opens or felt) and self._begins_with_animal(rest, last, hard=hard)
        if listed and last is not None:
            virtual = last.marks & (self.opens | CARRIED) - ({"breed"} if "palpate" in last.marks else set())
            if not WELL.isdisjoint([item.said for item in items]):
                virtual = frozenset()  # "biscuit fine" behind any list
            elif "in_with" in marks_of(items) and self._put_to_a_buck(items):
                virtual = frozenset()  # "14 kindled 5", and below it "Flint in with 15"
            elif _nothing_befell(last):
                virtual = virtual - ONE_OWN
            elif "die" in virtual and "die" not in last.virtual and not _tells_of_deaths(last):
                virtual = virtual - {"die"}
            if hard and not virtual.isdisjoint(ONE_OWN) and _says_of_its_own(items):
                virtual = virtual - ONE_OWN  # "12 lost one", and below it "16s crew all good, 5"
            if virtual & WEIGHTLESS and any(item.sort in {"weight", "pair"} or _goes_to_cage(items, i) for i, item in enumerate(items)):
                virtual = virtual - WEIGHTLESS  # "doe 14 kindled 6. R21 5 lb 2"
        clause = Clause(items, self.scene, last, virtual)
        clause.header = leading or self.line or self.header
        if (
            clause.header is None
            and not hard
            and last is not None
            and last.dates()
            and not clause.dates()
            and any("pronoun" in item.marks for item in items)
        ):
            clause.header = last.items[last.dates()[0]].value
        if clause.header is None and last is not None and last.dates() and items[0].said == ";" and not clause.dates():
            clause.header = last.items[last.dates()[0]].value if not self._has_animal(clause) else None
        if last is not None and (listed or (opens & last.marks and self._begins_with_animal(rest, last, hard=hard))):
            dates = [
                i
                for i in last.dates()
                if not (
                    last.told_due(i) or (items[0].sort == "break" and _behind_animal(last, i)) or (i and "until" in last.items[i - 1].marks)
                )
            ]
            clause.header = clause.header or (last.items[dates[0]].value if dates else last.header)
        self.clauses.append(clause)


#: What befell one animal, and is no heading of a list where the next line has words of its own.
ONE_OWN: Final = BIRTHS | {"die", "lose", "step", "eat", "bite"}


def _nothing_befell(clause: Clause) -> bool:
    """`nothing dead`, `no deaths`: whatever is denied there is told of nobody."""
    return any(
        item.said in {"nothing", "none", "no", "nobody"} and i + 1 < len(clause.items) and not clause.items[i + 1].marks.isdisjoint(ONE_OWN)
        for i, item in enumerate(clause.items)
    )


def _behind_animal(clause: Clause, i: int) -> bool:
    """`14 box in 11/22`: the day of this animal's alone, and not of the lines below."""
    return any(clause.known(j) is not None for j in range(i))


def _says_of_its_own(items: list[Item]) -> bool:
    """Whether a sentence or line has words that are none of a list's: neither a word of the barn nor a small one."""
    return any(
        item.sort == "word" and item.said not in SMALL and item.said not in LOOKS and (not item.marks & LISTED or item.marks & ALL_WELL)
        for item in items
    )


#: What the lines of a list of births or losses tell of each animal.
LISTED: Final = frozenset(
    """kits litter alive dead born die lose all none count had litter_born newborn nest_place sire buck_word doe_word bucks_word does_word to from each froze eat step
    cause:cold cause:heat cause:starved cause:crushed cause:eaten cause:scattered cause:out_of_box cause:predator cause:sick cause:deformed cause:unknown
    kindle pronoun again color_is has_kits""".split()  # noqa: SIM905 - a table of words
)
ALL_WELL: Final = frozenset({"all_alive", "alive_and_well", "well"})


def _goes_to_cage(items: list[Item], i: int) -> bool:
    """`Moss to B1`: where an animal goes, whatever was told of the one before."""
    return i > 0 and items[i].sort in {"code", "cage"} and "into" in items[i - 1].marks


def _tells_of_deaths(clause: Clause) -> bool:
    """Whether it says that animals died; `8 alive, 1 dead` only counts kits."""
    return any("die" in item.marks and not (i and clause.items[i - 1].sort in NUMBERS) for i, item in enumerate(clause.items))


GUESSES: Final = frozenset({"tentative", "negation"})
ANIMAL_PLACES: Final = frozenset({"animal", "num"})
SMALL_OR_DATE: Final = SMALL | {"date"}
BEFORE_CAUSE: Final = SMALL | {"a", "an", "by", "it", "was", "probably", "maybe"}


def _of_the_weather(last: Clause, items: list[Item]) -> bool:
    """`. cold one tonight, down to 18`: a word of the weather and a day or degrees; behind a loss without degrees it is the cause."""
    marks = marks_of(items)
    if marks.isdisjoint(WEATHER) or marks & {"kits", "litter", "lose", "die"}:
        return False
    sorts = {item.sort for item in items}
    degrees = bool(sorts & {"num", "temp"}) and bool(marks & {"outdoors", "degrees_verb"})
    told = degrees or ("date" in sorts and last.marks.isdisjoint({"lose", "die", "dead", "eat", "step", "had", "kindle"}))
    return told and sorts.isdisjoint({"animal", "code"})


CAGES: Final = frozenset({"cage", "code"})


def _more_cages(last: Clause, items: list[Item]) -> bool:
    """`... to B1, B2 and B3`: the row of cages goes on."""
    return (
        last.items[-1].sort in CAGES
        and "into" in last.marks
        and all(item.said in SMALL or item.sort in CAGES for item in items)
        and any(item.sort in CAGES for item in items)
    )


def _degrees_apart(last: Clause, items: list[Item]) -> bool:
    """A line `barn 24F` below one that tells of an animal."""
    sorts = [item.sort for item in items]
    return sorts[0] == "break" and "temp" in sorts and last.marks.isdisjoint(WEATHER) and not {"animal", "code", "num"} & set(sorts)


def _degrees_only(items: list[Item]) -> bool:
    """`, down to 18`: a number beside a word of the weather, and nothing of the barn."""
    marks, sorts = marks_of(items), {item.sort for item in items}
    return (
        bool(marks & {"outdoors", "degrees_verb"})
        and "num" in sorts
        and sorts <= {"num", "word", "mark", "date"}
        and not marks & {"kits", "litter"}
    )


WEATHER: Final = frozenset({"weather:cold", "weather:heat", "weather:frost", "degrees_verb"})


def _left_over(items: list[Item]) -> bool:
    """`190 lb left now`: how much feed there still is."""
    weighed = any(
        item.sort == "weight" or (item.sort == "num" and items[i + 1 : i + 2] and "bag" in items[i + 1].marks)
        for i, item in enumerate(items)
    )
    return weighed and any("feed_left" in item.marks and ITS_LEFT.intersection(item.said.split()) for item in items)


ITS_LEFT: Final = frozenset({"left", "remaining", "remain", "remains", "hand", "bin", "stock", "still", "inventory"})


def _only_cause(items: list[Item]) -> bool:
    """`. hawk.`: nothing but what they died of."""
    told = [item for item in items if item.sort not in {"mark", "break"} and item.said not in BEFORE_CAUSE]
    return bool(told) and all(any(mark.startswith("cause:") for mark in item.marks) for item in told)


def _only_result(last: Clause, items: list[Item]) -> bool:
    """`; palpated; open`: nothing but how she felt."""
    told = [item for item in items if item.sort not in {"mark", "break"}]
    felt = {"open", "pregnant", "unsure"}
    return last.items[-1].marks >= {"palpate"} and bool(told) and all(item.marks & felt for item in told)


def _apart(last: Clause, items: list[Item], marks: frozenset[str], verbs: frozenset[str]) -> bool:
    """Whether a wish, a guess or a denial and a deed beside it are two statements: `..., I wish she'd hurry`, `I didn't expect it but she had 8`.

    Such words hold for their own statement only, so neither may hide the other.
    """
    had = last.marks & verbs
    if items[0].said in SOFT and marks.isdisjoint(verbs) and shop_or_vet(items):
        return True
    if last.marks & BEFALLEN and last.marks.isdisjoint({"new", "gift"}) and of_somebody_else(last.items, spoken_of=last.before is not None):
        return True
    guesses = not marks.isdisjoint(GUESSES) and "palpate" not in had and _guesses(items, verbs)
    if guesses and not _figures(items) and (had or last.holds("animal", "num", "weight")):
        return True
    if marks.isdisjoint(verbs):
        return False
    if items[0].said == "but" and last.marks & {"tentative", "negation"}:
        return not had or _guesses(last.items, verbs)
    return not had and items[0].said == "," and "negation" in last.marks and "tentative" not in last.marks and _figures(items)


def _figures(items: list[Item]) -> bool:
    """Whether a number is told; `one` in words may be no number."""
    return any(item.sort in NUMBERS and not (item.spoken and item.value == 1) for item in items)


def _guesses(items: list[Item], verbs: frozenset[str]) -> bool:
    """Whether a wish, a guess or `I don't` stands before any verb of the barn; `if` and `maybe` may limit what was said before."""
    for i, item in enumerate(items):
        if "tentative" in item.marks:
            return item.said not in LIMITS
        if "negation" in item.marks and i and items[i - 1].said in {"i", "we", "you"} and not item.marks & {"open", "unsure"}:
            return True
        if item.marks & verbs:
            return False
    return False


LIMITS: Final = frozenset({"if", "maybe", "perhaps", "possibly", "unless", "almost", "nearly"})
DETAILS: Final = frozenset({"name_word", "born_word", "buck_word", "doe_word", "breed_name", "color", "sire", "dam_word"})


def _describes(items: list[Item]) -> bool:
    """`. Buck. New Zealand, white. Name Duke. Born 5/2/2026.`: details of the newcomer before."""
    told = [item for item in items if item.sort not in {"mark", "break"} and item.said not in SMALL]
    return bool(told) and bool(told[0].marks & DETAILS) and len(told) <= SHORT


def _treats(items: list[Item]) -> bool:
    """Whether a piece tells of a remedy, by its name or as something put on."""
    said = [item.said for item in items]
    rubbed = next((i for i, word in enumerate(said) if word in {"put", "rubbed", "dabbed", "smeared"}), None)
    return any(item.marks & {"treat", "drug"} for item in items) or (rubbed is not None and "on" in said[rubbed + 2 :])


def _tells_of_itself(items: list[Item]) -> bool:
    """`and moss is mean`: what follows is said of this animal alone."""
    told = [item for item in items if item.said not in SMALL]
    return len(told) > 2 and told[1].said in {"is", "has", "was", "looks"}


def _counts_kits(items: list[Item]) -> bool:
    """`2 dead` behind a birth counts kits, whoever has the tag 2."""
    told = [item for item in items if item.said not in SMALL]
    return (
        len(told) > 1
        and told[0].sort == "num"
        and (bool(told[1].marks & {"dead", "alive"}) or (told[1].said in OF_SEVERAL and told[0].value > 1))
    )


#: Behind a number they tell of so many: of an animal it would be `looks`.
OF_SEVERAL: Final = frozenset({"look", "are", "were", "seem", "made it"})


def _names_sire(items: list[Item]) -> bool:
    """`, buck 3` behind a birth only says whose kits they are."""
    told = [item for item in items if item.said not in SMALL]
    return len(told) == 1 and told[0].sort == "animal" and told[0].value.sex == "buck"


def _parts(items: list[Item], i: int) -> bool:
    """Whether a comma, an `and` or a dash may part two statements; `so sweet` may not."""
    item = items[i]
    if item.said not in SOFT or (item.said == "so" and i + 1 < len(items) and items[i + 1].said in DEGREES):
        return False
    return item.sort != "mark" or item.said in {",", "&", "/"} or (item.said == "-" and not item.glued)


def _inside(items: list[Item], i: int) -> bool:
    """Whether a dot belongs to a short form (`lb.`, `no.`), a mark to what follows (`palp ? not sure`), rather than to the end of a sentence."""
    if items[i].said == "?" and i + 1 < len(items) and "unsure" in items[i + 1].marks:
        return True
    if items[i].said != "." or i == 0:
        return False
    before = items[i - 1]
    if before.said in {"b", "dob"} and i + 1 < len(items) and items[i + 1].sort == "date":
        return True
    if before.said in {"no", "mr", "mrs", "dr", "approx", "vs", "wt", "wts"} and i + 1 < len(items):
        return before.said != "no"
    return False


def statements(items: list[Item], scene: Scene, opens: frozenset[str]) -> list[Clause]:
    """The statements of a message."""
    return Cutter(scene, opens).cut(items)
