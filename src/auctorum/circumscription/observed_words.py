"""What measured plants show beside what works say of them, in sentences for a person."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from auctorum.characters.show import format_value
from auctorum.characters.units import find_unit
from auctorum.characters.values import Range
from auctorum.characters.vocabulary import Character, Kind
from auctorum.circumscription.findings import Evidence, Finding
from auctorum.circumscription.intervals import clopper_pearson
from auctorum.circumscription.measures import measures
from auctorum.circumscription.observed import Cover, Observed
from auctorum.circumscription.observed_value import ENOUGH
from auctorum.circumscription.phrases import counted, listed
from auctorum.circumscription.summary import span_words
from auctorum.circumscription.voices import voices_as_they_lie
from auctorum.corpus.model import Corpus
from auctorum.corpus.resolve import taxa_of_criterion
from auctorum.records import schema

# How a plant is that lies below a range, and above it.
_BESIDE: Mapping[str, tuple[str, str]] = {
    "length": ("are shorter", "are longer"),
    "width": ("are narrower", "are wider"),
    "height": ("are shorter", "are taller"),
    "depth": ("are shallower", "are deeper"),
    "thickness": ("are thinner", "are thicker"),
    "diameter": ("are smaller", "are larger"),
    "elevation": ("grow lower", "grow higher"),
    "altitude": ("grow lower", "grow higher"),
}
_BY_COUNT = ("have fewer", "have more")
_OTHERWISE = ("lie below", "lie above")


def sentences(corpus: Corpus, finding: Finding, found: Observed) -> tuple[str, ...]:
    """What the plants show, each work that they contradict, the rest of the works together, and who named the plants.

    `found` is what `observed` gave for the finding; works stand by date.
    """
    character = corpus.vocabulary[finding.character]
    contradicted = [_contradiction(cover, finding, found, character) for cover in found.contradicted]
    return (_shown(found), *contradicted, _the_rest(found, finding), *naming(corpus, found))


def _shown(found: Observed) -> str:
    """`20 plants of 4 sites: (17–)22–48(–52) mm.`"""
    sites = f" of {counted(found.sites, 'site')}" if found.sites else ""
    counts = ", ".join(f"{state} in {plants}" for state, plants in found.states)
    by_state = f" ({counts})" if len(found.states) > 1 else ""
    few = ""
    if found.n == 1:
        few = " One plant tells nothing of how they vary."
    elif found.n < ENOUGH:
        left = ": only the lowest and the highest value are given" if isinstance(found.value, Range) else ""
        few = f" The plants are few{left}."
    shown = f"{counted(found.n, 'plant')}{sites}: {found.text}{by_state}"
    return f"{shown.removesuffix('.')}.{few}"


def _contradiction(cover: Cover, finding: Finding, found: Observed, character: Character) -> str:
    """`Orrin 1889 (22–35 mm) covers 9 of 20 plants (23–68 %); 11 are longer: contradicted.`"""
    said = [item for item in finding.evidence if item.work == cover.work]
    if cover.too_rare:
        parts = [_exception(state, dict(found.states)[state], cover.n) for state in cover.too_rare]
    else:
        parts = [f"covers {cover.whole} of {counted(cover.n, 'plant')} ({_limits(cover)})", _outside(cover, character)]
    return f"{said[0].byline} ({_stated(said, character)}) {'; '.join(parts)}: contradicted."


def cover_words(cover: Cover) -> str:
    """How many of the plants the statement of a work holds, with the interval of the share unless they are few.

    `42 of 80 (41–64 %)`, `2 of 3`.
    """
    return f"{cover.whole} of {cover.n}" + (f" ({_limits(cover)})" if cover.n >= ENOUGH else "")


def _limits(cover: Cover) -> str:
    return f"{_percent(cover.low)}–{_percent(cover.high)} %"


def _exception(state: str, shown: int, n: int) -> str:
    low, high = clopper_pearson(shown, n)
    return f"makes {state} an exception, but {shown} of {n} plants show it ({_percent(low)}–{_percent(high)} %)"


def _outside(cover: Cover, character: Character) -> str:
    """How many plants lie outside, and on which side."""
    outside = cover.n - cover.whole
    if not character.kind.is_numeric:
        return f"{outside} {'shows' if outside == 1 else 'show'} other states"
    if character.kind is Kind.ANGLE:
        return f"{outside} {'faces' if outside == 1 else 'face'} elsewhere"
    beside = _BY_COUNT if character.kind is Kind.COUNT else _BESIDE.get(character.property, _OTHERWISE)
    sides = zip((cover.beyond_low, cover.beyond_high), beside, strict=True)
    return " and ".join(f"{plants} {_for_one(words) if plants == 1 else words}" for plants, words in sides if plants)


def _for_one(words: str) -> str:
    """The same of one plant: `is longer`, `has more`.

    >>> _for_one("are longer"), _for_one("have more"), _for_one("lie above")
    ('is longer', 'has more', 'lies above')
    """
    verb, _, rest = words.partition(" ")
    return f"{ {'are': 'is', 'have': 'has'}.get(verb, f'{verb}s') } {rest}"


def _stated(said: Sequence[Evidence], character: Character) -> str:
    """What the work states, as it states it; with its range in the unit of the plants where its own is another."""
    printed = "; ".join(dict.fromkeys(format_value(item.value, character) for item in said))
    units = {unit.name for item in said if isinstance(item.value, Range) and (unit := find_unit(item.value.unit))}
    if units <= {character.unit}:
        return printed
    rounded = measures(said, character).rounded_span
    several = (voice.extremes for voice in voices_as_they_lie(said, character))
    return ", ".join((printed, *(span_words(one and rounded(one), character) for one in several)))


def _the_rest(found: Observed, finding: Finding) -> str:
    """How far the works reach that are not contradicted, from the one that covers least to the one that covers most."""
    rest = [cover for cover in found.covers if not cover.contradicted]
    if not rest:
        return "No other work states it." if found.covers else "No work states it."
    works = f"{'other ' if len(rest) < len(found.covers) else ''}{len(rest)} works"
    byline = next(item.byline for item in finding.evidence if item.work == rest[0].work)
    if found.n == 1:
        return _of_one_plant(sum(cover.whole for cover in rest), len(rest), byline, works)
    covered = _share(sorted({cover.whole for cover in rest}), found.n)
    return f"{byline} covers {covered}." if len(rest) == 1 else f"The {works} cover {covered}."


def _of_one_plant(covering: int, several: int, byline: str, works: str) -> str:
    if several == 1:
        return f"{byline} {'covers it' if covering else 'does not cover it'}."
    if covering in (0, several):
        return f"The {works} cover it." if covering else f"None of the {works} covers it."
    return f"{covering} of the {works} {'covers' if covering == 1 else 'cover'} it."


def _share(covered: Sequence[int], n: int) -> str:
    """From the fewest to the most plants covered: in per cent, of few plants in their number."""
    least, most = covered[0], covered[-1]
    if least == n:
        return "all of them"
    if n < ENOUGH:
        return f"{least}{f' to {most}' if most > least else ''} of the {n}"
    ends = dict.fromkeys(_percent(end / n) for end in (least, most))
    return f"{' to '.join(ends)} % of them"


def naming(corpus: Corpus, found: Observed) -> Iterator[str]:
    """By whom the plants were named, and the working criteria that they may have been named by."""
    if not found.named_by:
        return
    yield f"Plants as named by {listed(found.named_by)}".removesuffix(".") + "."
    for criterion in corpus.criteria:
        if _turns_on(criterion, found) and found.taxon in taxa_of_criterion(corpus, criterion):
            yield f"Plants named by the working criterion “{criterion.title}” cannot test that criterion."


def _turns_on(criterion: schema.Criterion, found: Observed) -> bool:
    traits = [(criterion.decisive.character, criterion.decisive.stage)]
    traits += [(trait.character, trait.stage) for trait in criterion.supporting]
    return any(name == found.character and stage in ("", found.stage) for name, stage in traits)


def _percent(share: float) -> str:
    """In whole per cent; what is nearly none or nearly all is not told to be so.

    >>> _percent(0.413), _percent(0.0042), _percent(0.998), _percent(1)
    ('41', '<1', '>99', '100')
    """
    if 0 < share < 0.005:
        return "<1"
    return ">99" if 0.995 <= share < 1 else f"{share * 100:.0f}"
