"""The statements of a message, read one by one and weighed together: what nobody takes withholds the facts beside it and asks."""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise
from typing import Final

from core.herd.state import Animal
from core.notes.as_facts import ask_for, each_once, fact_of, remark_of, subject_told
from core.notes.clauses.asked import PRONOUN_SEX
from core.notes.clauses.clause import Clause
from core.notes.clauses.denied import counts_others, is_denied, is_tentative, is_yet_to_come, of_an_earlier_time
from core.notes.clauses.leftovers import unexplained
from core.notes.clauses.others import BEFALLEN, of_somebody_else
from core.notes.clauses.parentage import repeats_parents
from core.notes.clauses.plausible import doubted
from core.notes.clauses.scene import Found, Need, Scene, first_need
from core.notes.clauses.spared import LOSSES, spare
from core.notes.clauses.statements import statements
from core.notes.clauses.turns import told_on
from core.notes.clauses.typed import as_typed
from core.notes.clauses.unplaced import animal_about, misheard, too_much, unknown_verb, unplaced, unread_verb, what_they_mean, which_day
from core.notes.clauses.unreal import hangs_on
from core.notes.clauses.with_days import WELL
from core.notes.fact import Fact
from core.notes.grammar import BY_FIGURE, BY_MARK, FIGURES, OPENS, PLAIN, STATEMENT_KINDS, kinds_beginning
from core.notes.nothing_read import nothing_read
from core.notes.reading import Reading
from core.notes.slots.animals import Mention
from core.notes.slots.items import Item

NOT_YET: Final = frozenset({"yet", "so far"})
NOTHING: Final = frozenset({"no", "no kits", "nothing", "none", "no babies"})
BRINGING: Final = frozenset({"animal", "tagged"})
LEAVING: Final = frozenset({"died", "culled", "sold", "given_away"})
OF_THE_LIVING: Final = frozenset({"ailment", "fault", "temper", "condition"})
LEAST_TOLD: Final = 2  # not a figure: words that make a sentence about an animal


