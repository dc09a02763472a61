"""From tokens to items: each word is looked up once, and only what grammar allows becomes an animal, a number or a day.

Over 300 lines: one pass in which each word's turn depends on those before it. It is due for a split by what the words become.
"""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal
from functools import lru_cache
from typing import Final

from core.handbook.breeds import breed_color_words, breed_words
from core.handbook.colors import color_words
from core.herd.state import folded
from core.notes.slots.animals import HerdWords, Mention
from core.notes.slots.dates import DATE_FIRST, MONTHS, PERIODS, Said, ago_at, date_at
from core.notes.slots.heard import RIGHTED
from core.notes.slots.items import COUNTED, KG, LB, NO_MARKS, OZ, Item
from core.notes.slots.lexicon import BESIDE_NUMBER, FOREIGN, Lexicon
from core.notes.slots.measures import OF_CUP, TAILS, amount_at, clock_time, measure
from core.notes.slots.numbers import FRACTIONS, HOMOPHONES, NUMBER_WORDS, ORDINALS, POSSESSIVE, TENS
from core.notes.slots.stray_space import put_back, run_together
from core.notes.slots.tokens import NUMBER, WORD, Token
from core.words import OUNCES_IN_POUND

SEX_WORDS: Final = {
    "doe": "doe", "dough": "doe", "doh": "doe", "female": "doe", "buck": "buck", "buk": "buck", "buc": "buck", "bck": "buck", "male": "buck",
    "book": "buck", "girl": "doe", "boy": "buck", "dow": "doe",
}  # fmt: skip
#: Sex words that are other words too: only before a number or a name.
DOUBTFUL_SEX: Final = frozenset({"book", "girl", "boy", "dow", "male", "female"})
PLURAL_SEX: Final = {"does": "doe", "bucks": "buck", "dows": "doe"}
OWNED_SEX: Final = frozenset({"doe's", "buck's"})
CAGE_WORDS: Final = frozenset({"cage", "pen", "hutch", "hole", "kennel", "stall"})
NUMBERED_WORDS: Final = CAGE_WORDS | {"animal", "rabbit"}
SPELLED: Final = {"see": "C", "sea": "C", "be": "B", "bee": "B", "dee": "D", "hay": "A", "ay": "A", "eh": "A", "ee": "E", "gee": "G"}
HEARD_LETTERS: Final = {"are": "R", "our": "R", "ar": "R", "see": "C", "sea": "C", "be": "B", "bee": "B"}
NUMBER_FIRST: Final = frozenset({*NUMBER_WORDS, *POSSESSIVE, *(FRACTIONS.keys() - {"third"}), "point", "dozen", "hundred"})
#: Words that begin a date only with such a word behind them, or with a number.
DATE_BEHIND: Final = {"the": frozenset({"day"}), "in": frozenset({*NUMBER_FIRST, *HOMOPHONES, "a", "an", "couple"})}
OWN_WORDS: Final = frozenset({*SEX_WORDS, *PLURAL_SEX, *SPELLED, *DATE_FIRST, *ORDINALS})
FEEDING: Final = frozenset({"get", "gets", "getting", "fed", "eats", "feed"})
AFTER_BIRTH: Final = frozenset(
    {"candled", "kindled", "kindle", "had", "make", "that", "born", "of", "not", "mean", "no", "said", "meant", "has", "weaned", "lost"}
)
CLAUSE_ENDS: Final = frozenset({"", ".", ",", ";", "\n", "this", "today", "yesterday", "last", "and", "not", "all", "no", "won"})
TIME_FIRST: Final = frozenset({"at", "around", "by", "about", "after", "before", "til", "till", "until", "@", "from", "time", "past"})


AT_START: Final = frozenset({"so", "told", "least", "wind", "way", "ways", "find"})
SHORT_FORMS: Final = {
    "xmas": "christmas",
    "n": "and",
    "bc": "because",
    "wldnt": "wouldnt",
    "wudnt": "wouldnt",
    "cldnt": "couldnt",
    "cudnt": "couldnt",
    "hsnt": "hasnt",
    "ddnt": "didnt",
    "dint": "didnt",
    "sry": "sorry",
    "srry": "sorry",
    "yst": "yesterday",
}
AFTER_COUPLE: Final = frozenset(
    {
        "of",
        "more",
        "",
        ".",
        ",",
        "kits",
        "kit",
        "babies",
        "bunnies",
        "dead",
        "alive",
        "bags",
        "bucks",
        "does",
        "days",
        "last",
        "today",
        "this",
        "yesterday",
        "overnight",
    }
)
TRAITS_SAID: Final = frozenset({"type", "fur", "color", "size", "overall"})
#: Letters said one by one, in a cage's place.
TO_CAGE: Final = frozenset({"to", "into", "in", "over to", "onto"})
NOON = 12  # not a figure: an hour of the day
MINUTES = 60  # not a figure: of an hour
PARTS_OF_HOUR: Final = {"half": 30, "quarter": 15}  # not a figure: minutes
AROUND_HOUR: Final = frozenset({"past", "to", "till"})
DAY_HALVES: Final = {"morning": "am", "afternoon": "pm", "evening": "pm"}
FIGURES_OF_WATCH: Final = 4
SEXES: Final = {"m": frozenset({"bucks_word"}), "f": frozenset({"does_word"})}
BESIDE_HOUR: Final = frozenset({"this", "today", "tonight", "in", "yesterday", "last", "tomorrow", "when"})
AFTER_ERRAND: Final = frozenset({"and", "", ".", ",", "to", "she", "he", "i", "there"})
ERRANDS: Final = frozenset({"went", "go", "checked", "check", "woke", "walked", "came", "headed", "looked", "look", "peeked", "home", "got up", "feeding", "chores"})  # fmt: skip
ERRAND_ITEMS = 8  # not a figure: items: as far back as an hour's errand is looked for
SIZES: Final = frozenset({"little", "big", "old", "young", "pretty", "poor", "sweet", "dear", "new"})
TENS_LEAST = 10
MOST_FALLS = 9  # a breeding's falls; more behind `f` are degrees
HUNDREDS_OF: Final = frozenset({"pounds", "lbs", "kilos", "grams"})  # not "pound": "two fifty pound bags" are two
MOST_POUNDS: Final = 30  # not a figure: pounds that a rabbit may be said to weigh
ENDS_WEIGHT: Final = frozenset({"", ".", ",", ";", "\n", "and", "today", "this"})
FALLS: Final = frozenset({"falls"})
CENTS = 100
COPIED: Final = frozenset({"weight", "pair", "cage", "code", "dose", "cup", "money"})
TITLES: Final = frozenset({"mr", "mrs", "ms", "dr", "miss", "st"})
ENDS_SENTENCE: Final = frozenset({".", "!", "?", "\n", ":", ";"})
ENDS_BUT_COLON: Final = ENDS_SENTENCE - {":"}
POUNDS_OR_OUNCES: Final = LB | OZ
COUNTED_OR_POUNDS: Final = COUNTED | LB
MEASURED: Final = COUNTED | POUNDS_OR_OUNCES | KG
BEHIND_BIRTH: Final = CLAUSE_ENDS | {"alive", "dead"}
BEHIND_AMOUNT: Final = POUNDS_OR_OUNCES | {"cups", "falls"}
COUNTED_BUT_BAGS: Final = COUNTED - {"bag", "bags"}
DAYS_BEFORE: Final = frozenset({"wt", "wts", "weight", "weights", "weigh", "weighed", "old", "check", "litter"})
WEANED_LABELS: Final = {
    "b": frozenset({"bucks_word"}),
    "d": frozenset({"does_word"}),
    "m": frozenset({"bucks_word"}),
    "f": frozenset({"does_word"}),
}
DAY_WORDS: Final = {"day": "day", "week": "week", "wk": "week"}
SHORT_LABELS: Final = {
    "d": frozenset({"dead"}), "a": frozenset({"alive"}), "l": frozenset({"alive"}), "b": frozenset({"born"}), "day": NO_MARKS, "week": NO_MARKS, "wk": NO_MARKS,
}  # fmt: skip


