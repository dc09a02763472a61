"""What a statement holds so far: an animal, a number, a value said of it, a row of animals."""

from __future__ import annotations

from core.herd.litters import the_litter
from core.notes.clauses.clause import Clause
from core.notes.clauses.joints import BESIDE, HARD, NUMBERS, OF_ITSELF, SAYING_NOTHING, SMALL, VALUES
from core.notes.clauses.scene import Scene
from core.notes.slots.dates import Said
from core.notes.slots.items import Item, marks_of


class Holdings:
    """What a statement holds so far: an animal, a number, a value said of it, a row of animals."""

    def __init__(self, scene: Scene, opens: frozenset[str]) -> None:
        self.scene = scene
        self.opens = opens
        self.clauses: list[Clause] = []
        self.header: Said | None = None  # the day of a heading, for all lines below it
        self.two_days: list[Item] = []  # a heading with more than one day: the next statement has to choose
        self.line: Said | None = None  # the day of a heading, for the rest of its line

    def _opens(self, items: list[Item]) -> frozenset[str]:
        return marks_of(items) & self.opens

    def _put_to_a_buck(self, items: list[Item]) -> bool:
        """`then I put 15 in with Flint`: a mating told without its verb."""
        beside = Clause(items, self.scene)
        sexes = {animal.sex for i in range(len(items)) if (animal := beside.known(i)) is not None and not beside.counted(i)}
        return sexes == {"doe", "buck"}

    @staticmethod
    def _ends_with_animal(clause: Clause) -> bool:
        """`weigh-in day, 31` goes on with `and 32 came in at ...`: the first of a row of animals."""
        i = len(clause.items) - 1
        return clause.known(i) is not None and clause.said(i - 1) in {",", ":", "-"}

    def _only_animals(self, clause: Clause) -> bool:
        """Whether the statement so far is nothing but a row of animals."""
        told = [i for i, item in enumerate(clause.items) if item.said not in SMALL and item.sort not in {"mark", "break"}]
        return len(told) > 1 and all(clause.known(i) is not None and not clause.counted(i) for i in told)

    def _has_numbers(self, clause: Clause) -> bool:
        mentioned = False
        for i in clause.placed(NUMBERS):
            item = clause.items[i]
            if not (item.spoken and item.value == 1) and clause.said(i + 1) != "of" and not item.said.startswith("day "):
                if mentioned or item.sort != "num" or not clause.known(i):
                    return True
                mentioned = True
        return False

    def _has_animal(self, clause: Clause) -> bool:
        return clause.holds("animal", "code") or any(not clause.counted(i) for i in clause.tags())

    def _has_value(self, clause: Clause, *, listing: bool = False) -> bool:
        """Whether the statement says something of its animal already; in a list further animals are nothing said."""
        places = clause.placed(VALUES)
        named = min([*clause.places("animal"), *clause.places("code"), *clause.tags()], default=len(clause.items))
        if any(i < named or (i > named and not (listing and self._listed(clause, i))) for i in places):
            return True
        return any(
            item.said == "+"
            or (item.marks and item.said not in SMALL and not item.marks <= SAYING_NOTHING and item.marks.isdisjoint(OF_ITSELF))
            for item in clause.items[named + 1 :]
            if item.sort != "num"
        )

    @staticmethod
    def _listed(clause: Clause, i: int) -> bool:
        """Whether the number is one more animal of a list."""
        return clause.said(i - 1) in {",", "and", "&"} and clause.known(i) is not None and not clause.counted(i)

    def _has_value_said(self, last: Clause) -> bool:
        """Whether a listed statement says something of its animal already."""
        return self._has_value(last) or not self._has_animal(last)

    def _begins_with_animal(self, items: list[Item], last: Clause | None, *, hard: bool) -> bool:
        """Whether a piece starts with an animal of its own, and says something of it."""
        for i, item in enumerate(items):
            if (
                item.said in SMALL
                or item.said in HARD
                or item.sort in {"date", "break"}
                or (item.said in {"doe", "buck", "tag", "on", "that"} and i < len(items) - 1)
            ):
                continue
            if item.sort in {"animal", "code"}:
                return len(items) - i > 1 or hard
            if item.sort != "num":
                return False
            beside = Clause(items[i : i + BESIDE], self.scene, None, last.marks if last else frozenset())
            return (
                beside.known(0) is not None
                and not beside.counted(0)
                and any(after.said not in SMALL or after.said == "ok" for after in items[i + 1 :])
            )
        return False

    def _buck_number(self, items: list[Item]) -> bool:
        """Whether a bare number that begins a piece is only a buck's: behind a birth it counts kits."""
        first = next((item for item in items if item.said not in SMALL and item.sort not in {"break", "mark"}), None)
        if first is None or first.sort != "num":
            return False
        animal = Clause([first], self.scene).known(0)
        return animal is not None and animal.sex == "buck" and any(item.marks & {"dead", "alive"} for item in items)

    @staticmethod
    def _tells_plainly(clause: Clause) -> bool:
        """`22 ok`, `9: eating well`: an animal, and words that no kind knows."""
        told = [i for i, item in enumerate(clause.items) if item.sort not in {"mark", "break", "date"}]
        if len(told) < 2 or clause.known(told[0]) is None:  # not a figure: an animal and a word
            return False
        word = clause.items[told[1]]
        return word.sort == "word" and (word.said in {"ok", "well"} or word.said not in SMALL)

    def _chore_told(self, clause: Clause) -> bool:
        """Whether a chore already names what it was done to."""
        return "chore_word" in clause.marks or self._has_animal(clause)

    def _done_for_another(self, last: Clause, had: frozenset[str]) -> bool:
        """`scrubbed her tray` is of the animal spoken of before, whoever is named next."""
        return "done" in had and "pronoun" in last.marks and not self._has_animal(last)

    def _nurses(self, clause: Clause) -> bool:
        """Whether the first animal of the statement has a litter: the kits under her are counted, and not just born."""
        animal = next((animal for i in range(len(clause.items)) if (animal := clause.known(i)) is not None), None)
        return animal is not None and the_litter(self.scene.herd, animal.key, self.scene.today) is not None

    def _count_alone(self, last: Clause, items: list[Item]) -> bool:
        """`Juno finally had them, nine, all pink`: a number between commas behind a birth that has none is how many."""
        told = [item for item in items if item.sort != "mark" and item.said not in SMALL]
        return len(told) == 1 and told[0].sort == "num" and len(last.places("animal")) == 1 and not self._has_numbers(last)
