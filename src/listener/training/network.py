"""The network: sound as log-mel features to phones, with its weights as the shipped file has them."""

from pathlib import Path

import numpy as np
import onnx
import torch
from onnx import numpy_helper
from torch import nn

from features import BANDS, inside_of
from project import output_names

CHANNELS, HIDDEN, BLOCKS, KERNEL, STRIDE = 320, 640, 12, 11, 3
DILATED_BLOCKS = 2
LINEAR = [f"b.{i}.{part}" for i in range(BLOCKS) for part in ("l1", "l2")] + ["out"]
"""In the order in which the file numbers their matrices."""


class Block(nn.Module):
    def __init__(self, dilation: int, dropout: float) -> None:
        super().__init__()
        padding = KERNEL // 2 * dilation
        self.dw = nn.Conv1d(CHANNELS, CHANNELS, KERNEL, padding=padding, dilation=dilation, groups=CHANNELS)
        self.l1 = nn.Linear(CHANNELS, HIDDEN)
        self.l2 = nn.Linear(HIDDEN, CHANNELS)
        self.drop = nn.Dropout(dropout)

    def forward(self, x: torch.Tensor, inside: torch.Tensor) -> torch.Tensor:
        """@param inside hides what lies after an utterance's end, as there is nothing after a lone one."""
        wide = self.dw((x * inside).transpose(1, 2)).transpose(1, 2)
        return x + self.l2(self.drop(torch.relu(self.l1(wide))))


class Network(nn.Module):
    def __init__(self, dropout: float = 0.0) -> None:
        super().__init__()
        self.inp = nn.Conv1d(BANDS, CHANNELS, 7, stride=STRIDE, padding=3)
        self.b = nn.ModuleList(Block(2 if i >= BLOCKS - DILATED_BLOCKS else 1, dropout) for i in range(BLOCKS))
        self.out = nn.Linear(CHANNELS, len(output_names()))

    def forward(self, features: torch.Tensor, frames: torch.Tensor) -> torch.Tensor:
        """[batch, frames, 64] and how many frames are real, to logits [batch, outputs, 40]."""
        x = torch.relu(self.inp(features.transpose(1, 2))).transpose(1, 2)
        inside = inside_of(output_counts(frames), x.shape[1])[..., None]
        for block in self.b:
            x = block(x, inside)
        return self.out(x)


def output_counts(frames: torch.Tensor) -> torch.Tensor:
    return torch.div(frames + STRIDE - 1, STRIDE, rounding_mode="floor")


def read_weights(path: Path) -> dict[str, torch.Tensor]:
    """The weights that train.py wrote (.npz), or a shipped network's, whole-number matrices as fractions again."""
    if path.suffix == ".npz":
        with np.load(path) as written:
            return {name: torch.from_numpy(value) for name, value in written.items()}
    stored = {i.name: numpy_helper.to_array(i) for i in onnx.load(str(path)).graph.initializer}
    weights = {name: np.array(value) for name, value in stored.items() if not name.startswith("onnx::")}
    for name, matrix in zip(LINEAR, matrix_names(stored), strict=True):
        weights[f"{name}.weight"] = (stored[f"{matrix}_quantized"] * stored[f"{matrix}_scale"]).T
    return {name: torch.from_numpy(np.array(value, np.float32)) for name, value in weights.items()}


def matrix_names(initialisers: dict[str, np.ndarray]) -> list[str]:
    """Names of the quantised matrices in the order of LINEAR, without their endings."""
    names = {name.rsplit("_quantized", 1)[0] for name in initialisers if name.endswith("_quantized")}
    return sorted(names, key=lambda name: int(name.rsplit("_", 1)[1]))
