"""Hybrid formulae, epithets that are formulae, and condensed generic names (ICN Chapter H, Shenzhen 2018)."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from auctorum.names.fold import fold
from auctorum.names.format import HYBRID, format_name, words
from auctorum.names.name import Name, UnreadableName
from auctorum.names.parse import parse

_SIGNS = frozenset({HYBRID, "x", "X"})


def formula(
    parents: Sequence[Name], *, authors: bool = True, alphabetical: bool = False, abbreviate_genus: bool = False
) -> str:
    """The names of the parents with the sign between spaces (ICN Art. H.2.1), in the order given.

    If `alphabetical`, in the order of their words (Rec. H.2A.1). If `abbreviate_genus`, a genus already written is
    given by its initial, unless another genus of that initial is written, too. Raises ValueError for fewer than two.

    >>> formula([Name("Fictum", "album"), Name("Fictum", "nigrum")], abbreviate_genus=True)
    'Fictum album × F. nigrum'
    """
    if len(parents) < 2:
        raise ValueError(f"a hybrid formula has two parents or more: {len(parents)} given")
    ordered = sorted(parents, key=words) if alphabetical else list(parents)
    initials = {(name.genus[0], name.genus) for name in ordered}
    written: set[str] = set()
    texts = []
    for name in ordered:
        alone = sum(initial == name.genus[0] for initial, _ in initials) == 1
        short = abbreviate_genus and alone and name.genus in written and bool(name.species or name.divisions)
        texts.append(format_name(replace(name, genus=f"{name.genus[0]}.") if short else name, authors))
        written.add(name.genus)
    return f" {HYBRID} ".join(texts)


def formula_faults(text: str) -> tuple[str, ...]:
    """What keeps `text` from being a hybrid formula, in order; empty if it may be written so (ICN Art. H.2.1).

    A generic name, or its initial once it has been written, stands before each epithet, and the sign (or the letter x)
    between spaces. Signs of sex (♀, ♂) may be added (Rec. H.2A.1).

    >>> formula_faults("Salix aurita × S. caprea")
    ()
    >>> formula_faults("Salix aurita × caprea")
    ('no generic name or initial before `caprea`',)
    """
    parents = _parents(text)
    faults = ["no space on each side of the sign"] if _joined_sign(text) else []
    if len(parents) < 2:
        return (*faults, "fewer than two parents")
    genera: _Abbreviated = {}
    for parent in parents:
        fault = _fault_of(parent, genera)
        if fault:
            faults.append(fault)
        elif not parent[0].endswith("."):
            genus = parent[0].strip(HYBRID)
            for length in range(1, _LONGEST_INITIAL + 1):
                genera.setdefault(genus[:length], set()).add(genus)
    return tuple(faults)


# What a genus may be abbreviated to, with the genera written so far that it may stand for.
_Abbreviated = dict[str, set[str]]
_LONGEST_INITIAL = 3


def _parents(text: str) -> list[list[str]]:
    """The words of each parent; signs of sex are left out."""
    parents: list[list[str]] = [[]]
    for word in text.split():
        bare = word.strip("♀♂")
        if word in _SIGNS:
            parents.append([])
        elif bare:
            parents[-1].append(bare)
    return parents


def _joined_sign(text: str) -> bool:
    """Whether a sign touches the word before it; one that touches only the word behind belongs to that word."""
    return any(HYBRID in word[1:] for word in text.split())


def _fault_of(parent: list[str], genera: _Abbreviated) -> str:
    shown = " ".join(parent)
    if not parent:
        return "no name on one side of a sign"
    first = parent[0].removeprefix(HYBRID)
    if not first[:1].isupper():
        return f"no generic name or initial before `{shown}`"
    if first.endswith("."):
        return _fault_of_initial(first.rstrip("."), parent, genera)
    return "" if _is_name(shown) else f"`{shown}` is no name"


def _fault_of_initial(initial: str, parent: list[str], genera: _Abbreviated) -> str:
    meant = genera.get(initial, set())
    shown = " ".join(parent)
    if not meant:
        return f"`{initial}.` stands for no genus written before"
    if len(meant) > 1:
        return f"`{initial}.` may stand for {' or '.join(sorted(meant))}"
    return "" if _is_name(" ".join([*meant, *parent[1:]])) and len(parent) > 1 else f"`{shown}` is no name"


def _is_name(text: str) -> bool:
    try:
        return not parse(text).remainder
    except UnreadableName:
        return False


def is_formula_epithet(epithet: str, formula: str = "") -> bool:
    """Whether a hyphened epithet is made of its parents' and so a formula, no epithet (ICN Art. H.10.3).

    Its parts are the epithets of the parents unchanged, or with another termination, or one of them is the genus of a
    parent. Without the `formula` nothing tells, and the answer is no.

    >>> is_formula_epithet("atrosanguinea-pedata", "Potentilla atrosanguinea × P. pedata")
    True
    """
    parts = [_key(part) for part in epithet.replace(" ", "-").split("-") if part]
    if len(parts) < 2 or not formula:
        return False
    found: dict[str, set[int]] = {}
    for at, parent in enumerate(_parents(formula)):
        for word in parent:
            found.setdefault(_key(word), set()).add(at)
    used = [found.get(part, set()) for part in parts]
    return all(used) and len(set.union(*used)) > 1


_TERMINATIONS = ("us", "um", "is", "os", "on", "es", "ae", "a", "e", "o", "i")


def _key(word: str) -> str:
    """The word without its termination, so that nigro and nigrum become one; short words whole."""
    folded = fold(word)
    stem = _without_termination(folded)
    return stem if len(stem) > 2 else folded


# Nominatives in -x, with the stem that a compound shows: ilex, ilici-.
_IN_X = {"ex": "ic", "ix": "ic", "ax": "ac"}


def _without_termination(word: str) -> str:
    if word[-2:] in _IN_X:
        return word[:-2] + _IN_X[word[-2:]]
    ending = next((one for one in _TERMINATIONS if word.endswith(one)), "")
    stem = word.removesuffix(ending)
    return f"{stem[:-2]}r" if stem.endswith("er") else stem


_LINKS = ("", "a", "e", "i", "o", "u", "y")
_VOWELS = "aeiouy"
_MOST_SYLLABLES = 8
# No generic name is longer; it bounds the ways of taking one apart.
_LONGEST = 60


def nothogenus_parts_fit(name: str, genera: Sequence[str]) -> bool | None:
    """Whether a nothogeneric name is a condensed formula of the parental `genera` (ICN Art. H.6.2-H.6.4).

    For two, it is the first part or the whole of one and the last part or the whole of the other, not the whole of
    both, with a linking vowel if need be; for three, parts of all of them, in any order, in at most eight syllables. A
    name in -ara for three or more honours a person: None, as its letters do not tell; for four or more it is the only
    one, and False without it.

    >>> nothogenus_parts_fit("Agropogon", ["Agrostis", "Polypogon"])
    True
    """
    word = name.strip().removeprefix(HYBRID).strip().casefold()
    known = [genus.casefold() for genus in genera]
    if len(known) < 2 or len(word) > _LONGEST:
        return False
    if len(known) > 2 and word.endswith("ara"):
        return None if _syllables(word) <= _MOST_SYLLABLES else False
    if len(known) == 2:
        return any(_fits_two(word, first, second) for first, second in (known, known[::-1]))
    return len(known) == 3 and _syllables(word) <= _MOST_SYLLABLES and _fits_three(word, known)


def _syllables(word: str) -> int:
    """Groups of vowels."""
    return sum(one in _VOWELS and before not in _VOWELS for before, one in zip("-" + word, word, strict=False))


def _fits_two(word: str, first: str, second: str) -> bool:
    if word.startswith(first) and word.endswith(second) and len(word) >= len(first) + len(second):
        return False  # the whole of both
    begun = _shared_beginning(word, first)
    for link in _LINKS:
        for cut in range(2, begun + 1):
            rest = word[cut:].removeprefix(link) if word[cut:].startswith(link) else ""
            if len(rest) > 1 and second.endswith(rest):
                return True
    return False


def _fits_three(word: str, genera: list[str]) -> bool:
    """A beginning of one, a piece of the second, an end of the third, in any order."""
    for at, first in enumerate(genera):
        begun = _shared_beginning(word, first)
        for behind, last in enumerate(genera):
            if behind == at:
                continue
            middle = genera[3 - at - behind]
            ended = _shared_beginning(word[::-1], last[::-1])
            pieces = (word[cut : len(word) - end] for cut in range(2, begun + 1) for end in range(2, ended + 1))
            if any(_is_piece(piece, middle) for piece in pieces):
                return True
    return False


def _is_piece(piece: str, genus: str) -> bool:
    """Whether a piece, with or without a linking vowel on its sides, stands in the name of the genus."""
    starts = (0, 1) if piece[:1] in _LINKS[1:] else (0,)
    ends = (0, 1) if piece[-1:] in _LINKS[1:] else (0,)
    cores = (piece[start : len(piece) - end] for start in starts for end in ends)
    return any(len(core) > 1 and core in genus for core in cores)


def _shared_beginning(a: str, b: str) -> int:
    """Number of letters with which both begin."""
    return next((at for at, (one, other) in enumerate(zip(a, b, strict=False)) if one != other), min(len(a), len(b)))
