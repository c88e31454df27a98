"""
Synthesises training clips, or clips of the voices that are kept from training.

    python3 synthesise.py OUT.npz --count 40000 [--seconds 120] [--kept] [--general CMUDICT.gz] [--prose FILE]

All processor cores work at once. With --seconds each stops in time, with fewer clips. The texts are the same for the
same --chance; which voice says them too.
"""

import argparse
import multiprocessing
import random
import time
from pathlib import Path

import clips
import speak
from clips import Clip, Clips
from jsgf import Grammars
from lexicon import read_dictionary
from project import DICTIONARY, GRAMMARS, RATE_HZ
from texts import Texts
from voices import Saying, kept_voice, saying, training_voice

LONGEST = 9 * RATE_HZ
TURN = 40  # sayings a core takes at a time


def sayings(
    count: int, kept: bool, families: set[str], general: list[Path], prose: list[str], chance: int
) -> list[tuple[str, Saying]]:
    """Pairs of a text's family and who says it how."""
    rng = random.Random(chance)
    language = list(read_dictionary(DICTIONARY))
    texts = Texts(Grammars(GRAMMARS), read_dictionary(DICTIONARY, *general), language, prose, rng, families)
    voice = kept_voice if kept else training_voice
    return [(family, saying(text, voice(rng), rng)) for family, text in texts.sample(count)]


def say_all(turn: tuple[list[tuple[str, Saying]], float]) -> Clips:
    """What one core says in its turn; nothing more once the time (as of time.time) is over."""
    said, until = turn
    spoken = []
    for family, one in said:
        sound = speak.say(one) if time.time() < until else None
        if sound is not None and len(sound) <= LONGEST:
            spoken.append((Clip(one.text, str(one.voice), family, 0, 0), sound))
    return clips.gathered(spoken)


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("out", type=Path)
    parser.add_argument("--count", type=int, required=True)
    parser.add_argument("--seconds", type=float, default=float("inf"))
    parser.add_argument("--kept", action="store_true", help="the voices kept from training, saying the language alone")
    parser.add_argument("--general", type=Path, nargs="*", default=[], help="more dictionaries, for words at large")
    parser.add_argument("--prose", type=Path, help="ordinary sentences, one a line")
    parser.add_argument("--chance", type=int, default=1)
    options = parser.parse_args()
    began = time.time()
    prose = options.prose.read_text().splitlines() if options.prose else []
    families = {"language", "contrast"} if options.kept else set()
    said = sayings(options.count, options.kept, families, options.general, prose, options.chance)
    turns = [(said[at : at + TURN], began + options.seconds) for at in range(0, len(said), TURN)]
    with multiprocessing.Pool() as cores:
        made = clips.joined(cores.imap(say_all, turns))
    clips.write(options.out, made)
    hours = len(made.samples) / RATE_HZ / 3600
    print(f"{len(made.clips)} clips of {len(said)}, {hours:.2f} h, in {time.time() - began:.0f} s")


if __name__ == "__main__":
    main()
