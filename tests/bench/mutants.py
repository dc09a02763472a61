"""How many small faults the tests of a package notice: `python -m tests.bench.mutants PACKAGE [COUNT] [SEED]`, as in `core/herd 40`.

A fault is one change in one place: a comparison the other way, `and` for `or`, a `not` left out, a number one higher, true for false. Places are
drawn by chance. The tests that import the changed file run first; only a fault that they pass meets all tests of the package. A
survivor is printed with its line: a test to write, or a line that changes nothing.

It changes the files it runs on and puts them back: run it in a clone of its own.
"""

from __future__ import annotations

import ast
import random
import subprocess
import sys
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

TOP = Path(__file__).parents[2]
LONGEST_S = 400
COMPARED: dict[type[ast.cmpop], type[ast.cmpop]] = {
    ast.Lt: ast.LtE, ast.LtE: ast.Lt, ast.Gt: ast.GtE, ast.GtE: ast.Gt, ast.Eq: ast.NotEq, ast.NotEq: ast.Eq,
    ast.Is: ast.IsNot, ast.IsNot: ast.Is, ast.In: ast.NotIn, ast.NotIn: ast.In,
}  # fmt: skip
RECKONED: dict[type[ast.operator], type[ast.operator]] = {ast.Add: ast.Sub, ast.Sub: ast.Add, ast.Mult: ast.Div, ast.Div: ast.Mult}


@dataclass(frozen=True)
class Fault:
    """One change: the file, where it begins and ends in it, and what stands there instead."""

    file: Path
    begin: int
    end: int
    was: str
    now: str
    line: int


def changed(node: ast.AST) -> ast.expr | None:
    """The same expression with a fault; None where this kind of expression gets none."""
    match node:
        case ast.Compare(left=left, ops=[op], comparators=comparators) if type(op) in COMPARED:
            return ast.Compare(left, [COMPARED[type(op)]()], comparators)
        case ast.BoolOp(op=op, values=values):
            return ast.BoolOp(ast.Or() if isinstance(op, ast.And) else ast.And(), values)
        case ast.UnaryOp(op=ast.Not(), operand=operand):
            return operand
        case ast.BinOp(left=left, op=op, right=right) if type(op) in RECKONED:
            return ast.BinOp(left, RECKONED[type(op)](), right)
        case ast.Constant(value=bool(value)):
            return ast.Constant(not value)
        case ast.Constant(value=int(value) | float(value)):
            return ast.Constant(value + 1)
        case _:
            return None


def faults(file: Path) -> Iterator[Fault]:
    """Every fault that the file can get, outside of its docstrings and annotations."""
    text = file.read_text(encoding="utf-8")
    starts = [0]
    for line in text.encode().splitlines(keepends=True):
        starts.append(starts[-1] + len(line))
    for function in ast.walk(ast.parse(text)):
        if not isinstance(function, ast.FunctionDef):
            continue
        for node in (inner for statement in function.body for inner in ast.walk(statement)):
            new = changed(node)
            if new is None or not isinstance(node, ast.expr) or node.end_lineno is None or node.end_col_offset is None:
                continue
            begin, end = starts[node.lineno - 1] + node.col_offset, starts[node.end_lineno - 1] + node.end_col_offset
            yield Fault(file, begin, end, ast.unparse(node), f"({ast.unparse(new)})", node.lineno)


def near(file: Path, package: Path) -> list[str]:
    """The test files that import the changed one."""
    module = ".".join(file.relative_to(TOP).with_suffix("").parts)
    tests = (TOP / "tests" / package.relative_to(TOP)).rglob("test_*.py")
    return [str(each) for each in tests if module in each.read_text(encoding="utf-8")]


def passes(tests: list[str]) -> bool:
    """Whether these tests see nothing wrong; a run without end has seen something."""
    command = [sys.executable, "-m", "pytest", "-x", "-q", "-p", "no:cacheprovider", "--dist", "load", *tests]
    try:
        return subprocess.run(command, cwd=TOP, capture_output=True, check=False, timeout=LONGEST_S).returncode == 0
    except subprocess.TimeoutExpired:
        return False


def survives(fault: Fault, package: Path) -> bool:
    """Whether all tests of the package pass with the fault."""
    whole = fault.file.read_bytes()
    fault.file.write_bytes(whole[: fault.begin] + fault.now.encode() + whole[fault.end :])
    try:
        first = near(fault.file, package)
        return (not first or passes(first)) and passes([str(TOP / "tests" / package.relative_to(TOP))])
    finally:
        fault.file.write_bytes(whole)


def main() -> None:
    """Print each survivor, and the share that was noticed."""
    package = TOP / sys.argv[1]
    count, seed = (int(sys.argv[2]) if len(sys.argv) > 2 else 40), (int(sys.argv[3]) if len(sys.argv) > 3 else 1)
    every = [fault for file in sorted(package.rglob("*.py")) for fault in faults(file)]
    drawn = random.Random(seed).sample(every, min(count, len(every)))
    noticed = 0
    for place, fault in enumerate(drawn, 1):
        alive = survives(fault, package)
        noticed += not alive
        where = f"{fault.file.relative_to(TOP)}:{fault.line}"
        print(f"{'SURVIVES' if alive else 'noticed '} {noticed}/{place} {where}: {fault.was[:70]} -> {fault.now[:70]}", flush=True)
    print(f"{sys.argv[1]}: {noticed} of {len(drawn)} faults noticed ({100 * noticed / len(drawn):.0f} %), drawn from {len(every)}")


if __name__ == "__main__":
    main()
