"""Laws of independence: a repetition adds nothing, order is irrelevant, and every repetition has a source that speaks.

Literatures are drawn at random: up to six works on one or two taxa, with ranges in several units, counts, states and
directions, that follow and cite one another.
"""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from hypothesis import given, settings
from hypothesis import strategies as st

from accounts import NAMES, OTHER, TAXON, Account, Stated, account, corpus_from
from auctorum.characters.units import convert
from auctorum.circumscription.cuts import best_cut
from auctorum.circumscription.density import densities
from auctorum.circumscription.diagnosis import diagnosis
from auctorum.circumscription.findings import Diagnosis, RangeAgreement, Span, StateAgreement
from auctorum.corpus.model import Corpus

AUTHORS = ("Orrin", "Vane", "Pell", "Quist", "Thorne", "Ulm")
POINTS = ("N", "NE", "E", "SE", "S", "SW", "W", "NW")
# Units of print, and the steps to which a work may round in them; no step is below the precision of a millimetre.
UNITS = {"mm": ("1",), "cm": ("0.1", "1"), "dm": ("0.1",), "in": ("0.1", "1")}

typical = st.lists(st.integers(2, 60), min_size=4, max_size=4).map(sorted)


@st.composite
def lengths(draw: st.DrawFn) -> str:
    """A length to the millimetre, with or without extremes and a lower bound."""
    least, low, high, most = draw(typical)
    shape = draw(st.sampled_from(("plain", "plain", "extremes", "open", "one")))
    if shape == "open":
        return f"up to {high} mm"
    if shape == "one" or low == high:
        return f"{low} mm"
    before = f"({least}–)" if shape == "extremes" and least < low else ""
    after = f"(–{most})" if shape == "extremes" and most > high else ""
    return f"{before}{low}–{high}{after} mm"


counts = st.tuples(st.integers(3, 8), st.integers(0, 3)).map(
    lambda two: f"{two[0]}–{sum(two)}" if two[1] else f"{two[0]}"
)
aspects = st.tuples(st.integers(0, 7), st.integers(0, 3)).map(
    lambda two: POINTS[two[0]] if not two[1] else f"{POINTS[two[0]]} to {POINTS[sum(two) % 8]}"
)


def states(*names: str) -> st.SearchStrategy[str]:
    return st.lists(st.sampled_from(names), min_size=1, max_size=2, unique=True).map(" or ".join)


VALUES = {
    "spur length": lengths(),
    "stem height": lengths(),
    "leaf length": lengths(),
    "petal number": counts,
    "aspect": aspects,
    "spur colour": states("green", "cream", "ivory", "buff"),
    "seed surface": states("smooth", "reticulate", "winged"),
    "bracteoles": st.sampled_from(("present", "absent")),
}


@st.composite
def said(draw: st.DrawFn) -> tuple[Stated, ...]:
    found = []
    for character, values in VALUES.items():
        if draw(st.integers(0, 2)):
            stage = draw(st.sampled_from(("young", "mature"))) if character == "spur length" else ""
            found.append((character, draw(values), stage))
    return tuple(found)


@st.composite
def literatures(draw: st.DrawFn, most: int = 6) -> list[Account]:
    works: list[Account] = []
    for number in range(draw(st.integers(1, most))):
        earlier = [one.id for one in works]
        some = st.lists(st.sampled_from(earlier), max_size=2, unique=True) if earlier else st.just([])
        copied = draw(st.sampled_from(works)) if works and draw(st.booleans()) else None
        says = {TAXON: copied.says[TAXON] if copied else draw(said())}
        if draw(st.booleans()):
            says[OTHER] = draw(said())
        basis = draw(st.sampled_from(("unstated", "compiled", "own material")))
        year, author = 1900 + 10 * number, draw(st.sampled_from(AUTHORS))
        works.append(Account(year, author, says, tuple(draw(some)), tuple(draw(some)), basis))
    return works


@st.composite
def repetitions(draw: st.DrawFn, works: list[Account]) -> Account:
    """A later work that follows one of them and repeats all that it says, in units and to steps of its own."""
    original = draw(st.sampled_from(works))
    year = draw(st.sampled_from([one.year + 5 for one in works if one.year >= original.year]))
    unit = draw(st.sampled_from(sorted(UNITS)))
    step = draw(st.sampled_from(UNITS[unit]))
    says = {
        taxon: tuple((character, printed(value, unit, step), stage) for character, value, stage in stated)
        for taxon, stated in original.says.items()
    }
    return Account(year, "Zuck", says, follows=(original.id,))


