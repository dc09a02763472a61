"""Writes the answers of the transcripts anew, as the domain gives them now: `python -m tests.conversations.rewrite [NAME ...]`.

For a change of wording that is meant. Read the difference before you keep it: this makes any answer the expected one.
"""

from __future__ import annotations

import sys
from pathlib import Path

from core.notes.listen import Heard, printed
from tests.conversations.heard import answering, hear
from tests.conversations.transcript import ANY, transcripts, turns


def rewritten(path: Path) -> str:
    """The transcript with today's answers; comments and messages as they are."""
    expected = turns(path)
    answers = {turn.line: _answer(heard) for turn, heard in zip(expected, hear(expected, answering(path)), strict=True)}
    lines: list[str] = []
    for number, line in enumerate(path.read_text(encoding="utf-8").splitlines(), start=1):
        if line.startswith("  | ") or not line.startswith("  "):
            lines.append(line)
        following = next((turn for turn in expected if turn.line + turn.text.count("\n") == number), None)
        if following is not None:
            lines.extend(answers[following.line])
    return "\n".join(lines) + "\n"


def _answer(heard: Heard) -> list[str]:
    """The lines beneath a message. Answers to questions come from the reports, and are not this folder's business."""
    lines = [f"  {ANY}" if line.startswith("(asked:") else f"  {line}" for line in heard.reply.lines]
    if heard.reply.choices:
        lines.append("  " + " ".join(f"[{choice.label}]" for choice in heard.reply.choices))
    if heard.note.ask is not None:
        lines.append(f"  ? {heard.note.ask.why}")
    return [*lines, "  = " + (" ".join(fact.kind for fact in printed(heard.note).facts) or "nothing")]


if __name__ == "__main__":
    for each in transcripts():
        if len(sys.argv) == 1 or each.stem in sys.argv[1:]:
            each.write_text(rewritten(each), encoding="utf-8")
