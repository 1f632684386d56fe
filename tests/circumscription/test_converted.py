"""A diagnosis in a unit that somebody asks for."""

from __future__ import annotations

import re
from fractions import Fraction

import pytest

from auctorum.characters.units import UNITS, Dimension, UnfitUnit, UnknownUnit, convert
from auctorum.characters.values import Range
from auctorum.circumscription.converted import converted, diagnosis_in, left_out, vocabulary_in
from auctorum.circumscription.diagnosis import diagnosis
from auctorum.circumscription.findings import Finding, RangeAgreement
from auctorum.circumscription.summary import summary
from auctorum.corpus.model import Corpus
from building import corpus_of

LENGTHS = [unit.name for unit in UNITS if unit.dimension is Dimension.LENGTH]
VOCABULARY = """\
characters:
- {name: spur length, structure: spur, property: length, kind: measure, unit: mm}
- {name: petal number, structure: petal, property: count, kind: count}
- {name: elevation, structure: habitat, property: elevation, kind: measure, unit: m}
- {name: aspect, structure: habitat, property: aspect, kind: angle, unit: degree}
"""
WORKS = ((1881, "spur 22–34(–41) mm", ""), (1902, "spur 10–15 lines", "900–1500 m"), (1930, "spur 2–4 cm", "3000 ft"))


@pytest.fixture(scope="module")
def corpus() -> Corpus:
    files = []
    for year, spur, height in WORKS:
        act = (
            "acts: [{name: Exemplum, act: new taxon}, {name: Exemplum album, act: new taxon}]\n" if year == 1881 else ""
        )
        elevation = f'  - {{character: elevation, verbatim: "{height}"}}\n' if height else ""
        files.append(
            f'work: {{id: w-{year}, type: book, author: [{{family: A{year}}}], issued: "{year}", title: T}}\n{act}'
            f'treatments:\n- taxon: Exemplum album\n  traits:\n  - {{character: spur length, verbatim: "{spur}"}}\n'
            f"  - {{character: petal number, value: 5–8}}\n  - {{character: aspect, value: NW}}\n{elevation}"
        )
    found, problems = corpus_of(*files, characters=VOCABULARY)
    assert not problems, problems
    return found


def spur(corpus: Corpus, unit: str) -> Finding:
    (taxon,) = corpus.taxa
    return next(one for one in diagnosis_in(corpus, taxon, unit).findings if one.character == "spur length")


@pytest.mark.parametrize("unit", LENGTHS)
def test_only_figures_change(corpus: Corpus, unit: str) -> None:
    (taxon,) = corpus.taxa
    plain, found = diagnosis(corpus, taxon), diagnosis_in(corpus, taxon, unit)
    for one, other in zip(plain.findings, found.findings, strict=True):
        assert (one.character, one.verdict, one.silent) == (other.character, other.verdict, other.silent)
        assert [item.value for item in one.evidence] == [item.value for item in other.evidence]
        if one.character == "spur length":
            for item, same in zip(one.evidence, other.evidence, strict=True):
                assert item.span and item.span.low is not None and same.span
                assert same.span.low == convert(item.span.low, "mm", unit)
        elif one.character != "elevation":
            assert one == other


def test_figures_as_a_person_would_print_them(corpus: Corpus) -> None:
    finding = spur(corpus, "in")
    line = summary(finding, vocabulary_in(corpus.vocabulary, "in")["spur length"])
    assert (line.core, line.envelope) == ("0.9–1.3 in.", "0.8–1.6 in.")
    assert isinstance(finding.agreement, RangeAgreement) and finding.agreement.lower
    assert finding.agreement.lower.median == Fraction(5 * 2, 12)  # 10 lines, exactly


@pytest.mark.parametrize(("unit", "printed"), [("in", "in."), ("cm", "cm"), ("mm", "mm"), ("line", "lines")])
def test_the_merged_description_is_in_the_unit(corpus: Corpus, unit: str, printed: str) -> None:
    (taxon,) = corpus.taxa
    text = diagnosis_in(corpus, taxon, unit).text
    assert re.match(rf"Spur [()–\d.]+ {printed} long \[1–3\]", text), text
    assert re.search(r"elevations of .* m \[", text), text


def test_heights_above_the_sea_are_told_in_their_own_units(corpus: Corpus) -> None:
    assert left_out(corpus.vocabulary, "in") == ("elevation",)
    assert left_out(corpus.vocabulary, "ft") == ()
    assert vocabulary_in(corpus.vocabulary, "ft")["elevation"].unit == "ft"
    assert vocabulary_in(corpus.vocabulary, "in")["elevation"].unit == "m"


def test_what_stands_beside_the_words(corpus: Corpus) -> None:
    values = [item.value for item in spur(corpus, "in").evidence if isinstance(item.value, Range)]
    length, height = corpus.vocabulary["spur length"], corpus.vocabulary["elevation"]
    assert [converted(value, length, "in") for value in values] == ["0.9–1.3(–1.6) in.", "0.8–1.3 in.", "0.8–1.6 in."]
    assert [converted(value, length, "line") for value in values][1] == ""  # printed so
    assert converted(values[0], height, "in") == converted(values[0], corpus.vocabulary["petal number"], "in") == ""


def test_what_is_no_unit_of_length(corpus: Corpus) -> None:
    with pytest.raises(UnknownUnit, match="no unit `ell`"):
        vocabulary_in(corpus.vocabulary, "ell")
    with pytest.raises(UnfitUnit, match="the unit `percent` does not fit a length"):
        vocabulary_in(corpus.vocabulary, "%")
