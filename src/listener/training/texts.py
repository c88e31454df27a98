"""
What made voices are to say: the project's language, and enough outside it that the network learns sounds, not
sentences.

A new word, drug or phrase needs nothing here: it comes from grammars/*.jsgf and words.dict.
"""

import random
import re
from collections import Counter
from collections.abc import Iterator

from jsgf import Grammars
from lexicon import Lexicon

# Where sentences start, and how often each: what the app can hear, openly and while a question waits.
STARTS = {
    ("case", "statement"): 42,
    ("case", "answer"): 18,
    ("case", "doseQuestion"): 12,
    ("case", "whyQuestion"): 5,
    ("case", "command"): 8,
    ("case", "corrected"): 4,
    ("case", "verdict"): 3,
    ("case", "unit"): 3,
    ("case", "bareNumber"): 5,
}
# Of so many sentences that one is taken which brings the rarest word: otherwise numbers drown the names.
CANDIDATES = 6
LONGEST_WORDS = 14

DIGITS = "zero oh one two three four five six seven eight nine niner".split()
TEENS = "thirteen fourteen fifteen sixteen seventeen eighteen nineteen".split()
TIES = "thirty forty fifty sixty seventy eighty ninety".split()
NEAR_DIGITS = (
    *(("six", "eight"), ("three", "eight"), ("nine", "five"), ("nine", "one"), ("four", "five"), ("four", "oh")),
    *(("oh", "zero"), ("six", "sats"), ("two", "to")),
)
LEADS = (
    *("", "", "over", "over eight", "over nine", "over eighty rate", "rate", "sats", "map", "is", "and", "pressure"),
    *("end tidal", "one", "two"),
)

SHARES = {"language": 50, "contrast": 13, "digits": 10, "shuffled": 12, "words": 8, "prose": 7}


class Texts:
    """
    @param lexicon pronunciations; a text is given only if every word of it has one.
    @param language the words of words.dict.
    @param prose lines of ordinary sentences, any length of list.
    @param families which of SHARES to take from; all where it is empty.
    """

    def __init__(
        self,
        grammars: Grammars,
        lexicon: Lexicon,
        language: list[str],
        prose: list[str],
        rng: random.Random,
        families: set[str],
    ) -> None:
        self._grammars, self._lexicon, self._rng = grammars, lexicon, rng
        self._language = language
        self._general = [word for word in lexicon if re.fullmatch("[a-z]{3,12}", word)]
        self._prose = [line for line in prose if self._is_sayable(line)]
        self._families = families or set(SHARES)
        self._used: Counter[str] = Counter()

    def sample(self, count: int) -> Iterator[tuple[str, str]]:
        """So many pairs of family and text."""
        makers = {
            "language": self._of_the_language,
            "contrast": self._contrast,
            "digits": lambda: " ".join(self._rng.choices(DIGITS, k=self._rng.randint(1, 7))),
            "shuffled": lambda: " ".join(self._rng.choices(self._language, k=self._rng.randint(1, 5))),
            "words": lambda: " ".join(self._rng.choices(self._general, k=self._rng.randint(1, 4))),
            "prose": lambda: self._rng.choice(self._prose or self._general),
        }
        families = [family for family in SHARES if family in self._families]
        weights = [SHARES[family] for family in families]
        while count > 0:
            family = self._rng.choices(families, weights)[0]
            text = makers[family]()
            if self._is_sayable(text):
                count -= 1
                yield family, text

    def _is_sayable(self, text: str) -> bool:
        words = text.split()
        return 0 < len(words) <= LONGEST_WORDS and all(word in self._lexicon for word in words)

    def _of_the_language(self) -> str:
        (start,) = self._rng.choices(list(STARTS), list(STARTS.values()))
        offered = [self._grammars.say(*start, self._rng) for _ in range(CANDIDATES)]
        fitting = [text for text in offered if self._is_sayable(text)] or [""]
        rarest = min(fitting, key=lambda text: min((self._used[word] for word in text.split()), default=0))
        self._used.update(rarest.split())
        return rarest

    def _contrast(self) -> str:
        """Numbers that are mistaken for one another, where they are: before and after other sounds, and last."""
        rng = self._rng
        after = rng.choice(["", ""] + self._language)
        if rng.random() < 0.5:
            number = rng.choice(TEENS + TIES)
        else:
            tens = rng.choice(["", "", "one", "twenty", *TIES])
            number = f"{tens} {rng.choice(rng.choice(NEAR_DIGITS))}"
        return " ".join(f"{rng.choice(LEADS)} {number} {after}".split())
