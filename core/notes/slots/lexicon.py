"""The words that a note is made of, what they do in it, and what a slip of the thumb or ear most likely stood for.

A phrase carries marks (`kindle`, `alive`, `litter`). Kinds declare their own phrases; those that several kinds share stand here.
One look in a table a word; only a word that nobody knows is compared with the rest.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from functools import lru_cache
from typing import Final

from core.notes.slots.common_words import COMMON
from core.notes.slots.numbers import NUMBER_WORDS, ORDINALS, POSSESSIVE

Marks = frozenset[str]
Phrase = tuple[tuple[str, ...], Marks]  # the words after the first, and what the phrase does
Phrases = Mapping[str, tuple[Phrase, ...]]  # first word -> its phrases, longest first

#: Shared phrases: mark -> phrases, parted by ` | `.
SHARED: Final = {
    "alive": "viable | wiggly | breathing | all live | alive and kicking | living and | thriving | moving around | alive | live | living | lived | survived | surviving | wiggling | wriggling | squirming | made it | livebirth | lives | alives"
    " | liveborn | live born | born alive | alive and well | doing fine | doing good | doing well",
    "figure_of_speech": "dead tired | dead asleep | dead quiet | dead calm | dead set | dead weight | dead on her feet | dead on his feet | dead to the world | playing dead | plays dead | played dead | play dead | dead serious | dead center | dead battery | dead end",
    "dead": "was dead | were dead | are dead | passed | passed away | nonviable | non viable | not viable | lifeless | perished | no heartbeat | not living | expired | didnt live | did not live | dead | died | stillborn | still born | doa | ded | deads | dies | born dead | didnt make it | did not make it | didnt survive"
    " | not alive | not breathing | deceased | stillborns | gone cold | stone cold | cold and stiff | stiff as a board",
    "born": "born | total | birthed | total born | in all | altogether | all told | all together",
    "aside": "quick list | the list | my list | a list | short list | little list | long list | losing their way | lose their way | losing her way | losing his way | lost their way | baby coat | baby fur | baby coats | runt of the litter | the runt of the litter | pick of the litter | the pick of the litter | worried sick | sick with worry | sick to my stomach | sick about it | sick over it | sick and tired | heartsick | not bad considering | not bad at all | considering he was | considering she was | considering how | wouldnt you know | wouldnt you know it | wouldnt you believe | if you ask me | dont you know | cant complain | couldnt be happier | couldnt believe it | cant believe it | no doubt | no doubt about it | no wonder | not to mention | if anyone asks | if anybody asks | if anyone wants | if anybody wants | in case anyone asks | no matter what | no matter who | no matter how | no matter where | tell you what | ill tell you what"
    " | breeding pen | breeding cage | breeding program | breeding stock | breeding season | breeding age | breeding line | breeding trio"
    " | if it isnt one thing its another | if its not one thing its another | one thing after another | as if | it is what it is"
    " | put on weight | put on some weight | put on so much weight | put on a lot of weight | put on a little weight | puts on weight"
    " | nearly forgot | almost forgot | nearly cried | almost cried | nearly fell over | almost fell over"
    " | feed scoop | feed room | feed dish | feed bowl | feed pan | feed cart",
    "people": "the kids | my kids | our kids | grandkids | the grandkids | 4h kids | neighbor kids | neighbors kids | some kids | kids in",
    "all": "every last one | every last one of | every last one of them | every last kit | every last | every single one of | every single kit | every one of | every one of them | every kit | all her kits | the lot | the whole lot | all | all of them | all of em | every single one | each and every one | all of those | every one | everyone | each one | both | every | whole",
    "none": "not a one | not one | not a single one | nary a one | not a single | nary one | none | nobody | neither | no",
    "kits": "little mites | poor mites | wee mites | fat bellies | full bellies | round bellies | pups | kiddos | childs | little fellas | little fellows | wee ones | kittens in the nest | bunny babies | babys | babbies | rabbit babies | baby rabbits | baby bunnies | baby rabbit | kits | kit | babies | baby | bunnies | kids | kid | ones | pinkies | newborns | little ones | bunnys | bunny | youngsters | young ones | buns | kitts | litter mates",
    "one_of": "one | one of",
    "child_of": "daughter of | son of",
    "litter": "bunch | brood | crew | gang | litter is | litter has | litter | litter of | litters | ltr | lttr | littermates",
    "buck_word": "buck | male | boy",
    "doe_word": "doe | female | girl | dough | doh | dam | mama | momma | lady",
    "bucks_word": "bucks | books | boys | males | buckling | bucklings",
    "does_word": "does | girls | females | dows | doelings | doese",
    "each": "each | ea | apiece | a bag | per bag | a piece | every bag | a pop",
    "per_day": "a day | per day | daily | each day | every day | day | every morning | each morning | morning and night",
    "negation": "cnt | no sign of | no signs of | no idea | had no idea | didnt know | not | not bred | hasnt | has not | didnt | did not | isnt | is not | wasnt | was not | never | havent | hadnt | doesnt | dont | cant"
    " | wont | wouldnt | couldnt | arent | no longer | nope | nor | werent",
    "tentative": "last litter | previous litter | past litter | earlier litter | litter before | january litter | february litter | march litter | april litter | may litter | june litter | july litter | august litter | september litter | october litter | november litter | december litter | must be | i bet | bet she | bet he | bet shes | bet hes | id guess | guessing | gotta be about | i may | we may | may sell | may cull | may keep | may replace | may retire | may review | may list | may wean | may give | may rebreed | may swap | may breed | may butcher | may try | may put | may move | i thought | had no idea | didnt even know | didnt know | never knew | might | maybe | perhaps | had planned on | had planned to | had meant to | had intended to | had hoped to | had wanted to | was all set to | were all set to | i said id | i said i would | i know i said | joking about | joked about | jokes about | kidding about | kidded about | teasing about | teased about | threatening to | threatened to | thinking about | thinking of | thought about | thought of | talked about | talking about | talked of | talk of | considering | may have to | may need to | wondering | if"
    " | possibly | tempted to | not sure if | should probably | probably should | may be | might be | could be | might have to | seems like"
    " | debating | someday | unless | almost | nearly | about to | ought to | should have | supposed to | hoping | hope | hopefully | wish"
    " | i wonder | normally | usually | typically | generally | the book says | the book said | book says | we thought | he thought | she thought | thought that | dreamed | dreamt | were going to | was going to | were planning to | was planning to | were gonna | was gonna | last year | last summer | last winter | last spring | years ago | year before last | would sell | would take | would let | would keep | would breed | would like to sell | i meant to | we meant to | meant to | once theyre | once shes | once hes | once they are | once she is | as soon as | could have sworn | couldve sworn | id have sworn | would have sworn | wouldve sworn | pretend | in theory | supposedly | rumor | expecting | expect | used to | would have | wouldve | shouldve | couldve | will see | better not",
    "question": "would somebody | could somebody | can somebody | would someone | could someone | can someone | can anybody | does anybody know | does anyone know | can i | can we | could i | could we | may i | is it ok to | is it okay to | how many | how much | who | whos | what | whats | why | when | whens | how | hows | which | where | wheres | can you | could you | would you | do we"
    " | do i | did i | did we | is there | are there | whose | should i | should we | am i | are we | anyone | any",
    "to": "to | w | with | under | onto | over to | into | in with",
    "from": "from | off | off of | out of | outta | ex | out from",
    "ago_age": "old | of age",
    "both_together": "the pair | for the pair",
    "pronoun": "she | shes | he | hes | her | him | it | his | hers | they | them | this one | that one",
    "small": "a bit | a bit of | bit of",
    "again": "again | another | one more",
    "no_count": "some | few | a few | several | bunch | a bunch | many | lots of | most | most of | couple more | a lot",
    "feed": "feed | fd | feed bill | feed bills | feed receipt | pellets | pellet | rabbit feed | rabbit pellets | rabbit pellet | grain | bunny feed | rabbit chow",
    "bag": "bag | bags | sack | sacks",
    "cage_word": "cage | pen | hutch | hole | crate | kennel | stall | cages",
    "other_species": "chicken | chickens | chick | chicks | hen | hens | rooster | roosters | duck | ducks | egg | eggs | goat | goats | pig | pigs"
    " | cow | cows | calf | calves | sheep | lamb | lambs | cat | cats | kitten | kittens | dog | dogs | puppy | puppies | turkey | turkeys"
    " | quail | goose | geese | bird | birds | bee | bees | horse | horses | mouse | mice | squirrel | squirrels | guinea | guineas | ducklings",
}  # fmt: skip

#: Real words that stand for a barn word only beside a number or an animal: heard or typed -> meant.
BESIDE_NUMBER: Final = {
    "bread": "bred", "lots": "lost", "wait": "weighed", "wade": "weighed", "waying": "weighing", "waits": "weighs", "weights": "weighs", "wean": "weaned",
    "wind": "weaned", "mist": "missed", "told": "sold", "called": "culled", "calling": "culled", "candled": "kindled", "least": "list",
    "kindle": "kindled", "find": "found", "bid": "bit", "cold": "cold", "way": "weighed", "ways": "weighs", "brent": "bred", "brad": "bred",
    "move": "moved", "form": "from", "fosters": "fostered", "faster": "fostered", "books": "bucks", "waned": "weaned", "al": "all", "lit": "litter",
}  # fmt: skip

#: Words that a thumb writes without their vowels, too short to be told by their slips.
THUMBED: Final = {
    "wldnt": "wouldnt", "wuldnt": "wouldnt", "woudnt": "wouldnt", "cldnt": "couldnt", "shldnt": "shouldnt", "dnt": "dont", "ddnt": "didnt", "wnt": "wont", "hsnt": "hasnt",
    "wsnt": "wasnt", "isn": "isnt", "didn": "didnt", "wasn": "wasnt", "hasn": "hasnt", "wouldn": "wouldnt", "frm": "from", "fr": "from", "nd": "and",
    "wth": "with", "bks": "bucks", "bxs": "boxes", "wght": "weight", "wghts": "weights", "remnd": "remind", "kindld": "kindled", "lst": "lost", "gav": "gave", "tak": "take", "sld": "sold", "skp": "skip", "btchrd": "butchered", "fostrd": "fostered", "trtd": "treated", "drsd": "dressed", "brdd": "bred", "wnd": "weaned", "kts": "kits", "bux": "bucks", "sael": "sale", "hav": "have", "ech": "each", "bgas": "bags", "lttr": "litter", "ltr": "litter", "wend": "weaned",
}  # fmt: skip

FOREIGN: Final = frozenset(
    """el la los las una unos del que con por para muy pero está hoy ayer coneja conejo conejos gazapos parió murió nació muertos vivos tiene le les des
    une est pas avec dans lapine lapin lapins mort morts mis bas aujourd hier née nés vivants der die das und ist nicht mit ein eine heute gestern
    häsin hat geworfen tot jungtiere lebend il lo gli che di coniglia ha partorito morti vivi oggi ieri o os uma não hoje ontem
    coelha coelho het een niet van konijn konijnen dood gisteren vandaag jongen gekregen króliczka urodziła zmarł кролик крольчиха родила""".split()  # noqa: SIM905 - a table of words
)
#: Of those, the ones that English has too; they count for nothing.
FOREIGN_SHARED: Final = frozenset("die has hat a an in me no as so was o bas pas mis van con los las lo ha mort il di tot est".split())  # noqa: SIM905 - a table of words

_UNITS: Final = """
    lb lbs pound pounds oz ounce ounces kg kilo kilos gram grams gm g ml cc cup cups dollars dollar degrees degree day days week weeks
    month months hour hours nite night today yesterday tomorrow tonight morning afternoon evening
