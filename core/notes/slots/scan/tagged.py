"""Animals told by name or tag: `Juno`, `R21`, `doe 14`, `are twenty two`, `Juno (14)`."""

from __future__ import annotations

from decimal import Decimal
from typing import Final

from core.herd.state import folded
from core.notes.slots.animals import Mention
from core.notes.slots.dates import DATE_FIRST, MONTHS
from core.notes.slots.items import COUNTED, KG, LB, OZ, Item
from core.notes.slots.measures import amount_at
from core.notes.slots.numbers import FRACTIONS, HOMOPHONES, NUMBER_WORDS, POSSESSIVE, TENS
from core.notes.slots.scan.described import OWNED_SEX, Described
from core.notes.slots.tokens import NUMBER, WORD, Token

SEX_WORDS: Final = {
    "doe": "doe", "dough": "doe", "doh": "doe", "female": "doe", "buck": "buck", "buk": "buck", "buc": "buck", "bck": "buck", "male": "buck",
    "book": "buck", "girl": "doe", "boy": "buck", "dow": "doe",
}  # fmt: skip
#: Sex words that are other words too: only before a number or a name.
DOUBTFUL_SEX: Final = frozenset({"book", "girl", "boy", "dow", "male", "female"})
PLURAL_SEX: Final = {"does": "doe", "bucks": "buck", "dows": "doe"}
HEARD_LETTERS: Final = {"are": "R", "our": "R", "ar": "R", "see": "C", "sea": "C", "be": "B", "bee": "B"}
NUMBER_FIRST: Final = frozenset({*NUMBER_WORDS, *POSSESSIVE, *(FRACTIONS.keys() - {"third"}), "point", "dozen", "hundred"})
POUNDS_OR_OUNCES: Final = LB | OZ
MEASURED: Final = COUNTED | POUNDS_OR_OUNCES | KG
LETTERS_OF_TAG: Final = 3  # the most letters that a tag begins with
MONEY_WORDS: Final = frozenset({"dollar", "dollars"})


class Tagged(Described):
    """Animals told by name or tag: `Juno`, `R21`, `doe 14`, `are twenty two`, `Juno (14)`."""

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
            if self._key(at + 1) in MONEY_WORDS:
                return None  # "sold the black doe 60 dollars"
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
            if found and found[0] == int(found[0]) and self._key(found[1]) not in MONEY_WORDS:
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
                    self.items[-1].value, self.items[-1].said = Mention((), lettered[0]), lettered[0]
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
            self.items[-1].said = self.items[-1].value
        return True

    def _split_off(self, token: Token, letters: int) -> None:
        """Part a word behind its first letters."""
        middle = token.start + letters
        rest = token.key[letters:]
        self.tokens.insert(self.at + 1, Token(WORD, rest, rest, middle, token.end, glued=False))
        token.key = token.text = token.key[:letters]
        token.end = middle

    def _moved_to(self) -> bool:
        """`mv 31 D2`: a cage behind the animal that is moved."""
        return len(self.items) > 1 and "move" in self.items[-2].marks

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
