"""Taking the whole book away from a chat: which words ask for it, who may, and the file that then goes with the answer."""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import Final

from core.app.members import OWNERS_ONLY
from core.reply import Attached, Choice, Reply

#: Whose sort the files are: `bot.attachments` says who makes them.
EXPORT: Final = "export"
ONLY_IN_PRIVATE: Final = "Ask me that in our own chat: the whole book goes with the answer."


@dataclass(frozen=True, slots=True)
class Form:
    """A form of the book: what a person calls it, the file's name, and what the file is good for.

    calls  the words for it, as a pattern
    """

    label: str
    calls: str
    name: str
    tells: str


FORMS: Final[dict[str, Form]] = {
    "notes": Form("Notes", r"notes?", "notes.txt", "What stands, as dated notes: to read, to print, and to replay into another book."),
    "xlsx": Form(
        "Spreadsheet", r"spreadsheets?|workbook|xlsx|tables?", "book.xlsx", "Everything as a spreadsheet, a sheet a table."
    ),
    "csv": Form("CSV", r"csv(?: files?)?", "book-csv.zip", "Everything as tables in CSV, in one ZIP."),
    "json": Form("JSON", r"json", "book.json", "What stands, for programs."),
    "fam": Form("Family file", r"\.?fam|family file", "family.fam", "Who is out of whom, for genetics programs. Nothing else is in it."),
    "archive": Form(
        "Archive",
        r"archive|farm",
        "farm-archive.zip",
        "The whole farm, people and photos too: “haynote restore” takes it in on another machine. Keep it where only you can get at it.",
    ),
}  # fmt: skip
_CALLED: Final = "|".join(f"(?P<{what}>{form.calls})" for what, form in FORMS.items())
_ALL: Final = r"(?:(?:all|the|my|our|of|a|an|whole|everything|as)\s+)*"
_ASKED: Final = re.compile(
    rf"/?(?:please\s+)?(?:export|send(?:\s+me)?|download)\s+{_ALL}(?:{_CALLED})(?:\s+(?:of|with|for)\s+(?:everything|the farm|my farm|all))?\W*",
    re.IGNORECASE,
)
_UNSAID: Final = re.compile(
    r"/?(?:please\s+)?export(?:\s+(?:everything|all|it all|the book|my book|my data|all my data))?\W*", re.IGNORECASE
)


def wanted_form(text: str) -> str | None:
    """The form of the book that the words ask for; empty where they don't say which, None where they ask for something else."""
    said = text.strip()
    if _UNSAID.fullmatch(said):
        return ""
    found = _ASKED.fullmatch(said)
    return found.lastgroup if found else None


def handed_over(form: str, *, owner: bool) -> Reply:
    """The answer with the file; or which forms there are; or that only an owner may take the book away."""
    if not owner:
        return Reply((OWNERS_ONLY,))
    if form not in FORMS:
        told = (f"{each.label}: {each.tells}" for each in FORMS.values())
        return Reply(("In which form?", *told), tuple(Choice(each.label, f"export {what}") for what, each in FORMS.items()))
    wanted = FORMS[form]
    return Reply((wanted.tells,), attached=(Attached(EXPORT, form, None, wanted.name, wanted.tells),))
