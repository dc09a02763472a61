"""The documents tell the truth: every command block is run, every command, setting and code has its place, generated pages are current.

A page is one person's book, from its first block to its last. Blocks of these kinds are run, in order:

- `console`: lines that begin with `$ ` are commands, what follows is what they print (`...` stands for anything). A command that
  ends otherwise than with 0 says so: `$ haynote card 77  # ends with 1`.
- `sh`: commands, one a line, of which nothing is shown.
- `chat`: lines that begin with `> ` are messages to `haynote chat`, what follows is the reply.
- `text NAME`: a file of that name.

`<!-- now: TIME -->` sets the clock. `<!-- not run: REASON -->` before a block keeps it from being run.
"""

from __future__ import annotations

import re
import shlex
from collections.abc import Iterator
from dataclasses import dataclass, field
from datetime import datetime
from pathlib import Path

import pytest

from bot.cli import PLACES
from bot.commands.page import page as commands_page
from core.app.troubles import TROUBLES
from core.herd.wishes import BY_BREED, WISHES, normal
from core.notes.crib_page import page as crib_page
from core.notes.page import page as notes_page
from core.notes.settings_page import ABOUT
from core.notes.settings_page import page as settings_page
from core.problem import WHY
from core.store.fact_tables import FACT_TABLES
from core.store.page import ABOUT as TABLES
from core.store.page import page as database_page
from core.store.tables import metadata
from tests.bench.page import ROOMS, kept
from tests.machine import Machine

TOP = Path(__file__).parents[1]
DOCS = TOP / "docs"
PAGES = [TOP / "README.md", TOP / "DEVELOPERS.md", *sorted(DOCS.rglob("*.md"))]
RUN = "python3 -m venv .venv && .venv/bin/pip install --quiet . && .venv/bin/haynote demo"
TEST = "python3 -m venv .venv && .venv/bin/pip install --quiet '.[test]' && .venv/bin/pytest"

_FENCE = re.compile(r"^```(\w*) ?(.*)$")
_MARK = re.compile(r"^<!-- (now|not run|run|test)(?:: (.*))? -->$")
_ENDS = re.compile(r"\s+# ends with (\d)$")


@dataclass(slots=True)
class Block:
    """A fenced block: where it begins, of what kind it is, and the marks before it."""

    line: int
    kind: str
    name: str
    lines: list[str] = field(default_factory=list)
    now: str | None = None
    not_run: str | None = None
    mark: str | None = None


def blocks(text: str) -> Iterator[Block]:
    """The fenced blocks of a page."""
    marks: dict[str, str | None] = {}
    block: Block | None = None
    for number, line in enumerate(text.splitlines(), start=1):
        if block is not None:
            if line == "```":
                yield block
                block = None
            else:
                block.lines.append(line)
        elif found := _FENCE.match(line):
            mark = next((name for name in ("run", "test") if name in marks), None)
            block = Block(number, found[1], found[2], now=marks.get("now"), not_run=marks.get("not run"), mark=mark)
            marks = {}
        elif found := _MARK.match(line):
            marks[found[1]] = found[2]
        elif line.strip() and not line.startswith("<!--"):
            marks = {name: value for name, value in marks.items() if name == "now"}


def is_run(block: Block) -> bool:
    """Whether the block is one that this test runs."""
    return block.kind in {"console", "sh", "chat"} and block.mark is None and block.not_run is None


@dataclass(slots=True)
class Step:
    """Words typed, and the lines that ought to come back; None where nothing is shown."""

    typed: str
    expected: list[str] | None
    got: list[str] = field(default_factory=list)


def steps(block: Block, sign: str) -> list[Step]:
    """The block taken to pieces: each line with the sign, and what stands under it."""
    found: list[Step] = []
    for line in block.lines:
        if line.startswith(sign):
            found.append(Step(line.removeprefix(sign), []))
        elif found and found[-1].expected is not None:
            found[-1].expected.append(line)
    return found


def fits(expected: list[str], got: list[str]) -> bool:
    """Whether the lines are as expected; a line `...` stands for any lines, `...` within one for any words."""
    if not expected:
        return not got
    if expected[0] == "...":
        return any(fits(expected[1:], got[start:]) for start in range(len(got) + 1))
    if not got:
        return False
    pattern = ".*".join(re.escape(part) for part in expected[0].split("..."))
    return re.fullmatch(pattern, got[0]) is not None and fits(expected[1:], got[1:])


