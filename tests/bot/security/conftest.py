"""The same barn as everywhere else."""

from tests.bot.telegram.conftest import barn, served, standin

__all__ = ["barn", "served", "standin"]
