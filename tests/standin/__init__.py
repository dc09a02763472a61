"""A stand-in for the Telegram Bot API over real HTTP, for tests and for trying a bot by hand. See server.py."""

from tests.standin.server import Call, StandIn

__all__ = ["Call", "StandIn"]
