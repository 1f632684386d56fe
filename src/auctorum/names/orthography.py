"""The spelling of a name, corrected as far as the Code allows (ICN Art. 60, 32.2, 23; Shenzhen 2018).

The original spelling stands (Art. 60.1). It is changed only by the steps below, each of which rests on an article; what
they need to know of an epithet is recorded with the name (`Origin`), and what is not recorded and not told by the word
itself is left alone. A correction changes neither author nor date.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace

from auctorum.names.agreement import EpithetKind, agreeing, declined, declined_plural, without_cola
from auctorum.names.compounds import compounded
from auctorum.names.fold import same_epithet
from auctorum.names.format import format_name
from auctorum.names.gender import Gender
from auctorum.names.letters import modern_letters, shows_interchange, with_eu, without_marks
from auctorum.names.name import Name
from auctorum.names.personal import corrected_personal
from auctorum.names.ranks import GENUS, SPECIES, UNRANKED, rank_named, read_term
from auctorum.names.signs import joined, plain_hyphens, transcribed, without_apostrophes, without_stops
from auctorum.names.terminations import terminated


@dataclass(frozen=True, slots=True)
class Origin:
    """What is recorded about where a word comes from. None or empty = not recorded."""

    kind: EpithetKind | None = None
    noun: str = ""  # the noun in the form the epithet ought to have: nominative, or genitive
    declension: str = ""  # of an adjective: niger/nigra/nigrum
    person: str = ""
    sex: str = ""  # male | female
    number: str = ""  # singular | plural
    form: str = ""  # genitive | adjective
    place: str = ""
    intended: str = ""  # the word that an established printing or spelling error stands for
    parts_stand_alone: bool | None = None  # whether its parts are words that usually stand independently
    first_genitive: str = ""  # of a compound: its first word in the genitive singular
    transcription: str = ""  # of a symbol, in the case needed
    interchanged: bool | None = None  # whether the work uses u and v, i and j without distinction
    fossil: bool = False


@dataclass(frozen=True, slots=True)
class Change:
    """One correction: the article that asks for it and the reason."""

    article: str
    reason: str


@dataclass(frozen=True, slots=True)
class Spelling:
    """A word or name as it has to be spelled, with what was changed, in order; none if it stands as printed."""

    word: str
    changes: tuple[Change, ...] = ()


@dataclass(frozen=True, slots=True)
class _Case:
    origin: Origin
    gender: Gender | None


# Article, reason, and the word after the step.
_Step = tuple[str, str, Callable[[str, _Case], str]]


def _intended(word: str, case: _Case) -> str:
    return _like(word, case.origin.intended) if case.origin.intended else word


def _like(word: str, other: str) -> str:
    """`other` with the first letter as large as that of `word`."""
    return other[:1].upper() + other[1:] if word[:1].isupper() else other


def _sz(word: str, case: _Case) -> str:
    return word.replace("ß", "ss").replace("ſ", "s")


def _interchange(word: str, case: _Case) -> str:
    return modern_letters(word, case.origin.interchanged)


def _symbols(word: str, case: _Case) -> str:
    return transcribed(word, case.origin.transcription)


def _expanded(word: str, case: _Case) -> str:
    return without_stops(word, place=True) if case.origin.place and not case.origin.person else word


def _united(word: str, case: _Case) -> str:
    return joined(word, case.origin.parts_stand_alone, case.origin.person)


def _in_one_word(word: str, case: _Case) -> str:
    return _united(word, case) if " " in word else word


def _honouring(word: str, case: _Case) -> str:
    known = case.origin
    if not known.person or known.place:
        return word
    lower = word[:1].lower() + word[1:]
    made = corrected_personal(
        lower, known.person, sex=known.sex, number=known.number, form=known.form, gender=case.gender
    )
    return _like(word, made)


def _linked(word: str, case: _Case) -> str:
    adjective = case.origin.kind in (None, EpithetKind.ADJECTIVE)
    return compounded(word, case.origin.first_genitive) if adjective and not case.origin.intended else word


def _as_noun(word: str, case: _Case) -> str:
    """Art. 23.5: a noun keeps its own termination, and -cola is one; a genitive is left alone."""
    noun = case.origin.noun if case.origin.kind is EpithetKind.NOUN else ""
    if noun and same_epithet(word, noun):
        return _like(word, noun)
    return without_cola(word) or word


def _in_gender(word: str, case: _Case) -> str:
    if case.gender is None:
        return word
    if word[:1].isupper():
        return word  # of a subdivision: in the plural
    adjective = case.origin.kind is EpithetKind.ADJECTIVE
    # Adjectives in -ensis, which are never nouns, need no record.
    if adjective or (case.origin.kind is None and word.endswith(("ensis", "ense"))):
        return declined(word, case.gender, case.origin.declension) or word
    return word


def _in_plural(word: str, case: _Case) -> str:
    adjective = case.origin.kind is EpithetKind.ADJECTIVE and word[:1].isupper()
    return declined_plural(word, case.gender) if adjective and case.gender else word


def _in_singular(word: str, case: _Case) -> str:
    if case.origin.kind is not EpithetKind.PLURAL_NOUN:
        return word
    return agreeing(word, Gender.FEMININE, EpithetKind.PLURAL_NOUN, _like(word, case.origin.noun))


_LETTERS: tuple[_Step, ...] = (
    ("60.4", "letters foreign to Latin are transcribed", _sz),
    (
        "60.7",
        "diacritical marks and ligatures are transcribed",
        lambda word, case: without_marks(word, diaeresis=True),
    ),
    ("60.5", "u and v, i and j are written as in modern botanical usage", _interchange),
    ("60.6", "the Greek diphthong is written eu", lambda word, case: with_eu(word)),
)
_EPITHET: tuple[_Step, ...] = (
    ("60.1", "an established printing or spelling error is corrected to the word intended", _intended),
    ("23.3", "a symbol is transcribed", _symbols),
    *_LETTERS,
    (
        "60.13",
        "apostrophes and quotation marks go; m' for Mac becomes mc",
        lambda word, case: without_apostrophes(word),
    ),
    ("60.14", "an abbreviation in a geographical epithet is written out", _expanded),
    ("60.13", "full stops go", lambda word, case: without_stops(word)),
    ("23.1", "the words of an epithet are united or hyphened", _in_one_word),
    ("60.11", "a hyphen stands only between words that usually stand alone or between like letters", _united),
    ("60.8", "an epithet from the name of a person takes the termination that fits name, sex and number", _honouring),
    ("60.10", "a compound takes the stem of its first word and a linking vowel", _linked),
    ("32.2", "a noun in the nominative plural is put in the singular", _in_singular),
    ("21.2", "a plural adjective as the epithet of a subdivision agrees in gender with the genus", _in_plural),
    ("23.5", "a noun does not take the gender of the genus", _as_noun),
    ("23.5", "an adjective agrees in gender with the genus", _in_gender),
)
_GENUS: tuple[_Step, ...] = (_EPITHET[0], *_LETTERS)
_FOSSIL: _Step = ("60.12", "the name of a fossil-genus has no hyphen", lambda word, case: word.replace("-", ""))


def corrected(word: str, origin: Origin = Origin(), gender: Gender | None = None, rank: str = "species") -> Spelling:
    """A final epithet, or a single word of the rank `genus` or above, as the Code has it spelled.

    `gender` is that of the genus. Without it no adjective is declined; nor is an epithet of unrecorded kind, but for
    those in -ensis. Nothing is changed for better Latin or a classical spelling (Art. 60.1).

    >>> corrected("lecardi", Origin(person="Lecard", sex="male")).word
    'lecardii'
    >>> corrected("müllerii").changes
    (Change(article='60.7', reason='diacritical marks and ligatures are transcribed'),)
    """
    case = _Case(origin, gender)
    level = rank_named(rank)
    if level > GENUS:
        return _run(plain_hyphens(word), _EPITHET, case)
    done = _run(word, (*_GENUS, _FOSSIL) if origin.fossil else _GENUS, case)
    made, article = terminated(done.word, rank)
    if not made:
        return done
    return Spelling(made, (*done.changes, Change(article, f"a name at the rank of {rank} takes its termination")))


def _run(word: str, steps: tuple[_Step, ...], case: _Case) -> Spelling:
    """The word after all steps, taken again as long as one opens the way for an earlier one."""
    changes: dict[Change, None] = {}
    for _ in steps:
        before = word
        for article, reason, step in steps:
            after = step(word, case) if word else word
            if after != word:
                changes[Change(article, reason)] = None
            word = after
        if word == before:
            break
    return Spelling(word, tuple(changes))


def corrected_name(
    words: str | Name, origin: Origin = Origin(), gender: Gender | None = None, rank: str = ""
) -> Spelling:
    """A whole name without authors, its final epithet (or its one word, of `rank` genus or that given) corrected.

    Of the other words only the letters are put right (Art. 60.4-60.7); their own origin is not at hand. What shows in
    one word that the work has u for v counts for all.

    >>> corrected_name("Cassia [unranked] Chamaecristae", Origin(kind=EpithetKind.PLURAL_NOUN)).word
    'Cassia [unranked] Chamaecrista'
    """
    text = format_name(words, authors=False) if isinstance(words, Name) else " ".join(words.split())
    head, final, capital = _split(text)
    if origin.interchanged is None and any(shows_interchange(word) for word in text.split()):
        origin = replace(origin, interchanged=True)
    before = [_run(word, _LETTERS, _Case(origin, None)) if _is_word(word) else Spelling(word) for word in head]
    sign = "×" if final.startswith("×") else ""
    epithet = final.removeprefix(sign)
    small = epithet if capital else epithet[:1].lower() + epithet[1:]
    last = corrected(small, origin, gender, (rank or "genus") if not head else "species")
    changes = dict.fromkeys(change for one in (*before, last) for change in one.changes)
    initial = () if small == epithet else (_SMALL_INITIAL,)
    return Spelling(" ".join([*(one.word for one in before), sign + last.word]), (*initial, *changes))


_SMALL_INITIAL = Change("60F.1", "the epithet of a species or of a taxon below it has a small initial")


def _split(text: str) -> tuple[list[str], str, bool]:
    """The words before the final epithet; it, of one word or several; and whether a capital belongs to it.

    It does to a single word and to the epithet of a subdivision of a genus.
    """
    words = text.split()
    start, capital = min(1, len(words) - 1), len(words) < 2
    for at, word in enumerate(words):
        if at and _is_term(word):
            start = at + 1
            # Right behind the genus, an epithet without rank may be that of a subdivision.
            found = read_term(word)
            capital = found is not None and (found[0] < SPECIES or (found[0] is UNRANKED and at == 1))
    # A subdivision of the genus in parentheses, and a hybrid sign apart, stand before the epithet.
    inside = False
    while start < len(words) - 1 and (inside or words[start] == "×" or words[start].startswith("(")):
        inside = (inside or words[start].startswith("(")) and not words[start].endswith(")")
        start += 1
    return words[:start], " ".join(words[start:]), capital


def _is_term(word: str) -> bool:
    found = read_term(word)
    marked = word.endswith((".", "]"))
    return found is not None and marked and (found[0] > GENUS or found[0] is UNRANKED) and found[0] != SPECIES


def _is_word(word: str) -> bool:
    return word not in ("×", "") and not word.startswith(("(", "[")) and not word.endswith((".", ")", "]"))


# What the Code takes for an error: words of the ground on which another spelling is proposed.
_ERRORS = ("typographical", "orthographical", "printing", "misprint", "error", "diacritic", "ligature", "hyphen",
           "termination", "gender", "agreement", "apostrophe", "transcription", "60.", "23.5", "32.2")  # fmt: skip


def refused(proposed: str, ground: str) -> str:
    """Why `proposed` may not replace the original spelling on that ground; empty if the ground is one of the Code's.

    Better Latin, a classical spelling, the spelling of a place or person and the like are none (ICN Art. 60.1, 51.1).

    >>> refused("silvatica", "classical spelling")
    'the original spelling stands: `classical spelling` is no ground for `silvatica`'
    """
    if any(word in ground.casefold() for word in _ERRORS):
        return ""
    return f"the original spelling stands: `{ground}` is no ground for `{proposed}`"
