"""Labels against their plants: the rule by hand, the names, the sellers, and the laws that hold for any label."""

from __future__ import annotations

from decimal import Decimal

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from statsmodels.stats.proportion import proportion_confint

from auctorum.corpus.model import Corpus
from auctorum.corpus.rows import linked_labels
from auctorum.determination.labels.labels import verdict_of, verified
from auctorum.determination.labels.model import How, LabelFinding, LabelReport, LabelVerdict, Strength, TraitTest
from auctorum.determination.labels.words import account, grounds, lead, seller_rows, trait_words
from auctorum.problems import Problem
from auctorum.records.label_tables import read_labels_text
from building import corpus_of
from measuring import knowledge_base, with_plants, work

ALBUM = "Exemplum album"
KB = knowledge_base(
    work("Aster", 1900, "spur length: spur 22–34 mm", "petal number: petals 5", "spur colour: mature spur ivory"),
    work("Birch", 1910, "spur length: spur 20–36 mm", "petal number: petals 4–6", "spur colour: mature spur ivory"),
    work("Cedar", 1920, "spur length: spur (18–)22–40 mm"),
    work("Dahl", 1930, "spur length: spur 8–12 mm", "spur colour: mature spur green", taxon="Exemplum nigrum"),
    work("Elm", 1940, "spur length: spur 7–12 mm", "petal number: petals 4–5", taxon="Exemplum nigrum"),
)
HEADER = "occurrenceID,verbatimIdentification,seller,lifeStage"


def report(corpus: Corpus, columns: str, *rows: str) -> LabelReport:
    """The findings on a table of labels in which nothing is wrong."""
    text = "\n".join((f"{HEADER},{columns}" if columns else HEADER, *rows)) + "\n"
    records, found = read_labels_text(text, "labels.csv", tuple(corpus.vocabulary))
    problems: list[Problem] = list(found)
    labels = linked_labels(records, corpus.vocabulary, problems)
    assert not problems, problems
    return verified(corpus, labels)


def one(columns: str, cells: str, *, label: str = ALBUM, stage: str = "mature", corpus: Corpus = KB) -> LabelFinding:
    (found,) = report(corpus, columns, f"L1,{label},Shop,{stage},{cells}").findings
    return found


# --- the rule


# Works give 22–34, 20–36 and (18–)22–40 mm, each to the millimetre; counted by hand.
@pytest.mark.parametrize(
    ("cell", "against", "strength", "gap", "verdict"),
    [
        pytest.param("30", 0, "inside", "", "consistent", id="inside-all"),
        pytest.param("21", 1, "inside", "1 mm", "consistent", id="outside-one-of-three"),
        pytest.param("19", 2, "weak", "1 mm", "consistent", id="outside-two-of-three"),
        pytest.param("17", 3, "strong", "1 mm", "contradicted", id="outside-all-digits-only-touch"),
        pytest.param("17.6", 2, "weak", "2.4 mm", "consistent", id="within-the-precision-of-18"),
        pytest.param("17 ± 1.5 mm", 2, "weak", "3 mm", "consistent", id="within-the-error-of-the-instrument"),
        pytest.param("41", 3, "strong", "1 mm", "contradicted", id="above-all"),
        pytest.param("36", 1, "inside", "2 mm", "consistent", id="at-an-end"),
    ],
)
def test_a_length_against_three_ranges(cell: str, against: int, strength: str, gap: str, verdict: str) -> None:
    found = one("spur length [mm]", cell)
    (trait,) = found.traits
    assert (trait.works, len(trait.against), str(trait.strength), trait.gap) == (3, against, strength, gap)
    assert str(found.verdict) == verdict


@pytest.mark.parametrize(
    ("column", "cell", "strength"),
    [
        pytest.param("spur colour", "ivory", "inside", id="allowed"),
        pytest.param("spur colour", "cream", "weak", id="the-next-state-is-read-otherwise-by-others"),
        pytest.param("spur colour", "green", "strong", id="two-steps-away"),
        pytest.param("petal number", "7", "strong", id="counts-have-no-slack"),
        pytest.param("petal number", "4", "inside", id="half-is-not-most"),
    ],
)
def test_other_kinds_against_two_works(column: str, cell: str, strength: str) -> None:
    (trait,) = one(column, cell).traits
    assert (trait.works, str(trait.strength)) == (2, strength)


@pytest.mark.parametrize(
    ("cell", "strength"),
    [
        pytest.param("13", "weak", id="one-range-misses-plants"),
        pytest.param("17", "weak", id="as-far-as-it-is-wide"),
        pytest.param("30", "strong", id="farther-than-it-is-wide"),
    ],
)
def test_one_work_alone(cell: str, strength: str) -> None:
    corpus = knowledge_base(work("Dahl", 1930, "spur length: spur 6–12 mm"))
    (trait,) = one("spur length [mm]", cell, corpus=corpus).traits
    assert (trait.works, str(trait.strength)) == (1, strength)


