"""
Changes clips afresh each time they are used, a whole batch at once on the accelerator: speed, room, microphone, noise,
level, telephone, vocal tract, masks. Gives features ready for the network.
"""

from dataclasses import dataclass

import numpy as np
import torch

import features
from project import RATE_HZ

WARPS = np.linspace(0.86, 1.16, 13)
SPEECH_RMS = 0.06
ROOM_SAMPLES = 4_000
EQUALISER_KNOTS, EQUALISER_DB = 7, 5
SHARES = {"speed": 0.7, "room": 0.4, "equaliser": 0.8, "band": 0.25, "noise": 0.8, "second noise": 0.2, "warp": 0.6}
SHARES |= {"telephone": 0.25, "whole telephone": 0.8, "telephone bass cut": 0.6, "telephone faint": 0.4}
TELEPHONE_CUT_HZ, TELEPHONE_BASS_HZ, TELEPHONE_SLOPE_HZ = (3300, 4100), (150, 350), 200
FAINT_BELOW_DB, FAINTER_DB, FAINT_KNEE_DB, FAINT_WINDOW = (8, 18), (6, 24), 6, 321
MASKED_SHARE = 0.6
LONG_PAUSE_SHARE = 0.2


@dataclass(frozen=True)
class Placed:
    """Which stretches of the long row of samples make up each utterance: [batch, parts], 0 long where there is none."""

    starts: np.ndarray
    lengths: np.ndarray
    gaps: np.ndarray  # samples of silence before each part


@dataclass(frozen=True)
class Augmented:
    """What the network sees of a batch."""

    features: torch.Tensor  # [batch, frames, 64]
    frames: torch.Tensor  # how many of them each utterance has
    is_telephone: torch.Tensor  # whether an utterance's speech is as if sampled at 8 kHz