def printed(value: str, unit: str, step: str) -> str:
    """A length in millimetres as one prints it in another unit, rounded to a step; anything else as it is."""
    if not value.endswith(" mm"):
        return value
    text, figure = "", ""
    for sign in f"{value.removesuffix(' mm')} ":
        if sign.isdigit():
            figure += sign
            continue
        text += (rounded(Fraction(figure), unit, step) if figure else "") + sign
        figure = ""
    return f"{once(text.strip())} {unit}"


def rounded(millimetres: Fraction, unit: str, step: str) -> str:
    decimals = len(step.partition(".")[2])
    return f"{float(round(convert(millimetres, 'mm', unit) / Fraction(step)) * Fraction(step)):.{decimals}f}"


def once(text: str) -> str:
    """`2–2(–3)` as `2(–3)`: what rounding made equal is printed once."""
    before, _, rest = text.rpartition("–)")
    core, bracket, after = rest.partition("(–")
    low, _, high = core.partition("–")
    before = f"{before}–)" if before and before.removeprefix("(") != low else ""
    after = f"{bracket}{after}" if after.removesuffix(")") != (high or low) else ""
    return before + (low if high in ("", low) else core) + after


def diagnoses(corpus: Corpus) -> dict[str, Diagnosis]:
    return {taxon: diagnosis(corpus, taxon) for taxon in NAMES if taxon in corpus.taxa}


def outcome(found: Diagnosis) -> dict[tuple[str, str], object]:
    """All that a repetition must leave as it is, by character and stage."""
    return {(one.character, one.stage): (one.agreement, one.verdict) for one in found.findings}


def thresholds(corpus: Corpus, found: dict[str, Diagnosis]) -> dict[tuple[str, str], object]:
    """The densities of the taxa, and the threshold between them, by character and stage."""
    each = [
        {(one.character, one.stage): one for one in several.findings if one.agreement is not None}
        for several in found.values()
    ]
    cuts: dict[tuple[str, str], object] = {}
    for told in sorted(set.intersection(*map(set, each))):
        character = corpus.vocabulary[told[0]]
        if character.kind.is_numeric:
            several = densities([findings[told] for findings in each], character)
            cuts[told] = (several, best_cut(several[0], several[-1]))
    return cuts


@st.composite
def with_repetitions(draw: st.DrawFn) -> tuple[list[Account], list[Account]]:
    """Works, and one to three later works that each repeat one of them."""
    works = draw(literatures(most=5))
    several = draw(st.lists(repetitions(works), min_size=1, max_size=3))
    return works, [replace(one, suffix=f"-{number}") for number, one in enumerate(several)]


def nothing_changes(works: list[Account], repeating: list[Account]) -> None:
    before, after = corpus_from(works), corpus_from([*works, *repeating])
    old, new = diagnoses(before), diagnoses(after)
    for one in repeating:
        said = [item for found in new.values() for finding in found.findings for item in finding.evidence]
        assert {item.repeats for item in said if item.work == one.id} <= {one.follows[0]}
    for taxon in old:
        assert outcome(new[taxon]) == outcome(old[taxon])
    assert thresholds(after, new) == thresholds(before, old)


@settings(deadline=None, max_examples=80)
@given(with_repetitions())
def test_a_repetition_changes_nothing(drawn: tuple[list[Account], list[Account]]) -> None:
    nothing_changes(*drawn)


@settings(deadline=None, max_examples=60)
@given(st.lists(aspects, min_size=2, max_size=4), st.data())
def test_a_repetition_turns_no_aspect(said: list[str], data: st.DataObject) -> None:
    """Directions have no first and no last, so that they must be turned together: by those that count alone."""
    works = [account(1900 + 10 * place, AUTHORS[place], f"aspect: {value}") for place, value in enumerate(said)]
    original = data.draw(st.sampled_from(works))
    repeating = [Account(1990 + number, "Zuck", original.says, follows=(original.id,)) for number in range(4)]
    nothing_changes(works, repeating)


