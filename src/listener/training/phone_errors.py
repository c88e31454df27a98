"""
How many phones a network gets wrong without any grammar: a quick thermometer while it trains. It does not judge a
network; judge.py does.
"""

import numpy as np
import torch

from clips import Clips
from features import filters, frame_counts, log_mel, normalised
from labels import BACKGROUND
from lexicon import Pronunciation
from network import Network, output_counts

BATCH = 32


@torch.no_grad()
def phone_errors(
    network: Network, pack: Clips, labels: list[Pronunciation], noise: torch.Tensor, device: str, snr_db: float | None
) -> float:
    """Wrong, missing and added phones by the number of phones said. Clips without labels are left out."""
    rng = np.random.default_rng(1)
    order = [at for at in np.argsort([clip.length for clip in pack.clips]) if labels[at]]
    errors = 0
    for begin in range(0, len(order), BATCH):
        batch = order[begin : begin + BATCH]
        counts = torch.tensor([pack.clips[at].length + 2 * BACKGROUND for at in batch])
        sound = rng.normal(0, 6e-4, (len(batch), int(counts.max()))).astype(np.float32)
        for row, at in enumerate(batch):
            speech = pack.sound(at).astype(np.float32) / 32_768
            sound[row, BACKGROUND : BACKGROUND + len(speech)] += speech
            if snr_db is not None:
                under = noise[int(rng.integers(len(noise)))].cpu().numpy()
                sound[row] += under[: sound.shape[1]] * np.sqrt(np.mean(speech**2)) / 10 ** (snr_db / 20)
        frames = frame_counts(counts).to(device)
        mel = log_mel(torch.from_numpy(sound).to(device), torch.from_numpy(filters()).to(device))
        heard = network.eval()(normalised(mel, frames), frames).argmax(-1).cpu().numpy()
        for row, (at, count) in enumerate(zip(batch, output_counts(frames).tolist(), strict=True)):
            errors += distance(_collapsed(heard[row, :count]), labels[at])
    return errors / max(1, sum(len(labels[at]) for at in order))


def _collapsed(outputs: np.ndarray) -> Pronunciation:
    before = np.concatenate([[0], outputs[:-1]])
    return tuple(int(phone) for phone in outputs[(outputs != before) & (outputs != 0)])


def distance(heard: Pronunciation, said: Pronunciation) -> int:
    """Fewest changes that make one of the other (Levenshtein)."""
    row = list(range(len(said) + 1))
    for i, phone in enumerate(heard, 1):
        last, row[0] = row[0], i
        for j, wanted in enumerate(said, 1):
            last, row[j] = row[j], min(row[j] + 1, row[j - 1] + 1, last + (phone != wanted))
    return row[-1]
