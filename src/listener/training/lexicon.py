"""Words and the phones they are said with."""

import gzip
import re
from pathlib import Path

from project import output_names

Pronunciation = tuple[int, ...]
Lexicon = dict[str, list[Pronunciation]]

PHONE_NUMBERS = {name: number for number, name in enumerate(output_names()) if number > 0}


def read_dictionary(*paths: Path) -> Lexicon:
    """
    Reads dictionaries in the format of words.dict and of the CMU Pronouncing Dictionary, packed with gzip or not.
    Stress marks and the numbers of further pronunciations ("word(2)") are dropped; lines that start with # or ; are
    comments. A word that stands in several files has the pronunciations of all.

    Raises ValueError for a phone that the network does not know.
    """
    lexicon: Lexicon = {}
    for path in paths:
        opened = gzip.open(path, "rt", encoding="latin-1") if path.suffix == ".gz" else open(path, encoding="latin-1")
        with opened as lines:
            for line in lines:
                word, *phones = line.split("#")[0].split()[:40] or [""]
                if not phones or word.startswith(";"):
                    continue
                said = tuple(_number(phone, word) for phone in phones)
                pronunciations = lexicon.setdefault(re.sub(r"\(\d+\)$", "", word.lower()), [])
                if said not in pronunciations:
                    pronunciations.append(said)
    return lexicon


def _number(phone: str, word: str) -> int:
    number = PHONE_NUMBERS.get(phone.rstrip("012"))
    if number is None:
        raise ValueError(f"{word}: the network has no phone {phone}")
    return number
