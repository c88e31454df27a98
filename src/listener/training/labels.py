"""Which phones were said. A word may have several pronunciations; made voices and people each use one."""

import itertools

import numpy as np
import torch
import torch.nn.functional as functional

from clips import Clips
from features import filters, frame_counts, log_mel, normalised
from lexicon import Lexicon, Pronunciation
from network import Network, output_counts
from project import RATE_HZ

MOST_VARIANTS = 12
BACKGROUND = RATE_HZ // 5
HISS = 6e-4
BATCH_SAMPLES = 64 * 3 * RATE_HZ


def variants(text: str, lexicon: Lexicon, rng: np.random.Generator) -> list[Pronunciation]:
    """Every way to say a text, or so many of them by chance where there are more."""
    choices = [lexicon[word] for word in text.split()]
    if np.prod([len(choice) for choice in choices], dtype=float) <= MOST_VARIANTS:
        ways = list(itertools.product(*choices))
    else:
        ways = [tuple(choice[int(rng.integers(len(choice)))] for choice in choices) for _ in range(MOST_VARIANTS)]
    return list(dict.fromkeys(tuple(phone for word in way for phone in word) for way in ways))


@torch.no_grad()
def best_labels(
    network: Network, clips: Clips, lexicon: Lexicon, device: str, rng: np.random.Generator
) -> tuple[list[Pronunciation], np.ndarray]:
    """
    For each clip the pronunciation that fits the sound best by a network, and its loss a phone. A large loss means that
    the voice said something else than the dictionary has.
    """
    network.eval()
    order = np.argsort([clip.length for clip in clips.clips])
    best: list[Pronunciation] = [()] * len(order)
    loss_a_phone = np.full(len(order), np.inf)
    at = 0
    while at < len(order):
        longest = clips.clips[order[min(at + 63, len(order) - 1)]].length + 2 * BACKGROUND
        batch = order[at : at + max(1, BATCH_SAMPLES // longest)]
        at += len(batch)
        log_probs, counts = _heard(network, [clips.sound(i) for i in batch], device)
        ways = [(row, way) for row, i in enumerate(batch) for way in variants(clips.clips[i].text, lexicon, rng)]
        rows = torch.tensor([row for row, _ in ways], device=device)
        losses = functional.ctc_loss(
            log_probs[:, rows],
            torch.tensor([phone for _, way in ways for phone in way], device=device),
            counts[rows],
            torch.tensor([len(way) for _, way in ways], device=device),
            reduction="none",
        ).cpu()
        for (row, way), loss in zip(ways, losses.tolist(), strict=True):
            if loss / len(way) < loss_a_phone[batch[row]]:
                loss_a_phone[batch[row]], best[batch[row]] = loss / len(way), way
    return best, loss_a_phone


def _heard(network: Network, sounds: list[np.ndarray], device: str) -> tuple[torch.Tensor, torch.Tensor]:
    """Log probabilities [outputs, batch, 40] of quiet utterances with background around, and their counts."""
    counts = torch.tensor([len(sound) + 2 * BACKGROUND for sound in sounds])
    laid = np.zeros((len(sounds), int(counts.max())), np.float32)
    for row, sound in zip(laid, sounds, strict=True):
        row[BACKGROUND : BACKGROUND + len(sound)] = sound.astype(np.float32) / 32_768
    speech = torch.from_numpy(laid).to(device)
    frames = frame_counts(counts).to(device)
    mel = log_mel(speech + HISS * torch.randn_like(speech), torch.from_numpy(filters()).to(device))
    return network(normalised(mel, frames), frames).log_softmax(-1).transpose(0, 1), output_counts(frames)
