"""A machine for the commands, and a small farm on it."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.machine import Machine


@pytest.fixture
def machine(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Machine:
    """A machine where nobody has used Haynote yet."""
    return Machine(tmp_path, monkeypatch)


@pytest.fixture
def farm(machine: Machine) -> Machine:
    """The same with two does, a buck, and a litter of a month ago."""
    machine.tell(
        "new doe 14 mini rex castor born 3/4/2025",
        "new doe 15 mini rex opal born 4/12/2025",
        "new buck 3 mini rex black born 2/1/2025",
        "bred 14 to 3 on 9/24",
        "14 kindled 8, 2 dead on 10/25",
        "bred 15 to 3 on 10/28",
    )
    return machine
