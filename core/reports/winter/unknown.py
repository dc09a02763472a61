"""What the plan did not know, and would have used: each with the note that tells it."""

from __future__ import annotations

from functools import lru_cache

from core.herd.questions import age_days
from core.herd.settings import cages, mouths
from core.reports.evidence import Evidence
from core.reports.feeding import cents_a_gram
from core.reports.winter.eating import air_of
from core.words import count


@lru_cache(maxsize=4)
def unknown(barn: Evidence) -> tuple[str, ...]:
    """In short phrases, the weightiest first."""
    settings = barn.herd.settings
    weaned = [one for one in barn.living if barn.stages[one.key] != "kit"]
    unweighed = sum(1 for one in weaned if not one.weights)
    ageless = sum(1 for one in weaned if age_days(one, barn.today) is None)
    found = (
        (cages(settings) is None and mouths(settings) is None, "how many cages or mouths (setting cages is 12)"),
        (not cents_a_gram(barn.herd)[1], "what feed costs (feed is 22 a bag)"),
        (barn.stock is None, "what is in the bin (120 lb feed left)"),
        (not air_of(barn).by, "how cold the nights get (winter nights are 10F)"),
        (bool(unweighed), f"the weight of {count(unweighed, 'animal')}"),
        (bool(ageless), f"the age of {count(ageless, 'animal')}"),
    )
    return tuple(text for missing, text in found if missing)