def carry_out(block: Block, machine: Machine) -> list[Step]:
    """Run the block; the steps with what came back."""
    if block.now:
        machine.now = datetime.fromisoformat(block.now)
    if block.kind == "chat":
        return talk(block, machine)
    told = (
        steps(block, "$ ")
        if block.kind == "console"
        else [Step(line, None) for line in block.lines if line.strip() and not line.startswith("#")]
    )
    for step in told:
        ends = _ENDS.search(step.typed)
        status, output = command(machine, _ENDS.sub("", step.typed))
        assert status == (int(ends[1]) if ends else 0), f"{step.typed}: ended with {status}\n{output}"
        step.got = output.splitlines()
    return told


def talk(block: Block, machine: Machine) -> list[Step]:
    """A chat: each message with its reply."""
    told = steps(block, "> ")
    replies = machine.ok("chat", typed="".join(f"{step.typed}\n" for step in told)).split("\n\n")
    assert len(replies) == len(told) + 1
    for step, reply in zip(told, replies, strict=False):
        step.got = reply.splitlines()
        if step.expected and step.expected[-1] == "":
            step.expected.pop()
    return told


def command(machine: Machine, line: str) -> tuple[int, str]:
    """A line as a shell would run it: `haynote`, `echo` and `cat`, with a pipe and redirections. Its status and all it printed."""
    lexer = shlex.shlex(line, posix=True, punctuation_chars="|<>")
    lexer.whitespace_split = True
    words = list(lexer)
    typed: str | None = None
    if words[0] == "export":
        name, _, value = words[1].partition("=")
        machine.environment[name] = value
        return 0, ""
    if "|" in words:
        typed = simple(words[: words.index("|")], machine)
        words = words[words.index("|") + 1 :]
    if "<" in words:
        typed = (machine.folder / words[words.index("<") + 1]).read_text(encoding="utf-8")
        words = words[: words.index("<")]
    target = words[words.index(">") + 1] if ">" in words else None
    words = words[: words.index(">")] if ">" in words else words
    if words[0] != "haynote":
        return 0, simple(words, machine)
    result = machine.run(*words[1:], typed=typed)
    output = re.sub(r"\A(?:Reading notes|Reading rows)\n", "", result.output)  # what is left of the progress bar where nobody watches it
    if target is None:
        return result.exit_code, output
    (machine.folder / target).write_text(result.stdout, encoding="utf-8")
    return result.exit_code, result.stderr


def simple(words: list[str], machine: Machine) -> str:
    """What `echo` or `cat` print. KeyError for any other command: mark its block as not run."""
    name, *rest = words
    if name == "echo":
        return " ".join(rest) + "\n"
    if name == "cat":
        return "".join((machine.folder / file).read_text(encoding="utf-8") for file in rest)
    raise KeyError(name)


