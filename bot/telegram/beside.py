"""A process beside the server, for what takes the big libraries: begun when something is to be reckoned or drawn, ended when nobody asked for a while.

What such a library once loaded stays in a process for good. The server lives for weeks and reckons now and then, so it lends the work out. What is asked
and answered goes through the two pipes between them; the end of the first pipe, however the server came to its own, is the end of the other.
"""

from __future__ import annotations

import logging
import os
import pickle
import signal
import subprocess
import sys
import threading
from collections.abc import Callable
from contextlib import suppress
from typing import IO, Any, Final

from core.app.reckoning import Found, P

log = logging.getLogger("haynote.telegram")

#: So often the clock may come by without a question in between: then the process is ended. It comes once a minute.
RESTS: Final = 3
#: An end takes no longer than this [s].
END_WITHIN_S: Final = 5.0

GONE: Final = "The process that reckons is gone (%s). This is reckoned here; the next thing in a new one."


class Beside:
    """The way to that process. It does one thing at a time."""

    def __init__(self) -> None:
        self._turn = threading.Lock()
        self._process: subprocess.Popen[bytes] | None = None
        self._rests = 0

    def __call__(self, what: Callable[P, Found], /, *given: P.args, **named: P.kwargs) -> Found:
        """What the function gives; what it raises is raised here. Where there is no such process, it is worked out here."""
        with self._turn:
            self._rests = 0
            try:
                held, found = self._asked((what, given, named))
            except (OSError, EOFError, pickle.PickleError) as error:
                log.warning(GONE, type(error).__name__)
                self._end()
                return what(*given, **named)
        if not held:
            raise found
        answer: Found = found
        return answer

    def rest(self) -> None:
        """The clock comes by. One that is at work is left alone."""
        if not self._turn.acquire(blocking=False):
            return
        try:
            self._rests += 1
            if self._rests > RESTS:
                self._end()
        finally:
            self._turn.release()

    def close(self) -> None:
        """No more questions."""
        with self._turn:
            self._end()

    @property
    def runs(self) -> bool:
        """Whether there is such a process now."""
        return self._process is not None

    def _asked(self, question: Any) -> tuple[bool, Any]:
        """Whether it could be worked out, and what was found, or why not."""
        process = self._process = self._process or _begun()
        assert process.stdin is not None  # noqa: S101 - opened as a pipe
        assert process.stdout is not None  # noqa: S101
        process.stdin.write(pickle.dumps(question))
        process.stdin.flush()
        held, found = pickle.load(process.stdout)  # noqa: S301 - from a process of our own, by a pipe that nobody else has
        return held, found

    def _end(self) -> None:
        process, self._process = self._process, None
        if process is None:
            return
        for pipe in (process.stdin, process.stdout):
            if pipe is not None:
                with suppress(OSError):
                    pipe.close()
        try:
            process.wait(END_WITHIN_S)
        except subprocess.TimeoutExpired:
            process.kill()
            process.wait()


def _begun() -> subprocess.Popen[bytes]:
    """A new process. What it complains of goes where the server's own complaints go."""
    return subprocess.Popen([sys.executable, "-m", "bot.telegram.beside"], stdin=subprocess.PIPE, stdout=subprocess.PIPE)


def work(questions: IO[bytes], answers: IO[bytes]) -> None:
    """Answer one question after the other until there are no more."""
    while True:
        try:
            what, given, named = pickle.load(questions)  # noqa: S301 - as above
        except EOFError:
            return
        try:
            answer = pickle.dumps((True, what(*given, **named)))
        except Exception as error:  # noqa: BLE001 - it is raised where the question came from
            answer = pickle.dumps((False, error))
        answers.write(answer)
        answers.flush()


def main() -> None:  # pragma: no cover - a process of its own
    """Run as that process. It ends with its pipe, and not by what is meant for the server."""
    for sign in (signal.SIGINT, signal.SIGTERM):
        signal.signal(sign, signal.SIG_IGN)
    answers = os.fdopen(os.dup(sys.stdout.fileno()), "wb")
    os.dup2(sys.stderr.fileno(), sys.stdout.fileno())  # a library that prints must not spoil the answers
    work(sys.stdin.buffer, answers)


if __name__ == "__main__":  # pragma: no cover - as above
    main()
