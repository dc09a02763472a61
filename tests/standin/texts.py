"""What the Bot API says when it refuses: every error text of the stand-in, in this one module.

The documentation of the Bot API promises error codes, not wording. These texts are from memory of what bots in service receive; they
could not be compared with the real service. A bot under test should look at the code and at a few stable words, and if the
real wording turns out otherwise, it is corrected here alone.
"""

from __future__ import annotations

UNAUTHORIZED = (401, "Unauthorized")
NO_SUCH_METHOD = (404, "Not Found")

SECOND_POLLER = (409, "Conflict: terminated by other getUpdates request; make sure that only one bot instance is running")
NO_HTTPS = (400, "Bad Request: bad webhook: An HTTPS URL must be provided for webhook")
WEBHOOK_IS_SET = (409, "Conflict: can't use getUpdates method while webhook is active; use deleteWebhook to delete the webhook first")

BLOCKED = (403, "Forbidden: bot was blocked by the user")
KICKED = (403, "Forbidden: bot was kicked from the {type} chat")

CHAT_NOT_FOUND = (400, "Bad Request: chat not found")
UPGRADED = (400, "Bad Request: group chat was upgraded to a supergroup chat")

TEXT_EMPTY = (400, "Bad Request: message text is empty")
TEXT_TOO_LONG = (400, "Bad Request: message is too long")
CAPTION_TOO_LONG = (400, "Bad Request: message caption is too long")
BUTTON_DATA_INVALID = (400, "Bad Request: BUTTON_DATA_INVALID")
COMMAND_INVALID = (400, "Bad Request: BOT_COMMAND_INVALID")
REACTION_INVALID = (400, "Bad Request: REACTION_INVALID")
OUT_OF_LENGTH = (400, "Bad Request: {field} must be {limit} long")
MALFORMED = (400, "Bad Request: {what}")

CANT_PARSE = "Bad Request: can't parse entities: "
UNSUPPORTED_TAG = (400, CANT_PARSE + 'Unsupported start tag "{tag}" at byte offset {at}')
UNEXPECTED_END = (400, CANT_PARSE + "Unexpected end tag at byte offset {at}")
WRONG_END = (400, CANT_PARSE + 'Unmatched end tag at byte offset {at}, expected "</{expected}>", found "</{tag}>"')
UNCLOSED = (400, CANT_PARSE + 'Can\'t find end tag corresponding to start tag "{tag}"')

REPLIED_NOT_FOUND = (400, "Bad Request: message to be replied not found")
EDIT_NOT_FOUND = (400, "Bad Request: message to edit not found")
EDIT_NOT_ALLOWED = (400, "Bad Request: message can't be edited")
NO_TEXT_TO_EDIT = (400, "Bad Request: there is no text in the message to edit")
NO_CAPTION_TO_EDIT = (400, "Bad Request: there is no caption in the message to edit")
NOT_MODIFIED = (
    400,
    (
        "Bad Request: message is not modified: specified new message content and reply markup are exactly the same as a "
        "current content and reply markup of the message"
    ),
)
DELETE_NOT_FOUND = (400, "Bad Request: message to delete not found")
REACT_NOT_FOUND = (400, "Bad Request: message to react not found")

QUERY_TOO_OLD = (400, "Bad Request: query is too old and response timeout expired or query ID is invalid")

FILE_UNKNOWN = (400, "Bad Request: wrong file_id or the file is temporarily unavailable")
FILE_WRONG = (400, "Bad Request: wrong file identifier/HTTP URL specified")
FILE_TOO_BIG = (400, "Bad Request: file is too big")
FILE_EMPTY = (400, "Bad Request: file must be non-empty")
NO_PICTURE = (400, "Bad Request: IMAGE_PROCESS_FAILED")

FLOOD = (429, "Too Many Requests: retry after {retry_after}")
BAD_GATEWAY = "Bad Gateway"


class Refused(Exception):  # noqa: N818 - an answer, not a mistake of ours
    """The Bot API's answer to a call that it does not carry out."""

    def __init__(self, text: tuple[int, str], *, parameters: dict[str, int] | None = None, **words: object) -> None:
        self.code, pattern = text
        self.description = pattern.format(**words) if words else pattern
        self.parameters = parameters
        super().__init__(self.description)

    def answer(self) -> dict[str, object]:
        """The body of the answer."""
        body: dict[str, object] = {"ok": False, "error_code": self.code, "description": self.description}
        if self.parameters:
            body["parameters"] = self.parameters
        return body


class Dropped(Exception):  # noqa: N818 - the same
    """The connection is cut without an answer."""
