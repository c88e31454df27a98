"""Clips on disk and in memory: one long row of 16-bit samples, and where in it each clip lies."""

import json
from collections.abc import Iterable
from dataclasses import asdict, dataclass
from pathlib import Path

import numpy as np


@dataclass(frozen=True)
class Clip:
    text: str
    speaker: str
    family: str
    start: int
    length: int  # samples at 16 kHz


@dataclass(frozen=True)
class Clips:
    samples: np.ndarray
    clips: list[Clip]

    def sound(self, at: int) -> np.ndarray:
        clip = self.clips[at]
        return self.samples[clip.start : clip.start + clip.length]

    def only(self, wanted: Iterable[int]) -> "Clips":
        return gathered((self.clips[at], self.sound(at)) for at in wanted)


def gathered(parts: Iterable[tuple[Clip, np.ndarray]]) -> Clips:
    """Lays sounds in one row. The places that the clips name are replaced."""
    rows: list[np.ndarray] = []
    clips: list[Clip] = []
    start = 0
    for clip, sound in parts:
        clips.append(Clip(clip.text, clip.speaker, clip.family, start, len(sound)))
        rows.append(sound)
        start += len(sound)
    return Clips(np.concatenate([np.zeros(0, np.int16), *rows]), clips)


def joined(sets: Iterable[Clips]) -> Clips:
    return gathered((s.clips[at], s.sound(at)) for s in sets for at in range(len(s.clips)))


def write(path: Path, clips: Clips) -> None:
    """@param path without an ending: `.npz` is added."""
    path.parent.mkdir(parents=True, exist_ok=True)
    index = json.dumps([asdict(clip) for clip in clips.clips])
    np.savez(path.with_suffix(".npz"), samples=clips.samples, index=np.array(index))


def read(path: Path) -> Clips:
    with np.load(path.with_suffix(".npz")) as stored:
        return Clips(stored["samples"], [Clip(**row) for row in json.loads(str(stored["index"]))])
