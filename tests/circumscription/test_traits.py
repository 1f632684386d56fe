"""Traits as a field guide prints them, by hand: consensus, range of opinions, what each is worth against a sister."""

from __future__ import annotations

import re
from dataclasses import replace

import pytest

from accounts import OTHER, TAXON, Account, account, corpus_from
from auctorum.circumscription.converted import vocabulary_in
from auctorum.circumscription.findings import Count
from auctorum.circumscription.observed import observed
from auctorum.circumscription.plants import plants
from auctorum.circumscription.separation import knowledge_of
from auctorum.circumscription.traits import Trait, descriptions, observed_words, standing, traits
from auctorum.circumscription.traits_apart import against, contrasts, nearest_sisters, worth
from auctorum.corpus.model import Corpus, Measurement, Specimen
from auctorum.records import schema


def told(*works: tuple[str, ...], unit: str | None = None) -> dict[tuple[str, str], Trait]:
    """The traits of one taxon by character and stage, one account a work, in works twenty years apart."""
    corpus = of_works(*works)
    if unit:
        corpus = replace(corpus, vocabulary=vocabulary_in(corpus.vocabulary, unit))
    return {one.key: one for one in traits(corpus, TAXON, unit=unit).traits}


def of_works(*works: tuple[str, ...]) -> Corpus:
    families = ("Orrin", "Vane", "Tolhurne", "Maddrick", "Brandow")
    return corpus_from(account(1900 + 20 * at, families[at], *said) for at, said in enumerate(works))


def two_taxa(*pairs: tuple[str, str, str]) -> Corpus:
    """Two works that give each character for both taxa: character, what they say of album, and of rubrum."""
    says = {
        TAXON: tuple((character, one, "") for character, one, _ in pairs if one),
        OTHER: tuple((character, other, "") for character, _, other in pairs if other),
    }
    return corpus_from([Account(1900, "Orrin", says), Account(1950, "Vane", says)])


@pytest.mark.parametrize(
    ("character", "said", "consensus", "opinions"),
    [
        pytest.param("stem height", ["22–34 mm"] * 2, "22–34 mm", "22–34 mm", id="alike"),
        pytest.param(
            "stem height", ["22–34 mm", "22–36 mm", "22–34(–41) mm"], "22–34(–41) mm", "22–41 mm", id="extremes"
        ),
        pytest.param("stem height", ["22–34 mm", "50–60 mm"], "22–34 mm or 50–60 mm", "22–60 mm", id="two-sides"),
        pytest.param(
            "stem height", ["22–34 mm", "23–35 mm", "22–34 mm", "50–60 mm"],
            "22–34(–35) mm, but 50–60 mm", "22–60 mm", id="one-apart",
        ),
        pytest.param("stem height", ["up to 5 mm", "up to 7 mm"], "up to 7 mm", "up to 7 mm", id="open-below"),
        pytest.param("stem height", ["2–3 cm", "2–3 cm"], "2–3 cm", "2–3 cm", id="unit-of-the-authors"),
        pytest.param("petal number", ["5", "5–8"], "5–8", "5–8", id="half-of-two"),
        pytest.param("petal number", ["5", "5", "5–8"], "5, said to be as many as 8", "5–8", id="far-out"),
        pytest.param(
            "spur colour", ["ivory", "cream or ivory", "ivory or buff"],
            "ivory, also cream, also buff", "cream to buff", id="states",
        ),
        pytest.param("aspect", ["SE", "SE–S"], "south-east to south", "south-east to south", id="aspect"),
        pytest.param("bracteoles", ["absent", "absent"], "absent", "absent", id="presence"),
    ],
)  # fmt: skip
def test_one_trait(character: str, said: list[str], consensus: str, opinions: str) -> None:
    trait = told(*((f"{character}: {one}",) for one in said))[character, ""]
    assert (trait.consensus, trait.opinions) == (consensus, opinions)


def test_nobody_says_anything() -> None:
    trait = told(("stem height: 22–34 mm",))["bracteoles", ""]
    assert (trait.consensus, trait.opinions, standing(trait.finding.count)) == ("–", "–", "1 silent")


def test_stages_are_traits_of_their_own() -> None:
    found = told(("spur length [young]: 4–6 mm", "spur length [mature]: 22–34 mm"))
    assert [found["spur length", stage].consensus for stage in ("young", "mature")] == ["4–6 mm", "22–34 mm"]


@pytest.mark.parametrize(
    ("count", "said"),
    [
        (Count(works=12, authors=10, independent=9, repeated=2, silent=1), "9 independent, 2 repeat, 1 silent"),
        (Count(2, 2, 1, 1, 0), "1 independent, 1 repeats"),
        (Count(0, 0, 0, 0, 3), "3 silent"),
        (Count(0, 0, 0, 0, 0), "–"),
    ],
)
def test_who_stands_behind(count: Count, said: str) -> None:
    assert standing(count) == said


@pytest.mark.parametrize("unit", [None, "in", "cm"])
def test_the_table_prints_what_the_text_prints(unit: str | None) -> None:
    """Without the word of its property, each consensus stands in the merged text as it is."""
    corpus = of_works(
        ("stem height: 15–34 cm", "leaf length: 30–58 mm", "spur colour: ivory"),
        ("stem height: 15–40 cm", "leaf length: (25–)30–58 mm", "spur colour: green"),
    )
    if unit:
        corpus = replace(corpus, vocabulary=vocabulary_in(corpus.vocabulary, unit))
    found = traits(corpus, TAXON, unit=unit)
    spoken = [
        one for one in found.traits if one.finding.agreement is not None and one.finding.character != "spur colour"
    ]
    assert len(spoken) == 2
    for trait in spoken:
        assert f"{trait.consensus} long" in found.diagnosis.text
        assert unit is None or trait.consensus.rstrip(".").endswith(unit)


