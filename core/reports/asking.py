"""Answers about the herd as it stands: open does, litters, weights, family, and the notes themselves."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import replace

from core.herd.litters import alive_now, litters_of, litters_sired, nursed_litter
from core.herd.matings import open_mating
from core.herd.settings import target_weight
from core.herd.state import Animal, Litter
from core.notes.journal import Entry, Note
from core.reply import Choice, Reply
from core.reports.behind import names
from core.reports.bucks import growth_merit
from core.reports.evidence import Evidence
from core.reports.family import family_problems, parents_note
from core.reports.flags import long_open
from core.reports.keep_or_cull import in_breed
from core.reports.litter_story import story
from core.reports.wording import age, begun, called, grams, more_or_less, short, tag_of, when
from core.words import count

#: Lines of a list that a phone takes.
LINES = 12  # not a figure: lines on a phone
NOTES = 8
PROBLEMS = 2  # not a figure: what fits under an answer


def first_lines(head: str, lines: Sequence[str], more: str = "more") -> Reply:
    """A list under its head, cut to what a phone shows."""
    left = len(lines) - LINES
    return Reply((head, *(begun(line) for line in lines[:LINES]), *((f"And {left} {more}.",) if left > 0 else ())))


def open_does(barn: Evidence, breed: str | None) -> Reply:
    """Does that could be bred: grown, not mated, with no litter under them."""
    found = grown_and_open(barn, breed)
    if not found:
        return Reply(("No doe is open: each grown one is bred or nurses.",))
    return first_lines(f"{count(len(found), 'open doe')}.", [_open_line(barn, one) for one in found])


def grown_and_open(barn: Evidence, breed: str | None) -> list[Animal]:
    """The does of `open_does` themselves."""
    return [
        one
        for one in barn.living
        if one.sex == "doe"
        and barn.stages[one.key] in {"junior", "senior"}
        and in_breed(one.breed, breed)
        and open_mating(barn.herd, one.key, barn.today) is None
        and nursed_litter(barn.herd, one.key, barn.today) is None
    ]


def _open_line(barn: Evidence, one: Animal) -> str:
    flagged = long_open(barn, one)
    return f"{short(one)}: {flagged.text if flagged else 'ready to be bred.'}"


def litters(barn: Evidence, animal: Animal | None, breed: str | None) -> Reply:
    """The litters under their does; or all litters of one animal."""
    if animal is not None:
        return litters_of_one(barn, animal)
    nursed = [
        litter
        for litter in sorted(barn.herd.litters.values(), key=lambda one: one.born_on)
        if litter.weaned_on is None and alive_now(litter) and in_breed(_breed(barn, litter.dam), breed)
    ]
    lines = [_litter_line(barn, litter) for litter in nursed]
    lines += [
        f"{kits} untagged of {tag_of(barn.herd, litter.dam)}, weaned, {age((barn.today - litter.born_on).days)} old"
        for litter, kits in barn.weaned_litters
    ]
    if not lines:
        return Reply(("No litters on the farm now.",))
    kits = sum(alive_now(litter) for litter in nursed)
    return first_lines(f"{count(len(nursed), 'litter')} with {count(kits, 'kit')} under the does.", lines)


def _breed(barn: Evidence, key: str) -> str | None:
    return barn.herd.animals[key].breed if key in barn.herd.animals else None


def _litter_line(barn: Evidence, litter: Litter) -> str:
    days = (barn.today - litter.born_on).days
    sire = f" by {tag_of(barn.herd, litter.sire)}" if litter.sire else ""
    return f"{tag_of(barn.herd, litter.dam)}: {count(alive_now(litter), 'kit')}{sire}, {age(days)} old"


def litters_of_one(barn: Evidence, animal: Animal) -> Reply:
    """Every litter that the animal bore or sired."""
    found = litters_of(barn.herd, animal.key) or litters_sired(barn.herd, animal.key)
    if not found:
        return Reply((f"{called(animal)} has no litter on the book.",))
    told = first_lines(f"{called(animal)}: {count(len(found), 'litter')}.", [story(barn, animal, litter) for litter in reversed(found)])
    return replace(told, choices=(Choice("Picture", f"picture of the litters of {animal.tag}"),))


def weights(barn: Evidence, animal: Animal | None, scope: str | None, breed: str | None) -> Reply:
    """One animal's weights, or the newest of the grow-outs (or of whom was asked for)."""
    if animal is not None:
        return weights_of_one(barn, animal)
    wanted = scope or "grow-outs"
    found = [one for one in barn.living if one.weights and _in(barn, one, wanted) and in_breed(one.breed, breed)]
    if not found:
        return Reply((f"No weights of {wanted} yet. Tell me one: 31 4-6",))
    lines = [_newest(barn, one) for one in sorted(found, key=lambda one: -one.weights[-1].grams)]
    return first_lines(f"Newest weights of {count(len(found), wanted.removesuffix('s') if wanted != 'all' else 'rabbit')}.", lines)


