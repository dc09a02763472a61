"""Waiting between tries."""

from __future__ import annotations

import asyncio
from datetime import timedelta

from telegram.error import RetryAfter

from bot.telegram.patience import LONGEST_S, Bell, backoff, seconds_of


def test_waits_grow_to_half_a_minute() -> None:
    """Half as long again after each failure, never more than the longest."""
    assert [backoff(failures) for failures in (1, 2, 3)] == [1.0, 1.5, 2.25]
    assert backoff(50) == backoff(5000) == LONGEST_S


def test_the_wish_of_the_service_is_told_in_seconds() -> None:
    """Whatever form the library gives it in."""
    assert seconds_of(RetryAfter(3)) == seconds_of(RetryAfter(timedelta(seconds=3))) == 3.0


async def test_a_bell_wakes_its_waiter_once() -> None:
    """Rung before or while somebody waits."""
    bell = Bell()
    bell.ring()
    await bell.wait(60)
    await bell.wait(0.001)
    waiter = asyncio.create_task(bell.wait(60))
    await asyncio.sleep(0)
    bell.ring()
    await waiter
    assert not bell.over


async def test_the_last_bell_rings_for_ever() -> None:
    """Nobody waits once it is over."""
    bell = Bell()
    bell.end()
    for _ in range(3):
        await bell.wait(60)
    await bell.ended()
    assert bell.over
