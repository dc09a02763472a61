"""What share of a litter is still alive at an age, when some kits left before anybody could see: sold, fostered away, or not yet so old.

A kit that left counts as at risk until it left and as neither kept nor lost after. S(t) is the product over the days with a
death, up to t, of 1 - deaths / kits at risk; one that leaves on a day of death was still at risk that day.
Reference: Kaplan & Meier 1958, Journal of the American Statistical Association 53 (from memory); checked on the leukaemia
patients of Freireich et al. 1963.
"""

from __future__ import annotations

from bisect import bisect_right
from collections import Counter
from collections.abc import Callable, Iterable


def still_alive(ends: Iterable[tuple[float, bool]]) -> Callable[[float], float]:
    """The share still alive as a function of age, from each kit's last day on the book and whether it died then."""
    told = list(ends)
    deaths = Counter(day for day, died in told if died)
    gone = Counter(day for day, _ in told)
    days, shares, share, at_risk = [float("-inf")], [1.0], 1.0, len(told)
    for day in sorted(gone):
        if deaths[day]:
            share *= 1 - deaths[day] / at_risk
            days.append(day)
            shares.append(share)
        at_risk -= gone[day]
    return lambda age: shares[bisect_right(days, age) - 1]
