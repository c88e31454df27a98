"""Chooses what the next batch says: whose clips, which are joined, and what phones they hold."""

from collections import defaultdict
from collections.abc import Iterator
from dataclasses import dataclass

import numpy as np

from augment import Placed
from clips import Clips
from lexicon import Pronunciation
from project import RATE_HZ

PEOPLE_SHARE = 0.3
SHORT = int(1.1 * RATE_HZ)
JOIN_SHARE = 0.6
MOST_PARTS = 4
MIXED_BATCHES = 16
KNOWN_FAMILIES = {"digits", "words", "prose"}
"""Made speech that the network knows already: there, as with people, it is held to what it said before."""


@dataclass(frozen=True)
class Batch:
    placed: Placed
    labels: list[Pronunciation]
    is_known: np.ndarray  # 1.0 where the network is held to the one in use


class Batches:
    """@param is_person of each clip: recorded, not made. Both kinds must be there."""

    def __init__(
        self, clips: Clips, labels: list[Pronunciation], is_person: np.ndarray, size: int, rng: np.random.Generator
    ) -> None:
        self._labels, self._size, self._rng = labels, size, rng
        self._starts = np.array([clip.start for clip in clips.clips])
        self._lengths = np.array([clip.length for clip in clips.clips])
        families = np.array([clip.family in KNOWN_FAMILIES for clip in clips.clips])
        self._is_known = is_person | families
        share = np.where(is_person, PEOPLE_SHARE / is_person.sum(), (1 - PEOPLE_SHARE) / (~is_person).sum())
        self._chances = share / share.sum()
        self._speakers = [clip.speaker for clip in clips.clips]
        short = defaultdict(list)
        for at in np.flatnonzero(self._lengths < SHORT):
            short[self._speakers[at]].append(int(at))
        self._short = dict(short)

    def __iter__(self) -> Iterator[Batch]:
        """Without end. Utterances of like length come together, so that little is filled up."""
        while True:
            chosen = self._rng.choice(len(self._lengths), self._size * MIXED_BATCHES, p=self._chances)
            utterances = [self._joined(int(at)) for at in chosen]
            utterances.sort(key=lambda parts: self._lengths[parts].sum() + self._rng.normal(0, 3000))
            for turn in self._rng.permutation(MIXED_BATCHES):
                yield self._batch(utterances[turn * self._size : (turn + 1) * self._size])

    def _joined(self, at: int) -> list[int]:
        """A short clip is often followed by others of its speaker."""
        parts = [at]
        if self._lengths[at] < SHORT and self._rng.random() < JOIN_SHARE:
            others = self._short[self._speakers[at]]
            parts += [others[at] for at in self._rng.integers(len(others), size=self._rng.integers(1, MOST_PARTS))]
        return parts

    def _batch(self, utterances: list[list[int]]) -> Batch:
        starts, lengths, gaps = (np.zeros((len(utterances), MOST_PARTS), np.int64) for _ in range(3))
        for row, parts in enumerate(utterances):
            starts[row, : len(parts)] = self._starts[parts]
            lengths[row, : len(parts)] = self._lengths[parts]
            gaps[row, 1 : len(parts)] = self._rng.integers(RATE_HZ // 50, RATE_HZ // 7, len(parts) - 1)
        labels = [tuple(phone for part in parts for phone in self._labels[part]) for parts in utterances]
        is_known = np.array([float(all(self._is_known[parts])) for parts in utterances], np.float32)
        return Batch(Placed(starts, lengths, gaps), labels, is_known)
