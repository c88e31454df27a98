"""
Says sentences of the project's grammars at random.

Reads the part of JSGF that grammars/*.jsgf use: rules, imports, groups, options, alternatives, * and +, tags and
comments. Not for checking a grammar: src/language/jsgf does that.
"""

import random
import re
from dataclasses import dataclass
from pathlib import Path

TOKEN = re.compile(r"<[^>]+>|[()\[\]|*+]|[^\s<>()\[\]|*+]+")
OPTION_SHARE = 0.45
REPEAT_SHARE = 0.35


@dataclass(frozen=True)
class Word:
    text: str


@dataclass(frozen=True)
class Rule:
    grammar: str
    name: str


@dataclass(frozen=True)
class Choice:
    """One of several sequences. How often: once, perhaps ("?"), any number ("*"), at least once ("+")."""

    branches: tuple[tuple["Node", ...], ...]
    how_often: str = ""


Node = Word | Rule | Choice


class Grammars:
    """All grammars of a folder, their rules known by grammar and name."""

    def __init__(self, folder: Path) -> None:
        self._texts = {path.stem: _without_notes(path.read_text()) for path in sorted(folder.glob("*.jsgf"))}
        self._rules: dict[tuple[str, str], Choice] = {}
        for grammar, text in self._texts.items():
            for name, body in re.findall(r"<(\w+)>\s*=\s*([^;]+);", text):
                self._rules[grammar, name] = _parse(body, grammar)

    def say(self, grammar: str, rule: str, rng: random.Random) -> str:
        """One sentence of a rule. Raises KeyError where there is no such rule."""
        return " ".join(self._words(self.rule(grammar, rule), rng))

    def rule(self, grammar: str, name: str) -> "Choice":
        """What a rule says, its own grammar's or an imported one. Raises KeyError where there is no such rule."""
        return self._rules[self._find(grammar, name)]

    def _find(self, grammar: str, rule: str) -> tuple[str, str]:
        if (grammar, rule) in self._rules:
            return grammar, rule
        imports = re.findall(r"import\s*<(\w+)\.(\w+|\*)>\s*;", self._texts[grammar])
        for source, name in imports:
            if name in ("*", rule) and (source, rule) in self._rules:
                return source, rule
        raise KeyError(f"{grammar}.jsgf has no rule <{rule}>")

    def _words(self, node: Node, rng: random.Random) -> list[str]:
        if isinstance(node, Word):
            return [node.text]
        if isinstance(node, Rule):
            return self._words(self.rule(node.grammar, node.name), rng)
        if node.how_often == "?" and rng.random() > OPTION_SHARE:
            return []
        times = 0 if node.how_often == "*" else 1
        while node.how_often in ("*", "+") and rng.random() < REPEAT_SHARE:
            times += 1
        return [w for _ in range(times) for part in rng.choice(node.branches) for w in self._words(part, rng)]


def _without_notes(text: str) -> str:
    return re.sub(r"/\*.*?\*/|//[^\n]*|\{[^}]*\}", " ", text, flags=re.S)


def _parse(body: str, grammar: str) -> Choice:
    tokens = TOKEN.findall(body)
    choice, end = _branches(tokens, 0, grammar)
    if end != len(tokens):
        raise ValueError(f"{grammar}.jsgf: cannot read {' '.join(tokens[end:])}")
    return choice


def _branches(tokens: list[str], at: int, grammar: str) -> tuple[Choice, int]:
    branches: list[tuple[Node, ...]] = []
    while True:
        parts: list[Node] = []
        while at < len(tokens) and tokens[at] not in ("|", ")", "]"):
            token = tokens[at]
            if token in ("*", "+"):
                parts[-1] = Choice(((parts[-1],),), token)
                at += 1
            elif token in ("(", "["):
                inner, at = _branches(tokens, at + 1, grammar)
                parts.append(Choice(inner.branches, "?") if token == "[" else inner)
                at += 1
            else:
                parts.append(Rule(grammar, token[1:-1]) if token.startswith("<") else Word(token))
                at += 1
        branches.append(tuple(parts))
        if at >= len(tokens) or tokens[at] != "|":
            return Choice(tuple(branches)), at
        at += 1
