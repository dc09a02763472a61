"""No number of the trade stands outside the handbook.

The scan reads the rooms that know the trade. It bites on
- a whole number of 11 or more, or a fraction, that is a figure of the handbook (31, 0.82, also as `Decimal("0.82")`);
- a span of days written out: `timedelta(days=40)` of more than a day that is not a week;
- a constant whose name says a unit of the trade and whose value is a bare number: `FAST_DAYS = 40`, `LOW_SHARE = 0.6`.

A number that only looks so says why on the statement's line or lines: `# not a figure: minutes in an hour`.
"""

from __future__ import annotations

import ast
import re
from collections.abc import Iterator
from pathlib import Path

import pytest

from core.handbook.page import figures

ROOT = Path(__file__).parents[3]
ROOMS = ("notes", "herd", "reckon", "reports")
FILES = sorted(path for room in ROOMS for path in (ROOT / "core" / room).rglob("*.py"))

FIGURE_VALUES = {abs(figure.value) for _, figure in figures()}
#: Too common to tell anything: halves, and tens of everything.
COMMON = {0.5, 10}
SMALLEST_TELLING = 10
DAY_AND_WEEK = {0, 1, 7}
UNIT_NAMES = re.compile(r"(^|_)(DAYS?|WEEKS?|MONTHS?|GRAMS?|G|KG|LB|CELSIUS|C|SHARE|KITS|LITTERS|H2|C2|P2|COI)(_|$)")
REASON = re.compile(r"#\s*not a figure: \S")
#: Notes that a person might type, with what they mean: their numbers are the notes'.
EXAMPLE_NAMES = re.compile(r"EXAMPLE|NOT_THIS|COUNTER")


def loose_numbers(source: str) -> list[tuple[int, str]]:
    """Line and text of every number in that Python source that belongs in the handbook."""
    lines = source.splitlines()
    tree = ast.parse(source)
    excused = _excused_lines(tree, lines)
    found = {(node.lineno, ast.unparse(node)) for node in (*_figures_again(tree), *_spans(tree), *_constants(tree))}
    return sorted(one for one in found if one[0] not in excused)


def _excused_lines(tree: ast.Module, lines: list[str]) -> set[int]:
    """Lines with a reason, and with them every line of the same simple statement; and the lines of examples."""
    excused = {number for number, line in enumerate(lines, 1) if REASON.search(line)}
    for node in ast.walk(tree):
        if isinstance(node, ast.stmt) and not hasattr(node, "body"):
            span = set(range(node.lineno, (node.end_lineno or node.lineno) + 1))
            if span & excused or any(EXAMPLE_NAMES.search(name) for name in _targets(node)):
                excused |= span
    return excused


def _targets(node: ast.stmt) -> Iterator[str]:
    """Names that a statement assigns to."""
    targets = node.targets if isinstance(node, ast.Assign) else [node.target] if isinstance(node, ast.AnnAssign) else []
    return (target.id for target in targets if isinstance(target, ast.Name))


def _figures_again(tree: ast.AST) -> Iterator[ast.expr]:
    """Literals whose value is a figure of the handbook."""
    for node in ast.walk(tree):
        value = _number(node)
        if value is not None and abs(value) in FIGURE_VALUES - COMMON and (abs(value) > SMALLEST_TELLING or value != int(value)):
            assert isinstance(node, ast.expr)
            yield node


def _number(node: ast.AST) -> float | None:
    """The value of a bare number, or of a Decimal of one; None for anything else (a bool is no number)."""
    if isinstance(node, ast.Call) and isinstance(node.func, ast.Name) and node.func.id == "Decimal" and node.args:
        text = node.args[0]
        if isinstance(text, ast.Constant) and isinstance(text.value, str) and re.fullmatch(r"-?\d+(\.\d+)?", text.value):
            return float(text.value)
    if isinstance(node, ast.Constant) and type(node.value) in {int, float}:
        return float(node.value)
    return None


def _spans(tree: ast.AST) -> Iterator[ast.expr]:
    """Spans of days or weeks that are written out."""
    for node in ast.walk(tree):
        if isinstance(node, ast.Call) and ast.unparse(node.func).endswith("timedelta"):
            for value in (*node.args[:1], *(word.value for word in node.keywords if word.arg in {"days", "weeks"})):
                number = _number(value.operand if isinstance(value, ast.UnaryOp) else value)
                if number is not None and number not in DAY_AND_WEEK:
                    yield value


def _constants(tree: ast.AST) -> Iterator[ast.expr]:
    """Bare numbers given to a name that says a unit of the trade."""
    for node in ast.walk(tree):
        if not isinstance(node, ast.Assign | ast.AnnAssign) or node.value is None:
            continue
        named = any(UNIT_NAMES.search(name) for name in _targets(node) if name == name.upper())
        if named and _number(node.value) not in {None, 0.0, 1.0}:
            yield node.value


@pytest.mark.parametrize("path", FILES, ids=lambda path: path.relative_to(ROOT).as_posix())
def test_room_holds_no_number_of_the_trade(path: Path) -> None:
    """Every number of the trade is a figure of the handbook, or the line says why it is none."""
    found = [f"line {line}: {text}" for line, text in loose_numbers(path.read_text(encoding="utf-8"))]
    assert not found, f"core/handbook is the place for {', '.join(found)} (or say: # not a figure: why)"


def test_rooms_are_scanned() -> None:
    """The scan finds the rooms: none of them is empty."""
    assert {path.relative_to(ROOT / "core").parts[0] for path in FILES} >= {"notes", "herd"}


@pytest.mark.parametrize(
    "source",
    [
        "due = mated + 31",
        "if age >= 112: pass",
        "prior = 0.82",
        "prior = Decimal('0.82')",
        "h2 = -0.08",
        "def f(line: float = 0.7) -> None: ...",
        "late = on + timedelta(days=40)",
        "late = on - datetime.timedelta(weeks=6)",
        "late = on + timedelta(40)",
        "late = on + timedelta(days=-40)",
        "FAST_DAYS = 40",
        "LOW_SHARE: Final = 0.61",
        "x = 31  # a figure, surely",
        "x = 31  # not a figure:",
    ],
)
def test_scan_bites(source: str) -> None:
    """A day, a share, a span or a constant of the trade is found, and a comment without a reason excuses nothing."""
    assert loose_numbers(source)


@pytest.mark.parametrize(
    "source",
    [
        "x = 0.5 * (a + b)",
        "x = values[:10]",
        "x = 3",
        "x = on + timedelta(days=1)",
        "x = on + timedelta(days=7)",
        "x = on + timedelta(days=PALPATE_DAY.whole)",
        "minutes = 60 * hours  # not a figure: minutes in an hour",
        "WORDS = {  # not a figure: number words\n 'twelve': 12,\n 'thirty': 30,\n}",
        "EXAMPLES = (\n ('31 4-6', Weighed(who='31', grams=1984, days=31)),\n)",
        "x = True",
        "x = '31'",
        "x = Decimal('nan')",
        "x = Decimal(text)",
        "DAYS: int",
    ],
)
def test_scan_lets_pass(source: str) -> None:
    """Halves, slices, weeks, figures by name, examples, and lines with a reason are no loose numbers."""
    assert not loose_numbers(source)


def test_scan_tells_the_line() -> None:
    """The finding names the line and the number."""
    assert loose_numbers("a = 1\nb = 31\n") == [(2, "31")]


def test_reason_excuses_only_its_statement() -> None:
    """A reason on one statement leaves the next one bitten, inside a block too."""
    assert loose_numbers("def f():\n    a = 31  # not a figure: a test\n    return 31\n") == [(3, "31")]
