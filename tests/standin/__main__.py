"""`python -m tests.standin --port 8099`: the stand-in for a session by hand, its clock set once at the start.

Point a bot at the printed address with the printed token, then type what a person would: `Ann: doe 14 kindled 8` says it as Ann,
`Ann> yes` presses the button "yes" under the bot's last message. Everything else goes by POST to /control/.
"""

from __future__ import annotations

import argparse
import sys
import threading
from datetime import UTC, datetime

from tests.standin.server import StandIn
from tests.standin.wire import VERBS


def main() -> None:
    """Serve until interrupted or until standard input ends on a terminal."""
    parser = argparse.ArgumentParser(prog="python -m tests.standin", description=__doc__)
    parser.add_argument("--port", type=int, default=0)
    parser.add_argument("--reads-all", action="store_true", help="the bot sees every group message (privacy mode off)")
    options = parser.parse_args()
    now = datetime.now(UTC)  # noqa: TID251 - a session by hand happens now
    with StandIn(port=options.port, reads_all=options.reads_all, now=now) as standin:
        print(f"HAYNOTE_BOT_API={standin.url} HAYNOTE_BOT_TOKEN={standin.token}", flush=True)
        print(f"control: POST {standin.url}/control/VERB with a JSON object; verbs: {', '.join(VERBS)}", flush=True)
        _listen(standin)


def _listen(standin: StandIn) -> None:
    try:
        for line in sys.stdin:
            who, mark, text = line.strip().partition(">" if ">" in line.partition(":")[0] else ":")
            if text:
                _act(standin, who.strip(), mark, text.strip())
        threading.Event().wait()  # standard input is closed: serve until stopped
    except KeyboardInterrupt:
        return


def _act(standin: StandIn, who: str, mark: str, text: str) -> None:
    try:
        if mark == ">":
            before = len(standin.calls())
            message = standin.answers(who)[-1]
            standin.press(who, message, text)
            standin.wait_calls("answerCallbackQuery", since=before)
            print(standin.answers(who, after=message["message_id"] - 1), flush=True)
        else:
            print(standin.wait_answer(standin.say(who, text)).get("text"), flush=True)
    except (LookupError, TimeoutError) as error:
        print(error, file=sys.stderr, flush=True)


if __name__ == "__main__":
    main()