def test_a_single_figure_is_no_range() -> None:
    corpus = knowledge_base(work("Dahl", 1930, "spur length: spur 12 mm"))
    found = one("spur length [mm]", "30", corpus=corpus)
    assert found.verdict is LabelVerdict.NOT_TESTABLE
    assert found.why == "spur length: works give single figures of it, and no range"


def test_repetitions_have_no_vote() -> None:
    said = ("spur length: spur 22–34 mm", "petal number: petals 5")
    copy = work("Birch", 1910, *said).replace(
        "- taxon: Exemplum album\n", "- taxon: Exemplum album\n  follows: [aster-1900]\n"
    )
    own = work("Cedar", 1920, "spur length: spur 10–40 mm")
    (trait,) = one("spur length [mm]", "15", corpus=knowledge_base(work("Aster", 1900, *said), copy, own)).traits
    assert (trait.works, str(trait.strength)) == (2, "inside")
    apart = knowledge_base(work("Aster", 1900, *said), work("Birch", 1910, "spur length: spur 21–34 mm"), own)
    (trait,) = one("spur length [mm]", "15", corpus=apart).traits
    assert (trait.works, str(trait.strength)) == (3, "weak")


def trait(strength: Strength, why: str = "") -> TraitTest:
    return TraitTest("x", "", "1", 3, (), strength, why=why)


IN, WEAK, STRONG, LEFT = trait(Strength.NONE), trait(Strength.WEAK), trait(Strength.STRONG), trait(Strength.NONE, "no")


@pytest.mark.parametrize(
    ("traits", "verdict"),
    [
        pytest.param((), "not testable", id="nothing"),
        pytest.param((LEFT, LEFT), "not testable", id="nothing-tested"),
        pytest.param((IN, LEFT), "consistent", id="inside"),
        pytest.param((WEAK,), "consistent", id="one-weak"),
        pytest.param((WEAK, WEAK), "contradicted", id="two-weak"),
        pytest.param((WEAK, WEAK) + (IN,) * 6, "contradicted", id="two-weak-of-eight"),
        pytest.param((WEAK, WEAK) + (IN,) * 7, "consistent", id="two-weak-of-nine-are-soon-found"),
        pytest.param((STRONG,) + (IN,) * 9, "contradicted", id="one-strong"),
    ],
)
def test_the_verdict(traits: tuple[TraitTest, ...], verdict: str) -> None:
    assert str(verdict_of(traits)[0]) == verdict


# --- what is not tested


@pytest.mark.parametrize(
    ("columns", "cells", "stage", "why"),
    [
        pytest.param("petal number", "9", "young", "petal number: the plant is young, and works describe grown ones",
                     id="young-plants-still-grow"),
        pytest.param("spur length [mm]", "4", "young", "spur length: no work states it of a young plant",
                     id="stage-that-nobody-states"),
        pytest.param("spur colour", "green", "", "spur colour: the growth stage of the plant is not known, and it "
                     "changes with age", id="no-stage"),
        pytest.param("aspect", "N", "mature", "aspect: a plant for sale grows where it was put", id="habitat"),
        pytest.param("bracteoles", "present", "mature", "bracteoles: no work states it of this taxon", id="silence"),
        pytest.param("spur length [mm]", "", "mature", "nothing was noted of the plant", id="no-trait"),
    ],
)  # fmt: skip
def test_what_proves_nothing(columns: str, cells: str, stage: str, why: str) -> None:
    found = one(columns, cells, stage=stage)
    assert (found.verdict, found.why) == (LabelVerdict.NOT_TESTABLE, why)


def test_a_figure_without_a_stage_is_taken_as_that_of_a_mature_plant_and_that_is_said() -> None:
    found = one("spur length [mm]", "30", stage="")
    assert found.stage_taken and found.verdict is LabelVerdict.CONSISTENT
    assert "No growth stage was noted" in " ".join(account(KB, found))


@pytest.mark.parametrize(
    ("label", "why"),
    [
        pytest.param("Exemplum × album", "the label names a hybrid", id="hybrid-sign"),
        pytest.param("Exemplum album x nigrum", "the label names a hybrid", id="formula"),
        pytest.param("Exemplum album 'Snow Queen'", "the label names a cultivar", id="cultivar"),
        pytest.param("Exemplum album cv. Snow", "the label names a cultivar", id="cv"),
        pytest.param("Alienum rubrum", "Alienum is no genus of the knowledge base", id="another-genus"),
        pytest.param("White spur-flower", "White is no genus of the knowledge base", id="vernacular"),
        pytest.param("Exemplum", "the label names no species", id="genus-alone"),
        pytest.param("Exemplum nullum", "no work treats Exemplum nullum", id="never-accepted"),
        pytest.param("12345", "no name was found on it", id="no-name"),
    ],
)
def test_names_that_cannot_be_tested(label: str, why: str) -> None:
    found = one("spur length [mm]", "90", label=label)
    assert found.verdict is LabelVerdict.NOT_TESTABLE
    assert found.why.startswith(why), found.why


