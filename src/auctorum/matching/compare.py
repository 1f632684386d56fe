"""What differs between a label and a name, letter by letter, in words, and how much it weighs.

Weights are in letters: an ending of the wrong gender weighs a quarter of a wrong letter. They were set
by us so that what people and printers confuse is near; there is no source for them.
"""

from __future__ import annotations

from dataclasses import dataclass

from rapidfuzz.distance import Levenshtein

from auctorum.matching.normalise import Reading, Word
from auctorum.matching.spelling import ENDINGS, latin, squeeze

CAPITAL = "another capital"
SPACE = "space or hyphen"
MARK = "accent or ligature"
RANK = "another rank"
NO_RANK = "rank left out"
HYBRID = "hybrid sign"
ENDING = "gender ending"
LATIN = "Latin spelling"
DOUBLED = "doubled letter"
LOOK_ALIKE = "look-alike letters"
SWAPPED = "letters swapped"
VOWEL = "connecting vowel"
MISSING = "letter missing"
SURPLUS = "letter too many"
OTHER = "another letter"
CUT = "cut short"
ABBREVIATED = "abbreviated genus"
POSITION = "another rank or position"

FORMAL = frozenset({CAPITAL, SPACE, MARK, RANK, NO_RANK, HYBRID})
SPELLING = frozenset({ENDING, LATIN, DOUBLED, VOWEL})  # may be the same word; the others make it another one
_FLAT = {
    ENDING: 0.25,
    LATIN: 0.35,
    VOWEL: 0.5,
    DOUBLED: 0.4,
    LOOK_ALIKE: 0.6,
    SWAPPED: 0.7,
    CUT: 0.8,
    ABBREVIATED: 0.3,
    POSITION: 2.0,
}

# Read one for the other by eye or machine, either way round.
_PAIRS = (
    "rn/m rn/n n/m cl/d li/h ii/n ii/u in/m ni/m nn/m ri/n l/i l/1 i/1 o/0 c/e a/o g/q h/b u/n u/v v/y s/g f/t l/t "
    "e/o a/u y/p n/r vv/w fi/h"
)
_LOOK_ALIKE = frozenset(frozenset(pair.split("/")) for pair in _PAIRS.split())


@dataclass(frozen=True, slots=True)
class Difference:
    """One place where label and name differ: the letters of each, and where these begin in the label, from 0."""

    label_part: str
    name_part: str
    position: int
    kind: str


def differences(reading: Reading, words: tuple[str, ...]) -> tuple[tuple[Difference, ...], ...]:
    """The differences in letters between a reading and a name's words in plain letters, word by word.

    Where the name has more or fewer words there is one group, of all letters in one, and the spaces are
    a difference, too. Within a group from left to right.
    """
    if len(words) == len(reading.words):
        return tuple(
            _letters_differ(word, name, is_epithet=place > 0)
            for place, (word, name) in enumerate(zip(reading.words, words, strict=True))
        )
    offsets = tuple(offset for word in reading.words for offset in word.offsets)
    whole = Word(" ".join(word.printed for word in reading.words), reading.key, offsets)
    space = Difference(whole.printed, " ".join(words), offsets[0], SPACE)
    return ((space, *_letters_differ(whole, "".join(words), is_epithet=True)),)


def _letters_differ(word: Word, name: str, *, is_epithet: bool) -> tuple[Difference, ...]:
    if word.letters == name:
        return ()
    found = []
    for at, end, name_at, name_end in _blocks(word.letters, name):
        kind = _kind(word.letters, (at, end), name, (name_at, name_end), is_epithet)
        place = word.offsets[min(at, len(word.offsets) - 1)] + (1 if at >= len(word.offsets) else 0)
        found.append(Difference(word.letters[at:end], name[name_at:name_end], place, kind))
    return tuple(found)


def _blocks(label: str, name: str) -> list[tuple[int, int, int, int]]:
    """Stretches that differ; touching ones in one, two around a single letter in one if they swap letters."""
    blocks: list[tuple[int, int, int, int]] = []
    for step in Levenshtein.opcodes(label, name):
        at, end, name_at, name_end = step.src_start, step.src_end, step.dest_start, step.dest_end
        if step.tag == "equal":
            continue
        if blocks:
            first, last, name_first, name_last = blocks[-1]
            touching = (last, name_last) == (at, name_at)
            if touching or _swaps(label[first:end], name[name_first:name_end]):
                blocks[-1] = (first, end, name_first, name_end)
                continue
        blocks.append((at, end, name_at, name_end))
    return blocks