def test_chosen_characters_have_a_text_and_sources_of_their_own() -> None:
    corpus = of_works(("stem height: 15–34 cm",), ("leaf length: 30–58 mm",))
    found = traits(corpus, TAXON, characters=["leaf length"])
    assert [one.key for one in found.traits] == [("leaf length", "")]
    assert found.diagnosis.text == "Leaf 30–58 mm long [1]."
    assert found.diagnosis.sources == ("vane-1920",)


def test_several_descriptions_share_one_list_of_sources() -> None:
    only = Account(1900, "Orrin", {TAXON: (("stem height", "15–34 mm", ""),)})
    other = Account(1920, "Vane", {OTHER: (("stem height", "50–60 mm", ""),)})
    corpus = corpus_from([only, other])
    texts, sources = descriptions(corpus, [traits(corpus, taxon) for taxon in (OTHER, TAXON)])
    assert texts == ("Stem 50–60 mm long [2].", "Stem 15–34 mm long [1].")
    assert sources == ("orrin-1900", "vane-1920")


# --- against others


@pytest.mark.parametrize(
    ("character", "album", "rubrum", "of_album", "of_rubrum"),
    [
        # Far apart: the words are complements about one figure.
        pytest.param("stem height", "22–34 mm", "8–14 mm", "separates: from N mm on", "separates: below N mm", id="mm"),
        pytest.param("stem height", "22–34 cm", "8–14 cm", "separates: from N cm on", "separates: below N cm", id="cm"),
        pytest.param(
            "petal number", "8–10", "3–5", "separates: with N or more", "separates: with fewer than N", id="n"
        ),
        pytest.param("spur colour", "cream", "green", "separates: from cream on", "separates: if green", id="spectrum"),
        pytest.param("seed surface", "smooth", "winged", "separates", "separates", id="no-order"),
        pytest.param("stem height", "22–34 mm", "22–34 mm", "–", "–", id="alike"),
        pytest.param("stem height", "22–34 mm", "", "–", "–", id="nobody-states-it-for-one"),
    ],
)
def test_worth(character: str, album: str, rubrum: str, of_album: str, of_rubrum: str) -> None:
    corpus = two_taxa((character, album, rubrum), ("leaf length", "9 mm", "9 mm"))
    for taxon, other, words in ((TAXON, OTHER, of_album), (OTHER, TAXON, of_rubrum)):
        (partings,) = against(corpus, taxon, knowledge_of(corpus, (taxon, other)))
        trait = next(one for one in traits(corpus, taxon).traits if one.key == (character, ""))
        said = worth(partings.get(trait.key), corpus.vocabulary[character], taxon, trait.printed)
        assert re.sub(r"\d+", "N", said) == words


def test_the_figure_lies_between_the_two() -> None:
    corpus = two_taxa(("stem height", "22–34 mm", "8–14 mm"))
    (partings,) = against(corpus, TAXON, knowledge_of(corpus, (TAXON, OTHER)))
    cut = partings["stem height", ""].cut
    assert cut is not None and 14 < cut.value < 22


def test_against_nobody() -> None:
    corpus = two_taxa(("stem height", "22–34 mm", "8–14 mm"))
    assert against(corpus, TAXON, knowledge_of(corpus, (TAXON,))) == ()
    assert nearest_sisters(corpus, TAXON) == ()  # no work places either in anything


def test_what_tells_taxa_apart_stands_first() -> None:
    corpus = two_taxa(
        ("stem height", "22–34 mm", "22–34 mm"), ("leaf length", "30–40 mm", "10–14 mm"), ("petal number", "5", "")
    )
    found = contrasts(corpus, [traits(corpus, one) for one in (TAXON, OTHER)], knowledge_of(corpus, (TAXON, OTHER)))
    assert [one.character for one in found] == ["leaf length", "stem height", "petal number"]
    assert [[trait and trait.consensus for trait in one.traits] for one in found] == [
        ["30–40 mm", "10–14 mm"],
        ["22–34 mm", "22–34 mm"],
        ["5", None],
    ]
    assert found[0].best is not None and (found[0].best.a, found[0].best.b) == (TAXON, OTHER)
    assert found[2].best is None


# --- own plants


def test_own_plants_are_printed_in_the_unit_of_the_authors() -> None:
    from decimal import Decimal

    corpus = of_works(("stem height: 15–34 cm",))
    cells = [Measurement("stem height", "mm", Decimal(value), "") for value in (180, 250)]
    rows = tuple(
        Specimen(schema.Specimen(occurrenceID=f"p{number}", scientificName="Exemplum album"), TAXON, None, (cell,))
        for number, cell in enumerate(cells)
    )
    corpus = replace(corpus, specimens=rows)
    trait = next(one for one in traits(corpus, TAXON).traits if one.key == ("stem height", ""))
    seen = observed(corpus, trait.finding, TAXON, plants(corpus))
    assert seen is not None
    assert (seen.text, observed_words(trait.printed, corpus, seen)) == ("180–250 mm", "18–25 cm")
