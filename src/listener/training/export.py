"""
Writes trained weights as the network that the app runs.

    python3 export.py WEIGHTS OUT.onnx [--mix 1.0] [--like FILE.onnx]

The graph is that of the network in use (public/listener/listener.onnx), so names and shapes stay; only its numbers are
replaced. Linear layers become whole numbers of 8 bits with one scale an output, rounded to the nearest. --mix 0.5
takes the mean of the old and the new weights, which often keeps more of what the old ones knew. WEIGHTS is what
train.py wrote, or another network.
"""

import argparse
from pathlib import Path

import numpy as np
import onnx
from onnx import numpy_helper

from network import LINEAR, matrix_names, read_weights
from project import NETWORK

LARGEST = 127


def quantised(matrix: np.ndarray) -> tuple[np.ndarray, np.ndarray]:
    """A matrix of [inputs, outputs] as whole numbers and a scale for each output."""
    scale = np.maximum(np.abs(matrix).max(axis=0), 1e-9) / LARGEST
    return np.clip(np.rint(matrix / scale), -LARGEST, LARGEST).astype(np.int8), scale.astype(np.float32)


def export(weights: dict[str, np.ndarray], like: Path, out: Path) -> None:
    """Raises KeyError where the weights are not those of this network."""
    model = onnx.load(str(like))
    stored = {i.name: numpy_helper.to_array(i) for i in model.graph.initializer}
    replaced = {name: weights[name] for name in stored if not name.startswith("onnx::")}
    for name, matrix in zip(LINEAR, matrix_names(stored), strict=True):
        replaced[f"{matrix}_quantized"], replaced[f"{matrix}_scale"] = quantised(weights[f"{name}.weight"].T)
    for initialiser in model.graph.initializer:
        if initialiser.name in replaced:
            value = replaced[initialiser.name].astype(stored[initialiser.name].dtype)
            if value.shape != stored[initialiser.name].shape:
                raise ValueError(f"{initialiser.name} has another shape")
            initialiser.CopyFrom(numpy_helper.from_array(value, initialiser.name))
    onnx.checker.check_model(model)
    onnx.save(model, str(out))


def weights_of(path: Path) -> dict[str, np.ndarray]:
    return {name: value.numpy() for name, value in read_weights(path).items()}


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("weights", type=Path)
    parser.add_argument("out", type=Path)
    parser.add_argument("--mix", type=float, default=1.0, help="share of the new weights")
    parser.add_argument("--like", type=Path, default=NETWORK)
    options = parser.parse_args()
    new, old = weights_of(options.weights), weights_of(options.like)
    mixed = {name: options.mix * new[name] + (1 - options.mix) * old[name] for name in old}
    export(mixed, options.like, options.out)
    print(f"{options.out}: {options.out.stat().st_size / 1e6:.2f} MB")


if __name__ == "__main__":
    main()
