"""A recording as numbers: any file that holds sound, mixed to one channel of 16 kHz."""

from __future__ import annotations

from itertools import chain
from pathlib import Path
from typing import Final

from bot.voice.pieces import Samples

#: Samples a second, as both ears want them.
RATE: Final = 16_000
#: A note is no longer than this [s]; of a longer file no more is decoded.
LONGEST_S: Final = 120


class NoSoundError(Exception):
    """The file holds nothing that can be heard."""


class TooLongError(Exception):
    """It goes on for longer than a note does."""


def decoded(path: Path) -> Samples:  # pragma: no cover - the extra's own tests
    """The samples of a recording. NoSoundError where there are none, TooLongError where it is longer than LONGEST_S."""
    import av  # noqa: PLC0415 - the extra
    import numpy as np  # noqa: PLC0415 - with the first recording
    from av.error import FFmpegError  # noqa: PLC0415 - the same

    parts: list[Samples] = []
    length = 0
    try:
        with av.open(str(path)) as held:
            if not held.streams.audio:
                raise NoSoundError(path)
            resampler = av.AudioResampler(format="s16", layout="mono", rate=RATE)
            for frame in chain(held.decode(audio=0), (None,)):
                for part in resampler.resample(frame):
                    parts.append(part.to_ndarray().reshape(-1))
                    length += len(parts[-1])
                if length > LONGEST_S * RATE:
                    raise TooLongError(path)
    except (FFmpegError, OSError, ValueError) as error:
        raise NoSoundError(path) from error
    if not length:
        raise NoSoundError(path)
    return np.concatenate(parts)
