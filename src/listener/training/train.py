"""
Trains the network further, from the one in use or from weights trained before.

    python3 train.py OUT.npz --people people.npz --made made.npz --noises noises.npz --minutes 8
        [--judges judges.npz …] [--kept kept.npz] [--general CMUDICT.gz] [--start WEIGHTS.npz]
        [--rate 2e-4] [--hold 0.5] [--batch 128]

Each step: sounds that are changed afresh (augment.py), the loss of the right phones (CTC) and, on people and on speech
that the network in use knows, how far it strays from what that one says (Kullback-Leibler), so that it does not forget
people who are no longer at hand. Not over a telephone, which the network in use never learnt. What is kept is the
running mean of the weights. --judges and --kept are only listened to, to print how the phones come out.
"""

import argparse
import math
import time
from collections.abc import Mapping
from pathlib import Path

import numpy as np
import torch
import torch.nn.functional as functional

import clips
from augment import Augmenter
from batches import Batch, Batches
from clips import Clips
from labels import best_labels
from lexicon import Lexicon, Pronunciation, read_dictionary
from network import Network, output_counts, read_weights
from noises import bank
from phone_errors import phone_errors
from project import DICTIONARY, NETWORK

WARM_UP_STEPS = 300
KEEP_OF_MEAN = 0.999
DROPOUT = 0.1
LARGEST_GRADIENT = 1.0
WORST_LOSS_A_PHONE = 2.5
"""A clip that fits its words worse says something else."""
REPORT_S = 60


def options_of() -> argparse.Namespace:
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("out", type=Path)
    for pack in ("people", "made", "noises"):
        parser.add_argument(f"--{pack}", type=Path, required=True)
    for pack in ("judges", "kept"):
        parser.add_argument(f"--{pack}", type=Path, nargs="*", default=[])
    parser.add_argument("--general", type=Path, nargs="*", default=[])
    parser.add_argument("--start", type=Path, default=NETWORK, help="weights to train on from")
    parser.add_argument("--minutes", type=float, required=True)
    parser.add_argument("--rate", type=float, default=2e-4, help="highest learning rate")
    parser.add_argument("--hold", type=float, default=0.5, help="weight of keeping to the network in use")
    parser.add_argument("--batch", type=int, default=128)
    parser.add_argument("--chance", type=int, default=1)
    return parser.parse_args()


class Trainer:
    """@param in_use weights of the network that training holds to; `start` may be others."""

    def __init__(
        self,
        start: Mapping[str, torch.Tensor],
        in_use: Mapping[str, torch.Tensor],
        rate: float,
        hold: float,
        device: str,
    ) -> None:
        self.network = Network(DROPOUT).to(device)
        self.network.load_state_dict(start)
        self.before = Network().to(device).eval()
        self.before.load_state_dict(in_use)
        self.mean = Network().to(device).eval()
        self.mean.load_state_dict(start)
        self._rate, self._hold, self._device = rate, hold, device
        matrices = [p for p in self.network.parameters() if p.ndim > 1]
        vectors = [p for p in self.network.parameters() if p.ndim <= 1]
        groups = [{"params": matrices, "weight_decay": 0.01}, {"params": vectors, "weight_decay": 0.0}]
        self._optimiser = torch.optim.AdamW(groups, lr=rate, betas=(0.9, 0.98))
        self.steps = 0

    def step(self, batch: Batch, augmenter: Augmenter, done: float) -> torch.Tensor:
        """One step; `done` is how much of the time is over, 0 to 1. @returns the losses a phone: phones, holding."""
        self.network.train()
        rate = self._rate * min(1, (self.steps + 1) / WARM_UP_STEPS) * (0.5 + 0.5 * math.cos(math.pi * done))
        for group in self._optimiser.param_groups:
            group["lr"] = rate
        with torch.no_grad():
            seen = augmenter(batch.placed)
        with torch.autocast(self._device, torch.bfloat16, enabled=self._device == "cuda"):
            logits = self.network(seen.features, seen.frames)
            with torch.no_grad():
                logits_before = self.before(seen.features, seen.frames)
        log_probs = logits.float().log_softmax(-1)
        counts = output_counts(seen.frames)
        lengths = torch.tensor([len(label) for label in batch.labels], device=self._device)
        phones = torch.tensor([phone for label in batch.labels for phone in label], device=self._device)
        right = functional.ctc_loss(
            log_probs.transpose(0, 1), phones, counts, lengths, reduction="sum", zero_infinity=True
        )
        probs_before = logits_before.float().softmax(-1)
        strayed = functional.kl_div(log_probs, probs_before, reduction="none").sum(-1)
        inside = torch.arange(strayed.shape[1], device=self._device)[None] < counts[:, None]
        known = torch.from_numpy(batch.is_known).to(self._device) * ~seen.is_telephone
        held = (strayed * inside).sum(1) @ known
        loss = (right + self._hold * held) / lengths.sum()
        self._optimiser.zero_grad(set_to_none=True)
        loss.backward()
        norm = torch.nn.utils.clip_grad_norm_(self.network.parameters(), LARGEST_GRADIENT)
        if torch.isfinite(norm):
            self._optimiser.step()
        self.steps += 1
        self._average()
        return torch.stack([right.detach(), held.detach()]) / lengths.sum()

    @torch.no_grad()
    def _average(self) -> None:
        keep = min(KEEP_OF_MEAN, (1 + self.steps) / (20 + self.steps))
        for mean, now in zip(self.mean.parameters(), self.network.parameters(), strict=True):
            mean.lerp_(now, 1 - keep)