class Statements:
    """The statements of one message, read one by one with the animal of the one before."""

    def __init__(self, scene: Scene, items: list[Item], text: str) -> None:
        self.scene = replace(scene, newcomers={}) if scene.newcomers else scene
        self.text = text
        self.clauses = statements(items, self.scene, OPENS)

    def reading(self) -> Reading:
        """The facts of all statements, or the question."""
        carried: Mention | None = None
        for clause in self.clauses:
            clause.subject = self._by_pronoun(clause, carried)
            self._read(clause)
            carried = self._newcomer(clause) or self._subject_after(clause) or carried
        return self._together()

    def _by_pronoun(self, clause: Clause, carried: Mention | None) -> Mention | None:
        """The animal spoken of before; where `him` or `she` is of the other sex, the one beside it that fits."""
        animal = self.scene.herd.find(carried.tag) if carried is not None and carried.tag else None
        if animal is None or clause.before is None or "pronoun" not in clause.marks:
            return carried
        wanted = {sex for item in clause.items if (sex := PRONOUN_SEX.get(item.said))}
        if len(wanted) != 1 or animal.sex in wanted:
            return carried
        before = clause.before
        fitting = {
            mention.tag: mention
            for i in range(len(before.items))
            if (known := before.known(i)) is not None and known.sex in wanted and not before.counted(i) and (mention := before.mention(i))
        }
        return next(iter(fitting.values())) if len(fitting) == 1 else carried

    def _read(self, clause: Clause) -> None:
        if clause.beyond:
            clause.take(too_much(clause))
            return
        if (clause.before is not None and hangs_on(clause)) or ("question" in clause.marks and is_yet_to_come(clause)):
            clause.condition = clause.put_off = True
            return
        if (clause.has("tentative") and is_tentative(clause)) or (clause.marks & BEFALLEN and of_an_earlier_time(clause)):
            return
        if not clause.marks.isdisjoint(LOSSES):
            spare(clause)
        if clause.has("negation", "none") and is_denied(clause):
            return
        figures = not PLAIN.issuperset(sorts := clause.sorts())
        if figures and clause.overfull():
            clause.take(too_much(clause))
            return
        if clause.has("other_species") and counts_others(clause):
            return
        if (
            clause.marks & BEFALLEN
            and clause.marks.isdisjoint({"new", "gift"})
            and of_somebody_else(clause.items, spoken_of=clause.subject is not None)
        ):
            return
        if "child_of" in clause.marks:
            repeats_parents(clause)
        wanted = kinds_beginning(BY_MARK, clause.marks)
        if figures:
            wanted |= kinds_beginning(BY_FIGURE, clause.marks) | kinds_beginning(BY_FIGURE, sorts)
        while wanted:
            first = wanted & -wanted
            STATEMENT_KINDS[first.bit_length() - 1].read(clause)
            wanted ^= first
        if clause.found:
            doubted(clause)

    def _newcomer(self, clause: Clause) -> Mention | None:
        """`new doe 40 mini rex. she weighs 4-6`, `tattooed R31 out of 16, 2-3`: the animal that a statement brings onto the book is known from then on."""
        brought = [found for found in clause.found if found.fact.kind in BRINGING and found.need is None and found.values.get("tag")]
        for found in brought:
            tag = found.values["tag"]
            if self.scene.herd.find(tag) is None:
                self.scene.newcomers[tag] = Animal(key=tag, tag=tag, sex=found.values.get("sex"))
        last = brought[-1].values["tag"] if len(brought) == 1 == len(clause.found) else None
        return Mention((last,), last) if last in self.scene.newcomers else None

    @staticmethod
    def _subject_after(clause: Clause) -> Mention | None:
        for found in reversed(clause.found):
            if found.said is not None:
                return found.said
        explicit = clause.explicit()
        if explicit:
            return clause.mention(explicit[0])
        opening = clause.opening()
        if opening is not None and clause.known(opening) and not clause.counted(opening):
            return clause.mention(opening)
        lone = [i for i in clause.sorted_as("num") if clause.known(i) and not clause.counted(i)]
        return clause.mention(lone[0]) if len(lone) == 1 and not clause.found else None

    def _without_the_gone(self) -> None:
        """What is said of an animal that the same message takes off the book tells why it left, and is no fact of its own."""
        gone = {found.values.get("who") for clause in self.clauses for found in clause.found if found.fact.kind in LEAVING} - {None}
        for clause in self.clauses if gone else ():
            kept = [found for found in clause.found if found.fact.kind not in OF_THE_LIVING or found.values.get("who") not in gone]
            held = {id(item) for found in kept for item in found.used}
            clause.used -= {id(item) for found in clause.found if found not in kept for item in found.used} - held
            clause.found[:] = kept

    def _without_the_refused(self) -> None:
        """`bred 15 to Flint, she wouldn't lift`: a mating that the next breath takes back is only the refusal, of that buck."""
        for before, after in pairwise(self.clauses):
            refused = next((found for found in after.found if found.fact.kind == "refused"), None)
            if refused is None or after.explicit() or after.tags():
                continue
            tried = [
                found
                for found in before.found
                if found.fact.kind == "bred"
                and found.values.get("falls") is None
                and refused.values.get("buck") in {None, found.values.get("buck")}
                and found.values.get("doe") == refused.values.get("doe")
            ]
            if len(tried) == 1 and len(before.found) == 1:
                refused.values |= {"buck": tried[0].values.get("buck"), "on": tried[0].values["on"]}
                refused.need = first_need(refused.need, tried[0].need)
                before.found.clear()

    def _without_the_found(self) -> None:
        """What was lost and is told of in the next breath."""
        for before, after in pairwise(self.clauses):
            if "lose" in before.marks and before.found:
                told_on(before, after)

    def _together(self) -> Reading:
        self._without_the_gone()
        self._without_the_refused()
        self._without_the_found()
        founds = [found for clause in self.clauses for found in clause.found]
        if not founds:
            return nothing_read(self.clauses, self.scene, self.text)
        needs: list[tuple[Found, Need]] = []
        safe: list[Found] = []
        for clause in self.clauses:
            self._weigh(clause, len(founds), needs, safe)
        safe = each_once(safe)
        facts = tuple(fact_of(found) for found in safe)
        subject = subject_told([*safe, *(found for found, _ in needs)])
        if not needs:
            return Reading((*facts, *self._asides()), None, self._unread(), subject)
        chosen = needs[0]
        for found, need in needs[1:]:
            if first_need(chosen[1], need) is not chosen[1]:
                chosen = (found, need)
        rest = tuple(
            found
            for found, need in needs
            if found is not chosen[0] and need.wanted == chosen[1].wanted and need.why == chosen[1].why and found.said == chosen[0].said
        )
        return Reading(facts, ask_for(*chosen, rest), self._unread(), subject)

    def _weigh(self, clause: Clause, facts: int, needs: list[tuple[Found, Need]], safe: list[Found]) -> None:
        """Sort a statement's readings into the safe and those in need; what no reading explains puts all of them in need."""
        left = unexplained(clause, facts)
        verb = unread_verb(clause)
        for found in clause.found:
            need = found.need or misheard(found)
            if verb and need is None and not any(item.sort in FIGURES for item in left):
                need = unknown_verb(verb)
            if left and need is None:
                need = which_day(clause, found, left) if all(item.sort in {"date", "ordinal"} for item in left) else unplaced(left)
            if need is None:
                safe.append(found)
            else:
                needs.append((found, need))
        if not clause.found:
            left = [item for item in left if not self._told_of(item)]
        if not clause.found and left and self._matters(clause, left):
            needs.append(what_they_mean(clause, left))

    def _told_of(self, item: Item) -> bool:
        """`had 31 out on the lawn, his colour is ...`: whether a bare number is the animal that a fact beside it is about."""
        if item.sort != "num":
            return False
        animal = self.scene.words.tagged(str(item.value))
        return animal is not None and any(
            found.values.get(name) == animal.tag for clause in self.clauses for found in clause.found for name in ("who", "doe")
        )

    @staticmethod
    def _matters(clause: Clause, left: list[Item]) -> bool:
        """Whether numbers in a statement that nothing was read from may be the barn's; a sentence about something else is a remark."""
        plain = sum(1 for item in clause.items if item.sort == "word" and not item.marks)
        if clause.says(NOT_YET) and clause.says(NOTHING):
            return False  # "14 - day 32, no kits yet"
        known = all(item.sort == "num" and clause.known(clause.items.index(item)) is not None for item in left)
        if known and (clause.says(WELL) or clause.has("alive_and_well")) and not any(item.marks & OPENS for item in clause.items):
            return False  # "22 ok", "31 32 33 fine" among other lines
        if known and len(left) == 1 and left[0] is clause.items[clause.opening() or 0] and _sentence_of(clause):
            return False  # "12 nest clean"
        return (not clause.put_off and clause.marks.isdisjoint({"other_species", "tentative", "negation"})) and (
            plain <= 2 or any(item.sort in {"pair", "weight"} for item in left)
        )

    def _asides(self) -> tuple[Fact, ...]:
        """Statements with numbers that are about something else are kept as they were said."""
        kept = [
            clause for clause in self.clauses if not clause.found and (unexplained(clause) or (clause.explicit() and len(clause.items) > 2))
        ]
        return tuple(remark_of(as_typed(clause, self.text), clause.today, animal_about(clause)) for clause in kept)

    def _unread(self) -> str:
        words = [
            item.said
            for clause in self.clauses
            if clause.found
            for item in clause.items
            if item.sort == "word" and id(item) not in clause.used
        ]
        words += [
            item.said
            for clause in self.clauses
            if not clause.found and not unexplained(clause)
            for item in clause.items
            if item.sort not in {"mark", "break"}
        ]
        return " ".join(words)


def _sentence_of(clause: Clause) -> bool:
    """Whether two words or more are said of the animal that opens the statement, one of them no word of the barn."""
    words = [item for item in clause.items if item.sort == "word" and item.said not in {"the", "is", "a", "and"}]
    return len(words) >= LEAST_TOLD and any(not item.marks for item in words) and clause.marks & OPENS <= {"temper"}
