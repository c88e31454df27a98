"""Which made voices teach the network, and which are kept from it so that they can judge it."""

import random
from dataclasses import dataclass


@dataclass(frozen=True)
class Voice:
    engine: str  # "espeak" or "flite"
    name: str

    def __str__(self) -> str:
        return f"{self.engine} {self.name}"


@dataclass(frozen=True)
class Saying:
    """
    A text in a voice. Length and pitch against the engine's own: 1 and 0 change nothing. Respelt: names are written as
    the app's own voice is told them, which flite needs and espeak-ng gets half the time.
    """

    text: str
    voice: Voice
    stretch: float
    pitch: int
    respelt: bool


FLITE_TRAINING = ("slt", "slt", "rms", "kal16", "kal16")
ESPEAK_ACCENTS = (
    *("en-us", "en-us", "en-us-nyc", "en", "en-gb-scotland", "en-gb-scotland"),
    *("en-gb-x-gbclan", "en-gb-x-gbcwmd", "en-029"),
)
ESPEAK_VARIANTS = (
    *(("",) * 6),
    *(f"m{i}" for i in range(1, 9)),
    *(f"f{i}" for i in (1, 1, 2, 2, 3, 3, 4, 4, 5, 5)),
    *("Andy Alex Annie linda steph adam klatt klatt3 klatt4".split()),
    *("belinda Michael Denis paul victor aunty Lee Alicia".split()),
)

# Kept: an accent, a voice and variants that training never uses.
FLITE_KEPT = ("awb",)
ESPEAK_KEPT_ACCENT = "en-gb-x-rp"
ESPEAK_KEPT_VARIANTS = tuple(
    "Andrea Diogo Gene Hugo Marco Mike anika boris caleb david ed iven john max quincy rob shelby steph2 zac".split()
)
KEPT_SHARE_FLITE = 1 / 3
FLITE_SHARE = 0.35


def training_voice(rng: random.Random) -> Voice:
    if rng.random() < FLITE_SHARE:
        return Voice("flite", rng.choice(FLITE_TRAINING))
    return _espeak(rng.choice(ESPEAK_ACCENTS), rng.choice(ESPEAK_VARIANTS))


def kept_voice(rng: random.Random) -> Voice:
    """awb; the kept accent with any kept variant; a training accent with a kept variant: a third each."""
    if rng.random() < KEPT_SHARE_FLITE:
        return Voice("flite", rng.choice(FLITE_KEPT))
    accent = ESPEAK_KEPT_ACCENT if rng.random() < 0.5 else rng.choice(ESPEAK_ACCENTS)
    return _espeak(accent, rng.choice(ESPEAK_KEPT_VARIANTS))


def _espeak(accent: str, variant: str) -> Voice:
    return Voice("espeak", f"{accent}+{variant}" if variant else accent)


def saying(text: str, voice: Voice, rng: random.Random) -> Saying:
    respelt = voice.engine == "flite" or rng.random() < 0.5
    return Saying(text, voice, round(rng.uniform(0.75, 1.15), 2), rng.randint(-20, 30), respelt)
