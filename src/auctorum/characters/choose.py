"""Which of the ranges in a phrase is of the character that a statement names."""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Iterable

from auctorum.characters.figures import Line
from auctorum.characters.notation import Measure
from auctorum.characters.stages import opens_with_stage
from auctorum.characters.tokens import Sort, folded
from auctorum.characters.vocabulary import Character

_FACTORS = {"length": 0, "height": 0, "width": 1, "breadth": 1, "diameter": 1, "thickness": 2, "depth": 2}
_CLOSE = {
    "length": {"height", "depth"},
    "height": {"length", "elevation"},
    "elevation": {"height"},
    "altitude": {"height", "elevation"},
    "width": {"diameter"},
    "breadth": {"width", "diameter"},
    "diameter": {"width", "thickness"},
    "thickness": {"diameter"},
    "depth": {"length", "height", "thickness"},
}
_IRREGULAR = {
    "leaves": "leaf", "teeth": "tooth", "calyces": "calyx", "perigynia": "perigynium", "stamina": "stamen",
    "staminibus": "stamen", "calyce": "calyx", "radii": "radius", "apices": "apex", "bases": "base", "feet": "foot",
    "axes": "axis", "species": "species", "series": "series", "foliis": "folia", "folium": "folia", "bodies": "body",
}  # fmt: skip
_LATIN_AND_PLURAL = "s es ed a ae i is us um o os as e orum arum am ibus bed"
_ENDINGS = frozenset(_LATIN_AND_PLURAL.split())
_PARTED = (Sort.COMMA, Sort.STOP)
_FAR = 50


def mentions(line: Line, words: Iterable[str]) -> tuple[int, ...]:
    """The places where the last word of one of these names stands, in order; only those with the whole name, if any.

    `leaves` mentions `leaf`, `sepalis` mentions `sepal`.
    """
    names = [tuple(_singular(folded(part)) for part in word.replace("-", " ").split()) for word in words]
    whole: list[int] = []
    heads: list[int] = []
    for at, token in enumerate(line.tokens):
        if token.sort is not Sort.WORD:
            continue
        for name in names:
            head = name[0] if "of" in name else name[-1] if name else ""
            if _is_form(token.text, head):
                heads.append(at)
                near = [line.text(place) for place in range(max(0, at - 2), at)]
                if all(any(_is_form(text, part) for text in near) for part in name[:-1] if "of" not in name):
                    whole.append(at)
    return tuple(dict.fromkeys(whole or heads))


def _singular(word: str) -> str:
    return _IRREGULAR.get(word, word)


def _is_form(text: str, name: str) -> bool:
    text = _singular(text)
    if text == name:
        return True
    stem = name.rstrip("aeiouy") if len(name) > 4 else name
    for root in (name, stem, name.removesuffix("us"), name.removesuffix("um"), name.removesuffix("a")):
        if len(root) >= 3 and text.startswith(root) and text[len(root) :] in _ENDINGS:
            return True
    return len(name) > 4 and name.endswith("y") and text == name[:-1] + "ies"


def chosen(line: Line, found: Iterable[Measure], character: Character, places: tuple[int, ...]) -> Measure | None:
    """The range that fits the character best, the first of equals; None if each is said to be something else."""
    ranked = [(_distance(line, one, places) * 10 + said, index, one) for index, one in enumerate(found)
              if (said := _misfit(one, character.property)) is not None]  # fmt: skip
    return min(ranked)[2] if ranked else None


def related(line: Line, found: Iterable[Measure], places: tuple[int, ...]) -> tuple[Measure, ...]:
    """The ranges in sentences that mention the structure, or go on about another stage of it; all if none does."""
    every = tuple(found)
    if not places:
        return every
    sentences = sentence_of(line)
    named = {sentences[place] for place in places}
    begins = [at for at in range(1, len(sentences)) if sentences[at] != sentences[at - 1]]
    named |= {sentences[at] for at in begins if sentences[at - 1] in named and opens_with_stage(line, at)}
    return tuple(one for one in every if sentences[one.start] in named) or every


def sentence_of(line: Line) -> list[int]:
    """The number of the sentence, parted by semicolons and full stops, of every token."""
    numbers, number = [], 0
    for token in line.tokens:
        number += token.sort is Sort.STOP
        numbers.append(number)
    return numbers


def _misfit(measure: Measure, wanted: str) -> int | None:
    """0 where the words name the property, more where they leave it open, None where they name another."""
    if wanted in measure.says:
        return 0
    if measure.says:
        return 3 if _CLOSE.get(wanted, set()) & set(measure.says) else None if wanted in _FACTORS else 2
    if measure.factors == 1:
        # a bare figure after an organ is its length (common practice, no source)
        return 2 if _FACTORS.get(wanted, 0) == 0 else 35
    factor = _FACTORS.get(wanted, 0)
    if wanted == "diameter" and measure.factors == 2:
        return 1 if measure.factor == 1 else 2
    return 1 if measure.factor == min(factor, measure.factors - 1) else 9


def _distance(line: Line, measure: Measure, places: tuple[int, ...]) -> int:
    """How far the range stands from a mention of its structure: 0 where it follows it with no range between."""
    after = bisect_left(places, measure.end)
    close = after < len(places) and places[after] - measure.end <= 2
    if close and not any(line.sort(at) in _PARTED for at in range(measure.end, places[after])):
        return 0
    start = measure.begins if measure.factors > 1 else measure.start
    before = bisect_left(places, start)
    if before == 0:
        return _FAR
    between = [line.sort(at) for at in range(max(places[before - 1], start - _FAR), start)]
    return min(between.count(Sort.NUMBER), 3) + (_FAR // 2 if Sort.STOP in between else 0)
