"""
Makes the vectors of the tests anew for another network: what it gives for each sound, and the best word sequences that
the slow search finds in that.

    python3 vectors.py [--network FILE.onnx] [--check]

Writes NAME.logits.f32 and index.json in tests/listener/vectors. Sounds and features stay. --check writes nothing and
only holds the slow search against the scores that are there (it needs no onnxruntime).
"""

import argparse
import json
import wave
from pathlib import Path

import numpy as np
import torch

import features
from jsgf import Grammars
from lexicon import read_dictionary
from project import NETWORK, ROOT
from reference_search import BLANK, WordArcs, best_words

VECTORS = ROOT / "tests/listener/vectors"
KEPT_PATHS = 4


def log_softmax(logits: np.ndarray) -> np.ndarray:
    shifted = logits - logits.max(-1, keepdims=True)
    return shifted - np.log(np.exp(shifted).sum(-1, keepdims=True))


def logits_of(path: Path, network: Path) -> np.ndarray:
    import onnxruntime  # only here: not every machine has it

    with wave.open(str(path)) as sound:
        samples = np.frombuffer(sound.readframes(sound.getnframes()), "<i2").astype(np.float32) / 32_768
    frames = features.frame_counts(torch.tensor([len(samples)]))
    mel = features.log_mel(torch.from_numpy(samples)[None], torch.from_numpy(features.filters()))
    inputs = {"mel": features.normalised(mel, frames).transpose(1, 2).contiguous().numpy()}
    return onnxruntime.InferenceSession(str(network)).run(None, inputs)[0][0]


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--network", type=Path, default=NETWORK)
    parser.add_argument("--check", action="store_true")
    options = parser.parse_args()
    lexicon, grammars = read_dictionary(VECTORS / "words.dict"), Grammars(VECTORS)
    index = json.loads((VECTORS / "index.json").read_text())
    for vector in index:
        stored = VECTORS / f"{vector['name']}.logits.f32"
        if options.check:
            logits = np.fromfile(stored, "<f4").reshape(vector["outputs"], -1)
        else:
            logits = logits_of(VECTORS / f"{vector['name']}.wav", options.network)
            logits.astype("<f4").tofile(stored)
        log_probs = log_softmax(logits)
        best = best_words(log_probs, WordArcs(grammars, vector["grammar"], "top", lexicon))[:KEPT_PATHS]
        if options.check:
            pairs = zip(best, vector["best"], strict=False)
            apart = max(abs(score - old["score"]) for (_, score), old in pairs)
            same = [words for words, _ in best] == [old["words"] for old in vector["best"]]
            print(f"{vector['name']}: {'the same words' if same else best}, scores within {apart:.3f}")
            continue
        outputs = logits.argmax(-1)
        starts = (outputs != BLANK) & (outputs != np.concatenate([[BLANK], outputs[:-1]]))
        vector["free"] = round(float(log_probs.max(-1).sum()), 3)
        vector["phones"] = int(starts.sum())
        vector["best"] = [{"words": words, "score": round(score, 3)} for words, score in best]
        print(vector["name"], vector["free"], vector["best"][0])
    if not options.check:
        (VECTORS / "index.json").write_text(json.dumps(index, indent=2) + "\n")


if __name__ == "__main__":
    main()
