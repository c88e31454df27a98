"""
The search through a grammar, stated slowly and plainly: for the tests' vectors, against which the app's fast one
(src/listener/search.ts) is held. Written apart from it, on another footing: over the grammar as it stands, with every
history of words spelt out.
"""

from collections import defaultdict
from dataclasses import dataclass

import numpy as np

from jsgf import Choice, Grammars, Node, Rule, Word
from lexicon import Lexicon, Pronunciation

BLANK = 0
BEAM = 40.0
HISTORIES = 8

Words = tuple[str, ...]
Tokens = dict[Words, float]


@dataclass(frozen=True)
class Arc:
    begin: int
    end: int
    word: str
    phones: Pronunciation


class WordArcs:
    """A rule of a grammar as arcs between places; `free` are the places that cost no word to reach."""

    def __init__(self, grammars: Grammars, grammar: str, rule: str, lexicon: Lexicon) -> None:
        self._grammars, self._lexicon = grammars, lexicon
        self._steps: dict[int, set[int]] = defaultdict(set)
        self._places = 2
        self.arcs: list[Arc] = []
        self.start, self.end = 0, 1
        self._lay(grammars.rule(grammar, rule), self.start, self.end)
        self.leaving: dict[int, list[Arc]] = {}
        begins = defaultdict(list)
        for arc in self.arcs:
            begins[arc.begin].append(arc)
        self.may_end: set[int] = set()
        for place in {self.start, *(arc.end for arc in self.arcs)}:
            reached = self._reached(place)
            self.leaving[place] = [arc for at in reached for arc in begins[at]]
            if self.end in reached:
                self.may_end.add(place)

    def _place(self) -> int:
        self._places += 1
        return self._places - 1

    def _lay(self, node: Node, begin: int, end: int) -> None:
        if isinstance(node, Word):
            self.arcs += [Arc(begin, end, node.text, phones) for phones in self._lexicon[node.text]]
        elif isinstance(node, Rule):
            self._lay(self._grammars.rule(node.grammar, node.name), begin, end)
        else:
            self._lay_choice(node, begin, end)

    def _lay_choice(self, choice: Choice, begin: int, end: int) -> None:
        inner_begin, inner_end = self._place(), self._place()
        self._steps[begin].add(inner_begin)
        self._steps[inner_end].add(end)
        if choice.how_often in ("?", "*"):
            self._steps[begin].add(end)
        if choice.how_often in ("*", "+"):
            self._steps[inner_end].add(inner_begin)
        for branch in choice.branches:
            at = inner_begin
            for part in branch:
                following = self._place()
                self._lay(part, at, following)
                at = following
            self._steps[at].add(inner_end)

    def _reached(self, place: int) -> set[int]:
        reached, waiting = {place}, [place]
        while waiting:
            for following in self._steps[waiting.pop()] - reached:
                reached.add(following)
                waiting.append(following)
        return reached


def best_words(log_probs: np.ndarray, graph: WordArcs) -> list[tuple[str, float]]:
    """
    @param log_probs [outputs, 40]; output 0 is the blank.
    @returns word sequences with the log probability of each one's best path, best first.
    """
    # Where a token stands: between words, with the phone just heard (BLANK after a pause); in a phone of a word; in the
    # pause after one.
    now: dict[tuple, Tokens] = {("between", graph.start, BLANK): {(): 0.0}}
    for heard in log_probs.tolist():
        after: dict[tuple, Tokens] = defaultdict(dict)
        limit = max(score for tokens in now.values() for score in tokens.values()) - BEAM
        for place, tokens in now.items():
            for words, score in tokens.items():
                if score > limit:
                    for following, cost in _moves(place, graph, heard):
                        _offer(after[following], words, score + cost)
        for (kind, arc, at), tokens in list(after.items()):
            if kind == "phone" and at == len(arc.phones) - 1:
                for words, score in tokens.items():
                    _offer(after["between", arc.end, arc.phones[-1]], (*words, arc.word), score)
        now = {place: _best(tokens) for place, tokens in after.items()}
    found: Tokens = {}
    for (kind, place, _), tokens in now.items():
        if kind == "between" and place in graph.may_end:
            for words, score in tokens.items():
                _offer(found, words, score)
    return [(" ".join(words), score) for words, score in sorted(found.items(), key=lambda t: -t[1]) if words]


def _best(tokens: Tokens) -> Tokens:
    return dict(sorted(tokens.items(), key=lambda token: -token[1])[:HISTORIES])


def _offer(tokens: Tokens, words: Words, score: float) -> None:
    if score > tokens.get(words, -np.inf):
        tokens[words] = score


def _moves(place: tuple, graph: WordArcs, heard: list[float]):
    kind, where, at = place
    if kind == "between":
        yield ("between", where, BLANK), heard[BLANK]
        for arc in graph.leaving[where]:
            if arc.phones[0] != at:  # two of a kind in a row need a pause between
                yield ("phone", arc, 0), heard[arc.phones[0]]
        return
    phones = where.phones
    if kind == "phone":
        yield ("phone", where, at), heard[phones[at]]
        if at < len(phones) - 1:
            yield ("pause", where, at), heard[BLANK]
            if phones[at + 1] != phones[at]:
                yield ("phone", where, at + 1), heard[phones[at + 1]]
    else:
        yield ("pause", where, at), heard[BLANK]
        yield ("phone", where, at + 1), heard[phones[at + 1]]