def test_four_repetitions_of_one_aspect_turn_no_aspect() -> None:
    """Found by the law above: were the repetitions heard, `N to NE` would come to lie a turn below the south-west."""
    works = [
        account(1900 + 10 * place, AUTHORS[place], f"aspect: {value}")
        for place, value in enumerate(("SE", "SW", "N", "N to SE"))
    ]
    nothing_changes(works, [Account(1990 + n, "Zuck", works[1].says, follows=(works[1].id,)) for n in range(4)])


@settings(deadline=None, max_examples=40)
@given(literatures(), st.randoms(use_true_random=False))
def test_the_order_of_files_and_of_statements_is_irrelevant(works: list[Account], random) -> None:
    shuffled = [
        replace(one, says={taxon: tuple(random.sample(stated, len(stated))) for taxon, stated in one.says.items()})
        for one in random.sample(works, len(works))
    ]
    before, after = corpus_from(works), corpus_from(shuffled)
    for taxon in before.taxa:
        one, other = diagnosis(before, taxon), diagnosis(after, taxon)
        assert outcome(one) == outcome(other)
        assert repeated(one) == repeated(other)


def repeated(found: Diagnosis) -> set[tuple[str, str, str, str]]:
    return {(item.work, one.character, one.stage, item.repeats) for one in found.findings for item in one.evidence}


@settings(deadline=None, max_examples=60)
@given(literatures())
def test_core_in_majority_in_envelope(works: list[Account]) -> None:
    """Where there is a core it lies in one stretch of the majority, and every stretch lies in the envelope.

    The core holds for all weight, so for half; an open end counts as without end, and the envelope takes extremes in.
    """
    corpus = corpus_from(works)
    ranges = [
        agreed
        for taxon in corpus.taxa
        for one in diagnosis(corpus, taxon).findings
        for agreed in [one.agreement.positions if isinstance(one.agreement, StateAgreement) else one.agreement]
        if isinstance(agreed, RangeAgreement)
    ]
    for agreed in ranges:
        if agreed.core is not None:
            assert any(holds(one, agreed.core) for one in agreed.majority)
        for one in agreed.majority:
            assert one.low is None or agreed.envelope.low is None or one.low >= agreed.envelope.low
            assert one.high is None or agreed.envelope.high is None or one.high <= agreed.envelope.high


def holds(outer: Span, inner: Span) -> bool:
    low = outer.low is None or (inner.low is not None and outer.low <= inner.low)
    return low and (outer.high is None or (inner.high is not None and inner.high <= outer.high))


@settings(deadline=None, max_examples=80)
@given(literatures(), st.sets(st.integers(0, 5)))
def test_what_weighs_nothing_has_a_source_among_the_works_asked_that_weighs(works: list[Account], left_out) -> None:
    """Back along the sources one always comes to a work of full weight, and each step leads to an earlier one."""
    corpus = corpus_from(works)
    asked = [one.id for number, one in enumerate(works) if number not in left_out]
    for taxon in corpus.taxa:
        for finding in diagnosis(corpus, taxon, works=asked).findings:
            of_work = {item.work: item for item in finding.evidence}
            for item in finding.evidence:
                assert (item.weight == 0) == bool(item.repeats)
                here = item
                while here.repeats:
                    assert here.repeats in asked
                    assert of_work[here.repeats].year < here.year
                    here = of_work[here.repeats]
                assert here.weight == 1


@settings(deadline=None, max_examples=40)
@given(with_repetitions())
def test_with_the_weight_of_a_statement_a_repetition_moves_no_bound_and_no_core(drawn) -> None:
    """`repetition-weight: 1`: coverage counts votes then, yet the same ranges meet, and no trend hears of it.

    Rounded figures may reach to others within their precision, so only what is repeated in print is compared.
    """
    works, repeating = drawn
    says = {one.id: one.says for one in works}
    exact = [replace(one, says=says[one.follows[0]]) for one in repeating]
    weighed = "title: Test\nrepetition-weight: 1\n"
    before, after = corpus_from(works, settings=weighed), corpus_from([*works, *exact], settings=weighed)
    for taxon, found in diagnoses(before).items():
        for one, other in zip(found.findings, diagnosis(after, taxon).findings, strict=True):
            if isinstance(one.agreement, RangeAgreement) and one.character != "aspect":
                old, new = one.agreement, other.agreement
                assert (new.core, new.envelope, new.lower, new.upper) == (old.core, old.envelope, old.lower, old.upper)
