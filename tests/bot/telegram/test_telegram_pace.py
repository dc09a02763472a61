"""Messages go out as fast as the service takes them, and slower where it complained."""

from __future__ import annotations

from bot.telegram.pace import SLOW, SLOW_FOR, Pace


class Time:
    """A clock that sleeping sets forward."""

    def __init__(self) -> None:
        self.now = 100.0
        self.slept: list[float] = []

    def clock(self) -> float:
        return self.now

    async def sleep(self, seconds: float) -> None:
        self.slept.append(round(seconds, 6))
        self.now += seconds


async def test_the_first_messages_go_at_once() -> None:
    """A single answer waits for nothing."""
    time = Time()
    await Pace(time.clock, time.sleep).turn("1")
    assert time.slept == []


async def test_all_chats_together_keep_the_overall_pace() -> None:
    """At ten a second the third message goes 0.2 s after the first."""
    time = Time()
    pace = Pace(time.clock, time.sleep, overall=10)
    for chat in ("1", "2", "3"):
        await pace.turn(chat)
    assert time.slept == [0.1, 0.1]


async def test_a_chat_that_complained_is_slowed_down() -> None:
    """It waits as long as the service said, then gets a message a second; others are not held up."""
    time = Time()
    pace = Pace(time.clock, time.sleep, overall=1000)
    pace.complained("1", 7)
    await pace.turn("2")
    assert time.slept == []
    await pace.turn("1")
    await pace.turn("1")
    assert time.slept == [7, SLOW]


async def test_a_chat_is_forgiven() -> None:
    """After a minute without complaint it goes at full pace again."""
    time = Time()
    pace = Pace(time.clock, time.sleep, overall=1000)
    pace.complained("1", 1)
    time.now += 1 + SLOW_FOR
    await pace.turn("1")
    time.now += 0.001
    await pace.turn("1")
    assert time.slept == []