@pytest.mark.parametrize("path", PAGES, ids=lambda path: str(path.relative_to(TOP)))
def test_every_command_block_does_what_the_page_says(path: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Run from the first block to the last, on a machine where nobody has used Haynote yet."""
    machine = Machine(tmp_path, monkeypatch)
    for block in blocks(path.read_text(encoding="utf-8")):
        if block.kind == "text" and block.name:
            (tmp_path / block.name).write_text("\n".join(block.lines) + "\n", encoding="utf-8")
        if is_run(block):
            for step in carry_out(block, machine):
                wanted = step.expected
                assert wanted is None or fits(wanted, step.got), f"{path.name}:{block.line} {step.typed}\n" + "\n".join(step.got)


@pytest.mark.parametrize("path", PAGES, ids=lambda path: str(path.relative_to(TOP)))
def test_blocks_that_are_not_run_say_why(path: Path) -> None:
    """A block of commands is run, or a reason stands before it; and the commands of Haynote in it exist."""
    for block in blocks(path.read_text(encoding="utf-8")):
        assert block.not_run is None or len(block.not_run) > 10
        if not is_run(block) and block.kind == "sh":
            for name in re.findall(r"haynote (\w+)", "\n".join(block.lines)):
                assert name in PLACES, name


@pytest.mark.parametrize("path", PAGES, ids=lambda path: str(path.relative_to(TOP)))
def test_links_lead_somewhere(path: Path) -> None:
    """Every link to a file of this project."""
    for target in re.findall(r"\]\(([^)#:]+)(?:#[^)]*)?\)", path.read_text(encoding="utf-8")):
        assert (path.parent / target).exists(), target


def test_every_file_on_the_roads_is_there() -> None:
    """The drawings name files by their whole path, neighbours in one list by their last part."""
    text = (DOCS / "explanation" / "the-roads.md").read_text(encoding="utf-8")
    named = re.findall(r"(?<![\w/.-])(?:bot|core)/[\w/*.]*\w", text)
    assert len(named) > 40
    for path in named:
        assert list(TOP.glob(path)), path


def test_readme_has_the_two_commands() -> None:
    """Each once, as one line in one fenced block, behind its comment: other programs look for them."""
    found = {block.mark: block.lines for block in blocks((TOP / "README.md").read_text(encoding="utf-8")) if block.mark}
    assert found == {"run": [RUN], "test": [TEST]}


@pytest.mark.parametrize(
    ("name", "made"),
    [("notes", notes_page), ("crib", crib_page), ("settings", settings_page), ("commands", commands_page), ("database", database_page)],
    ids=["notes", "crib", "settings", "commands", "database"],
)
def test_generated_pages_are_current(name: str, made: object) -> None:
    """The committed page is what the program says now; each page's head tells the command that makes it."""
    assert callable(made)
    assert (DOCS / "reference" / f"{name}.md").read_text(encoding="utf-8") == made()


def test_every_bench_is_on_the_page_of_figures() -> None:
    """What each printed, and when; those that only write a file for the tests, or try the tests themselves, print none."""
    benches = {path.stem for path in (TOP / "tests" / "bench").glob("*.py")} - {"__init__", "page", "fresh", "fam", "mutants"}
    assert set(kept((DOCS / "reference" / "performance.md").read_text(encoding="utf-8"))) == benches
    assert benches == {name for names in ROOMS.values() for name in names}


@pytest.mark.parametrize("name", sorted(WISHES))
def test_every_setting_has_a_note_that_changes_it(name: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """The page's example, said to a new book, is that setting; the word *by breed* stands where it can be said for one."""
    machine = Machine(tmp_path, monkeypatch)
    (fact,) = machine.json("say", ABOUT[name][1])["facts"]
    assert (fact["kind"], fact["name"]) == ("setting", name)
    assert normal(name, fact["value"]) is not None
    assert (f"`{name}` *by breed*" in settings_page()) == (name in BY_BREED)


def test_every_table_is_told() -> None:
    """The page says of each table what a row of it is; those of the facts stand in one list."""
    assert {*TABLES, *(table.name for table in FACT_TABLES.values())} == set(metadata.tables)


def test_no_setting_is_made_up() -> None:
    """The page lists what there is."""
    assert set(ABOUT) == set(WISHES)


def refusal_codes() -> set[str]:
    """The codes that the door and the shells refuse with."""
    sources = [*(TOP / "core" / "app").rglob("*.py"), *(TOP / "bot" / "commands").rglob("*.py"), TOP / "bot" / "settings_file.py"]
    return set(TROUBLES) | {code for path in sources for code in re.findall(r'Problem\(\s*"(\w+)"', path.read_text(encoding="utf-8"))}


@pytest.mark.parametrize("code", sorted({*WHY, *refusal_codes()}))
def test_every_code_is_reproduced_on_the_page_of_problems(code: str) -> None:
    """A section of its own, with a block in which the program gives that code; or the reason why no block can."""
    text = (DOCS / "reference" / "problems.md").read_text(encoding="utf-8")
    section = re.search(rf"^### {code}$(.*?)(?=^##|\Z)", text, re.MULTILINE | re.DOTALL)
    assert section is not None
    shown = [line for block in blocks(section[1]) for line in block.lines]
    assert (
        any(f'"code": "{code}"' in line or f'"why": "{code}"' in line or f"asks ({code})" in line for line in shown)
        or "<!-- not run: " in section[1]
    )
