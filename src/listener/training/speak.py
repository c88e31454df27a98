"""
Made voices in process: espeak-ng and flite through their shared libraries, which are Debian's espeak-ng and flite.

Where the libraries are elsewhere, SPEECH_LIBRARIES names the folder (with espeak-ng-data in it).
"""

import ctypes
import os
from functools import cache
from math import gcd
from pathlib import Path

import numpy as np
from scipy.signal import resample_poly

from project import RATE_HZ, respellings
from voices import Saying

ESPEAK_WORDS_PER_MINUTE = 165
FLITE_PITCH_HZ = {"slt": 170, "rms": 95, "kal16": 105, "awb": 130}
SPEECH_RMS = 0.06
SHORTEST_SPEECH = RATE_HZ // 10
_FOLDER = os.environ.get("SPEECH_LIBRARIES", "")
_RESPELT = respellings()


def spelt(text: str, respell: bool) -> str:
    """Single letters are written large, or they are read as words; names as the app's own voice is told them."""
    words = [_RESPELT.get(word, word) if respell else word for word in text.split()]
    return " ".join(word.upper() if len(word) == 1 and word != "a" else word for word in words)


def say(saying: Saying) -> np.ndarray | None:
    """16-bit samples at 16 kHz, silence cut, at one loudness; nothing where the voice said nothing."""
    rate_hz, samples = _flite(saying) if saying.voice.engine == "flite" else _espeak(saying)
    return _finished(rate_hz, samples)


def _finished(rate_hz: int, samples: np.ndarray) -> np.ndarray | None:
    if rate_hz != RATE_HZ and len(samples):
        shared = gcd(rate_hz, RATE_HZ)
        samples = resample_poly(samples, RATE_HZ // shared, rate_hz // shared)
    loud = np.flatnonzero(np.abs(samples) > 0.02 * np.abs(samples).max(initial=0.0))
    if len(loud) < SHORTEST_SPEECH // 4 or loud[-1] - loud[0] < SHORTEST_SPEECH:
        return None
    cut = samples[max(0, loud[0] - 480) : loud[-1] + 960]
    scaled = cut * (SPEECH_RMS / np.sqrt(np.mean(cut**2))) * 32_768
    return np.clip(scaled, -32_000, 32_000).astype(np.int16)


def _library(name: str) -> ctypes.CDLL:
    return ctypes.CDLL(str(Path(_FOLDER) / name) if _FOLDER else name, mode=ctypes.RTLD_GLOBAL)


class _EspeakEngine:
    """The library calls back with samples; it can only be opened once in a process."""

    AUDIO_BY_CALLBACK, RATE, PITCH, UTF8 = 2, 1, 3, 1

    def __init__(self) -> None:
        if _FOLDER:
            for needed in ("libasound.so.2", "libpcaudio.so.0", "libsonic.so.0"):
                _library(needed)
        self.library = _library("libespeak-ng.so.1")
        self.rate_hz = self.library.espeak_Initialize(self.AUDIO_BY_CALLBACK, 0, _FOLDER.encode() or None, 0)
        self._parts: list[np.ndarray] = []
        kind = ctypes.CFUNCTYPE(ctypes.c_int, ctypes.POINTER(ctypes.c_short), ctypes.c_int, ctypes.c_void_p)
        self._callback = kind(self._take)
        self.library.espeak_SetSynthCallback(self._callback)

    def _take(self, samples, count: int, _events) -> int:
        if samples and count > 0:
            self._parts.append(np.ctypeslib.as_array(samples, (count,)).copy())
        return 0

    def say(self, text: str, voice: str, words_per_minute: int, pitch: int) -> np.ndarray:
        if self.library.espeak_SetVoiceByName(voice.encode()) != 0:
            raise ValueError(f"espeak-ng has no voice {voice}")
        self.library.espeak_SetParameter(self.RATE, words_per_minute, 0)
        self.library.espeak_SetParameter(self.PITCH, pitch, 0)
        self._parts.clear()
        line = text.encode()
        self.library.espeak_Synth(line, len(line) + 1, 0, 1, 0, self.UTF8, None, None)
        self.library.espeak_Synchronize()
        return np.concatenate([np.zeros(0, np.int16), *self._parts]).astype(np.float32) / 32_768


class _FliteVoice(ctypes.Structure):
    _fields_ = [("name", ctypes.c_char_p), ("features", ctypes.c_void_p)]


class _FliteWave(ctypes.Structure):
    _fields_ = [
        ("type", ctypes.c_char_p),
        ("rate_hz", ctypes.c_int),
        ("count", ctypes.c_int),
        ("channels", ctypes.c_int),
        ("samples", ctypes.POINTER(ctypes.c_short)),
    ]


class _FliteEngine:
    def __init__(self) -> None:
        if _FOLDER:
            _library("libasound.so.2")
        self.library = _library("libflite.so.1")
        for part in ("libflite_cmulex.so.1", "libflite_usenglish.so.1"):
            _library(part)
        self.library.flite_init()
        self.library.flite_text_to_wave.restype = ctypes.POINTER(_FliteWave)
        self.library.flite_text_to_wave.argtypes = [ctypes.c_char_p, ctypes.c_void_p]
        self.library.flite_feat_set_float.argtypes = [ctypes.c_void_p, ctypes.c_char_p, ctypes.c_float]
        self.library.delete_wave.argtypes = [ctypes.c_void_p]
        self._voices: dict[str, ctypes._Pointer] = {}

    def say(self, text: str, voice: str, stretch: float, pitch_hz: int) -> tuple[int, np.ndarray]:
        opened = self._voices.get(voice) or self._open(voice)
        self.library.flite_feat_set_float(opened.contents.features, b"duration_stretch", stretch)
        self.library.flite_feat_set_float(opened.contents.features, b"int_f0_target_mean", pitch_hz)
        wave = self.library.flite_text_to_wave(text.encode(), opened)
        samples = np.ctypeslib.as_array(wave.contents.samples, (wave.contents.count,)).astype(np.float32) / 32_768
        rate_hz = wave.contents.rate_hz
        self.library.delete_wave(wave)
        return rate_hz, samples

    def _open(self, voice: str):
        register = getattr(_library(f"libflite_cmu_us_{voice}.so.1"), f"register_cmu_us_{voice}")
        register.restype, register.argtypes = ctypes.POINTER(_FliteVoice), [ctypes.c_char_p]
        self._voices[voice] = register(None)
        return self._voices[voice]


_espeak_engine = cache(_EspeakEngine)
_flite_engine = cache(_FliteEngine)


def _espeak(saying: Saying) -> tuple[int, np.ndarray]:
    engine = _espeak_engine()
    speed = round(ESPEAK_WORDS_PER_MINUTE / saying.stretch)
    return engine.rate_hz, engine.say(spelt(saying.text, saying.respelt), saying.voice.name, speed, 50 + saying.pitch)


def _flite(saying: Saying) -> tuple[int, np.ndarray]:
    pitch_hz = FLITE_PITCH_HZ[saying.voice.name] + saying.pitch
    return _flite_engine().say(spelt(saying.text, saying.respelt), saying.voice.name, saying.stretch, pitch_hz)
