"""Names of organs in a phrase: the noun with its position and whole (`lower bracts`, `lobes of the calyx`)."""

from __future__ import annotations

from dataclasses import dataclass, replace
from functools import lru_cache

from auctorum.characters.figures import Line
from auctorum.characters.prose.organs import (
    COMPOUNDS,
    LONGEST_COMPOUND,
    LONGEST_ORGAN,
    Organ,
    organ_of,
    place_of,
    singular,
)
from auctorum.characters.prose.terms import term_of
from auctorum.characters.tokens import Sort

_ARTICLES_WORDS = """
    the a an its their each every both all these those such la el los las le les lo il gli o os as um uma un
    une der die das den dem des su sus seu sua ses seus suas son sa i
"""
ARTICLES = frozenset(_ARTICLES_WORDS.split())
_OF = frozenset({"of", "de", "del", "da", "do", "das", "dos", "du", "des", "della", "delle"})
_STAGE_ADJECTIVES = {
    "young": "young", "juvenile": "young", "immature": "young", "adult": "mature", "mature": "mature", "ripe": "mature",
    "old": "old", "older": "old", "fruiting": "fruit", "flowering": "flower", "dry": "dry", "dried": "dry",
    "fresh": "fresh", "younger": "young", "youngest": "young",
}  # fmt: skip
SURFACES = frozenset({"surface", "side", "face"})
_PAIRS = frozenset({"pair", "pairs", "pares", "paires", "paare", "paar", "paia"})
_MOST_NOUNS = 3
_MOST_ADJECTIVES = 4
_MOST_WHOLES = 2
_SHORTEST_HALF = 4


@dataclass(frozen=True, slots=True)
class Noun:
    """An organ as named: `places` before it (lower, radial), its `names`, whole first (calyx, tube).

    `part` is set where it is a part that does not name its whole; `kind` is `plant` or `habitat` where it stands for
    one; `stage` is named before it (young leaves); `known` is False where the noun is no word of the list.
    """

    names: tuple[str, ...]
    places: tuple[str, ...] = ()
    part: bool = False
    kind: str = ""
    stage: str = ""
    known: bool = True

    @property
    def name(self) -> str:
        return " ".join((*self.places, *self.names))

    @property
    def head(self) -> str:
        return self.names[-1] if self.names else ""


def noun_named(structure: str) -> Noun:
    """The noun of a structure of a vocabulary, plant and habitat as such.

    >>> noun_named("upper leaf").head, noun_named("habitat").kind
    ('leaf', 'habitat')
    """
    return Noun(tuple(structure.split()), kind=structure if structure in ("plant", "habitat") else "")


HABITAT = Noun(("habitat",), kind="habitat")
PLANT = Noun(("plant",), kind="plant")


def read_noun(line: Line, at: int, *, wholes: int = _MOST_WHOLES) -> tuple[Noun, int] | None:
    """The organ named at this token, articles and adjectives of place before it, and the place after; None if none.

    `wholes` is how many times `of` may still lead to a whole.
    """
    place = at + 1 if line.text(at) in ARTICLES else at
    places: list[str] = []
    stage = ""
    for _ in range(_MOST_ADJECTIVES):
        if _organ_here(line, place) and not (place_of(line.text(place)) and _organ_here(line, _next(line, place))):
            break
        word = line.text(place)
        if line.sort(place) is not Sort.WORD:
            return None
        if word in _STAGE_ADJECTIVES:
            stage = _STAGE_ADJECTIVES[word]
        elif (where := place_of(word)) is not None:
            places.append(where)
        else:
            return None
        place = _next(line, place)
    return _nouns(line, place, tuple(places), stage, wholes)


def _next(line: Line, at: int) -> int:
    """The place of the word after this one, past a hyphen between them, or the point of a short organ (`fls.`)."""
    after = at + 1
    if line.sort(after) is Sort.DASH and line.sort(after + 1) is Sort.WORD and line.tokens[after].glued:
        return after + 1
    return line.skip(after, Sort.POINT) if len(line.text(at)) <= 4 and organ_of(line.text(at)) else after


def _organ_here(line: Line, at: int) -> tuple[Organ, int] | None:
    """The organ named by the most words here, and the place after."""
    if line.sort(at) is not Sort.WORD:
        return None
    places = [at]
    while len(places) < LONGEST_COMPOUND and line.sort(following := _next(line, places[-1])) is Sort.WORD:
        places.append(following)
    words = [line.text(place) for place in places]
    for length in range(len(words), 1, -1):
        printed = tuple(words[:length])
        fixed = COMPOUNDS.get(printed) or COMPOUNDS.get(tuple(map(singular, printed)))
        if fixed is not None:
            return _compound(fixed), places[length - 1] + 1
    if words[0] in _PAIRS:
        return Organ("pair"), at + 1
    organ = organ_of(words[0]) or _run_together(words[0])
    return (organ, at + 1) if organ else None


@lru_cache(maxsize=4096)
def _run_together(word: str) -> Organ | None:
    """`leafblades`: two English organs whose hyphen stood at the end of a line, or was never printed."""
    if (
        not 2 * _SHORTEST_HALF <= len(word) <= 2 * LONGEST_ORGAN
        or term_of(word) is not None
        or place_of(word) is not None
    ):
        return None
    for cut in range(_SHORTEST_HALF, len(word) - _SHORTEST_HALF + 1):
        first, second = organ_of(word[:cut]), organ_of(word[cut:])
        if first and second and first.name == word[:cut] and second.name == singular(word[cut:]) and not first.subject:
            return _compound(COMPOUNDS.get((first.name, second.name), f"{first.name} {second.name}"))
    return None


