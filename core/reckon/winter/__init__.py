"""Who stays the winter: all animals weighed at once against cages, mouths, feed and the matings of spring."""

from core.reckon.winter.types import Candidate, Change, Choice, Kin, Limits, Mating, Price, Unfit

__all__ = ["Candidate", "Change", "Choice", "Kin", "Limits", "Mating", "Price", "Unfit"]
