"""How long a large spreadsheet takes to move in: `python -m tests.bench.moving [ROWS]`.

Half of the rows are animals, a quarter litters, a quarter weights. Told: seconds to understand (a dry run), to record, and to take back.
"""

from __future__ import annotations

import random
import sys
import time
from datetime import UTC, date, datetime, timedelta
from pathlib import Path
from tempfile import TemporaryDirectory

from core.app import Brought, Message, Problem, open_book

NOW = datetime(2026, 11, 25, 13, 10, tzinfo=UTC)


def sheets(rows: int, seed: int = 1) -> list[tuple[str, bytes]]:
    """The three sheets."""
    draw = random.Random(seed)
    first = date(2020, 1, 1)
    tags = [f"A{number}" for number in range(rows // 2)]
    born = [first + timedelta(number * 2000 // len(tags)) for number in range(len(tags))]
    animals = ["Tag,Name,Sex,Breed,Color,DOB,Sire,Dam,Cage,Notes"]
    for number, tag in enumerate(tags):
        old = number - len(tags) // 10
        sire, dam = (tags[draw.randrange(old) // 2 * 2], tags[draw.randrange(old) // 2 * 2 + 1]) if old > 2 else ("", "")
        animals.append(f"{tag},Name {number},{'bd'[number % 2]},Mini Rex,opal,{born[number]},{sire},{dam},C{number},calm")
    litters = ["Doe,Buck,Bred,Kindled,Alive,Dead,Weaned,Date weaned"]
    for _ in range(rows // 4):
        at = draw.randrange(len(tags) * 7 // 10) // 2 * 2
        bred = born[at] + timedelta(200 + draw.randrange(60))
        litters.append(f"{tags[at + 1]},{tags[at]},{bred},{bred + timedelta(31)},7,1,6,{bred + timedelta(66)}")
    weights = ["Tag,Date,Weight"]
    for _ in range(rows - len(animals) - len(litters) + 2):
        at = draw.randrange(len(tags))
        weights.append(f"{tags[at]},{born[at] + timedelta(70 + draw.randrange(3))},3-{draw.randrange(16)}")
    return [(name, "\n".join(lines).encode()) for name, lines in (("animals", animals), ("litters", litters), ("weights", weights))]


def main(rows: int) -> None:
    """Print the three times."""
    with TemporaryDirectory() as folder:
        app = open_book(str(Path(folder) / "book.sqlite"))
        assert not isinstance(app, Problem)
        for name, dry in (("understood", True), ("recorded", False)):
            start = time.perf_counter()
            told = app.move_in(Brought("bench", sheets(rows), "me", NOW), dry=dry)
            assert not isinstance(told, Problem), told
            facts = sum(told.document["facts"].values())
            print(f"{rows} rows {name} in {time.perf_counter() - start:.1f} s: {facts} facts, {told.document['recorded']} recorded")
        start = time.perf_counter()
        app.hear(Message("undo", NOW, "me", "terminal", "1"))
        print(f"taken back in {time.perf_counter() - start:.1f} s")
        app.close()


if __name__ == "__main__":
    main(int(sys.argv[1]) if len(sys.argv) > 1 else 10_000)