# --- names


@pytest.mark.parametrize(
    ("label", "how", "differences", "form"),
    [
        pytest.param("Exemplum album", How.RIGHT, (), (), id="right"),
        pytest.param("EXEMPLUM ALBUM", How.RIGHT, (), ("capitals",), id="capitals"),
        pytest.param("Exemplum albun", How.MISSPELT, ("n for m",), (), id="misspelt"),
        pytest.param("Exemplum albumm", How.MISSPELT, ("m too many",), (), id="doubled"),
        pytest.param("Exemplm album", How.MISSPELT, ("u left out",), (), id="left-out"),
    ],
)
def test_how_a_name_is_spelt(label: str, how: How, differences: tuple[str, ...], form: tuple[str, ...]) -> None:
    found = one("spur length [mm]", "30", label=label)
    assert (found.matched.how, found.matched.differences, found.matched.form) == (how, differences, form)
    assert found.name == ALBUM


SUNK = """\
work: {{id: {id}, type: book, author: [{{family: {author}}}], issued: "{year}", title: T}}
treatments:
- {{taxon: Exemplum album, synonyms: [Exemplum nigrum]}}
"""


def sinking(*authors: str) -> Corpus:
    sunk = (SUNK.format(id=f"{one.lower()}-19{n}0", author=one, year=f"19{n}0") for n, one in enumerate(authors, 5))
    return knowledge_base(work("Aster", 1900, "spur length: spur 22–34 mm"), *sunk)


def test_a_name_that_most_works_sink_stands_for_what_they_sink_it_into() -> None:
    found = one("spur length [mm]", "30", label="Exemplum nigrum", corpus=sinking("Fir", "Gorse"))
    assert (found.name, found.verdict) == (ALBUM, LabelVerdict.CONSISTENT)
    said = "Exemplum nigrum is a synonym of Exemplum album (sec. Gorse 1960 and Fir 1950; so 2 of 3 works)."
    assert found.meaning.standing == said


def test_a_name_that_as_many_accept_stands_for_itself() -> None:
    found = one("spur length [mm]", "30", label="Exemplum nigrum", corpus=sinking("Fir"))
    assert (found.name, found.meaning.standing) == ("Exemplum nigrum", "")


# --- what it could be, words, sellers


def test_what_a_contradicted_plant_could_be() -> None:
    found = one("spur length [mm],spur colour", "10,green")
    assert found.instead is not None and found.instead.taxon == "exemplum-nigrum" and not found.instead.same
    assert found.instead.probability > 0.9
    (spur, _) = found.traits
    assert trait_words(spur, 1) == (
        "Strong: spur length 10 mm is 8 mm below the lowest that any of 3 works gives; Cedar 1920 gives (18–)22–40 mm. "
        "In their words: Cedar 1920 “spur (18–)22–40 mm”; and 2 more."
    )


def test_nothing_is_told_of_a_plant_that_is_what_its_label_says() -> None:
    assert one("spur length [mm],spur colour", "30,ivory").instead is None


def test_words_on_states_and_on_most_works() -> None:
    (colour,) = one("spur colour", "green").traits
    assert trait_words(colour, 0).startswith(
        "Strong: spur colour green is allowed by none of 2 works, the nearest is 2 steps of the spectrum away; "
    )
    (spur,) = one("spur length [mm]", "19").traits
    assert trait_words(spur, 0).startswith(
        "Weak: spur length 19 mm is outside what 2 of 3 works give, 1 mm below the nearest of them; Birch 1910 gives "
    )


def test_sellers_are_counted_and_an_interval_needs_five_plants() -> None:
    rows = [f"L{n},Exemplum album,Shop,mature,{mm}" for n, mm in enumerate((30, 31, 32, 17, ""))]
    rows += ["M1,Exemplum albun,Fair,mature,30", "M2,Alienum rubrum,Fair,mature,30", "N1,Exemplum album,,mature,30"]
    found = report(KB, "spur length [mm]", *rows)
    assert [row[:9] for row in seller_rows(found)] == [
        ("Fair", "2", "0", "1", "0", "1", "1", "1", "0 of 1"),
        ("Shop", "5", "5", "0", "0", "0", "3", "1", "1 of 4"),
        ("no seller noted", "1", "1", "0", "0", "0", "1", "0", "0 of 1"),
        ("all", "8", "6", "1", "0", "1", "5", "2", "1 of 6 (3–56 %)"),
    ]
    assert lead(found) == (
        "8 labels of 2 sellers. Names as printed: 6 right, 1 misspelt, 1 not found. Plants: 5 consistent with the "
        "label, 1 contradicted by their own traits, 2 not testable."
    )