#: What may change the sense of a number before it; a number before anything else is only that.
BEHIND_NUMBER: Final = TAILS | MONTHS.keys() | {"and", "&", "'", "+"}
#: Signs that may touch a number and change nothing about it.
ENDS_NUMBER: Final = frozenset({",", ".", ";", ":", "?", "!", ")"})
SHORTEST_WATCH: Final = 3  # figures: `1730` is a time of day, two or three figures are none
#: Words behind which `x5` says how many.
COUNTING: Final = frozenset({"wean", "kindle", "had", "lose", "die", "kits", "litter", "sell", "cull", "foster", "count", "bag", "treat"})
NEWEST: Final = 8  # not a figure: items that a later word may still take back
LETTERS_OF_TAG: Final = 3  # the most letters that a tag begins with
Settled = tuple[frozenset[str], tuple[str | None, str | None] | None, frozenset[str]]
#: Words that may be more than themselves; all longer others are only looked up.
OWN_CASE: Final = frozenset(
    {*SHORT_LABELS, *WEANED_LABELS, *SEX_WORDS, *PLURAL_SEX, *NUMBERED_WORDS, *DATE_FIRST, *ORDINALS, *NUMBER_FIRST, *HOMOPHONES, "couple"}
)


#: Digits that the thumb puts for words.
THUMBED: Final = {"2": "to", "4": "for"}
#: What is told of an animal that was described, not of one that is new.
OF_A_DOE: Final = frozenset({"step", "lose", "eat", "kindle", "bite", "refuse", "miss", "die", "manners", "palpate"})


@lru_cache(maxsize=1)
def settled_words(lexicon: Lexicon) -> dict[str, Settled]:
    """Words that are read the same wherever they stand, but for a phrase that they may begin: most of every note, and quickly passed.

    Word -> second words of its phrases, the item's value, its marks.
    """
    open_words = BESIDE_NUMBER.keys() | OWN_CASE | color_words().keys() | {"k", "x", "a", "an", "ditto"}
    found: dict[str, Settled] = {}
    for word in filter(str.isalpha, lexicon.known - open_words):
        marks = lexicon.single.get(word, NO_MARKS)
        found[word] = (frozenset(lexicon.longer.get(word, ())), _named(word, marks), marks)
    for word, dated in DATE_BEHIND.items():  # no date but with one of these words behind them
        found[word] = (dated.union(lexicon.longer.get(word, ())), None, lexicon.single.get(word, NO_MARKS))
    return found


@lru_cache(maxsize=1)
def words_as_typed(lexicon: Lexicon) -> frozenset[str]:
    """Words that are surely no slip."""
    return ((lexicon.known - FOREIGN) | OWN_WORDS) - RIGHTED.keys() - {"n"}


NOTHING: Final = Token("p", "", "", 0, 0, glued=False)  # past the end


