"""How a word is said that no dictionary has: a rabbit's name, letter by letter, and the few words of the barn that the dictionary lacks.

The sounds are the ARPAbet of the CMU dictionary. The rules are rough; a name that they get wrong is one the second ear does not know,
so that its note is shown and not saved by itself.
"""

from __future__ import annotations

from typing import Final

#: Words of the barn, spelled out by hand.
BARN: Final = {
    "hocks": "HH AA K S",
    "hock": "HH AA K",
    "ivermectin": "AY V ER M EH K T IH N",
    "mastitis": "M AE S T AY T AH S",
    "palpated": "P AE L P EY T AH D",
    "rebred": "R IY B R EH D",
    "snuffles": "S N AH F AH L Z",
    "runt": "R AH N T",
    "kindles": "K IH N D AH L Z",
    "wormed": "W ER M D",
}
#: Letters to sounds, the longest first.
SOUNDS: Final = {
    "tch": "CH", "sch": "SH", "igh": "AY", "ch": "CH", "sh": "SH", "th": "TH", "ph": "F", "wh": "W", "ck": "K", "qu": "K W", "ng": "NG", "ee": "IY", "ea": "IY",
    "oo": "UW", "ou": "AW", "ow": "OW", "oy": "OY", "oi": "OY", "ai": "EY", "ay": "EY", "au": "AO", "aw": "AO", "ie": "IY", "ar": "AA R", "er": "ER", "ir": "ER", "ur": "ER",
    "or": "AO R", "ll": "L", "ss": "S", "tt": "T", "nn": "N", "mm": "M", "pp": "P", "rr": "R", "ff": "F", "dd": "D", "bb": "B", "gg": "G", "zz": "Z",
    "a": "AE", "b": "B", "c": "K", "d": "D", "e": "EH", "f": "F", "g": "G", "h": "HH", "i": "IH", "j": "JH", "k": "K", "l": "L", "m": "M", "n": "N", "o": "AA", "p": "P",
    "q": "K", "r": "R", "s": "S", "t": "T", "u": "AH", "v": "V", "w": "W", "x": "K S", "y": "IY", "z": "Z",
}  # fmt: skip
LONGEST: Final = 3
SILENT_E_FROM: Final = 4  # letters: `hazle` ends in no sound of its own, `zoe` in one


def sounds(word: str) -> str:
    """The sounds of a word; empty where it has no letter that is said."""
    if word in BARN:
        return BARN[word]
    letters = "".join(letter for letter in word.lower() if letter in SOUNDS)
    if len(letters) >= SILENT_E_FROM and letters.endswith("e") and letters[-2] not in "aeiou":
        letters = letters[:-1]
    if letters.endswith("a"):
        return " ".join(filter(None, (_said(letters[:-1]), "AH")))
    return _said(letters)


def _said(letters: str) -> str:
    found: list[str] = []
    at = 0
    while at < len(letters):
        length = next(size for size in range(LONGEST, 0, -1) if letters[at : at + size] in SOUNDS)
        found.append(SOUNDS[letters[at : at + length]])
        at += length
    return " ".join(found)
