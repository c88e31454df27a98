"""
Judges networks on people, voices and noise that had no part in training, with the search and the decisions of the app.

    python3 judge.py PACKS NETWORK.onnx [NETWORK.onnx ...] [--sayings 400] [--draws 2] [--cores 2] [--folder DIR]

PACKS is what people.py wrote. The clips are made here, and the app's own code listens to them: LISTENER below. Numbers
of people: the six speakers kept from training, and the share-alike recordings, which never train. Made voices:
those of voices.kept_voice, saying the grammar. Noise: the second half in time of each recording. Each in quiet, at
10 dB and at 5 dB (speech while speaking against all of the noise, unweighted). Several networks hear the same clips.
"""

import argparse
import json
import shlex
import subprocess
import tempfile
import wave
from collections import Counter, defaultdict
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path

import numpy as np

import clips
import speak
from project import RATE_HZ, ROOT
from synthesise import sayings

SNRS_DB = (None, 10, 5)
AROUND = int(0.5 * RATE_HZ)
FRAME = 320
LEVEL_RMS = 0.05
HISS = 5e-4
LISTENER = "npx tsx tests/bench/judgeNetwork.ts"
LOOSEST_FIT = -0.35
WRONG_TAKEN = (0, 2, 4, 8, 16, 32)
COLUMNS = {
    "right": ["right"],
    "asked": ["askedRight"],
    "refused": ["refused", "silent", "askedWrong"],
    "wrong": ["wrong"],
}


