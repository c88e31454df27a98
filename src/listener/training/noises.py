"""Noise that speech is mixed with: recordings, and what is made here as there are few that are free."""

from collections.abc import Callable

import numpy as np

from clips import Clips
from project import RATE_HZ

SECONDS = 20
LENGTH = SECONDS * RATE_HZ
TIME_S = np.arange(LENGTH) / RATE_HZ
REPEATS_OF_RECORDED = 3

Rng = np.random.Generator


def bank(recorded: Clips, voices: Clips, rng: Rng) -> np.ndarray:
    """
    Rows of 20 s, each of power 1. Recordings are repeated until they fill a row, and stand in the bank several times,
    as they are worth more than what is made.

    @param voices training clips, of which babble is made.
    """
    rows = [np.resize(recorded.sound(at), LENGTH) for at in range(len(recorded.clips))] * REPEATS_OF_RECORDED
    made: list[tuple[Callable[[Rng], np.ndarray], int]] = [
        (_coloured, 7),
        (_banded, 3),
        (_rotor, 14),
        (_engine, 16),
        (_siren, 5),
        (_beeps, 6),
        (_clatter, 4),
        (lambda r: _babble(voices, r), 24),
    ]
    rows += [make(rng) for make, count in made for _ in range(count)]
    return np.stack([_of_power_one(row) for row in rows])


def _of_power_one(sound: np.ndarray) -> np.ndarray:
    centred = sound.astype(np.float32) - np.float32(np.mean(sound))
    return centred / (centred.std() + 1e-9)


def _shaped(gain: Callable[[np.ndarray], np.ndarray], rng: Rng) -> np.ndarray:
    """White noise with a gain over frequency in Hz."""
    spectrum = np.fft.rfft(rng.normal(0, 1, LENGTH))
    hz = np.maximum(np.fft.rfftfreq(LENGTH, 1 / RATE_HZ), 20)
    return _of_power_one(np.fft.irfft(spectrum * gain(hz), LENGTH))


def _coloured(rng: Rng) -> np.ndarray:
    fall = rng.uniform(0, 1)
    return _shaped(lambda hz: hz**-fall, rng)


def _banded(rng: Rng) -> np.ndarray:
    low, high = rng.uniform(100, 1000), rng.uniform(1500, 7000)
    return _shaped(lambda hz: ((hz > low) & (hz < high)) / np.sqrt(hz) + 1e-4, rng)


def _harmonics(pitch_hz: float, phase_s: np.ndarray, below_hz: float, fall: float, rng: Rng) -> np.ndarray:
    sound = np.zeros(LENGTH)
    for k in range(1, min(60, int(below_hz / pitch_hz)) + 1):
        sound += np.sin(2 * np.pi * pitch_hz * k * phase_s + rng.uniform(0, 2 * np.pi)) / k**fall
    return _of_power_one(sound)


def _rotor(rng: Rng) -> np.ndarray:
    """Blade slap, gear whine and the rush of air that the blades beat."""
    sway = rng.uniform(0.003, 0.02) * np.sin(2 * np.pi * rng.uniform(0.1, 0.6) * TIME_S + rng.uniform(0, 6))
    phase_s = np.cumsum(1 + sway) / RATE_HZ
    blades_hz, gear_hz = rng.uniform(11, 26), rng.uniform(70, 180)
    slap = np.clip(np.sin(2 * np.pi * blades_hz * phase_s), 0, 1) ** int(rng.integers(1, 5))
    fall = rng.uniform(0.2, 0.9)
    air = _of_power_one(_shaped(lambda hz: hz**-fall, rng) * (1 + rng.uniform(0, 3) * slap))
    return (
        rng.uniform(0.2, 1.2) * _harmonics(blades_hz, phase_s, 1000, rng.uniform(0.4, 1.1), rng)
        + rng.uniform(0.1, 1.0) * _harmonics(gear_hz, phase_s, 7800, rng.uniform(0.5, 1.3), rng)
        + rng.uniform(0.4, 1.5) * air
    )


def _engine(rng: Rng) -> np.ndarray:
    revs = np.interp(TIME_S, np.linspace(0, SECONDS, 40), rng.normal(0, 1, 40))
    phase_s = np.cumsum(1 + 0.03 * revs) / RATE_HZ
    fall = rng.uniform(0.3, 1.1)
    rush = _shaped(lambda hz: hz**-fall, rng)
    return _harmonics(rng.uniform(25, 90), phase_s, 6000, rng.uniform(0.5, 1.2), rng) + rng.uniform(0.3, 2) * rush


def _siren(rng: Rng) -> np.ndarray:
    period_s = rng.uniform(0.3, 5)
    if rng.random() < 0.6:
        hz = 600 + rng.uniform(300, 900) * (0.5 + 0.5 * np.sin(2 * np.pi * TIME_S / period_s))
    else:
        hz = np.where((TIME_S / period_s) % 1 < 0.5, rng.uniform(400, 700), rng.uniform(700, 1100))
    phase = 2 * np.pi * np.cumsum(hz) / RATE_HZ
    fall = rng.uniform(0.8, 2)
    return _of_power_one(sum(np.sin(k * phase) / k**fall for k in range(1, 5))) + 0.3 * _coloured(rng)


def _beeps(rng: Rng) -> np.ndarray:
    """A monitor's pulse tone."""
    sound = np.zeros(LENGTH)
    pitch_hz, period_s, length = rng.uniform(400, 2800), rng.uniform(0.35, 1.5), int(rng.uniform(0.06, 0.25) * RATE_HZ)
    phase = 2 * np.pi * pitch_hz * np.arange(length) / RATE_HZ
    beep = np.hanning(length) ** 0.3 * (np.sin(phase) + 0.3 * np.sin(2 * phase))
    for start_s in np.arange(rng.uniform(0, period_s), SECONDS - 0.5, period_s):
        at = int(start_s * RATE_HZ)
        sound[at : at + length] += beep
    return _of_power_one(sound) + rng.uniform(0.1, 0.6) * _coloured(rng)


def _clatter(rng: Rng) -> np.ndarray:
    sound = np.zeros(LENGTH)
    for _ in range(60):
        at, length = int(rng.integers(0, LENGTH - 4000)), int(rng.uniform(300, 3500))
        ring = np.sin(2 * np.pi * rng.uniform(500, 5000) * np.arange(length) / RATE_HZ)
        struck = rng.normal(0, 1, length) if rng.random() < 0.5 else ring
        sound[at : at + length] += rng.uniform(0.2, 1) * np.exp(-np.arange(length) / (length / 5)) * struck
    return _of_power_one(sound) + 0.2 * _coloured(rng)


def _babble(voices: Clips, rng: Rng) -> np.ndarray:
    sound = np.zeros(LENGTH, np.float32)
    for _ in range(int(rng.integers(3, 10))):
        talker = np.zeros(LENGTH, np.float32)
        at = int(rng.integers(0, LENGTH // 2))
        while at < LENGTH:
            said = voices.sound(int(rng.integers(len(voices.clips)))).astype(np.float32)[: LENGTH - at]
            talker[at : at + len(said)] = said * rng.uniform(0.4, 1)
            at += len(said) + int(rng.uniform(0, 0.4) * RATE_HZ)
        sound += np.roll(talker, int(rng.integers(LENGTH)))
    return _of_power_one(sound) + rng.uniform(0, 0.2) * _coloured(rng)
