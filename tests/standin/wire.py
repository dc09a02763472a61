"""The wire: HTTP requests on the loopback address, handed to the stand-in, and its answers sent back."""

from __future__ import annotations

import json
import re
import socket
import sys
from http.server import BaseHTTPRequestHandler, ThreadingHTTPServer
from typing import TYPE_CHECKING, Any
from urllib.parse import unquote

from tests.standin import texts
from tests.standin.bodies import read_body
from tests.standin.methods import METHODS
from tests.standin.texts import Dropped, Refused

if TYPE_CHECKING:
    from tests.standin.server import StandIn

PATH = re.compile(r"/(?P<file>file/)?bot(?P<token>[^/]+)/(?P<rest>[^?]+)(?:\?(?P<query>.*))?")
#: What another process may ask for under /control/, by POST with the arguments as a JSON object.
VERBS = (
    "person", "group", "say", "edit", "press", "block", "unblock", "kick", "migrate", "expire_presses", "set_now",
    "fail", "release", "answers", "wait_answer", "wait_calls", "calls", "pending", "violations", "forgive",
)  # fmt: skip


class Listener(ThreadingHTTPServer):
    """One thread a connection; knows the open connections, to cut them at the end."""

    daemon_threads = True
    request_queue_size = 64

    def __init__(self, address: tuple[str, int], standin: StandIn) -> None:
        self.standin = standin
        self.open: set[socket.socket] = set()
        super().__init__(address, Handler)

    def cut_all(self) -> None:
        """Cut every connection that clients keep open."""
        for connection in list(self.open):
            _cut(connection)

    def process_request(self, request: Any, client_address: Any) -> None:
        self.open.add(request)
        super().process_request(request, client_address)

    def shutdown_request(self, request: Any) -> None:
        self.open.discard(request)
        super().shutdown_request(request)

    def handle_error(self, request: Any, client_address: Any) -> None:
        """A client that went away is no error of ours."""
        if not isinstance(sys.exc_info()[1], OSError):
            super().handle_error(request, client_address)


def _cut(connection: socket.socket) -> None:
    try:
        connection.shutdown(socket.SHUT_RDWR)
    except OSError:  # it is already gone
        return


class Handler(BaseHTTPRequestHandler):
    """One connection of a client."""

    protocol_version = "HTTP/1.1"
    wbufsize = -1  # head and body in one packet: else each answer waits 40 ms for an acknowledgement
    disable_nagle_algorithm = True
    server: Listener

    def do_POST(self) -> None:
        """Any request: calls of the bot, downloads, control."""
        try:
            body = self._body()
            if self.path.startswith("/control/"):
                self._reply(*self._control(body))
            else:
                self._reply(*self._bot_call(body))
        except Dropped:
            self.close_connection = True
            _cut(self.connection)

    do_GET = do_POST  # noqa: N815 - http.server names it

    def log_message(self, format: str, *args: Any) -> None:  # noqa: A002 - the base class names it
        """No lines on standard error: the log is kept as calls."""

    def _body(self) -> bytes:
        if self.headers.get("Transfer-Encoding", "").lower() != "chunked":
            length = int(self.headers.get("Content-Length", 0))
            body = self.rfile.read(length)
            if len(body) < length:
                raise Dropped  # the client died in the middle of a word: no request at all
            return body
        body = b""
        while size := int(self.rfile.readline().partition(b";")[0], 16):
            body += self.rfile.read(size)
            self.rfile.readline()
        self.rfile.readline()
        return body

    def _bot_call(self, body: bytes) -> tuple[int, dict[str, Any] | bytes]:
        standin = self.server.standin
        path = PATH.fullmatch(self.path)
        if path is None:
            return 404, Refused(texts.NO_SUCH_METHOD).answer()
        if unquote(path["token"]) != standin.token:
            return 401, Refused(texts.UNAUTHORIZED).answer()
        if path["file"]:
            file = standin.world.files.get(path["rest"].removeprefix("files/"))
            return (200, file.content) if file else (404, Refused(texts.NO_SUCH_METHOD).answer())
        if path["rest"] not in METHODS:
            return 404, Refused(texts.NO_SUCH_METHOD).answer()
        try:
            fields = read_body(self.headers.get("Content-Type", ""), body, path["query"] or "")
        except ValueError as error:
            standin.violations.append(f"{path['rest']}: {error}")
            return 400, Refused(texts.MALFORMED, what=error).answer()
        return standin.serve(path["rest"], fields)

    def _control(self, body: bytes) -> tuple[int, Any]:
        verb = self.path.removeprefix("/control/").partition("?")[0]
        if verb not in VERBS:
            return 404, {"verbs": VERBS}
        asked = getattr(self.server.standin, verb)
        try:
            arguments = json.loads(body) if body else {}
            return 200, asked(**arguments) if callable(asked) else asked
        except (TypeError, ValueError, LookupError, TimeoutError) as error:
            return 400, {"error": f"{type(error).__name__}: {error}"}

    def _reply(self, status: int, body: Any) -> None:
        page = isinstance(body, bytes)
        content = body if page else json.dumps(body, default=lambda call: call.as_json()).encode()
        self.send_response(status)
        self.send_header("Content-Type", "application/octet-stream" if page else "application/json")
        self.send_header("Content-Length", str(len(content)))
        self.end_headers()
        self.wfile.write(content)