class Augmenter:
    """
    @param samples the long row of all clips, 16 bit, on the device.
    @param noise rows of power 1, on the device.
    """

    def __init__(self, samples: torch.Tensor, noise: torch.Tensor, rng: np.random.Generator) -> None:
        self._samples, self._noise, self._rng = samples, noise, rng
        self._device = samples.device
        self._filters = torch.from_numpy(np.stack([features.filters(warp) for warp in WARPS])).to(self._device)
        self._plain = torch.from_numpy(features.filters()).to(self._device)

    def __call__(self, placed: Placed) -> Augmented:
        sound, counts, speech = self._laid_out(placed)
        is_telephone = self._chosen("telephone", len(sound))
        is_whole = self._chosen("whole telephone", len(sound))
        sound = self._through_room_and_microphone(sound)
        sound = self._with_faint_parts(sound, is_telephone & self._chosen("telephone faint", len(sound)))
        sound = self._through_telephone(sound, is_telephone & ~is_whole)
        power = (sound**2 * speech).sum(1, keepdim=True) / speech.sum(1, keepdim=True)
        sound = self._with_noise(sound, (power + 1e-12).sqrt())
        hiss = 10 ** self._uniform(-4.2, -2.9, len(sound), 1)
        sound = sound.clamp(-1, 1) + torch.randn_like(sound) * hiss
        sound = self._through_telephone(sound, is_telephone & is_whole)
        warped = self._filters[torch.from_numpy(self._rng.integers(0, len(WARPS), len(sound))).to(self._device)]
        weights = torch.where(self._chosen("warp", len(sound))[..., None], warped, self._plain)
        frames = features.frame_counts(counts)
        made = features.normalised(features.log_mel(sound, weights), frames)
        return Augmented(self._masked(made, frames), frames, is_telephone[:, 0])

    def _uniform(self, low: float, high: float, *shape: int) -> torch.Tensor:
        return torch.from_numpy(self._rng.uniform(low, high, shape).astype(np.float32)).to(self._device)

    def _chosen(self, what: str, count: int) -> torch.Tensor:
        return self._uniform(0, 1, count, 1) < SHARES[what]

    def _laid_out(self, placed: Placed) -> tuple[torch.Tensor, torch.Tensor, torch.Tensor]:
        """Parts one after another with background around them, faster or slower: sound, samples, where speech is."""
        batch, parts = placed.starts.shape
        rng = self._rng
        speed = np.where(rng.random(batch) < SHARES["speed"], rng.uniform(0.87, 1.18, batch), 1.0)
        lengths = (placed.lengths / speed[:, None]).astype(np.int64)
        longest_pause_s = np.where(rng.random((2, batch)) < LONG_PAUSE_SHARE, 1.6, 0.5)
        before, after = (rng.uniform(0.05, longest_pause_s) * RATE_HZ).astype(np.int64)
        begins = before[:, None] + np.cumsum(lengths + placed.gaps, 1) - lengths
        counts = begins[:, -1] + lengths[:, -1] + after
        starts_at, length_of, begin_of, speed_of = (
            torch.from_numpy(value).to(self._device)
            for value in (placed.starts, lengths, begins, speed.astype(np.float32))
        )
        at = torch.arange(int(counts.max()), device=self._device)[None]
        sound = torch.zeros(batch, at.shape[1], device=self._device)
        speech = torch.zeros_like(sound)
        for part in range(parts):
            offset = at - begin_of[:, part : part + 1]
            inside = (offset >= 0) & (offset < length_of[:, part : part + 1] - 1)
            place = offset.clamp(min=0) * speed_of[:, None]
            whole = place.long()
            first = (starts_at[:, part : part + 1] + whole).clamp(max=len(self._samples) - 2)
            rest = place - whole
            between = self._samples[first] * (1 - rest) + self._samples[first + 1] * rest
            sound += torch.where(inside, between / 32_768, torch.zeros_like(sound))
            speech += inside
        return sound, torch.from_numpy(counts).to(self._device), speech

    def _through_room_and_microphone(self, sound: torch.Tensor) -> torch.Tensor:
        batch, length = sound.shape
        size = _padded(length)
        spectrum = torch.fft.rfft(sound, size)
        time_s = torch.arange(ROOM_SAMPLES, device=self._device) / RATE_HZ
        echo = torch.randn(batch, ROOM_SAMPLES, device=self._device) * self._uniform(0.02, 0.25, batch, 1)
        echo *= 10 ** (-3 * time_s / self._uniform(0.08, 0.5, batch, 1)) * self._chosen("room", batch)
        echo[:, 0] = 1
        spectrum = spectrum * torch.fft.rfft(echo, size)
        knots = torch.randn(batch, 1, EQUALISER_KNOTS, device=self._device) * EQUALISER_DB
        knots = knots * self._chosen("equaliser", batch)[..., None]
        gain_db = torch.nn.functional.interpolate(knots, spectrum.shape[1], mode="linear", align_corners=True)[:, 0]
        hz = torch.linspace(20, RATE_HZ / 2, spectrum.shape[1], device=self._device)
        low, high = self._uniform(50, 400, batch, 1), self._uniform(3000, 7800, batch, 1)
        cut_db = torch.log2(low / hz).clamp(0, 4) * 12 + torch.log2(hz / high).clamp(0, 3) * 36
        gain_db = gain_db - cut_db * self._chosen("band", batch)
        return torch.fft.irfft(spectrum * 10 ** (gain_db / 20), size)[:, :length]

    def _through_telephone(self, sound: torch.Tensor, chosen: torch.Tensor) -> torch.Tensor:
        """Leaves nothing above a steep cut, as sampling at 8 kHz does, and often little bass. [batch, 1] are chosen."""
        batch, length = sound.shape
        size = _padded(length)
        spectrum = torch.fft.rfft(sound, size)
        hz = torch.linspace(0, RATE_HZ / 2, spectrum.shape[1], device=self._device)
        below_cut = (self._uniform(*TELEPHONE_CUT_HZ, batch, 1) - hz) / TELEPHONE_SLOPE_HZ + 0.5
        above_bass = (hz - self._uniform(*TELEPHONE_BASS_HZ, batch, 1)) / TELEPHONE_SLOPE_HZ + 0.5
        gain = below_cut.clamp(0, 1)
        gain = torch.where(self._chosen("telephone bass cut", batch), gain * above_bass.clamp(0, 1), gain)
        return torch.where(chosen, torch.fft.irfft(spectrum * gain, size)[:, :length], sound)

    def _with_faint_parts(self, sound: torch.Tensor, chosen: torch.Tensor) -> torch.Tensor:
        """What is much weaker than the loudest, often an s or a t, becomes weaker still, as lines and gates have it."""
        batch = len(sound)
        power = torch.nn.functional.avg_pool1d(sound[:, None] ** 2, FAINT_WINDOW, 1, FAINT_WINDOW // 2)[:, 0]
        below_db = -10 * torch.log10(power / (power.amax(1, keepdim=True) + 1e-12) + 1e-9)
        share = ((below_db - self._uniform(*FAINT_BELOW_DB, batch, 1)) / FAINT_KNEE_DB).clamp(0, 1)
        gain_db = -share * self._uniform(*FAINTER_DB, batch, 1)
        return torch.where(chosen, sound * 10 ** (gain_db / 20), sound)

    def _with_noise(self, sound: torch.Tensor, speech_rms: torch.Tensor) -> torch.Tensor:
        """Noise under the speech, the whole then at a chance level."""
        batch, length = sound.shape
        for what, low_db, high_db in (("noise", -3.0, 25.0), ("second noise", 5.0, 25.0)):
            rows = torch.from_numpy(self._rng.integers(0, len(self._noise), (batch, 1))).to(self._device)
            begins = torch.from_numpy(self._rng.integers(0, self._noise.shape[1], (batch, 1))).to(self._device)
            places = (begins + torch.arange(length, device=self._device)) % self._noise.shape[1]
            amount = 10 ** (-self._uniform(low_db, high_db, batch, 1) / 20) * self._chosen(what, batch)
            sound = sound + speech_rms * amount * self._noise[rows, places]
        return sound * (SPEECH_RMS / speech_rms) * 10 ** (self._uniform(-18, 8, batch, 1) / 20)

    def _masked(self, made: torch.Tensor, frames: torch.Tensor) -> torch.Tensor:
        """Two stripes of bands and two of time are wiped out in most utterances."""
        batch = len(made)
        keep = torch.ones_like(made)
        masked = self._uniform(0, 1, batch, 1) < MASKED_SHARE
        for axis, widest, ends in ((2, 9, torch.full_like(frames, features.BANDS)), (1, 10, frames)):
            index = torch.arange(made.shape[axis], device=self._device)[None]
            for _ in range(2):
                width = self._uniform(0, widest, batch, 1).floor()
                begin = self._uniform(0, 1, batch, 1) * (ends[:, None] - width).clamp(min=1)
                stripe = (index >= begin.floor()) & (index < begin.floor() + width) & masked
                keep = keep * ~(stripe[:, None, :] if axis == 2 else stripe[..., None])
        return made * keep


def _padded(length: int) -> int:
    """A size for the Fourier transform with room for an echo after the sound."""
    return -(-(length + ROOM_SAMPLES) // 4096) * 4096