""".split()  # noqa: SIM905 - a table of words
_CALENDAR: Final = """
    january february april june july august september october november december monday tuesday wednesday thursday friday saturday sunday christmas
""".split()  # noqa: SIM905 - a table of words
_VOWELS: Final = frozenset("aeiouy")
_KEYS: Final = {"q": "wa", "w": "qase", "e": "wsdr", "r": "edft", "t": "rfgy", "y": "tghu", "u": "yhji", "i": "ujko", "o": "iklp", "p": "ol", "a": "qwsz", "s": "awedxz", "d": "serfcx",
    "f": "drtgvc", "g": "ftyhbv", "h": "gyujnb", "j": "huikmn", "k": "jiolm", "l": "kop", "z": "asx", "x": "zsdc", "c": "xdfv", "v": "cfgb", "b": "vghn", "n": "bhjm", "m": "njk"}  # fmt: skip
NEAR_KEYS: Final[dict[str, frozenset[str]]] = {
    letter: frozenset(_KEYS.get(letter, "")) for letter in map(chr, range(ord("a"), ord("z") + 1))
}
SOUND_ALIKE: Final = ({"c", "k"}, {"c", "s"}, {"s", "z"}, {"d", "t"}, {"m", "n"})
SHORTEST_SLIP = 3  # letters: two swapped letters are seen in words this long
SHORTEST_CHANGE = 5  # letters: a letter missing, added or changed
SHORTEST_TWO = 8  # letters: two slips


#: Names that rabbits are given and that look like slips of barn words: Poppy is not poopy.
CALLED_SO: Final = frozenset({"poppy", "maple", "pepper", "bella", "stella", "benny", "socks"})


class Lexicon:
    """All phrases of all kinds, and every word in them."""

    def __init__(self, tables: Iterable[Mapping[str, str]]) -> None:
        found: dict[tuple[str, ...], set[str]] = {}
        for table in (SHARED, *tables):
            for mark, phrases in table.items():
                for phrase in phrases.split(" | "):
                    found.setdefault(tuple(phrase.split()), set()).add(mark)
        firsts: dict[str, list[Phrase]] = {}
        for words, marks in found.items():
            firsts.setdefault(words[0], []).append((words[1:], frozenset(marks)))
        self.phrases: Phrases = {word: tuple(sorted(rest, key=lambda each: -len(each[0]))) for word, rest in firsts.items()}
        self.single: dict[str, Marks] = {words[0]: frozenset(marks) for words, marks in found.items() if len(words) == 1}
        self.longer: dict[str, dict[str, tuple[Phrase, ...]]] = {}  # first word -> second word -> phrases, longest first
        for first, options in self.phrases.items():
            for option in options:
                if option[0]:
                    seconds = self.longer.setdefault(first, {})
                    seconds[option[0][0]] = (*seconds.get(option[0][0], ()), option)
        self.words = frozenset(word for words in found for word in words)
        self.known = (
            self.words
            | BESIDE_NUMBER.keys()
            | COMMON
            | CALLED_SO
            | NUMBER_WORDS.keys()
            | POSSESSIVE.keys()
            | ORDINALS.keys()
            | frozenset(_UNITS + _CALENDAR)
            | FOREIGN
        )
        meant = (
            self.words
            | NUMBER_WORDS.keys()
            | frozenset(_UNITS + _CALENDAR)
            | {"what", "with", "this", "have", "from", "about", "again", "nails"}
        )
        self._meant = sorted(word for word in meant if len(word) >= SHORTEST_SLIP and word.isalpha() and not _VOWELS.isdisjoint(word))
        self._single_meant = [_single(word) for word in self._meant]
        self.meant = lru_cache(4096)(self._closest)
        self._near = lru_cache(4096)(self._closest_all)

    def knows(self, word: str) -> bool:
        """Whether no slip is to be suspected in it."""
        return word in self.known

    def _closest(self, word: str) -> str | None:
        """The barn word that this unknown word most likely is; None if none is close or two are."""
        if word in self.known or not word.isalpha():
            return None
        if word in THUMBED or len(word) < SHORTEST_SLIP:
            return THUMBED.get(word)
        best = self._near(word)
        if not best or (len(best) > 1 and not self._one_meaning(best)):
            return None
        return best[0]

    def meant_before(self, word: str, following: str) -> str | None:
        """Of several near words the one that goes on with the next word: `stpped on` is `stepped on`, never `stopped on`."""
        if len(word) <= SHORTEST_SLIP or not word.isalpha():
            return None
        joined = [near for near in self._near(word) if following in self.longer.get(near, ())]
        return joined[0] if len(joined) == 1 else None

    def _closest_all(self, word: str) -> list[str]:
        """The barn words nearest to the word, within a slip of it (two in a long word)."""
        from rapidfuzz.distance import OSA  # noqa: PLC0415 - a note without slips never pays for it
        from rapidfuzz.process import extract  # noqa: PLC0415

        two = extract(word, self._meant, scorer=OSA.distance, score_cutoff=2, limit=None)
        distances = {near: distance for near, distance, _ in two if distance <= _slips(word, near)}
        if len(word) > SHORTEST_CHANGE:
            for _, distance, place in extract(_single(word), self._single_meant, scorer=OSA.distance, score_cutoff=1, limit=None):
                near = self._meant[place]
                if near not in distances and abs(len(near) - len(word)) <= _slips(word, near):
                    distances[near] = distance
        best = sorted(
            ((distance, _unlikely(word, near), near) for near, distance in distances.items() if _believable(word, near)),
            key=lambda each: (each[0], each[1], -len(each[2]), each[2]),
        )
        return [near for distance, other, near in best if (distance, other) == best[0][:2]]

    def _one_meaning(self, words: list[str]) -> bool:
        """Whether near words do the same in a note, or are forms of one."""
        marks = [frozenset().union(*(marks for rest, marks in self.phrases.get(word, ()) if not rest)) for word in words]
        return bool(frozenset.intersection(*marks)) or all(_same_word(words[0], word) for word in words)


def _slips(word: str, meant: str) -> int:
    """How many slips may lie between them."""
    return 2 if len(word) >= SHORTEST_TWO or len(meant) > SHORTEST_TWO else 1


def _believable(word: str, candidate: str) -> bool:
    """Whether a thumb or a bad speller makes the one of the other; short words may only have two letters swapped, or one doubled or dropped."""
    if _single(word) == _single(candidate):
        return True
    typed, meant = _difference(word, candidate)
    if typed == meant[::-1]:
        return True
    if word[0] != candidate[0]:
        return False
    if len(typed) > 1 or len(meant) > 1:
        return _skeleton(word) == _skeleton(candidate)
    if len(candidate) < SHORTEST_CHANGE:
        return (
            len(candidate) >= SHORTEST_SLIP
            and len(word) != len(candidate)
            and len(word) > SHORTEST_SLIP
            and _brushed(typed, word, candidate)
        )
    return not typed or (
        _brushed(typed, word, candidate)
        if not meant
        else meant in NEAR_KEYS.get(typed, "") or (typed in _VOWELS and meant in _VOWELS) or {typed, meant} in SOUND_ALIKE
    )


def _difference(word: str, candidate: str) -> tuple[str, str]:
    """What is left of both without what they begin and end with in common."""
    start = 0
    while start < min(len(word), len(candidate)) and word[start] == candidate[start]:
        start += 1
    end = 0
    while end < min(len(word), len(candidate)) - start and word[-1 - end] == candidate[-1 - end]:
        end += 1
    return word[start : len(word) - end], candidate[start : len(candidate) - end]


def _brushed(letter: str, word: str, candidate: str) -> bool:
    """Whether a letter too many lies on the keyboard beside one of its neighbours in the word."""
    at = next((i for i, (one, other) in enumerate(zip(word, candidate, strict=False)) if one != other), len(candidate))
    return any(near in NEAR_KEYS.get(letter, "") for near in word[max(0, at - 1) : at + 2] if near != letter)


def _skeleton(word: str) -> str:
    """The word without its vowels and doubled letters."""
    return word[0] + "".join(letter for letter in _single(word)[1:] if letter not in _VOWELS)


def _unlikely(word: str, candidate: str) -> int:
    """How unlikely a slip it is: letters doubled or swapped are the likeliest, another first letter the least."""
    if _single(word) == _single(candidate):
        return 0
    return 2 * int(candidate[0] != word[0]) + int(sorted(candidate) != sorted(word))


def _single(word: str) -> str:
    """The word with every doubled letter once."""
    return "".join(letter for letter, before in zip(word, " " + word, strict=False) if letter != before)


def _same_word(one: str, other: str) -> bool:
    """Whether both are forms of one word (`kit`, `kits`)."""
    return one.rstrip("s") == other.rstrip("s") or one[:4] == other[:4]
