"""A language model of given sentences: how likely a word is after the two before it, in the form that recognisers read (ARPA).

Absolute discounting: each count gives up the same share to words not seen there, as Ney, Essen and Kneser describe it ("On
structuring probabilistic dependences in stochastic language modelling", 1994; cited from memory).
"""

from __future__ import annotations

import math
from collections import Counter, defaultdict
from collections.abc import Iterable, Iterator
from typing import Final

#: What each count gives up.
DISCOUNT: Final = 0.5
ORDER: Final = 3
BEGIN, END = "<s>", "</s>"
#: As good as never, as a logarithm of ten.
NEVER: Final = -99.0

Gram = tuple[str, ...]


def arpa(sentences: Iterable[str]) -> str:
    """The model as a file's text."""
    counts = _counts(sentences)
    followers = _followers(counts)
    chances = _chances(counts, followers)
    lines = ["\\data\\", *(f"ngram {order}={len(counts[order])}" for order in range(1, ORDER + 1)), ""]
    for order in range(1, ORDER + 1):
        lines += [f"\\{order}-grams:", *_lines(sorted(counts[order]), chances, followers, last=order == ORDER), ""]
    return "\n".join([*lines, "\\end\\", ""])


def _counts(sentences: Iterable[str]) -> dict[int, Counter[Gram]]:
    """How often each word, pair and triple occurs."""
    counts: dict[int, Counter[Gram]] = {order: Counter() for order in range(1, ORDER + 1)}
    for sentence in sentences:
        words = (BEGIN, *sentence.split(), END)
        for order, counted in counts.items():
            counted.update(words[at : at + order] for at in range(len(words) - order + 1))
    return counts


def _followers(counts: dict[int, Counter[Gram]]) -> dict[Gram, tuple[int, int]]:
    """Of each context: how often something followed, and how many different words that were."""
    found: defaultdict[Gram, list[int]] = defaultdict(lambda: [0, 0])
    for counted in counts.values():
        for gram, times in counted.items():
            if gram != (BEGIN,):
                found[gram[:-1]][0] += times
                found[gram[:-1]][1] += 1
    return {context: (times, words) for context, (times, words) in found.items()}


def _spare(context: Gram, followers: dict[Gram, tuple[int, int]]) -> float:
    """The share of the context that is left to words not seen after it."""
    times, words = followers[context]
    return DISCOUNT * words / times


def _chances(counts: dict[int, Counter[Gram]], followers: dict[Gram, tuple[int, int]]) -> dict[Gram, float]:
    """The chance of each last word after those before it, mixed with its chance after one word fewer."""
    words = len(counts[1]) - 1
    chances: dict[Gram, float] = {}
    for order in range(1, ORDER + 1):
        for gram, times in counts[order].items():
            shorter = chances[gram[1:]] if order > 1 else 1 / words
            context = gram[:-1]
            chances[gram] = (times - DISCOUNT) / followers[context][0] + _spare(context, followers) * shorter
    chances[BEGIN,] = 0.0
    return chances


def _lines(grams: list[Gram], chances: dict[Gram, float], followers: dict[Gram, tuple[int, int]], *, last: bool) -> Iterator[str]:
    """A line a gram: its chance, its words, and what backing off from it costs."""
    for gram in grams:
        chance = math.log10(chances[gram]) if chances[gram] > 0 else NEVER
        back = "" if last or gram not in followers else f"\t{math.log10(_spare(gram, followers)):.4f}"
        yield f"{chance:.4f}\t{' '.join(gram)}{back}"