def trained_on(
    people: Clips, made: Clips, lexicon: Lexicon, network: Network, device: str, rng: np.random.Generator
) -> tuple[Clips, list[Pronunciation], np.ndarray]:
    """The clips whose words fit their sound, their phones, and which of them are people."""
    both = clips.joined([people, made])
    labels, losses = best_labels(network, both, lexicon, device, rng)
    fitting = np.flatnonzero(losses < WORST_LOSS_A_PHONE)
    worst = [both.clips[at].text for at in np.argsort(-losses)[:12]]
    print(f"{len(fitting)} of {len(both.clips)} clips fit their words; worst: {'; '.join(worst)}", flush=True)
    return both.only(fitting), [labels[at] for at in fitting], fitting < len(people.clips)


def main() -> None:
    options = options_of()
    device = "cuda" if torch.cuda.is_available() else "cpu"
    rng = np.random.default_rng(options.chance)
    torch.manual_seed(options.chance)
    lexicon = read_dictionary(DICTIONARY, *options.general)
    trainer = Trainer(read_weights(options.start), read_weights(NETWORK), options.rate, options.hold, device)
    people, made, noises = (clips.read(pack) for pack in (options.people, options.made, options.noises))
    known, labels, is_person = trained_on(people, made, lexicon, trainer.before, device, rng)
    noise = torch.from_numpy(bank(noises, known, rng)).to(device)
    augmenter = Augmenter(torch.from_numpy(known.samples).to(device), noise, rng)
    judges = {pack.stem: clips.read(pack) for pack in options.judges + options.kept}
    said = {name: best_labels(trainer.before, pack, lexicon, device, rng)[0] for name, pack in judges.items()}

    def report(network: Network, title: str) -> None:
        for name, pack in judges.items():
            found = [phone_errors(network, pack, said[name], noise, device, snr_db) for snr_db in (None, 10, 5)]
            shares = ", ".join(f"{share:.4f}" for share in found)
            print(f"  {title}, {name}: phone errors quiet, 10 dB, 5 dB: {shares}", flush=True)

    report(trainer.before, "in use")
    began = reported = time.time()
    losses = torch.zeros(2, device=device)
    since = 0
    for batch in Batches(known, labels, is_person, options.batch, rng):
        done = (time.time() - began) / (60 * options.minutes)
        if done >= 1:
            break
        losses += trainer.step(batch, augmenter, done)
        since += 1
        if time.time() - reported > REPORT_S:
            right, held = (losses / since).tolist()
            spent_s = 60 * options.minutes * done
            print(f"{trainer.steps} steps, {spent_s:.0f} s: phones {right:.4f}, held {held:.4f}", flush=True)
            report(trainer.mean, f"{trainer.steps}")
            losses.zero_()
            since, reported = 0, time.time()
    report(trainer.mean, "after")
    np.savez(options.out, **{name: value.cpu().numpy() for name, value in trainer.mean.state_dict().items()})
    print(f"{trainer.steps} steps of {options.batch}; written to {options.out}")


if __name__ == "__main__":
    main()