def test_the_interval_is_that_of_statsmodels() -> None:
    """Against statsmodels' proportion_confint(method="wilson")."""
    rows = [f"L{n},Exemplum album,Shop,mature,{mm}" for n, mm in enumerate((30, 31, 32, 17, 16, 29, 28))]
    interval = report(KB, "spur length [mm]", *rows).whole.interval
    assert interval == pytest.approx(proportion_confint(2, 7, method="wilson"))


def test_two_labels_of_one_id_are_two_plants() -> None:
    found = report(KB, "spur length [mm]", "L1,Exemplum album,,mature,30", "L1,Exemplum album,,mature,10")
    assert [str(each.verdict) for each in found.findings] == ["consistent", "contradicted"]


def test_the_rule_is_tried_on_named_plants() -> None:
    """Three plants are named and tested, one of them 10 mm long under E. album; one is named and has no trait."""
    plants = "occurrenceID,scientificName,lifeStage,spur length [mm]\n" + "".join(
        f"P{n},{name},mature,{mm}\n" for n, (name, mm) in enumerate(
            [(ALBUM, "30"), (ALBUM, "10"), ("Exemplum nigrum", "10"), (ALBUM, ""), ("", "30")]
        )
    )  # fmt: skip
    found = report(with_plants(KB, plants), "", "L1,Exemplum album,,")
    assert (found.trial.tested, found.trial.contradicted) == (3, 1)
    assert "contradicts 1 of 3 named plants" in " ".join(grounds(found))


# --- laws

NUMBERS = st.integers(min_value=0, max_value=400)


@settings(deadline=None, max_examples=60)
@given(st.lists(st.tuples(NUMBERS, NUMBERS), min_size=1, max_size=5), st.integers(0, 400), st.integers(5, 40))
def test_inside_every_range_is_never_contradicted_and_far_outside_always(
    ranges: list[tuple[int, int]], at: int, away: int
) -> None:
    """Ranges about one figure are never against it; a figure beyond twice their hull is against two works or more."""
    spans = [(min(at, low), max(at, high)) for low, high in ranges]
    assume(all(low < high for low, high in spans))
    works = [work(f"W{n}", 1900 + n, f"spur length: spur {low}–{high} mm") for n, (low, high) in enumerate(spans)]
    corpus = knowledge_base(*works)
    assert one("spur length [mm]", str(at), corpus=corpus).verdict is LabelVerdict.CONSISTENT
    far = 2 * max(high for _, high in spans) + away
    assert one("spur length [mm]", str(far), corpus=corpus).verdict is LabelVerdict.CONTRADICTED


@settings(deadline=None, max_examples=60)
@given(st.integers(min_value=100, max_value=2000))
def test_inches_and_millimetres_are_judged_alike(thousandths: int) -> None:
    inches = Decimal(thousandths) / 1000
    mm = inches * Decimal("25.4")
    # At the very edge of a printed figure (half a millimetre beyond a bound) the digits of the measurement decide.
    assume(all(abs(abs(mm - end) - Decimal("0.5")) > Decimal("0.05") for end in (18, 20, 22, 34, 36, 40)))
    by_inch, by_mm = one("spur length [in]", f"{inches:.3f}"), one("spur length [mm]", f"{mm:.4f}")
    assert by_inch.verdict == by_mm.verdict
    assert [each.strength for each in by_inch.traits] == [each.strength for each in by_mm.traits]
    assert [[a.gap for a in each.against] for each in by_inch.traits] == [
        [a.gap for a in each.against] for each in by_mm.traits
    ]


@settings(deadline=None, max_examples=100)
@given(st.text(max_size=60))
def test_any_label_has_an_answer(label: str) -> None:
    from auctorum.corpus.model import Label
    from auctorum.records import schema

    record = schema.Label(occurrenceID="L1", verbatimIdentification=label.strip() or "?")
    (found,) = verified(KB, (Label(record, ()),)).findings
    assert found.verdict is LabelVerdict.NOT_TESTABLE and found.why


def test_a_knowledge_base_that_describes_nothing() -> None:
    corpus, _ = corpus_of(work("First", 1850, acts="acts:\n- {name: Exemplum album, act: new taxon}\n"))
    found = one("spur length [mm]", "30", corpus=corpus)
    assert (found.why, found.instead) == ("spur length: no work states it of this taxon", None)
