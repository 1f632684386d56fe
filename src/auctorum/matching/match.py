"""Which known name a label means: one, several, or none; never a guess."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace
from typing import Literal

from rapidfuzz import fuzz

from auctorum.matching.compare import (
    ABBREVIATED,
    CUT,
    FORMAL,
    OTHER,
    POSITION,
    SPELLING,
    Difference,
    differences,
    formal,
    in_words,
    weight,
)
from auctorum.matching.index import Entry, NameIndex, skeleton
from auctorum.matching.normalise import Reading, readings, without_further_words
from auctorum.matching.spelling import letters, stem
from auctorum.names.format import format_authors
from auctorum.names.name import Name

Verdict = Literal["one", "several", "none"]

# Bars of acceptance; set by us on labels with known answers (tests/matching/test_misspellings.py).
NEAR_ENOUGH = 0.70  # score of a name that is answered
CLEAR = 0.25  # letters by which the best must be nearer than the second
FORM_COSTS = 0.004  # of the score, for each difference of form
OF_A_WORD = 0.3  # share of a word's letters that, if they differ, make it another word
SAME_AUTHORS = 70  # likeness in per cent of two author citations held to be the same
_SHORT = 5  # letters of an epithet that is another word as soon as one letter is another: alba, alta
_SHORTEST = 4  # letters of a label that is compared with names unlike it
_MOVED = "no such combination is known; its last epithet is, at another rank or position"
_CONTRASTS = (("macro", "micro"), ("hyper", "hypo"), ("uni", "mono", "bi", "di", "tri", "quadri", "tetra"))


@dataclass(frozen=True, slots=True)
class Candidate:
    """A known name that may be meant. `score` is 1 for the same words, less the more and the heavier they differ."""

    id: str
    name: Name
    score: float
    differences: tuple[Difference, ...]
    kind: str


@dataclass(frozen=True, slots=True)
class Match:
    """The answer for one label. `best` is None unless the verdict is `one`; candidates stand nearest first."""

    label: str
    verdict: Verdict
    best: Candidate | None
    candidates: tuple[Candidate, ...]
    set_aside: tuple[str, ...]
    why: str


@dataclass(frozen=True, slots=True)
class _Scored:
    """A candidate on the way: `cost` in letters, `doubt` says why it should not be answered."""

    candidate: Candidate
    cost: float
    reading: Reading
    entry: Entry
    doubt: str = ""

    @property
    def order(self) -> tuple[float, float, str]:
        return (self.cost, -self.candidate.score, self.candidate.id)


def match(label: str, index: NameIndex, *, limit: int = 3) -> Match:
    """The name that the label means, with what differs letter by letter; `limit` candidates at most are listed.

    `one`: a name near enough and clearly nearer than any other. `several`: two names as near. `none`: nothing
    near enough, no species named, or a label whose words are known words, so that nothing is misspelt.
    """
    found = readings(label)
    if not found[0].words:
        return Match(label, "none", None, (), found[0].set_aside, "there is no name in it")
    scored: list[_Scored] = []
    for reading in found:
        scored = _ranked([*scored, *_candidates(reading, index)])
        if scored and not scored[0].candidate.differences:
            break
    if not scored or scored[0].cost > 0:
        shorter = [less for reading in found if (less := without_further_words(reading)) and len(less.words) > 1]
        scored = scored + [one for less in shorter for one in _exact(less, index)]
        scored = _ranked(scored)
    return _decided(label, found[0], scored, limit)


def _ranked(scored: Iterable[_Scored]) -> list[_Scored]:
    """Nearest first, each name once."""
    best: dict[str, _Scored] = {}
    for one in sorted(scored, key=lambda one: one.order):
        best.setdefault(one.candidate.id, one)
    return list(best.values())


def _candidates(reading: Reading, index: NameIndex) -> list[_Scored]:
    exact = _exact(reading, index)
    if exact or len(reading.key) < _SHORTEST:
        return exact
    if reading.abbreviated and len(reading.words) > 1:
        return _by_abbreviation(reading, index)
    plain = [word.letters for word in reading.words]
    found = _near(reading, plain, index)
    if not any(one.candidate.score >= NEAR_ENOUGH for one in found):
        seen = [_as_meant(word) for word in plain]
        found += _near(reading, seen, index) if seen != plain else []
        found += _moved(reading, index)
    return found + _cut_short(reading, index)


def _near(reading: Reading, words: list[str], index: NameIndex) -> list[_Scored]:
    form = skeleton(words)
    entries = dict.fromkeys(index.near(form, _most(form)))
    return [_score(reading, entry, index) for entry in entries if _comparable(reading, entry)]


def _as_meant(word: str) -> str:
    """The word with the commonest misreadings of print undone."""
    for read, meant in (("rn", "m"), ("0", "o"), ("1", "l")):
        word = word.replace(read, meant)
    return word


def _moved(reading: Reading, index: NameIndex) -> list[_Scored]:
    """Names that keep the label's last epithet at another rank or in another species of the genus; never answered."""
    if len(reading.words) < 2:
        return []
    genus, last = reading.words[0], reading.words[-1]
    shorter = replace(reading, words=(genus, last))
    return [
        _score(shorter, entry, index, moved=True)
        for entry in index.with_ends(genus.letters, last.letters)
        if len(entry.words) != len(reading.words)
    ]