def _swaps(label: str, name: str) -> bool:
    return len(label) == 2 and label == name[::-1]


def _kind(label: str, span: tuple[int, int], name: str, name_span: tuple[int, int], is_epithet: bool) -> str:
    """What one differing stretch is, in words; the first that fits of a fixed order."""
    (at, end), (name_at, name_end) = span, name_span
    part, name_part = label[at:end], name[name_at:name_end]
    around = [
        (label[max(at - k, 0) : end + m], name[max(name_at - k, 0) : name_end + m]) for k, m in _AROUND if at >= k
    ]
    if any(squeeze(one) == squeeze(other) for one, other in around):
        return DOUBLED if (part or name_part) != "i" or end < len(label) - 1 else LATIN
    if any(latin(one) == latin(other) for one, other in around):
        return LATIN
    if is_epithet and _same_but_for_ending(label, at, end, name, name_at, name_end):
        return ENDING
    if {part, name_part} == {"", "i"} and label[end:].startswith("an") and len(label) - end <= 4:
        return LATIN  # -iana for -ana
    if is_epithet and frozenset((part, name_part)) in _CONNECTING and 3 <= at < len(label) - 4:
        return VOWEL  # between the parts of a compound, ICN Art. 60.10
    if _swaps(part, name_part):
        return SWAPPED
    if any(frozenset(pair) in _LOOK_ALIKE for pair in around):
        return LOOK_ALIKE
    if not part:
        return MISSING
    return OTHER if name_part else SURPLUS


_CONNECTING = (frozenset("ei"), frozenset("io"))
_AROUND = ((0, 0), (1, 0), (0, 1), (1, 1))


def _same_but_for_ending(label: str, at: int, end: int, name: str, name_at: int, name_end: int) -> bool:
    tail, name_tail = label[end:], name[name_end:]
    if tail != name_tail or len(tail) > 2:
        return False
    return any(
        label[at - k :] in ENDINGS and name[name_at - k :] in ENDINGS for k in range(3) if at - k >= 2 and name_at >= k
    )


def weight(difference: Difference) -> float:
    """How much one difference weighs, in letters; nothing if it is only one of form."""
    if difference.kind in FORMAL:
        return 0.0
    if difference.kind in _FLAT:
        return _FLAT[difference.kind]
    return float(max(len(difference.label_part), len(difference.name_part)))


def formal(
    reading: Reading, words: tuple[str, ...], printed: tuple[str, ...], ranks: tuple[str, ...], hybrid: bool
) -> tuple[Difference, ...]:
    """Differences of form: capitals, hyphens, marks, ranks (`ranks` of the name, one a word) and hybrid sign."""
    found = []
    if len(words) == len(reading.words):
        for place, (word, name, rank) in enumerate(zip(reading.words, printed, ranks, strict=True)):
            found += _form_of_word(word, name, genus=place == 0)
            if word.rank != rank and place > 1:
                kind = RANK if word.rank else NO_RANK
                found.append(Difference(word.rank, rank, word.offsets[0], kind))
    if hybrid != reading.hybrid:
        sign = ("", "×") if hybrid else ("×", "")
        found.append(Difference(*sign, reading.words[0].offsets[0], HYBRID))
    return tuple(found)


def _form_of_word(word: Word, name: str, *, genus: bool) -> list[Difference]:
    found = []
    right = word.printed.capitalize() if genus else word.printed.lower()
    place = word.offsets[0]
    if word.printed != right:
        found.append(Difference(word.printed, right, place, CAPITAL))
    if ("-" in word.printed) != ("-" in name):
        found.append(Difference(word.printed, name, place, SPACE))
    if not word.printed.isascii():
        found.append(Difference(word.printed, name, place, MARK))
    return found


def in_words(found: tuple[Difference, ...]) -> str:
    """The kinds of the differences, heaviest first, each once; `same words` where there is none.

    >>> in_words(())
    'same words'
    """
    kinds = dict.fromkeys(one.kind for one in sorted(found, key=lambda one: (-weight(one), one.position)))
    return ", ".join(kinds) or "same words"
