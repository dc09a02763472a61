"""An open question in JSON form, and back: it must survive a restart, or the answer would fall on deaf ears."""

from __future__ import annotations

from typing import Any

from core.notes.reading import Ask, Draft


def ask_to_json(ask: Ask) -> dict[str, Any]:
    """The question with the draft that waits for its answer."""
    draft = None if ask.draft is None else _draft_to_json(ask.draft)
    return {"why": ask.why, "text": ask.text, "choices": list(ask.choices), "draft": draft}


def ask_from_json(said: dict[str, Any]) -> Ask:
    """The question that `ask_to_json` wrote."""
    draft = None if said["draft"] is None else _draft_from_json(said["draft"])
    return Ask(said["why"], said["text"], tuple(said["choices"]), draft)


def _draft_to_json(draft: Draft) -> dict[str, Any]:
    rest = [_draft_to_json(each) for each in draft.rest]
    return {"kind": draft.kind, "known": dict(draft.known), "wanted": draft.wanted, "rest": rest}


def _draft_from_json(said: dict[str, Any]) -> Draft:
    rest = tuple(_draft_from_json(each) for each in said["rest"])
    return Draft(said["kind"], said["known"], said["wanted"], rest)
