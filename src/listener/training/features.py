"""
Log-mel features on whichever device the sound is on. The definition is src/listener/features.ts; tests hold the
app's to fixed vectors, and check.py holds these to the same ones.
"""

from functools import cache

import numpy as np
import torch

from project import RATE_HZ

FRAME, HOP, FFT, BANDS = 400, 160, 512, 64
LOW_HZ, HIGH_HZ = 60.0, 7_800.0
FLOOR, SCALE = 1e-6, 0.4
WARP_KNEE_HZ = 4_800.0


@cache
def filters(warp: float = 1.0) -> np.ndarray:
    """
    Triangles of peak 1, [257, 64]. A warp other than 1 moves their centres as a longer or shorter vocal tract would:
    in proportion up to a knee, from there in a straight line to half the rate.
    """

    def mel(hz: np.ndarray | float) -> np.ndarray:
        return 1127 * np.log(1 + np.asarray(hz) / 700)

    edges = 700 * (np.exp(np.linspace(mel(LOW_HZ), mel(HIGH_HZ), BANDS + 2) / 1127) - 1)
    half = RATE_HZ / 2
    knee = WARP_KNEE_HZ / max(warp, 1.0)
    edges = np.where(edges <= knee, edges * warp, half - (half - knee * warp) / (half - knee) * (half - edges))
    bins = np.arange(FFT // 2 + 1) * RATE_HZ / FFT
    weights = np.zeros((len(bins), BANDS), np.float32)
    for band in range(BANDS):
        low, centre, high = edges[band : band + 3]
        weights[:, band] = np.maximum(0, np.minimum((bins - low) / (centre - low), (high - bins) / (high - centre)))
        if not weights[:, band].any():
            weights[np.argmin(np.abs(bins - centre)), band] = 1
    return weights


def frame_counts(sample_counts: torch.Tensor) -> torch.Tensor:
    return 1 + torch.div(sample_counts - FRAME, HOP, rounding_mode="floor")


def log_mel(sound: torch.Tensor, weights: torch.Tensor) -> torch.Tensor:
    """[batch, samples] and filters [257, 64] or [batch, 257, 64] to [batch, frames, 64], not yet normalised."""
    window = torch.hann_window(FRAME, periodic=True, device=sound.device)
    spectrum = torch.fft.rfft(sound.unfold(1, FRAME, HOP) * window, FFT)
    return torch.log((spectrum.real**2 + spectrum.imag**2) @ weights + FLOOR)


def normalised(features: torch.Tensor, frames: torch.Tensor) -> torch.Tensor:
    """Takes each band's mean over an utterance's own frames away; frames after its end become zero."""
    inside = inside_of(frames, features.shape[1])[..., None]
    means = (features * inside).sum(1, keepdim=True) / frames.view(-1, 1, 1)
    return (features - means) * SCALE * inside


def inside_of(counts: torch.Tensor, length: int) -> torch.Tensor:
    """[batch, length]: 1 before each count, 0 from there on."""
    return (torch.arange(length, device=counts.device)[None] < counts[:, None]).float()