def _in(barn: Evidence, one: Animal, scope: str) -> bool:
    young = barn.stages[one.key] in {"grow-out", "kit"}
    return {"grow-outs": young, "all": True}.get(scope, not young and f"{one.sex}s" == scope)


def _newest(barn: Evidence, one: Animal) -> str:
    newest, settings = one.weights[-1], barn.herd.settings
    at = f" at {age((newest.on - one.born).days)}" if one.born else f" {when(newest.on, barn.today)}"
    found = barn.grown(one)
    young = barn.stages[one.key] in {"grow-out", "kit"}
    mates = (
        f", {more_or_less(settings, found.grams - found.expected)} its herd mates" if young and found and found.expected is not None else ""
    )
    return f"{short(one)}: {grams(settings, newest.grams)}{at}{mates}"


def weights_of_one(barn: Evidence, animal: Animal) -> Reply:
    """All weights of one animal, the newest first."""
    settings = barn.herd.settings
    if not animal.weights:
        return Reply((f"{called(animal)} was never weighed. Tell me: {animal.tag} 4-6",))
    lines = []
    for one in reversed(animal.weights):
        at = f" at {age((one.on - animal.born).days)}" if animal.born else ""
        lines.append(f"{when(one.on, barn.today)}: {grams(settings, one.grams)}{at}")
    target = (
        f" {grams(settings, target_weight(settings, animal.breed))} is wanted at 16 weeks."
        if barn.stages.get(animal.key) == "grow-out"
        else ""
    )
    told = first_lines(f"{called(animal)}: {count(len(lines), 'weight')}.{target}", lines, "earlier")
    return replace(told, choices=(Choice("Picture", f"picture of {animal.tag}"),))


def pedigree(barn: Evidence, animal: Animal, entries: Iterable[Entry] = ()) -> Reply:
    """Parents and grandparents, how inbred, and what it passes on."""
    herd = barn.herd
    if not animal.sire and not animal.dam:
        return Reply((f"{called(animal)}: no parents on the book. Tell me: {parents_note(animal)}",))
    lines = []
    for name, key in (("Sire", animal.sire), ("Dam", animal.dam)):
        parent = herd.animals.get(key or "")
        if parent is not None:
            above = " x ".join(tag_of(herd, one) or "unknown" for one in (parent.sire, parent.dam))
            lines.append(f"{name}: {short(parent)}" + (f" ({above})" if parent.sire or parent.dam else ""))
        else:
            lines.append(f"{name}: {key or 'unknown'}")
    inbred = barn.kinship.inbreeding.get(animal.key, 0.0)
    depth = barn.book.generations(animal.key)
    lines.append(f"Inbreeding {inbred * 100:.1f} %, all ancestors known for {count(depth, 'generation')}.")
    value, _, _ = growth_merit(barn, animal)
    if value is not None:
        lines.append(f"Passes on growth {more_or_less(herd.settings, value)} the breed's mean here.")
    for problem in family_problems(barn, entries)[:PROBLEMS]:
        lines += problem.lines(barn)
    return Reply((f"{called(animal)}.", *lines))


def taken_back(notes: Iterable[Note]) -> Reply:
    """What the last undo took back, in the words that told it then."""
    undoing = [note for note in notes if note.reverses and note.facts and note.facts[0].kind == "undo"]
    if not undoing:
        return Reply(("Nothing was taken back yet.",))
    last = undoing[-1]
    return Reply((*last.reply.split("\n"), f"That was \u201c{' '.join(last.text.split())}\u201d. To have it back, send the note again."))


def journal(barn: Evidence, entries: Iterable[Entry], animal: Animal | None) -> Reply:
    """The last notes, or the last about one animal. Questions are no notes."""
    told = (one for one in entries if one.fact.kind != "query")
    found = {one.note.id: one.note for one in told if animal is None or names(one, animal.tag)}
    notes = sorted(found.values(), key=lambda one: one.at)
    about = f" about {short(animal)}" if animal else ""
    if not notes:
        return Reply((f"No notes{about} yet.",))
    lines = [f"{begun(when(one.at.date(), barn.today))}, {one.author}: {' '.join(one.text.split())}" for one in reversed(notes[-NOTES:])]
    return Reply((f"The last of {count(len(notes), 'note')}{about}:", *lines))
