"""
Packs recordings of people and of noise for training.

    python3 people.py AUDIO_FOLDER OUT_FOLDER

Writes people.npz and noises.npz, which train: of each noise recording the first half in time. And what is kept from
training: judges.npz, six speakers; share-alike.npz, people whose recordings may not train; kept-noises.npz, the second
halves of noise. AUDIO_FOLDER holds speech-manifest.csv, noise-manifest.csv and FLAC files of 16 kHz.
"""

import argparse
import csv
from pathlib import Path

import soundfile

import clips
from clips import Clip, Clips

KEPT_SPEAKERS = {"an4_mjhp", "an4_fkai", "an4_mrcb", "an4_mmkw", "an4_fcaw", "an4_mnjl"}
SHARE_ALIKE = "BY-SA"
"""Such a licence would bind the network."""
SHORTEST = 3_200


def group_of(row: dict[str, str]) -> str:
    """Which pack a row of the manifest belongs to. Labels that another engine doubts do not train, but judge."""
    if not row["words"] or row["kind"] == "room":
        return ""
    if SHARE_ALIKE in row["licence"]:
        return "share-alike"
    if row["speaker"] in KEPT_SPEAKERS:
        return "judges"
    return "" if row["engine_check"] == "differ" else "people"


def people(folder: Path) -> dict[str, Clips]:
    packs: dict[str, list] = {"people": [], "judges": [], "share-alike": []}
    with open(folder / "speech-manifest.csv", newline="") as rows:
        for row in csv.DictReader(rows):
            sound, _ = soundfile.read(folder / row["file"], dtype="int16")
            if (group := group_of(row)) and len(sound) >= SHORTEST:
                packs[group].append((Clip(row["words"].lower(), row["speaker"], row["kind"], 0, 0), sound))
    return {name: clips.gathered(parts) for name, parts in packs.items()}


def noises(folder: Path) -> dict[str, Clips]:
    first, second = [], []
    with open(folder / "noise-manifest.csv", newline="") as rows:
        for row in csv.DictReader(rows):
            sound, _ = soundfile.read(folder / row["file"], dtype="int16")
            clip, middle = Clip("", row["file"], row["noise"], 0, 0), len(sound) // 2
            second.append((clip, sound[middle:]))
            if SHARE_ALIKE not in row["licence"]:
                first.append((clip, sound[:middle]))
    return {"noises": clips.gathered(first), "kept-noises": clips.gathered(second)}


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("audio", type=Path)
    parser.add_argument("out", type=Path)
    options = parser.parse_args()
    packs = people(options.audio) | noises(options.audio)
    for name, pack in packs.items():
        clips.write(options.out / name, pack)
        print(name, len(pack.clips), "clips", round(len(pack.samples) / 16_000), "s")


if __name__ == "__main__":
    main()
