"""A long recording cut into pieces that an ear takes at once, where it is quietest."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final, TypeAlias

if TYPE_CHECKING:
    from typing import Any

    import numpy as np

#: Sixteen bits a sample. The shells load no numpy: only the worker that listens does.
Samples: TypeAlias = "np.ndarray[Any, np.dtype[np.int16]]"

#: The ear listens to 30 s at a time: pieces stay below that, and are no shorter than need be [s].
LONGEST_S: Final = 25
SHORTEST_S: Final = 10
#: The stretch whose loudness is looked at [s].
FRAME_S: Final = 0.2
#: Below this loudness (of 32768) nobody speaks.
SILENT: Final = 40.0


def pieces(samples: Samples, rate: int) -> list[Samples]:
    """The recording in pieces, in order; nothing is left out."""
    found: list[Samples] = []
    while len(samples) > LONGEST_S * rate:
        cut = _quietest(samples[: LONGEST_S * rate], rate)
        found.append(samples[:cut])
        samples = samples[cut:]
    return [*found, samples]


def is_silent(samples: Samples, rate: int) -> bool:
    """Whether no stretch of it is loud enough for somebody to speak."""
    return float(_loudness(samples, int(FRAME_S * rate)).max(initial=0.0)) < SILENT


def _quietest(samples: Samples, rate: int) -> int:
    """Where to cut: in the middle of the quietest stretch that is not too early."""
    frame = int(FRAME_S * rate)
    first = SHORTEST_S * rate // frame
    quiet = first + int(_loudness(samples, frame)[first:].argmin())
    return quiet * frame + frame // 2


def _loudness(samples: Samples, frame: int) -> np.ndarray[Any, np.dtype[np.float64]]:
    """The root mean square of each whole stretch; of a shorter recording one value."""
    whole = max(len(samples) // frame, 1)
    frames = samples[: whole * frame].astype("float64").reshape(whole, -1)
    loudness: np.ndarray[Any, np.dtype[np.float64]] = (frames**2).mean(axis=1) ** 0.5
    return loudness