def _compound(name: str) -> Organ:
    """A compound with a fixed meaning keeps the nature of its head where it is one word: midrib is a part."""
    organ = organ_of(name) if " " not in name else None
    return Organ(name, part=organ.part if organ else False)


def _nouns(line: Line, at: int, places: tuple[str, ...], stage: str, wholes: int) -> tuple[Noun, int] | None:
    found: list[Organ] = []
    end = at
    while len(found) < _MOST_NOUNS:
        start = end
        if found and (_is_hyphen(line, end) or _is_shortened(line, end)):
            start = end + 1
        here = _organ_here(line, start)
        if here is None or (found and start == end and not _joins(line, end - 1, found[-1], here[0])):
            break
        found.append(here[0])
        end = here[1]
    if not found:
        return None
    end += _is_shortened(line, end)
    noun = _noun(found, places, stage)
    end, after = _places_after(line, end, found[-1])
    noun = replace(noun, places=(*after, *noun.places))
    return _of_whole(line, noun, end, wholes) if wholes else (noun, end)


def _is_hyphen(line: Line, at: int) -> bool:
    return line.sort(at) is Sort.DASH and line.tokens[at].glued and line.sort(at + 1) is Sort.WORD


def _is_shortened(line: Line, at: int) -> bool:
    """Whether the point here ends a short word: `fls.`"""
    return line.sort(at) is Sort.POINT and len(line.text(at - 1)) <= 4


def _joins(line: Line, before: int, first: Organ, second: Organ) -> bool:
    """Whether two organs side by side are one: `corollae tubo`, `tubus corollae`, English `stem leaves`."""
    if first.subject or second.subject or first.name == "pair":
        return False
    text, after = line.text(before), line.text(before + 1)
    if text == first.name:
        return True
    if second.part and not first.part:
        return text.endswith(_GENITIVES)
    return first.part and not second.part and after.endswith(_GENITIVES)


_GENITIVES = ("ae", "i", "orum", "arum", "ium", "uum", "cis", "ris", "nis", "tis", "dis")


def _noun(found: list[Organ], places: tuple[str, ...], stage: str) -> Noun:
    if len(found) > 1 and found[0].part and not found[1].part:
        found = [found[1], found[0], *found[2:]]  # Latin: lobi calycis
    names = [word for organ in found for word in organ.name.split()]
    while len(names) > 1 and place_of(names[0]) == names[0]:  # one word for "lower surface"
        places = (*places, names.pop(0))
    kind = found[-1].name if found[-1].subject and len(found) == 1 else ""
    return Noun(tuple(names), places, found[-1].part and len(found) == 1, kind, stage)


def _places_after(line: Line, at: int, organ: Organ) -> tuple[int, tuple[str, ...]]:
    """Adjectives of place behind a noun of another language: `foliis basalibus`, `hojas inferiores`, `face abaxial`."""
    found: list[str] = []
    english = singular(line.text(at - 1)) == organ.name and organ.name not in SURFACES
    while line.sort(at) is Sort.WORD and len(found) < 2:
        where = place_of(line.text(at))
        stands = english and (where == line.text(at) or line.text(at) in ("inferior", "superior"))
        if where is None or stands or organ.name == "ovary":  # an ovary is superior; that is no place
            break
        found.append(where)
        at += 1
    return at, tuple(found)


def read_ellipsis(line: Line, at: int) -> tuple[Noun, int] | None:
    """`the upper`, `the uppermost ones`, `, superior`: adjectives of place whose organ was named before."""
    place = at + (line.text(at) in ARTICLES)
    said_before = line.text(at - 1) in ARTICLES
    if place == at and not said_before and line.sort(at - 1) not in (Sort.COMMA, Sort.STOP):
        return None
    places: list[str] = []
    while (where := place_of(line.text(place))) is not None and len(places) < _MOST_ADJECTIVES:
        places.append(where)
        place += 1
    if line.text(place) in _OF:
        return None  # the middle of the pedicel
    if not places or (place == at + len(places) and not said_before and _is_english_place(line, at)):
        return None
    return Noun((), tuple(places)), place + (line.text(place) in ("one", "ones"))


def _is_english_place(line: Line, at: int) -> bool:
    """Whether an adjective of place is spelt as in English, where it can't stand for its organ without an article."""
    return place_of(line.text(at)) == line.text(at) and line.text(at) not in ("inferior", "superior")


def _of_whole(line: Line, noun: Noun, end: int, wholes: int) -> tuple[Noun, int]:
    """`lobes of the calyx`, `pairs of leaflets`."""
    if line.text(end) not in _OF:
        return noun, end
    whole = read_noun(line, end + 1, wholes=wholes - 1)
    if whole is None or whole[0].kind:
        return noun, end
    owner, after = whole
    if noun.names[-1] == "pair":
        return Noun((f"pair of {owner.name}",)), after
    if noun.part:
        return Noun((*owner.names, *noun.names), (*noun.places, *owner.places), owner.part, "", noun.stage), after
    return noun, end
