"""A message as it is read: without what a terminal, a phone or a web page put around the words."""

from __future__ import annotations

import re
import unicodedata
from html import unescape
from typing import Final

_ESCAPES: Final = re.compile(r"\x1b\[[0-?]*[ -/]*[@-~]|\x1b[@-_]")
_MARKUP: Final = re.compile(r"</?[a-zA-Z][^<>]{0,40}>")
#: `(1) 14 kindled 6; (2) R22 sold`: the numbers of a list.
_NUMBERED: Final = re.compile(r"(^|[;:\n]\s*)\((\d{1,2})\)(?=\s+\S)")
#: `juno &amp; clover`: what a web page makes of a sign.
_ENTITY: Final = re.compile(r"&#?[a-zA-Z0-9]{2,6};")
#: Boxes as phones draw them and as keyboards do, ticked or not, at the head of a line.
_TICKS: Final = re.compile(r"(?m)^([-*\s]*)[\u2705\u2713\u2714]\ufe0f?")
_CROSSES: Final = re.compile(r"(?m)^([-*\s]*)[\u274c\u2717\u2718]\ufe0f?")
_ROUND_BOX: Final = re.compile(r"(?m)^([-\s]*)\(([ xX])\)(?=\s)")
#: `seven kits new line doe sixteen ...`: the end of a line, said aloud.
_LINE_SAID: Final = re.compile(
    r"(?<!\ba)(?<!\bthe)(?<!\bour)(?<!\bmy)[,.]? [Nn]ew ?line[,.]?(?= (?!for |of |from |in |on |to |is |was |that ))"
)
_SPACES: Final = re.compile(r"[^\S\n]+")
_VULGAR: Final = re.compile(r"(\d?)\s?([\u00bc-\u00be\u2150-\u215e])")
_PLAIN: Final = str.maketrans(
    {
        "\u2018": "'", "\u2019": "'", "\u02bc": "'", "`": "'", "\u00b4": "'", "\u201c": '"', "\u201d": '"', "\u2013": "-", "\u2014": " - ",
        "\u2212": "-", "\u2011": "-", "\u2044": "/", "\u00d7": "x", "\u2192": ">", "\u2022": "\n", "\u00b7": "\n", "\u00a0": " ", "*": " ",
        "_": " ", "\u200b": "", "\u2026": " . ", "\r": "\n", "\u2028": "\n", "\u2029": "\n",
        "\u2611": "[x] ", "\u2612": "[x] ", "\u2610": "[ ] ", "\u25a1": "[ ] ", "\u2b1c": "[ ] ", "\U0001f532": "[ ] ", "\u3003": '"',
    }
)  # fmt: skip
_DROPPED: Final = frozenset({"Cc", "Cf", "So", "Sk", "Cn", "Co", "Cs", "Mn"})


#: Half of the day as dictation types it: `five thirty p m`, `at 6 a m`.
_HALF_SAID = re.compile(r"(?<=[\dy-] )([ap]) m\b(?! \d)|(?<=[enoxrvt] )([ap]) m\b(?=\W*(?:to\b|$|\n))", re.IGNORECASE)


def cleaned(text: str) -> str:
    """The text with plain quotes, dashes, digits and fractions; terminal codes, zero-width signs and emoji are gone."""
    if "&" in text and ";" in text:
        text = _ENTITY.sub(lambda found: unescape(found.group()), text)
    if text.isascii():
        plain = text.replace("`", "'").replace("*", " ").replace("_", " ") if "`" in text or "*" in text or "_" in text else text
        if not plain.replace("\n", "").isprintable():
            plain = "".join(_kept(sign) for sign in _ESCAPES.sub("", plain).replace("\r", "\n"))
    else:
        plain = _plain_unicode(text)
    if "(1)" in plain:
        plain = _unnumbered(plain)
    if "( )" in plain or "(x)" in plain or "(X)" in plain:
        plain = _ROUND_BOX.sub(r"\1[\2]", plain)
    if "<" in plain:
        plain = _MARKUP.sub(" ", plain)
    if "ew line" in plain or "ewline" in plain:
        plain = _LINE_SAID.sub("\n", plain)
    if " m" in plain:
        plain = _HALF_SAID.sub(lambda found: f"{found[1] or found[2]}m", plain)
    if "  " in plain or not plain.isascii():
        plain = _SPACES.sub(" ", plain)
    return plain.strip()


def _unnumbered(text: str) -> str:
    """The text without the numbers of a list, which count from one; any other number in brackets is the note's own."""
    expected = 1

    def bare(found: re.Match[str]) -> str:
        nonlocal expected
        if int(found.group(2)) != expected:
            return found.group()
        expected += 1
        return found.group(1)

    return _NUMBERED.sub(bare, text)


def _plain_unicode(text: str) -> str:
    if _TICKS.search(text):
        text = _CROSSES.sub(r"\1[ ] ", _TICKS.sub(r"\1[x] ", text))
    plain = _VULGAR.sub(_fraction, _ESCAPES.sub("", text)).translate(_PLAIN)
    return "".join(_kept(sign) for sign in unicodedata.normalize("NFKC", plain).translate(_PLAIN))


def _kept(sign: str) -> str:
    """The sign, a space for a symbol that stood between words, nothing for what nobody sees."""
    if sign in "\n\t":
        return "\n" if sign == "\n" else " "
    category = unicodedata.category(sign)
    if category not in _DROPPED or sign in "^`":
        return sign
    return " " if category in {"So", "Sk"} and sign != "\u00b0" else ("\u00b0" if sign == "\u00b0" else "")


def _fraction(found: re.Match[str]) -> str:
    """A vulgar fraction as `3 3/4` or `1/2`."""
    parts = unicodedata.normalize("NFKC", found.group(2)).replace("\u2044", "/")
    return f"{found.group(1)} {parts} " if found.group(1) else f" {parts} "
