"""Small groups for the tests of keys: what authors say of invented taxa, as findings."""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction

from auctorum.characters.bounds import bounds
from auctorum.characters.values import Range, Share, States
from auctorum.characters.vocabulary import Character, Kind, State, Vocabulary
from auctorum.circumscription.diagnosis import finding
from auctorum.circumscription.findings import Evidence, Finding, Span
from auctorum.circumscription.plants import Observation, Plant

SPUR = Character("spur length", "spur", "length", Kind.MEASURE, "mm", stages=("young", "mature"))
LEAF = Character("leaf length", "leaf", "length", Kind.MEASURE, "mm")
FLOWERS = Character("flower number", "flower", "count", Kind.COUNT)
HAIRS = Character(
    "leaf hairiness", "leaf", "surface", Kind.ORDERED, states=(State("glabrous"), State("pubescent"), State("woolly"))
)
SEED = Character(
    "seed surface", "seed", "surface", Kind.NOMINAL, states=(State("smooth"), State("netted"), State("warty"))
)
VOCABULARY = Vocabulary((SPUR, LEAF, FLOWERS, HAIRS, SEED))
Said = dict[str, object]  # `character` or `character@stage` -> (low, high), one figure, or a state or several


def evidence(character: Character, value: object, work: str = "w", year: int = 1900, weight: int = 1) -> Evidence:
    """One statement: a pair of bounds, (least, low, high, most), or states as a tuple."""
    plain = Evidence("s", work, year, f"{work} {year}", "", "", States(()), Fraction(weight))
    repeats = "" if weight else "first"
    if not character.kind.is_numeric:
        states = States(tuple(Share(state) for state in value))
        return Evidence("s", work, year, f"{work} {year}", "", "", states, Fraction(weight), repeats=repeats)
    least, low, high, most = value if len(value) == 4 else (None, *value, None)
    exact = Range(_exact(low), _exact(high), character.unit, _exact(least), _exact(most))
    told = bounds(exact, character.unit)
    extremes = Span(told.low if told.least is None else told.least, told.high if told.most is None else told.most)
    return Evidence(
        "s", work, year, plain.byline, "", "", exact, Fraction(weight),
        span=Span(told.low, told.high), extremes=extremes, slack_low=told.low_slack, slack_high=told.high_slack,
        repeats=repeats,
    )  # fmt: skip


def _exact(figure: object) -> Decimal | None:
    return None if figure is None else Decimal(str(figure))


def said(repeated: bool = False, **values: object) -> tuple[Finding, ...]:
    """Findings of one taxon: `spur_length__mature=(20, 30)`; `repeated` adds a work that repeats everything."""
    found = []
    for name, value in values.items():
        character, _, stage = name.partition("__")
        of = VOCABULARY[character.replace("_", " ")]
        works = [evidence(of, value)] + ([evidence(of, value, "later", 1950, 0)] if repeated else [])
        found.append(finding(of, stage, works, ()))
    return tuple(found)


def plant(taxon: str | None = None, **values: object) -> Plant:
    """A plant: `spur_length__mature=25`, `seed_surface="smooth"`."""
    seen = []
    for name, value in values.items():
        character, _, stage = name.partition("__")
        states = ((value, Fraction(1)),) if isinstance(value, str) else ()
        number = None if isinstance(value, str) else Fraction(value)
        seen.append(Observation(character.replace("_", " "), stage, number, states, Fraction(0), 1))
    return Plant("p", taxon, taxon, None, "A. Collector", tuple(seen))
