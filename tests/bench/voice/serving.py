"""What others wait while one recording after the other is listened to, beside the same with nobody speaking; and the memory that the ears take.

    python -m tests.bench.voice.serving [--pace 5] [--seconds 20]

Needs the extra `voice`, and flite or another voice of `tests/bench/voice/sounds.py`. One of eight people speaks, 40 s at a time without a rest; the others type.
"""

from __future__ import annotations

import argparse
import statistics
import sys
import tempfile
import threading
import time
from pathlib import Path

from tests.bench.serving import PEOPLE, Watch, notes, running, settle
from tests.bench.voice.sounds import decoded, opus, voices
from tests.standin import StandIn

SPEAKER = "Hal"
SAID = "one weighed eight pounds three ounces. two weighed nine pounds. three has sore hocks. four bit me. five weighed seven pounds two ounces. "
TIMES = 3


def waits(standin: StandIn, watch: Watch, pace: float, seconds: float) -> list[float]:
    """How long each answer to those who type took [s]."""
    told, said = [], []
    began = time.monotonic()
    for at, (who, text) in enumerate([each for each in notes(int(2 * pace * seconds)) if each[0] != SPEAKER][: int(pace * seconds)]):
        time.sleep(max(0.0, began + at / pace - time.monotonic()))
        told.append(time.monotonic())
        said.append(standin.say(who, text))
    return sorted(seen - when for seen, when in zip(watch.answered(said, 120), told, strict=True))


def speak(standin: StandIn, sound: bytes, seconds: float, over: threading.Event, heard: list[float]) -> None:
    """Send a recording, wait for its answer, and send the next."""
    while not over.is_set():
        began = time.monotonic()
        sent = standin.send_file(SPEAKER, "voice", sound, duration=int(seconds))
        while not any("eard" in each.get("text", "") and "istening" not in each["text"] for each in standin.answers(sent)):
            if time.monotonic() - began > 60:
                raise TimeoutError
            time.sleep(0.02)
        heard.append(time.monotonic() - began)


def memory_mib(of: str) -> float:
    """The most memory that a process with these words in its command ever took."""
    most = 0.0
    for place in Path("/proc").glob("[0-9]*"):
        try:
            if of in (place / "cmdline").read_text().replace("\0", " "):
                line = next(each for each in (place / "status").read_text().splitlines() if each.startswith("VmHWM"))
                most = max(most, int(line.split()[1]) / 1024)
        except (OSError, StopIteration):
            continue
    return most


def line(name: str, times: list[float]) -> str:
    """The figures of these answers."""
    last = times[int(len(times) * 0.99)]
    return f"{name}: {len(times)} answers, median {statistics.median(times) * 1000:.0f} ms, 99 of 100 under {last * 1000:.0f} ms"


def main() -> None:
    """Print the figures."""
    options = argparse.ArgumentParser()
    for name, default in (("pace", 5.0), ("seconds", 20.0)):
        options.add_argument(f"--{name}", type=float, default=default)
    told = options.parse_args()
    name, voice = next(iter(voices().items()))
    samples = decoded(voice(SAID * TIMES))
    sound, seconds = opus(samples), len(samples) / 48_000
    with tempfile.TemporaryDirectory() as folder, StandIn() as standin:
        url, watch = f"sqlite:///{Path(folder) / 'book.sqlite'}", Watch(standin)
        settle(url, standin)
        with running(url, standin, 1):
            waits(standin, watch, 20, 4)  # herds are read, code is loaded
            quiet = waits(standin, watch, told.pace, told.seconds)
            over, heard = threading.Event(), list[float]()
            speaking = threading.Thread(target=speak, args=(standin, sound, seconds, over, heard))
            speaking.start()
            time.sleep(3)  # the model is loaded
            beside = waits(standin, watch, told.pace, told.seconds)
            over.set()
            speaking.join()
            worker = memory_mib("bot.voice.worker")
    print(line("nobody speaks", quiet))
    print(line(f"beside {len(heard)} recordings of {seconds:.0f} s by {name}, one after the other", beside))
    print(f"an answer takes {statistics.median(beside) / statistics.median(quiet):.2f} of the time")
    print(f"a recording is answered after {statistics.median(heard):.1f} s; the ears take {worker:.0f} MiB")
    if beside[int(len(beside) * 0.99)] > 0.3:
        sys.exit("more than 0.3 s")


if __name__ == "__main__":
    assert SPEAKER in PEOPLE
    main()