def speech_rms(sound: np.ndarray) -> float:
    """Level while somebody speaks: frames of 20 ms within 30 dB of the loudest. As tests/bench/mix.ts has it."""
    power = (sound[: len(sound) // FRAME * FRAME].reshape(-1, FRAME) ** 2).mean(1)
    return float(np.sqrt(power[power > power.max() * 1e-3].mean()))


def mixed(speech: np.ndarray, noise: np.ndarray, snr_db: float | None, rng: np.random.Generator) -> np.ndarray:
    """16-bit samples: speech at one level, background on both sides."""
    sound = np.pad(speech * (LEVEL_RMS / speech_rms(speech)), AROUND) + rng.normal(0, HISS, len(speech) + 2 * AROUND)
    if snr_db is not None:
        begin = int(rng.integers(len(noise)))
        under = np.take(noise.astype(np.float32), np.arange(begin, begin + len(sound)), mode="wrap")
        sound += under * (LEVEL_RMS / 10 ** (snr_db / 20) / np.sqrt(np.mean(under**2)))
    return (np.clip(sound, -1, 1) * 32_767).astype("<i2")


def people(packs: Path) -> list[tuple[dict[str, str], np.ndarray]]:
    found = []
    for group in ("judges", "share-alike"):
        pack = clips.read(packs / group)
        for at, clip in enumerate(pack.clips):
            row = {"grammar": "numbers", "group": group, "speaker": clip.speaker, "words": clip.text}
            found.append((row, pack.sound(at)))
    return found


def made(count: int, chance: int) -> list[tuple[dict[str, str], np.ndarray]]:
    found = []
    for _, one in sayings(count, True, {"language"}, [], [], chance):
        if (sound := speak.say(one)) is not None:
            row = {"grammar": "open", "group": one.voice.engine, "speaker": str(one.voice), "words": one.text}
            found.append((row, sound))
    return found


def write_clips(folder: Path, packs: Path, count: int, draws: int, chance: int) -> None:
    rng, noises = np.random.default_rng(chance), clips.read(packs / "kept-noises")
    rows = []
    for row, sound in people(packs) + made(count, chance):
        for snr_db in SNRS_DB:
            for _ in range(draws if snr_db is not None and row["grammar"] == "numbers" else 1):
                noise = int(rng.integers(len(noises.clips)))
                file = f"{len(rows):05}.wav"
                with wave.open(str(folder / file), "wb") as out:
                    out.setparams((1, 2, RATE_HZ, 0, "NONE", ""))
                    out.writeframes(mixed(sound.astype(np.float32), noises.sound(noise), snr_db, rng).tobytes())
                condition = "quiet" if snr_db is None else f"{snr_db:2} dB"
                rows.append({**row, "file": file, "condition": condition, "noise": noises.clips[noise].family})
    (folder / "clips.json").write_text(json.dumps(rows))


def listen(folder: Path, networks: list[Path], listener: str, cores: int) -> list[dict]:
    def part(job: tuple[Path, int]) -> list[dict]:
        network, turn = job
        command = [*shlex.split(listener), str(folder.resolve()), str(network.resolve()), f"{turn}/{cores}"]
        lines = subprocess.run(command, cwd=ROOT, check=True, capture_output=True, text=True).stdout.splitlines()
        return [json.loads(line) for line in lines if line.startswith("{")]

    jobs = [(network, turn) for network in networks for turn in range(cores)]
    with ThreadPoolExecutor(cores) as pool:
        return [one for found in pool.map(part, jobs) for one in found]


def report(judged: list[dict]) -> None:
    groups: dict[tuple[str, str, str], Counter[str]] = defaultdict(Counter)
    for one in judged:
        both = "all people" if one["grammar"] == "numbers" else "all made"
        for group in (one["group"], both):
            groups[group, one["condition"], one["network"]][one["outcome"]] += 1
    print(f"{'':46}     n " + " ".join(f"{column:>7}" for column in COLUMNS))
    for (group, condition, network), outcomes in sorted(groups.items()):
        n = outcomes.total()
        shares = (100 * sum(outcomes[o] for o in column) / n for column in COLUMNS.values())
        print(f"{group:12}{condition:8}{network:26}{n:6} " + " ".join(f"{share:7.2f}" for share in shares))


def at_equal_errors(judged: list[dict]) -> None:
    """
    Numbers of people, if each network had its own limit for the margin to another number: how many are taken right
    while so many are taken wrong. A network that is only bolder gains nothing here.
    """
    numbers: dict[str, list[dict]] = defaultdict(list)
    for one in judged:
        if one["grammar"] == "numbers" and one.get("m1", -1) >= LOOSEST_FIT:
            numbers[one["network"]].append(one)
    print("\nnumbers of people taken right, where at most so many are taken wrong: " + ", ".join(map(str, WRONG_TAKEN)))
    for network, ones in numbers.items():
        taken = {allowed: 0 for allowed in WRONG_TAKEN}
        right = wrong = 0
        for one in sorted(ones, key=lambda one: -one["m2"]):
            right, wrong = right + one["isRight"], wrong + (not one["isRight"])
            taken |= {allowed: right for allowed in WRONG_TAKEN if wrong <= allowed}
        print(f"{network:26}" + " ".join(f"{count:6}" for count in taken.values()))


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("packs", type=Path)
    parser.add_argument("networks", type=Path, nargs="+")
    parser.add_argument("--sayings", type=int, default=400)
    parser.add_argument("--draws", type=int, default=2, help="times that a recording of a person is mixed with noise")
    parser.add_argument("--cores", type=int, default=2)
    parser.add_argument("--chance", type=int, default=4_000)
    parser.add_argument("--folder", type=Path, help="keep the clips and the outcomes here")
    parser.add_argument("--listener", default=LISTENER, help="what listens, started in the project's folder")
    options = parser.parse_args()
    folder = options.folder or Path(tempfile.mkdtemp(prefix="judge-"))
    folder.mkdir(parents=True, exist_ok=True)
    write_clips(folder, options.packs, options.sayings, options.draws, options.chance)
    judged = listen(folder, options.networks, options.listener, options.cores)
    (folder / "judged.json").write_text(json.dumps(judged))
    report(judged)
    at_equal_errors(judged)


if __name__ == "__main__":
    main()