def _exact(reading: Reading, index: NameIndex) -> list[_Scored]:
    return [_score(reading, entry, index) for entry in index.same(reading.key)]


def _most(form: str) -> int:
    """Letters of a skeleton that may differ."""
    return min(4, 1 + len(form) // 5)


def _comparable(reading: Reading, entry: Entry) -> bool:
    """A genus is compared with genera, a name with an epithet never with a bare genus."""
    if len(entry.words) == 1:
        return len(reading.words) == 1
    return len(reading.words) > 1 or len(reading.key) > 10


def _by_abbreviation(reading: Reading, index: NameIndex) -> list[_Scored]:
    genus, *epithets = reading.words
    letters_ = [word.letters for word in epithets]
    known = [one for one in index.with_epithets("".join(letters_)) if one.words[0].startswith(genus.letters)]
    if not known:
        # Misspelt as well: worth a look only where few genera begin so.
        forms = [skeleton((full, *letters_)) for full in index.genera_beginning(genus.letters)]
        near = dict.fromkeys(entry for form in forms for entry in index.near(form, _most(form)))
        known = [one for one in near if one.words[0].startswith(genus.letters) and _comparable(reading, one)]
    return [_score(reading, entry, index, abbreviated=True) for entry in known]


def _cut_short(reading: Reading, index: NameIndex) -> list[_Scored]:
    last = reading.words[-1].letters
    if len(reading.words) < 2 or len(last) < 3 or not (reading.cut or len(last) >= 4):
        return []
    going_on = [
        entry
        for entry in index.beginning(reading.key)
        if len(entry.words) == len(reading.words) and entry.words[:-1] == tuple(w.letters for w in reading.words[:-1])
    ]
    return [_score(reading, entry, index, cut=True) for entry in going_on]


def _score(
    reading: Reading,
    entry: Entry,
    index: NameIndex,
    *,
    abbreviated: bool = False,
    cut: bool = False,
    moved: bool = False,
) -> _Scored:
    words, special = entry.words, []
    first, last = reading.words[0], reading.words[-1]
    if abbreviated:
        special.append(Difference(first.printed, entry.printed[0], first.offsets[0], ABBREVIATED))
        words = (first.letters, *words[1:])
    if cut:
        special.append(Difference("", words[-1][len(last.letters) :], last.offsets[-1] + 1, CUT))
        words = (*words[:-1], last.letters)
    if moved:
        special.append(Difference("", " ".join(entry.printed[1:-1]), last.offsets[0], POSITION))
        entry = replace(entry, printed=(entry.printed[0], entry.printed[-1]), ranks=("", ""))
        words = (words[0], words[-1])
    by_word = differences(reading, words)
    of_letters = (*special, *(one for group in by_word for one in group))
    of_form = formal(reading, words, entry.printed, entry.ranks, entry.hybrid)
    cost = sum(map(weight, of_letters))
    score = max(0.0, 1 - 2 * cost / len(reading.key) - FORM_COSTS * len(of_form))
    found = tuple(sorted(of_letters + of_form, key=lambda one: one.position))
    candidate = Candidate(entry.id, entry.name, round(score, 4), found, in_words(found))
    doubt = _MOVED if moved else _doubt(reading, words, by_word, index)
    return _Scored(candidate, cost, reading, entry, doubt)


def _doubt(
    reading: Reading, words: tuple[str, ...], by_word: tuple[tuple[Difference, ...], ...], index: NameIndex
) -> str:
    """Why the label is likely no misspelling of the name; empty if nothing speaks against it."""
    if len(words) != len(reading.words):
        return ""
    for place, (word, name, found) in enumerate(zip(reading.words, words, by_word, strict=True)):
        if all(one.kind in SPELLING or one.kind in FORMAL for one in found):
            continue
        if place == 0 and index.knows_genus(word.letters):
            return f"{word.printed} is a known genus, so it may be no misspelling"
        if place > 0 and index.knows_epithet(word.letters) and stem(word.letters) != stem(name):
            return f"the epithet {word.printed} is known from another name, so it may be no misspelling"
        if place > 0 and _contrasted(word.letters, name):
            return f"{word.printed} and {name} mean different things"
        short = place > 0 and len(word.letters) <= _SHORT and any(one.kind == OTHER for one in found)
        if short or sum(map(weight, found)) >= OF_A_WORD * len(word.letters):
            return f"too much of the word {word.printed} differs"
    return ""


def _contrasted(word: str, name: str) -> bool:
    """Whether two epithets differ in nothing but prefixes of contrary meaning: macrophylla, microphylla."""
    return any(
        word.startswith(one) and name.startswith(other) and word[len(one) :] == name[len(other) :]
        for prefixes in _CONTRASTS
        for one in prefixes
        for other in prefixes
        if one != other
    )


def _decided(label: str, first: Reading, scored: list[_Scored], limit: int) -> Match:
    candidates = tuple(one.candidate for one in scored[:limit])
    good = [one for one in scored if one.candidate.score >= NEAR_ENOUGH and not one.doubt]
    aside = (good or scored)[0].reading.set_aside if scored else first.set_aside
    if not good:
        return Match(label, "none", None, candidates, aside, _why_none(first, scored))
    rivals = [one for one in scored if one.cost - good[0].cost < CLEAR and (one.cost == 0) == (good[0].cost == 0)]
    rivals = _of_same_form(_of_same_authors(rivals))
    if len(rivals) == 1:
        best = rivals[0].candidate
        others = tuple(one for one in candidates if one.id != best.id)
        return Match(label, "one", best, (best, *others)[:limit], rivals[0].reading.set_aside, best.kind)
    likely = tuple(one.candidate for one in rivals)
    others = tuple(one for one in candidates if one not in likely)
    return Match(label, "several", None, (*likely, *others)[: max(limit, 2)], aside, f"{len(likely)} names are as near")


def _why_none(first: Reading, scored: list[_Scored]) -> str:
    if scored and scored[0].doubt and (scored[0].candidate.score >= NEAR_ENOUGH or scored[0].doubt == _MOVED):
        return scored[0].doubt
    return "only one word: no species is named" if len(first.words) == 1 else "nothing is near enough"


def _of_same_form(rivals: list[_Scored]) -> list[_Scored]:
    """Those that do not differ at all; else, of rivals that share their words, those with the stated rank and sign."""
    same = [one for one in rivals if not one.candidate.differences]
    if same or len({one.entry.words for one in rivals}) > 1:
        return same or rivals
    fewest = min(len(one.candidate.differences) for one in rivals)
    stated = rivals[0].reading.hybrid or any(word.rank for word in rivals[0].reading.words)
    return [one for one in rivals if len(one.candidate.differences) == fewest] if stated else rivals


def _of_same_authors(rivals: list[_Scored]) -> list[_Scored]:
    """Where the label gives authors: the homonyms whose authors are alike; all where none is."""
    if len(rivals) < 2 or len({one.entry.words for one in rivals}) > 1:
        return rivals
    said = letters(rivals[0].reading.authors)
    if not said:
        return rivals
    alike = [
        one for one in rivals if fuzz.ratio(said, letters(format_authors(one.candidate.name.authors))) >= SAME_AUTHORS
    ]
    return alike or rivals
