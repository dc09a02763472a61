"""The names of SQLAlchemy that the door speaks of: a connection, an engine, an address, and what is wrong with one."""

from sqlalchemy import URL, Connection, Engine, make_url
from sqlalchemy.exc import ArgumentError, DBAPIError, NoSuchModuleError

__all__ = ["URL", "ArgumentError", "Connection", "DBAPIError", "Engine", "NoSuchModuleError", "make_url"]
