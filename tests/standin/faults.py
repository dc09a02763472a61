"""Scripted trouble: what goes wrong with the next calls of a method."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from tests.standin import texts
from tests.standin.texts import Refused

KINDS = ("refuse", "flood", "broken", "drop", "hang", "hold")


@dataclass(slots=True)
class Fault:
    """Trouble for the next `times` calls.

    method       the method, or "*" for any but getUpdates
    kind         refuse  answer with `code` and `text`
                 flood   429 with `retry_after` seconds
                 broken  a gateway's error page with `code` (502), no JSON
                 drop    cut the connection without an answer
                 hang    no answer until `release()`, then cut
                 hold    wait until `release()`, then carry on as if nothing had been
    after        let the call take effect first, then spoil its answer (a delivered message whose answer is lost)
    chat         only calls for this chat id
    """

    method: str
    kind: str
    times: int = 1
    code: int = 502
    text: str = texts.BAD_GATEWAY
    retry_after: int = 1
    after: bool = False
    chat: int | None = None

    def __post_init__(self) -> None:
        if self.kind not in KINDS:
            raise ValueError(f"no fault of the kind {self.kind}: it is one of {', '.join(KINDS)}")

    def meets(self, method: str, params: dict[str, Any]) -> bool:
        """Is this the call that it waits for?"""
        named = method != "getUpdates" if self.method == "*" else self.method == method
        return self.times > 0 and named and self.chat in (None, params.get("chat_id"))

    def refusal(self) -> Refused:
        """The refusal of `refuse` and `flood`."""
        if self.kind == "flood":
            return Refused(texts.FLOOD, parameters={"retry_after": self.retry_after}, retry_after=self.retry_after)
        return Refused((self.code, self.text))


def take(faults: list[Fault], method: str, params: dict[str, Any]) -> Fault | None:
    """The first fault that meets the call, one time used up."""
    for fault in faults:
        if fault.meets(method, params):
            fault.times -= 1
            return fault
    return None
