"""
Checks features and network against the fixed vectors of the tests (tests/listener/vectors).

    python3 check.py [--network FILE.onnx]

Prints the largest difference of each. The vectors' logits are those of the network with whole-number weights, which
also rounds what flows between its layers; here everything else is fractions, so the logits agree to about a tenth.
"""

import argparse
import wave
from pathlib import Path

import numpy as np
import torch

import features
from network import Network, read_weights
from project import NETWORK, ROOT

VECTORS = ROOT / "tests/listener/vectors"


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--network", type=Path, default=NETWORK)
    parser.add_argument("--vectors", type=Path, default=VECTORS)
    options = parser.parse_args()
    network = Network().eval()
    network.load_state_dict(read_weights(options.network))
    for path in sorted(options.vectors.glob("*.wav")):
        with wave.open(str(path)) as sound:
            samples = np.frombuffer(sound.readframes(sound.getnframes()), "<i2")
        heard = torch.from_numpy(samples.astype(np.float32) / 32_768)[None]
        frames = features.frame_counts(torch.tensor([len(samples)]))
        made = features.normalised(features.log_mel(heard, torch.from_numpy(features.filters())), frames)
        with torch.no_grad():
            logits = network(made, frames)[0].numpy()
        stored = path.with_suffix(".features.f32")
        if stored.exists():
            wanted = np.fromfile(stored, "<f4").reshape(-1, features.BANDS)
            print(f"{path.stem}: features {np.abs(made[0].numpy() - wanted).max():.5f}")
        expected = np.fromfile(path.with_suffix(".logits.f32"), "<f4").reshape(logits.shape)
        of_logits = np.abs(logits - expected)
        print(f"{path.stem}: logits {of_logits.max():.3f}, mean {of_logits.mean():.4f}")


if __name__ == "__main__":
    main()