class Scan:
    """One pass over a message's tokens."""

    def __init__(self, tokens: list[Token], herd: HerdWords, lexicon: Lexicon) -> None:
        self.tokens = tokens
        self.herd = herd
        self.lexicon = lexicon
        self.items: list[Item] = []
        self.at = 0
        self._sifted = 0  # so many items are among those already said
        self._said: set[str] = set()

    def run(self) -> list[Item]:
        """All items, in order."""
        tokens = self.tokens
        settled = settled_words(self.lexicon)
        names = self.herd.names
        lettering = HEARD_LETTERS.keys() | self.herd.lower_prefixes
        add = self.items.append
        self._mend()
        at, end = 0, len(tokens)
        while at < end:
            token = tokens[at]
            word = token.key
            easy = settled.get(word)
            if easy is not None and word not in names:
                following = tokens[at + 1] if at + 1 < end else NOTHING
                if following.key not in easy[0] and (
                    len(word) > LETTERS_OF_TAG
                    or (following.sort == WORD and not following.glued and word not in lettering and following.key not in NUMBER_WORDS)
                    or not self._may_be_tag(word, following)
                ):
                    add(Item("word", at, at + 1, easy[1], easy[2], token.text, token.glued))
                    at += 1
                    continue
            self.at = at
            if token.sort == WORD:
                self._word(token)
            elif token.sort == "p":
                self._mark(token)
            else:
                self._figure(token)
            at, end = self.at, len(tokens)  # figures split tokens as they are read, and words may be said again
        self.at = at
        return self.items

    def _may_be_tag(self, word: str, following: Token) -> bool:
        """Whether a short word could be the letters of a tag or of a code such as `B3`, or begin a date with the number behind it."""
        return (
            following.glued
            or word in HEARD_LETTERS
            or (following.sort == NUMBER and word in DATE_BEHIND)
            or word.upper() in self.herd.prefixes
            or (following.key in NUMBER_WORDS and (len(word) == 1 or word in SPELLED))
        )

    def _said_already(self, *words: str) -> bool:
        """Whether an item so far has one of these marks or sorts."""
        while self._sifted < len(self.items) - NEWEST:
            self._said.update(self.items[self._sifted].marks, (self.items[self._sifted].sort,))
            self._sifted += 1
        return not self._said.isdisjoint(words) or any(
            item.sort in words or not item.marks.isdisjoint(words) for item in self.items[-NEWEST:]
        )

    def _key(self, at: int) -> str:
        tokens = self.tokens
        return tokens[at].key if 0 <= at < len(tokens) else ""

    def _add(self, sort: str, end: int, value: object = None, marks: frozenset[str] = NO_MARKS, *, spoken: bool = False) -> None:
        start = self.at
        first = self.tokens[start]
        said = first.text if end == start + 1 else " ".join([token.text for token in self.tokens[start:end]])
        self.items.append(Item(sort, start, end, value, marks, said, first.glued, spoken))
        self.at = end

    def _take(self, item: Item) -> None:
        item.glued = self.tokens[item.start].glued
        while self.items and self.items[-1].start >= item.start:
            self.items.pop()
        self.items.append(item)
        self.at = item.end

    # words

    def _word(self, token: Token) -> None:
        word = token.key
        if (word == "ditto" and self._ditto()) or (word in self.herd.names and self._name(word)):
            return
        if token.capital and word in color_words() and self._colored_name():
            return
        if len(word) > LETTERS_OF_TAG and word not in OWN_CASE:
            if not self._phrase(word):
                self._unknown(token)
            return
        if (word in SHORT_LABELS or word in WEANED_LABELS) and self._short_label(token):
            return
        if word == "x" and self._times():
            return
        if (word in SEX_WORDS or word in PLURAL_SEX) and self._sexed(word):
            return
        if (len(word) == 1 or word in SPELLED) and self._spelled_cage(word):
            return
        if self._letters_of_tag(token) or (word in NUMBERED_WORDS and (self._cage() if word in CAGE_WORDS else self._rabbit())):
            return
        if (word in DATE_FIRST or word in ORDINALS) and self._date():
            return
        if (word in NUMBER_FIRST or word in {"a", "an", "couple"}) and self._number_words(word):
            return
        if word in HOMOPHONES and self._homophone(word):
            return
        if not self._phrase(word):
            self._unknown(token)

    def _short_label(self, token: Token) -> bool:
        """`1d`, `6a`, `7b` behind a number; `day 32` before one."""
        if token.key in DAY_WORDS:
            found = amount_at(self.tokens, self.at + 1) if self.at + 1 < len(self.tokens) else None
            if found is None or found[0] != int(found[0]):
                return False
            self._add("span", found[1], (int(found[0]), DAY_WORDS[token.key]))
            return True
        if token.key == "d" and self._day_glued():
            return True
        if token.key == "d" and self._days_said():
            number = self.items.pop()
            self.items.append(Item("span", number.start, self.at + 1, (int(number.value), "day"), NO_MARKS, f"{number.said} d"))
            self.at += 1
            return True
        weaned = token.key in WEANED_LABELS and self._said_already("wean")
        if (
            not self.items
            or self.items[-1].sort != "num"
            or not (token.glued or weaned or (token.key == "d" and self._key(self.at + 1) in CLAUSE_ENDS))
        ):
            return False
        self._add("word", self.at + 1, None, WEANED_LABELS[token.key] if weaned else SHORT_LABELS.get(token.key, NO_MARKS))
        return True

    def _day_glued(self) -> bool:
        """`nest box in d28`: a count of days."""
        following = self.at + 1
        if (
            self.tokens[self.at].glued
            or following >= len(self.tokens)
            or not self.tokens[following].glued
            or not self._key(following).isdigit()
            or self._key(self.at - 1) in {"to", "into", "onto"}  # a cage: "R22 to D4"
            or self._moved_to()
            or self.herd.tagged("d" + self._key(following))
            or not self.items
        ):
            return False
        self._add("span", self.at + 2, (int(self._key(following)), "day"))
        return True

    def _moved_to(self) -> bool:
        """`mv 31 D2`: a cage behind the animal that is moved."""
        return len(self.items) > 1 and "move" in self.items[-2].marks

    def _times(self) -> bool:
        """`weaned x5`, `castor x2`, `bred 15 to Flint x3`: so many; between a doe and a buck it stands for their mating."""
        following = self.at + 1
        if (
            following >= len(self.tokens)
            or not self.tokens[following].glued
            or not self._key(following).isdigit()
            or self.tokens[self.at].glued
            or not self.items
        ):
            return False
        before, known = self.items[-1], self.herd.tagged(self._key(following))
        falls = self._said_already("breed") and not self._begins_anew()
        counts = falls or self._told_of_kits()
        if before.sort in {"num", "animal"} and not counts and (known is not None or before.sort == "num"):
            return False
        if before.sort == "mark" and not counts:
            return False
        self.at += 1
        self._add("num", self.at + 1, Decimal(self._key(self.at)))
        if falls and int(self._key(self.at - 1)) <= NOON:
            self.items.append(Item("word", self.at - 1, self.at, None, frozenset({"falls"}), "times"))
        return True

    def _told_of_kits(self) -> bool:
        """Whether the words so far count something: behind them `x5` is how many, never a buck. A comma before a doe begins anew."""
        if self._begins_anew():
            return False
        for item in reversed(self.items):
            if item.sort == "break" or item.said in ENDS_BUT_COLON:
                return False
            if item.marks & COUNTING:
                return True
        return False

    def _begins_anew(self) -> bool:
        """Whether a comma, and behind it an animal, stand last: `14 kindled 8, 15 x3`."""
        return len(self.items) > 1 and self.items[-1].sort in {"num", "animal"} and self.items[-2].said in {",", "and", "&", "\n"}

    def _days_said(self) -> bool:
        """`21d wt`, `litter 21d`: days, not dead ones."""
        if not self.items or self.items[-1].sort != "num" or self.items[-1].value != int(self.items[-1].value):
            return False
        return self._key(self.at + 1) in DAYS_BEFORE or self._said_already("litter")

    def _name(self, word: str) -> bool:
        for rest, tags in self.herd.names[word]:
            end = self.at + 1 + len(rest)
            if all(self._key(self.at + 1 + n) == part for n, part in enumerate(rest)) and not self._name_is_month(word):
                exact = len(tags) == 1
                self._animal(tags, end, exact=exact)
                return True
        return False

    def _name_is_month(self, word: str) -> bool:
        """A name such as June or April in a date's place."""
        return word in DATE_FIRST and self._key(self.at - 1) in {"in", "on", "since", "until", "born"} and self._key(self.at + 1).isdigit()

    def _animal(self, tags: tuple[str, ...], end: int, *, sex: str | None = None, exact: bool = True, others: tuple[str, ...] = ()) -> None:
        said = " ".join(token.text for token in self.tokens[self.at : end])
        if self._key(end) == "s" and end < len(self.tokens) and self.tokens[end].glued:
            end += 1
        if self._key(end) == "'" and self._key(end + 1) == "s":
            end += 2
        self._add("animal", end, Mention(tags, said, sex, exact, others))
        item = self.items[-1]
        if self._owns(self.tokens[end - 1]):
            item.unit = "possessive"
        self._merge_tag_behind_name()

    def _owns(self, last: Token) -> bool:
        """Whether a name's last word is its possessive: `Sorrel's`, `sorrels`."""
        return last.text.endswith("s") and (last.key not in self.herd.names or last.key[:-1] in self.herd.names)

    def _merge_tag_behind_name(self) -> None:
        """`Juno 14`, `Juno (14)`, `14 (Juno)`, `Juno, 14,`: two ways to say one animal."""
        item = self.items[-1]
        back = len(self.items) - 2
        while back >= 0 and self.items[back].said in {"(", ",", "-", "aka", "#"} and back > len(self.items) - 4:
            back -= 1
        if back < 0 or back == len(self.items) - 1:
            return
        before = self.items[back]
        if before.sort == "num" and before.value == int(before.value):
            known = self.herd.tagged(str(int(before.value)))
            if known and item.value.tag == known.tag:
                item.start = before.start
                del self.items[back:-1]
        elif before.sort == "animal" and item.value.tag and item.value.tag in before.value.tags and back < len(self.items) - 1:
            item.start = before.start
            item.value = Mention((item.value.tag,), item.value.said, item.value.sex or before.value.sex)
            del self.items[back:-1]

    def _sexed(self, word: str) -> bool:
        """`doe 14`, `buck Moss`, `the opal doe`, `does 14`."""
        owned = self.tokens[self.at].text in OWNED_SEX
        plural = word in PLURAL_SEX and not owned
        sex = PLURAL_SEX.get(word) or SEX_WORDS[word]
        at = self.at + 1
        while self._key(at) in {"#", "no", "number", ".", *({":"} if not plural else ())} and self._key(at + 1)[:1].isdigit():
            at += 1
        if plural and (self.items and (self.items[-1].sort == "num" or self._sexes_counted())):
            return False
        if at < len(self.tokens) and self.tokens[at].key in self.herd.names and not plural:
            self.at = at
            if self._name(self.tokens[at].key):
                self.items[-1].value = Mention(self.items[-1].value.tags, self.items[-1].value.said, sex, self.items[-1].value.exact)
                self.items[-1].start = min(self.items[-1].start, at - 1)
                return True
            self.at = at - 1
        number = self._tag_number(at, word)
        if number and owned and self._key(number[1]) in COUNTED:
            number = None  # "the red doe's seven kits"
        if number and self.items and self.items[-1].sort == "num" and self.items[-1].value == 1 and self._key(number[1]) in PLURAL_SEX:
            return False  # "1 buck four does"
        if number:
            known = self.herd.tagged(number[0])
            if plural and (known is None or known.sex != sex):
                return False
            self._animal((known.tag,) if known else (), number[1], sex=sex, exact=not number[2], others=self._alike(number))
            if not known:
                self.items[-1].value = Mention((), number[0], sex)
            return True
        return not plural and word not in DOUBTFUL_SEX and self._description(sex)

    def _sexes_counted(self) -> bool:
        """`weaned 16: bucks 3, does 2`: behind the doe of a litter the words count its kits."""
        return self._said_already("wean", "kits", "litter") and any(item.sort in {"num", "animal"} for item in self.items)

    def _begins_line(self) -> bool:
        return not self.items or self.items[-1].sort == "break"

    def _rabbit(self) -> bool:
        """`Animal 15`, `RABBIT: 5`: an animal by its number, whatever its sex."""
        at = self.at + 1
        while self._key(at) in {"#", "no", "number", ":", "."}:
            at += 1
        if (
            not self._key(at).isdigit()
            or (at > self.at + 1 and self._key(at - 1) == ":" and not self._begins_line())
            or self._key(at + 1) in MEASURED
        ):
            return False
        known = self.herd.tagged(self._key(at))
        said = self._key(at)
        self._animal((known.tag,) if known else (), at + 1)
        if not known:
            self.items[-1].value = Mention((), said)
        return True

    def _alike(self, number: tuple[str, int, bool]) -> tuple[str, ...]:
        return self.herd.sounds_like(number[0]) if number[2] else ()

    def _tag_number(self, at: int, word: str) -> tuple[str, int, bool] | None:
        """The tag behind a sex word: its text, the index after it, whether it was spoken."""
        if at >= len(self.tokens):
            return None
        token = self.tokens[at]
        if token.sort == NUMBER and token.key.isdigit():
            if self._key(at + 1) in MEASURED and self._key(at + 1) not in {"lost", "died", "dead", "born", "live", "living"}:
                return None
            return token.key, at + 1, False
        if token.sort == NUMBER and "." in token.key and token.key.split(".")[0].isdigit() and self._key(at + 1) in COUNTED:
            return None
        letters = self._lettered(at)
        if letters:
            return letters
        if token.key in NUMBER_FIRST:
            found = amount_at(self.tokens, at)
            if found and found[0] == int(found[0]):
                return self._one_twenty(found, word)
        if (
            token.key in {"to", "too", "for", "won", "fore"}
            and word in {"buck", "book", "doe", "dough"}
            and self._key(at + 1) in {"", ".", ","}
        ):
            return str(HOMOPHONES[token.key]), at + 1, True
        return None

    def _one_twenty(self, found: tuple[Decimal, int, bool, bool], _word: str) -> tuple[str, int, bool]:
        """Behind an animal word `one twenty` is 120 and `two oh five` 205, where such an animal is."""
        value, end = int(found[0]), found[1]
        if 0 < value < 10 and self._key(end) in TENS:
            rest = amount_at(self.tokens, end)
            if rest and rest[0] == int(rest[0]) and self.herd.tagged(str(value * 100 + int(rest[0]))):
                return str(value * 100 + int(rest[0])), rest[1], True
        return str(value), end, True

    def _lettered(self, at: int) -> tuple[str, int, bool] | None:
        """`R21`, `r 21`, `r twenty one`, `R-21` at an index."""
        token = self.tokens[at]
        if token.sort != WORD or len(token.key) > 3:
            return None
        prefix = HEARD_LETTERS.get(token.key, token.key.upper())
        if prefix not in self.herd.prefixes or (
            token.key in HEARD_LETTERS and not (self._heard(prefix, at + 1) or (self.items and "tag" in self.items[-1].marks))
        ):
            return None  # "tattooed are thirty" gives a new tag of that letter
        number_at = at + 2 if self._key(at + 1) == "-" else at + 1
        if number_at >= len(self.tokens):
            return None
        number = self.tokens[number_at]
        if number.sort == NUMBER and number.key.isdigit():
            return folded(prefix + number.key), number_at + 1, False
        if number.sort == "pair" and self._key(at + 1) != "-":
            return None
        if number.key in NUMBER_FIRST:
            found = amount_at(self.tokens, number_at)
            if found and found[0] == int(found[0]):
                return folded(f"{prefix}{int(found[0])}"), found[1], True
        return None

    def _heard(self, prefix: str, at: int) -> bool:
        """Whether `are twenty two` is R22: the number is spoken and that animal is on the book."""
        found = amount_at(self.tokens, at) if at < len(self.tokens) and self.tokens[at].key in NUMBER_FIRST else None
        return bool(found) and found is not None and self.herd.tagged(f"{prefix}{int(found[0])}") is not None

    def _letters_of_tag(self, token: Token) -> bool:
        """A tag with letters, or a code such as `B3` that may be a cage or a new tag."""
        lettered = self._lettered(self.at)
        if lettered:
            known = self.herd.tagged(lettered[0])
            if known or self.tokens[self.at + 1].glued or lettered[2]:
                heard = self.herd.tagged("".join(sign for sign in lettered[0] if sign.isdigit())) if token.key in HEARD_LETTERS else None
                others = (heard.tag,) if heard and heard.living else ()
                self._animal((known.tag,) if known else (), lettered[1], exact=not others, others=others)
                if not known:
                    self.items[-1].value = Mention((), lettered[0])
                return True
        following = self.at + 1
        if token.capital and self._key(following) == "-" and self.tokens[following].glued:
            following += 1  # "R-9", where no tag begins with R yet
        if following >= len(self.tokens) or not self.tokens[following].glued or self.tokens[following].sort != NUMBER:
            return False
        number = self.tokens[following]
        if (
            not number.key.isdigit()
            or len(token.key) > 3
            or token.key in {"x", "w", "k"}
            or (token.key in MONTHS and not self.herd.tagged(token.key + number.key))
            or (token.key == "d" and self._key(self.at - 1) not in {"to", "into", "onto"} and not self._moved_to())
            or (len(token.key) > 1 and token.key in self.lexicon.words)
        ):
            return False
        known = self.herd.tagged(token.key + number.key)
        if known:
            self._animal((known.tag,), following + 1)
        elif len(token.key) == LETTERS_OF_TAG and token.key[:2] in {"in", "to"}:
            self._split_off(token, 2)
            return self._phrase(token.key)  # "put her inB2"
        else:
            self._add("code", following + 1, (token.key + number.key).upper())
        return True

    def _split_off(self, token: Token, letters: int) -> None:
        """Part a word behind its first letters."""
        middle = token.start + letters
        rest = token.key[letters:]
        self.tokens.insert(self.at + 1, Token(WORD, rest, rest, middle, token.end, glued=False))
        token.key = token.text = token.key[:letters]
        token.end = middle

    def _spelled_cage(self, word: str) -> bool:
        """`moved thirty one to c four`: a letter and a spoken number where the animal goes."""
        if self._key(self.at + 1) not in NUMBER_WORDS or not self.items or self.items[-1].said not in TO_CAGE:
            return False
        if not any("move" in item.marks for item in self.items[-8:]):  # not a figure: words
            return False
        found = amount_at(self.tokens, self.at + 1)
        if found is None or found[3] or self._key(found[1]) in MEASURED:
            return False
        self._add("cage", found[1], f"{SPELLED.get(word, word.upper())}{int(found[0])}")
        return True

    def _cage(self) -> bool:
        """`cage B3`, `pen 4`, `cage c seven`, `cage see for`."""
        at = self.at + 1
        while self._key(at) in {"#", "number", "no", ":"}:
            at += 1
        letter = ""
        word = self._key(at)
        if at < len(self.tokens) and self.tokens[at].sort == WORD and (len(word) == 1 or word in SPELLED):
            letter, at = SPELLED.get(word, word.upper()), at + 1
            if self._key(at) == "-":
                at += 1
        number = self._key(at)
        if number.isdigit():
            self._add("cage", at + 1, letter + number)
            return True
        if number in NUMBER_FIRST:
            found = amount_at(self.tokens, at)
            if found and found[0] == int(found[0]):
                self._add("cage", found[1], f"{letter}{int(found[0])}")
                return True
        if letter and number in HOMOPHONES:
            self._add("cage", at + 1, f"{letter}{HOMOPHONES[number]}")
            return True
        return False

    def _description(self, sex: str) -> bool:
        """`the opal doe`: the colour and breed said just before, where one living animal fits."""
        back = len(self.items)
        color = breed = None
        while back and self.items[back - 1].marks & {"color", "breed_name"} and self.items[back - 1].value:
            item = self.items[back - 1]
            color = color or (item.value[0] if "color" in item.marks else None)
            breed = breed or (item.value[1] if "breed_name" in item.marks and "color" not in item.marks else None)
            back -= 1
        while 1 < back < len(self.items) and self.items[back - 1].said in SIZES:
            back -= 1
        led = back and self.items[back - 1].said in {"the", "that", "our", "my", "my only", "this"}
        if back == len(self.items) or not (led or self._heads(back)):
            return False
        if self._key(self.at + 1) in {"from", "out"} and color is None:
            return False
        tags = self.herd.described(color, breed, sex)
        end = self.at + 1
        if len(tags) > 1 and (bred_by := self._born_to(tags)):
            tags, end = bred_by
        if not led and len(tags) != 1:
            return False
        start = self.items[back].start
        said = " ".join(token.text for token in self.tokens[start:end])
        del self.items[back:]
        unit = "possessive" if self.tokens[end - 1].text in OWNED_SEX else ""
        self._add("animal", end, Mention(tags, said, sex))
        self.items[-1].start, self.items[-1].unit = start, unit
        return True

    def _born_to(self, tags: tuple[str, ...]) -> tuple[tuple[str, ...], int] | None:
        """`the black doe out of Juno`: of several that fit, the one of that parent, and where the words end."""
        at = self.at + 1
        for lead in (("out", "of"), ("by",), ("from",)):
            if tuple(self._key(at + n) for n in range(len(lead))) == lead:
                parent = self.herd.parent(self._key(at + len(lead)))
                kids = tuple(tag for tag in tags if parent is not None and self.herd.is_child(tag, parent))
                return (kids, at + len(lead) + 1) if len(kids) == 1 else None
        return None

    def _heads(self, back: int) -> bool:
        """`red doe sat on a kit`: a description at the head of a message, and what befell her right behind it."""
        if back:
            return False
        word = self._key(self.at + 1)
        longer = self.lexicon.longer.get(word, {}).get(self._key(self.at + 2), ())
        marks = self.lexicon.single.get(word, NO_MARKS).union(*(marks for _, marks in longer))
        return not marks.isdisjoint(OF_A_DOE)

    def _date(self) -> bool:
        found = date_at(self.tokens, self.at)
        if found is None:
            return False
        self._add("date", found[1], found[0])
        return True

    def _number_words(self, word: str) -> bool:
        tokens = self.tokens
        if word in {"a", "an", "couple", "one"}:
            ago = ago_at(tokens, self.at)
            if ago:
                self._add("date", ago[1], ago[0])
                return True
            if word == "couple" and self._key(self.at + 1) not in AFTER_COUPLE:
                return False
            if word == "couple":
                self._add("num", self.at + 1, Decimal(2), spoken=True)
                return True
            if word in {"a", "an"}:
                return self._article()
        if word in PARTS_OF_HOUR and self._key(self.at + 1) in AROUND_HOUR:
            return self._about_the_hour(word)
        return self._spoken(self.at)

    def _about_the_hour(self, word: str) -> bool:
        """`half past five`, `quarter to six`."""
        hour = amount_at(self.tokens, self.at + 2)
        if hour is None or not (0 < hour[0] <= NOON and hour[0] == int(hour[0])) or self._key(hour[1]) in MEASURED:
            return False
        to = self._key(self.at + 1) != "past"
        hours, minutes = (int(hour[0]) - to) or NOON, MINUTES - PARTS_OF_HOUR[word] if to else PARTS_OF_HOUR[word]
        half, last = (self._key(hour[1]), hour[1] + 1) if self._key(hour[1]) in {"am", "pm"} else ("", hour[1])
        if self._key(last) == "in" and self._key(last + 1) == "the" and self._key(last + 2) in DAY_HALVES:
            half, last = DAY_HALVES[self._key(last + 2)], last + 3
        self._add("time", last, clock_time(f"{hours}:{minutes}", half))
        return True

    def _spoken(self, begin: int) -> bool:
        """An amount whose words begin at an index: `two and a half`, `half a cup`, a hundred behind its `a`."""
        found = amount_at(self.tokens, begin)
        if found is None:
            return False
        value, end, spoken_words, possessive = found
        if 0 < value < TENS_LEAST and self._key(end) in TENS and value == int(value):
            rest = amount_at(self.tokens, end)
            if rest is not None and self._key(rest[1]) in HUNDREDS_OF:
                value, end = value * CENTS + rest[0], rest[1]  # "one twenty pounds of feed"
        if value in TENS.values() and (unit := self._unit_heard(int(value), end)):
            value, end = value + unit, end + 1  # "thirty to four pounds" among tags 31, 32, 33
        if (
            self._key(begin) == "half"
            and self._key(end) in {"a", "of"}
            and self._key(end + 1) in {"cup", "pound", "lb", "a", "scoop", "bag", "sack", "cc", "c", "ml", "tablet", "tsp"}
        ):
            end += 2 if self._key(end + 1) == "a" else 1
        elif spoken_words and self._key(end) == "of" and self._key(end + 1) == "a":
            end += 2
        self._number(value, end, spoken_words=spoken_words, possessive=possessive)
        return True

    def _unit_heard(self, tens: int, at: int) -> int:
        """The unit that `to` or `for` behind tens stands for: where only the two together are a tag, and a number follows."""
        unit = HOMOPHONES.get(self._key(at), 0) if self._key(at) in {"to", "too", "for", "fore"} else 0
        known = unit and self.herd.tagged(str(tens + unit)) is not None and self.herd.tagged(str(tens)) is None
        return unit if known and self._key(at + 1) in NUMBER_FIRST else 0

    def _article(self) -> bool:
        """`a dozen`, `a couple`, `a half`, `a cup`, `a pound and a half`."""
        following = self._key(self.at + 1)
        if following == "half" and self._key(self.at + 2) == "dozen":
            return self._spoken(self.at + 1)
        if following in {"half", "quarter"}:
            end = self.at + 2
            if self._key(end) in {"a", "of"}:
                end += 1
            self._number(FRACTIONS[following], end, spoken_words=True, possessive=False)
            return True
        if following == "third" and (self._key(self.at + 2), self._key(self.at + 3)) in OF_CUP:
            self._number(FRACTIONS[following], self.at + (4 if self._key(self.at + 2) == "of" else 2), spoken_words=True, possessive=False)
            return True
        if following in {"heaping", "level", "scant", "full", "big"} and self._key(self.at + 2) == "cup":
            return self._measured(Decimal(1), self.at + 2)
        if following in {"bag", "sack"} and [self._key(self.at + n) for n in (2, 3, 4)] == ["and", "a", "half"]:
            self._add("num", self.at + 1, Decimal("1.5"), spoken=True)  # not a figure: one and a half
            self.items[-1].said = "one and a half"
            self._add("word", self.at + 4, None, frozenset({"bag"}))
            return True
        if following == "couple" and (self._key(self.at - 1) == "to" or self._key(self.at + 2) not in AFTER_COUPLE):
            return False
        if following in {"dozen", "couple"}:
            end = self.at + 2
            self._add(
                "num", end + (self._key(end) == "of"), Decimal(12 if following == "dozen" else 2), spoken=True
            )  # not a figure: a dozen
            return True
        if following == "hundred":
            return self._spoken(self.at + 1)
        return following in {"cup", "pound"} and self._measured(Decimal(1), self.at + 1)

    def _homophone(self, word: str) -> bool:
        before, after = self._key(self.at - 1), self._key(self.at + 1)
        if word == "a":
            return False
        value = Decimal(HOMOPHONES[word])
        if after in ENDS_WEIGHT and word != "too" and self._weighed_to(value):
            return True
        if (
            before in TENS
            and word in {"won", "ate", "too", "tree"}
            and self.items
            and self.items[-1].sort == "num"
            and self.items[-1].spoken
        ):
            last = self.items.pop()
            self.at = last.start
            self._add("num", last.end + 1, last.value + value, spoken=True)
            return True
        if self._is_number(word, before, after):
            self._number(value, self.at + 1, spoken_words=True, possessive=False)
            return True
        return False

    def _counted_of(self, last: Item) -> bool:
        """`weaned sixteen free bucks`: the number before is the doe's tag."""
        return self._said_already("wean") and self.herd.tagged(str(last.value)) is not None

    def _weighed_to(self, ounces: Decimal) -> bool:
        """`weighs four to`, `weighed thirty one four ate`: behind spoken pounds at an end, their ounces."""
        last = self.items[-1] if self.items else None
        if last is None or last.sort != "num" or not last.spoken or last.value != int(last.value) or last.value > MOST_POUNDS:
            return False
        if not any("weigh" in item.marks for item in self.items[-NEWEST:-1]):
            return False
        behind = "weigh" in self.items[-2].marks or self.items[-2].sort in {"num", "animal"}
        if not behind or (self.herd.tagged(str(last.value)) and self.items[-2].sort == "word" and "weighed" in self.items[-2].said):
            return False
        self.items.pop()
        end = self.at + 1
        self.at = last.start
        self._add("pair", end, (last.value, ounces), spoken=True)
        self.items[-1].unit = "-"
        return True

    def _is_number(self, word: str, before: str, after: str) -> bool:
        """Whether grammar makes a number of `to`, `for`, `ate`, `won`."""
        after_number = bool(self.items) and self.items[-1].sort == "num"
        if word in {"free", "tree", "tin", "sex"}:
            counted = word != "free" or (
                self._said_already("wean", "kindle", "count", "lose", "foster") and before not in {"is", "are", "was"}
            )
            return after in COUNTED_OR_POUNDS and counted and (not after_number or (word == "free" and self._counted_of(self.items[-1])))
        if before in {"kindled", "candled", "had"} and word in {"ate", "won"} and after in NUMBER_WORDS:
            return True  # "kindled ate two were dead"
        if before in AFTER_BIRTH and after in BEHIND_BIRTH and word in {"ate", "won", "too", "for", "to", "fore"}:
            return word in {"ate", "won"} or after not in {"this", "last", "and"}
        if before == "a" and word in {"to", "too", "for", "fore"}:
            return True
        if word in {"to", "too", "for", "fore"}:
            if after in {"dead", "alive", "live", "died"} and after_number:
                return True
            if after in BEHIND_AMOUNT:
                return True
            if before in TRAITS_SAID and (after in TRAITS_SAID - {before} or (after in {"", ",", "and"} and word in {"for", "fore"})):
                return True
            if after in {"was", "were"} and before in {"and", "but"} and self._key(self.at + 2) in {"dead", "alive", "stillborn", "born"}:
                return True
            if after == "more" and before in {"lost", "lose", "found", "died", "had"}:
                return True
            if before in {"is", "are", "has"} and after in color_words():
                return True
            if before in {"lost", "sold", "found", "moved", "gave", "took"} and (
                after == "of" or (after == "out" and self._key(self.at + 2) == "of")
            ):
                return True
            if before in {"kindled", "candled"} and after in {"with", "but"}:
                return True
            wanted = before in {
                "candled",
                "lost",
                "had",
                "kindled",
                "has",
                "fostered",
                "bought",
                "weaned",
                "bucks",
                "buck",
                "moved",
                "sold",
                "born",
                "keep",
                "kept",
                "and",
                "ate",
                "picked",
                "up",
                "got",
            }
            return after in COUNTED and wanted and not after_number
        if word == "won" and after in {"was", "dead", "died"} and before in {"and", "but"}:
            return True
        return ((after in COUNTED or after == "of") and word == "won") or (
            word == "ate" and after in {"kits", "alive", "dead", "born", "live"} and before in AFTER_BIRTH
        )

    # phrases

    def _follow(self, at: int, words: tuple[str, ...]) -> bool:
        """Whether these words stand at an index."""
        tokens = self.tokens
        if at + len(words) > len(tokens):
            return False
        for word in words:
            if tokens[at].key != word:
                return False
            at += 1
        return True

    def _phrase(self, word: str) -> bool:
        """The longest phrase that begins here."""
        at = self.at + 1
        longer = self.lexicon.longer.get(word)
        if longer is not None:
            for rest, marks in longer.get(self._key(at), ()):
                if len(rest) == 1 or self._follow(at, rest):
                    self._add("word", at + len(rest), _named(" ".join((word, *rest)), marks), marks)
                    return True
        single = self.lexicon.single.get(word)
        if single is None or (word == "k" and self._key(at) and not self._key(at)[:1].isdigit()):
            return False
        self._add("word", at, _named(word, single), single)
        return True

    def _mend(self) -> None:
        """Put slips right in words that nobody knows, before any of them is read."""
        as_typed = words_as_typed(self.lexicon)
        for at, typed in enumerate(self.tokens):
            token, word = typed, typed.key
            if word in as_typed or (typed.sort != WORD and word not in RIGHTED):
                continue
            if word in RIGHTED and word not in self.herd.names:
                RIGHTED[word](self.tokens, at, self.herd)
                token = self.tokens[at]
                word = token.key
            if word == "n" and not (at + 1 < len(self.tokens) and self.tokens[at + 1].glued):
                token.key = token.text = SHORT_FORMS["n"]
                continue
            if token.sort != WORD or word in self.herd.names or word in OWN_WORDS:
                continue
            if token.capital and at and self.tokens[at - 1].key not in ENDS_SENTENCE and not self._shouted():
                continue  # somebody's name
            if self._space_put_back(at) or self._space_put_back(at - 1) or word in self.lexicon.known:
                continue
            if word in SHORT_FORMS:
                token.key = token.text = SHORT_FORMS[word]
                continue
            if self.herd.by_slip(word) or (word.endswith("s") and self.herd.by_slip(word[:-1])):
                continue
            meant = self.lexicon.meant(word) or self.lexicon.meant_before(word, self._key(at + 1))
            if meant and not self._names_newcomer(at, meant):
                token.key = token.text = meant
            elif not meant:
                run_together(self.tokens, at, self.lexicon)

    def _space_put_back(self, at: int) -> bool:
        return put_back(self.tokens, at, self.lexicon, self.herd.names)

    def _shouted(self) -> bool:
        """Whether the message is written in capitals throughout."""
        return sum(1 for token in self.tokens if token.capital) * 3 > len(self.tokens)

    def _unknown(self, token: Token) -> None:
        word = token.key
        if word in self.lexicon.known:
            self._beside_number(word)
            return
        if self._names_newcomer(self.at, ""):
            self._add("word", self.at + 1)
            return
        tags = self.herd.by_slip(word)
        if not tags and word.endswith("s"):
            tags = self.herd.by_slip(word[:-1])
        if tags:
            self._animal(tags, self.at + 1, exact=False)
            return
        self._add("word", self.at + 1)

    def _names_newcomer(self, at: int, meant: str) -> bool:
        """Whether an unknown word stands where a new animal's name does; it may still be a slip of a breed, or uncapped of a colour."""
        before = self._key(at - 1)
        if before in {"named", "called"}:
            return True
        if not (before.isdigit() and any("new" in marks for _, marks in self.lexicon.phrases.get(self._key(0), ()))):
            return False
        marks = frozenset().union(*(found for _, found in self.lexicon.phrases.get(meant, ())))
        return "breed_name" not in marks and ("color" not in marks or self.tokens[at].capital)

    def _colored_name(self) -> bool:
        """`new doe 7 Magpie new zealand white`: a colour's word is the name where another colour follows."""
        if not self._names_newcomer(self.at, "") or not any(later.key in color_words() for later in self.tokens[self.at + 1 :]):
            return False
        self._add("word", self.at + 1)
        return True

    def _beside_number(self, word: str) -> None:
        """A real word that stands for a barn word only beside a number or an animal."""
        meant = BESIDE_NUMBER.get(word)
        if (
            meant
            and (self._beside() or (word == "bread" and self._key(self.at - 1) in {"shes", "is", "was", "feels", "felt", "feeling"}))
            and (word not in AT_START or self.at == 0)
        ):
            options = self.lexicon.phrases.get(meant, ())
            marks = next((marks for rest, marks in options if not rest), NO_MARKS)
            self._add("word", self.at + 1, None, marks)
            self.items[-1].said = meant
            return
        self._add("word", self.at + 1)

    def _beside(self) -> bool:
        before = self.items[-1].sort in {"num", "animal"} if self.items else False
        following = self.at + 1
        if following >= len(self.tokens):
            return before
        token = self.tokens[following]
        return before or token.sort == NUMBER or token.key in NUMBER_FIRST or token.key in self.herd.names or token.key in SEX_WORDS

    # figures

    def _mark(self, token: Token) -> None:
        if token.key == "$" and self.at + 1 < len(self.tokens) and self.tokens[self.at + 1].sort == NUMBER:
            cents = int((amount_at(self.tokens, self.at + 1) or (Decimal(0),))[0] * 100)
            self._add("money", self.at + 2, cents)
            return
        if token.key == "#" and self.at + 1 < len(self.tokens) and self.tokens[self.at + 1].key.isdigit():
            number = self.tokens[self.at + 1].key
            known = self.herd.tagged(number)
            self._animal((known.tag,) if known else (), self.at + 2)
            if not known:
                self.items[-1].value = Mention((), number)
            return
        if token.key == "-" and not token.glued and self._takes_away():
            self._add("word", self.at + 1, None, frozenset({"fewer"}))
            self.items[-1].said = "minus"
            return
        if token.key == '"' and self._ditto():
            return
        if token.key == "." and token.glued and self._titles():
            self.at += 1
            return
        if token.key == "/" and token.glued and self.items and self.items[-1].said in {"w", "in w"}:
            self.at += 1
            return
        self._add("break" if token.key == "\n" else "mark", self.at + 1)

    def _takes_away(self) -> bool:
        """`12 -2 kits`: the sign at the number takes kits off; with a space on both sides it only parts."""
        following = self.at + 1
        counts = self._key(following + 1) in {"kit", "kits"} and self._key(following).isdigit() and self.tokens[following].glued
        return counts and bool(self.items) and self.items[-1].sort in {"animal", "num"}

    def _ditto(self) -> bool:
        """`31 4-6; 32 ditto`, a `"` below a value: what was said of the animal of the row before."""
        place = len(self.items)
        while place and self.items[place - 1].said in {":", ",", "-", "="}:
            place -= 1
        ends = self._key(self.at + 1) in {"", ".", ";", ",", "\n"}
        if not ends or place < 3 or self.items[place - 1].sort not in {"animal", "num"}:  # not a figure: an animal, its value and a mark
            return False
        parting = place - 2
        row: list[Item] = []
        for item in reversed(self.items[:parting]):
            if item.said in ENDS_BUT_COLON or item.sort in {"animal", "break"}:
                break
            row.insert(0, item)
        values = [item for item in row if item.sort in COPIED or (item.marks and item.sort == "word")]
        if self.items[parting].said not in {";", ",", "\n", "."} or not any(item.sort in COPIED for item in values):
            return False
        self.items.extend(replace(item, start=self.at, end=self.at + 1) for item in values)
        self.at += 1
        return True

    def _titles(self) -> bool:
        """`Mr. Hale`, `J. Alvarez`: the dot belongs to somebody's name."""
        following = self.at + 1
        if following >= len(self.tokens) or not self.tokens[following].capital or self.tokens[following].key in self.herd.names:
            return False
        before = self.tokens[self.at - 1]
        if self.items[-1].sort != "word":
            return False  # "150 G."
        if before.key not in TITLES and not (
            len(before.key) == 1 and before.capital and before.sort == WORD and before.key not in {"f", "c"}
        ):
            return False
        last = self.items[-1]
        last.marks, last.value = NO_MARKS, None
        return True

    def _figure(self, token: Token) -> None:
        if token.sort == NUMBER:
            self._digits(token)
        elif token.sort == "iso":
            self._date()
        elif token.sort == "slash":
            self._slash(token)
        elif token.sort == "clock":
            self._clock(token)
        else:
            self._pair(token)

    def _digits(self, token: Token) -> None:
        following = self.at + 1
        behind = self.tokens[following] if following < len(self.tokens) else NOTHING
        if (
            token.key.isdigit()
            and len(token.key) <= SHORTEST_WATCH
            and token.key not in THUMBED
            and (not behind.glued or behind.key in ENDS_NUMBER)
            and behind.sort != "slash"
            and behind.key not in BEHIND_NUMBER
        ):
            self._bare(Decimal(token.key), following, spoken_words=False)
            return
        if self._tag_with_tail(token) or self._date() or self._thumbed(token):
            return
        if (
            token.key == "2"
            and self._key(self.at + 1) in {"day", "nite", "night"}
            and self.tokens[self.at + 1].glued
            and self._key(self.at + 2) not in {"old", "wt", "weight"}
        ):
            self._add("date", self.at + 2, Said("near"))
            return
        if self._splits(token) or self._watch(token) or self._sexed_count(token):
            return
        found = amount_at(self.tokens, self.at)
        value, end, spoken_words, possessive = found or (Decimal(0), self.at + 1, False, False)
        self._number(value, end, spoken_words=spoken_words, possessive=possessive)

    def _watch(self, token: Token) -> bool:
        """`0430`, `at 1730`, `1730 h`: a time of day in four figures."""
        said, after = token.key, self._key(self.at + 1)
        told = said.startswith("0") or after in {"h", "hrs"} or self._key(self.at - 1) in {"at", "@"}
        if (
            len(said) != FIGURES_OF_WATCH
            or not said.isdigit()
            or not told
            or int(said[:2]) >= 24  # not a figure: hours and minutes
            or int(said[2:]) >= 60  # not a figure: hours and minutes
            or self.herd.tagged(said)
        ):
            return False
        self._add("time", self.at + (2 if after in {"h", "hrs"} else 1), f"{said[:2]}:{said[2:]}")
        return True

    def _sexed_count(self, token: Token) -> bool:
        """`3M 2F`: bucks and does, behind words of weaning or of a litter."""
        following = self.at + 1
        if self._key(following) not in SEXES or not self.tokens[following].glued or not token.key.isdigit():
            return False
        if not self._said_already("wean", "kits", "litter", "new") or (self._key(following) == "f" and int(token.key) > MOST_FALLS):
            return False
        self._add("num", self.at + 1, Decimal(token.key))
        self._add("word", self.at + 1, None, SEXES[self._key(self.at)])
        return True

    def _thumbed(self, token: Token) -> bool:
        """`won't lift 4 moss`, `bred 15 2 flint`: a digit for a word, before a name."""
        if token.key == "4" and self._key(self.at + 1) == "sale":
            token.key, token.text, token.sort = "for", "for", WORD
            return self._phrase("for")
        word = THUMBED.get(token.key)
        following = self._key(self.at + 1)
        if token.key == "2" and following in CAGE_WORDS and bool(self.items) and self.items[-1].sort in {"animal", "num"}:
            return self._said_to()  # "moved Moss 2 cage b2"
        owned = following in {"my", "our", "the"} and bool(self.items) and self.items[-1].sort == "animal"
        owned = owned or (token.key == "4" and following == "$" and bool(self.items) and self.items[-1].sort in {"animal", "num"})
        if (
            word is None
            or not (
                following in self.herd.names
                or owned
                or (token.key == "2" and following in CAGE_WORDS and bool(self.items) and self.items[-1].sort == "animal")
            )
            or self.herd.tagged(token.key)
        ):
            return False
        options = self.lexicon.phrases.get(word, ())
        self._add("word", self.at + 1, None, next((marks for rest, marks in options if not rest), NO_MARKS))
        self.items[-1].said = word
        return True

    def _said_to(self) -> bool:
        self._add("word", self.at + 1, None, next((marks for rest, marks in self.lexicon.phrases.get("to", ()) if not rest), NO_MARKS))
        self.items[-1].said = "to"
        return True

    def _tag_with_tail(self, token: Token) -> bool:
        """Tags such as `21A`."""
        following = self.at + 1
        if not self.herd.tagged(token.key + self._key(following)) or following >= len(self.tokens):
            return False
        if not self.tokens[following].glued or self.tokens[following].sort != WORD:
            return False
        known = self.herd.tagged(token.key + self._key(following))
        self._animal((known.tag,) if known else (), self.at + 2)
        return True

    def _splits(self, token: Token) -> bool:
        """`16.5 kits`, `8,2 dead`, `31,32`: two numbers without the space between them."""
        sign = "," if "," in token.key else "."
        left, found, right = token.key.partition(sign)
        if not found or not left or not right.isdigit() or (sign == "," and len(right) > 2) or len(right) > 2:
            return False
        following = self._key(self.at + 1)
        both_tags = sign == "," and self.herd.tagged(left) is not None and self.herd.tagged(right) is not None
        if following in POUNDS_OR_OUNCES or following in KG or (self.items and self.items[-1].said in {"$", "@"}):
            return False
        counted = following in COUNTED_BUT_BAGS or (following in {"d", "a", "l"} and self.tokens[self.at + 1].glued)
        born = bool(self.items) and "kindle" in self.items[-1].marks and (sign == ",")
        if not (counted or both_tags or born):
            return False
        half = token.start + len(left)
        middle = Token("p", sign, sign, half, half + 1, glued=True)
        last = Token(NUMBER, right, right, half + 1, token.end, glued=True)
        self.tokens[self.at : self.at + 1] = [Token(NUMBER, left, left, token.start, half, token.glued), middle, last]
        self._add("num", self.at + 1, Decimal(left))
        return True

    def _number(self, value: Decimal, end: int, *, spoken_words: bool, possessive: bool) -> None:
        """A number with its unit, a span ago, an animal by possessive, or a bare number."""
        if self._key(end) == "f" and value <= MOST_FALLS:
            marks = FALLS if self._said_already("breed") else (WEANED_LABELS["f"] if self._said_already("wean") else NO_MARKS)
            if marks:
                self._add("num", end, value, spoken=spoken_words)
                self._add("word", end + 1, None, marks)
                return
        if not possessive:
            ago = ago_at(self.tokens, self.at) if self._key(end) in PERIODS and value == int(value) else None
            if ago:
                self._add("date", ago[1], ago[0])
                return
            if self._measured(value, end, spoken=spoken_words):
                return
        possessive = (
            possessive or (self._key(end) == "s" and self.tokens[end].glued) or (self._key(end) == "'" and self._key(end + 1) == "s")
        )
        if possessive and value == int(value):
            known = self.herd.tagged(str(int(value)))
            self._animal((known.tag,) if known else (), end)
            self.items[-1].unit = "possessive"
            if not known:
                self.items[-1].value = Mention((), str(int(value)))
            return
        if spoken_words and (self._price_words(value, end) or self._clock_words(value, end)):
            return
        self._bare(value, end, spoken_words=spoken_words)

    def _bare(self, value: Decimal, end: int, *, spoken_words: bool) -> None:
        """A number that nothing behind it changes: an hour behind somebody's errand, else itself, or the tag of the animal before it."""
        hour = value == int(value) and 0 < value <= NOON and self._key(self.at - 1) in {"at", "around", "by"}
        if hour and (self._key(end) in BESIDE_HOUR or (self._key(end) in AFTER_ERRAND and self._errand())):
            self._add("time", end, f"{int(value):02d}:00")
            return
        if self._key(end) == "+" and self._key(end + 1)[:1].isdigit():
            self._add("sum", end + 2)
            return
        below = (
            self.items
            and self.items[-1].said == "-"
            and self.tokens[self.at].glued
            and not self.items[-1].glued
            and len(self.items) > 1
            and self.items[-2].sort == "word"
        )
        self._add("sum" if below else "num", end, value, spoken=spoken_words)
        last = self.items[-1]
        if len(self.items) > 1 and value == int(value) and not spoken_words:
            before = self.items[-2] if self.items[-2].sort != "mark" else (self.items[-3] if len(self.items) > 2 else self.items[-2])
            between = self.items[-2] if before is not self.items[-2] else None
            if before.sort == "animal" and (between is None or between.said in {"(", ",", "-", "#"}):
                self._tag_behind(before, last)

    def _errand(self) -> bool:
        """`went out with my coffee at six and`: behind somebody's errand `at` tells the hour."""
        return any(item.said in ERRANDS for item in self.items[-ERRAND_ITEMS:]) and not any(
            item.marks & {"weigh", "sell", "list", "purchase"} for item in self.items[-ERRAND_ITEMS:]
        )

    def _measured(self, value: Decimal, end: int, *, spoken: bool = False) -> bool:
        """The amount with the unit that stands behind it; no where none does."""
        item = measure(self.tokens, self.at, value, end)
        if item is None:
            return False
        item.spoken = spoken
        self._take(item)
        return True

    def _price_words(self, value: Decimal, end: int) -> bool:
        """`nineteen fifty a bag`: dollars and cents."""
        cents = amount_at(self.tokens, end) if end < len(self.tokens) and self._key(end) in TENS else None
        if cents is None or not cents[2] or value != int(value) or not TENS_LEAST <= cents[0] < CENTS:
            return False
        if self._key(cents[1]) not in {"each", "apiece"} and (self._key(cents[1]), self._key(cents[1] + 1)) not in {
            ("a", "bag"),
            ("a", "piece"),
            ("per", "bag"),
        }:
            return False
        self._add("money", cents[1], int(value * CENTS + cents[0]))
        return True

    def _clock_words(self, value: Decimal, end: int) -> bool:
        """`at six thirty this morning`, `six thirty in the evening`: hours and minutes."""
        said = amount_at(self.tokens, end) if end < len(self.tokens) and self._key(end) in NUMBER_WORDS else None
        if said is None or not (0 < value <= NOON and TENS_LEAST <= said[0] < MINUTES) or said[0] != int(said[0]):
            return False
        after, last = self._key(said[1]), said[1]
        half = after if after in {"am", "pm"} else ""
        last += bool(half)
        if after == "in" and self._key(last + 1) == "the" and self._key(last + 2) in DAY_HALVES:
            half, last = DAY_HALVES[self._key(last + 2)], last + 3
        told_when = self._key(self.at - 1) in {"at", "around"} and after in BESIDE_HOUR | {"", ".", ","}
        if not (half or told_when) or any(item.marks & {"weigh", "sell", "list", "purchase"} for item in self.items):
            return False
        self._add("time", last, clock_time(f"{int(value)}:{int(said[0])}", half))
        return True

    def _tag_behind(self, before: Item, last: Item) -> None:
        """`Juno 14`, `Juno (14)`, `the opal doe, 15`: the number only repeats or settles the animal."""
        known = self.herd.tagged(str(int(last.value)))
        times = self._key(last.end) == "x" and self.tokens[last.end].glued  # "bred 15 to Flint 3x"
        if known is None or known.tag not in before.value.tags or times or self._key(last.end) in COUNTED:
            return
        if (
            before.value.tags
            and (known.tag == before.value.tag or len(before.value.tags) > 1)
            and not before.value.said.replace("doe", "").replace("buck", "").strip().isdigit()
        ):
            before.value = Mention((known.tag,), before.value.said, before.value.sex)
            before.end = last.end
            del self.items[self.items.index(before) + 1 :]

    def _slash(self, token: Token) -> None:
        beside = (self.items and "breed" in self.items[-1].marks) or "breed" in self.lexicon.single.get(self._key(self.at + 1), NO_MARKS)
        if beside and self._pair_of_animals(token):
            return
        found = amount_at(self.tokens, self.at)
        if found:
            item = measure(self.tokens, self.at, found[0], found[1])
            if item is None and self.items and self.items[-1].sort == "cup":
                self.items[-1].value += found[0]  # "1 cup 1/2"
                self.at = found[1]
                return
            if (
                item is None
                and self.items
                and (self.items[-1].sort in {"animal", "num"} or self.items[-1].marks)
                and self._said_already("cup")
            ):
                self._add("cup", found[1], found[0])  # "does 1 cup, bucks 1/2"
                return
            if item is None and self._key(found[1]) in {"a", "of"}:
                of_a = found[1] + (2 if self._key(found[1] + 1) == "a" else 1)  # "3/4 of a cup"
                item = measure(self.tokens, self.at, found[0], of_a) if self._key(of_a) in {"cup", "pound", "lb"} else None
            if item and item.sort in {"weight", "cup", "dose"}:
                self._take(item)
                return
            if self._key(self.at - 1) in FEEDING:
                self._number(found[0], found[1], spoken_words=False, possessive=False)  # "bucks get 3/4" is no day
                return
        self._date()

    def _pair_of_animals(self, token: Token) -> bool:
        """`bred 15/7`: a doe and a buck."""
        left, _, right = token.key.partition("/")
        known = [self.herd.tagged(part) for part in (left, right)]
        if {animal.sex for animal in known if animal} != {"doe", "buck"}:
            return False
        half = token.start + len(left)
        middle = Token("p", "/", "/", half, half + 1, glued=True)
        last = Token(NUMBER, right, right, half + 1, token.end, glued=True)
        self.tokens[self.at : self.at + 1] = [Token(NUMBER, left, left, token.start, half, token.glued), middle, last]
        self._add("num", self.at + 1, Decimal(left))
        return True

    def _clock(self, token: Token) -> None:
        following = self._key(self.at + 1)
        half, end = "", self.at + 1
        if following in {"am", "pm"}:
            half, end = following, self.at + 2
        elif following in {"a", "p"} and self._key(self.at + 2) in {"m", "."}:
            half, end = following + "m", self.at + 3
            while self._key(end) in {"m", "."} and end < self.at + 5 and self.tokens[end].glued:
                end += 1
        time = clock_time(token.key, half)
        before = self._key(self.at - 1)
        beside_date = bool(self.items) and any(item.sort == "date" for item in self.items[-2:])
        if time and (half or before in TIME_FIRST or beside_date):
            self._add("time", end, time)
        else:
            self._add("clock", self.at + 1, token.key)

    def _pair(self, token: Token) -> None:
        sign = "#" if "#" in token.key else "-"
        left, _, right = token.key.partition(sign)
        end = self.at + 1
        if (
            sign == "-"
            and right.isdigit()
            and self.items
            and self.items[-1].sort == "word"
            and int(right) >= OUNCES_IN_POUND
            and int(left) <= NOON
        ):
            self._add("date", end, Said("numeric", int(left), int(right)))  # `bred 11-19`
            return
        if self._key(end) in POUNDS_OR_OUNCES:
            end += 1
            if self._key(end) in OZ:
                end += 1
        elif self._key(end) in {"days", "day", "weeks", "week", "wks", "months"} and sign == "-":
            self._add("span", end + 1, (int(left), "range"))
            return
        self._add("pair", end, (Decimal(left), Decimal(right)))
        self.items[-1].unit = sign


def _named(phrase: str, marks: frozenset[str]) -> tuple[str | None, str | None] | None:
    """The handbook's names of the colour and the breed that a phrase stands for."""
    if "color" not in marks and "breed_name" not in marks:
        return None
    color = color_words().get(phrase) if "color" in marks else None
    breed = breed_words().get(phrase) if "breed_name" in marks else None
    if breed and color is None:
        color = breed_color_words().get(phrase, (None, None))[1]
    return color, breed
