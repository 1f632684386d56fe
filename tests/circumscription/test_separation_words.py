"""What tells two taxa apart, in sentences as they are read by people."""

from __future__ import annotations

from fractions import Fraction

import pytest

from accounts import NAMES, OTHER, TAXON, Account, account, corpus_from
from auctorum.characters.vocabulary import Character, Kind, State
from auctorum.circumscription.cuts import Cut
from auctorum.circumscription.separation import Parting, separation
from auctorum.circumscription.separation_names import epithets, short_names
from auctorum.circumscription.separation_words import label, pair_words, percent, strength, threshold
from building import corpus_of

CHARACTERS = """\
characters:
- {name: spur length, structure: spur, property: length, kind: measure, unit: mm, stages: [young, mature]}
- {name: petal number, structure: petal, property: count, kind: count}
- {name: elevation, structure: habitat, property: elevation, kind: measure, unit: m}
- name: spur colour
  structure: spur
  property: colour
  kind: ordered
  stages: [young, mature]
  states: [{name: green}, {name: cream}, {name: ivory}, {name: buff}]
- name: seed surface
  structure: seed
  property: surface
  kind: nominal
  states: [{name: smooth}, {name: reticulate}, {name: winged}]
- {name: bracteoles, structure: bracteole, property: presence, kind: presence}
"""
COLOUR = Character(
    "spur colour", "spur", "colour", Kind.ORDERED, states=tuple(map(State, ("green", "cream", "ivory", "buff")))
)


def told(*works: tuple[int, str, str, str]) -> str:
    """The sentences on the two, from works of year, author and what they say of the one and of the other."""
    accounts = []
    for year, author, *said in works:
        says = {
            taxon: account(year, author, *filter(None, lines.split(" | "))).says[TAXON]
            for taxon, lines in zip(NAMES, said, strict=True)
        }
        accounts.append(Account(year, author, {taxon: lines for taxon, lines in says.items() if lines}))
    corpus = corpus_from(accounts, characters=CHARACTERS)
    return pair_words(corpus, separation(corpus, (TAXON, OTHER)), TAXON, OTHER)


@pytest.mark.parametrize(
    ("error", "word"),
    [
        (0, "separates"),
        (0.01, "separates"),
        (0.011, "nearly separates"),
        (0.05, "nearly separates"),
        (0.15, "helps"),
        (0.3, "hints"),
        (0.31, "does not tell them apart"),
    ],
)
def test_strength(error: float, word: str) -> None:
    assert strength(error) == word


@pytest.mark.parametrize(
    ("share", "words"), [(0, "none"), (0.0004, "under 1 %"), (0.01, "1 %"), (0.174, "17 %"), (1, "100 %")]
)
def test_percent(share: float, words: str) -> None:
    assert percent(share) == words


@pytest.mark.parametrize(
    ("character", "value", "words"),
    [
        (Character("a", "spur", "length", Kind.MEASURE, "mm"), Fraction(25), "from 25 mm on"),
        (Character("a", "spur", "length", Kind.RATIO), Fraction(8, 5), "from 1.6 on"),
        (Character("a", "petal", "count", Kind.COUNT), Fraction(4), "with 4 or more"),
        (COLOUR, Fraction(3, 2), "from ivory on"),
        (COLOUR, Fraction(5, 2), "if buff"),
    ],
)
def test_threshold(character: Character, value: Fraction, words: str) -> None:
    parting = Parting("a", "", TAXON, OTHER, 0.0, 0.0, Cut(value, 0, 0), TAXON)
    assert threshold(parting, character) == words


def test_label() -> None:
    bracteoles = Character("bracteoles", "bracteole", "presence", Kind.PRESENCE)
    ratio = Character("spur to petal", "spur", "ratio", Kind.RATIO)
    assert [label(bracteoles, ""), label(ratio, ""), label(COLOUR, "mature")] == [
        "presence of bracteoles",
        "spur to petal ratio",
        "spur colour at maturity",
    ]


# --- sentences; the figures are those of the densities, worked in test_separation.py


def test_the_best_with_its_losses_and_who_bears_it_out() -> None:
    """On paper: 10–20 and 20–30 lose half a shoulder each at 20, 1/22 of the plants."""
    assert told((1900, "Orrin", "spur length: 20–30 mm", "spur length: 10–20 mm")) == (
        "Spur length at maturity nearly separates them: from 20 mm on it is E. album; 5 % of E. rubrum reach that, and "
        "5 % of E. album stay below it (so the one work that gives both)."
    )


def test_a_gap_and_a_stage_that_misleads() -> None:
    said = told(
        (1900, "Orrin", "spur length [young]: 9–20 mm | spur length [mature]: 30–40 mm", "spur length: 10–20 mm"),
        (1910, "Vane", "spur length: 32–40 mm", "spur length: 12–20 mm"),
    )
    assert said == (
        "Spur length at maturity separates them: from 25 mm on it is E. album; what is stated of the two leaves 20–30 "
        "mm free between them (so the two works that give both). Mind the stage: a young spur of E. album (9–20 mm) "
        "measures as a mature one of E. rubrum."
    )


def test_counts_and_states_also_separate() -> None:
    said = told(
        (
            1900,
            "Orrin",
            "petal number: 5 | bracteoles: present | seed surface: smooth | elevation: 100–200 m",
            "petal number: 4 | bracteoles: absent | seed surface: winged | elevation: 600–900 m",
        )
    )
    assert said == (
        "Petal number separates them: with 5 or more it is E. album; what is stated of the two does not overlap (so "
        "the one work that gives both). Seed surface (smooth against winged) and presence of bracteoles (present "
        "against absent) also separate them. Where they grow: elevation (E. rubrum from 400 m on) separates them."
    )


@pytest.mark.parametrize(
    ("album", "free"),
    [("10–12", "leaves 6–9 free between"), ("7", "leaves 6 free between"), ("6", "does not overlap")],
)
def test_numbers_that_nobody_gives(album: str, free: str) -> None:
    assert free in told((1900, "Orrin", f"petal number: {album}", "petal number: 4–5"))


def test_a_state_that_nobody_gives_is_put_on_no_side() -> None:
    """Nobody says cream or ivory of either: neither `from cream on` nor `from ivory on` is anybody's word."""
    said = told((1900, "Orrin", "spur colour: green", "spur colour: buff"))
    assert said.startswith("Spur colour with no stage stated separates them: green in E. album, buff in E. rubrum (so")


def test_states_that_are_the_best() -> None:
    said = told((1900, "Orrin", "bracteoles: present", "bracteoles: absent; rarely present"))
    assert said == (
        "Presence of bracteoles nearly separates them: present in E. album, absent in E. rubrum, misleading for 2 % of "
        "the plants (by the one work that gives both, the two can be alike)."
    )


def test_nothing_tells_them_apart() -> None:
    said = told((1900, "Orrin", "seed surface: smooth or reticulate", "seed surface: reticulate"))
    assert said.startswith("No single character in the records tells them apart. The best is seed surface, no more")
    assert "misleading for 25 % of the plants" in said


def test_a_best_that_is_of_no_use_has_no_threshold() -> None:
    assert told((1900, "Orrin", "spur length: 10–20 mm", "spur length: 11–20 mm")).startswith(
        "No single character in the records tells them apart: by the best, spur length at maturity, 4"
    )


def test_only_where_they_grow_tells_them_apart() -> None:
    said = told(
        (
            1900,
            "Orrin",
            "seed surface: smooth or reticulate | elevation: 100–200 m",
            "seed surface: reticulate | elevation: 600–900 m",
        )
    )
    assert said.startswith("No single character of the plants themselves tells them apart. The best is seed surface, ")
    assert said.endswith("Where they grow: elevation (E. rubrum from 400 m on) separates them.")


def test_said_to_differ_but_shared() -> None:
    said = told(
        (1896, "Tolhurne", "spur colour [mature]: ivory", "spur colour [mature]: green to cream"),
        (
            1900,
            "Orrin",
            "spur colour [mature]: green to ivory | petal number: 4",
            "spur colour [mature]: green to ivory | petal number: 5",
        ),
        (1910, "Vane", "spur colour [mature]: green to cream", "spur colour [mature]: ivory"),
    )
    assert said.endswith(
        "Spur colour at maturity is said to differ (Tolhurne 1896; Vane 1910), but both run from green to ivory."
    )


def test_a_spectrum_that_some_works_alone_share() -> None:
    """Two of three say ivory of the one, so that its consensus is ivory; the third lets it share what the other has."""
    both = "spur colour [mature]: cream or ivory"
    said = told(
        (1896, "Tolhurne", "spur colour [mature]: ivory | petal number: 4", f"{both} | petal number: 5"),
        (1900, "Orrin", "spur colour [mature]: ivory", both),
        (1910, "Vane", both, both),
    )
    assert "(both can be cream to ivory) does not tell them apart." in said


def test_where_little_is_known_that_is_what_is_told() -> None:
    more = "bracteoles: present | seed surface: smooth | elevation: 100–200 m | spur colour: ivory"
    said = told((1900, "Orrin", f"petal number: 4 | {more}", "petal number: 5"))
    assert said.endswith("Of E. rubrum nothing is known but petal number.")


def test_what_nobody_knows() -> None:
    said = told((1900, "Orrin", "petal number: 4 | seed surface: smooth | bracteoles: present", "petal number: 5"))
    assert said.endswith("Nothing is known of the seed surface and presence of bracteoles of E. rubrum.")


def test_a_stage_that_one_lacks_is_not_unknown() -> None:
    said = told((1900, "Orrin", "spur length [young]: 9 mm | spur length: 30 mm", "spur length: 10 mm"))
    assert "Nothing is known" not in said


def test_two_of_whom_nothing_is_said_alike() -> None:
    said = told((1900, "Orrin", "petal number: 4", "seed surface: smooth"))
    assert said == (
        "No character is stated of both. Nothing is known of the petal number of E. rubrum. Nothing is known of the "
        "seed surface of E. album."
    )


# --- names


def treated(*taxa: str) -> str:
    lines = "".join(f"- {{taxon: {taxon}}}\n" for taxon in taxa)
    work = "work: {id: orrin-1900, type: book, author: [{family: Orrin, given: T.}], issued: 1900, title: T}\n"
    return f"{work}treatments:\n{lines}"


@pytest.mark.parametrize(
    ("taxa", "short", "last"),
    [
        pytest.param(
            ("Exemplum album var. longum", "Exemplum album subsp. rude"),
            ["var. longum", "subsp. rude"],
            ["longum", "rude"],
            id="within-a-species",
        ),
        pytest.param(
            ("Exemplum album", "Exemplum rubrum var. longum"),
            ["E. album", "E. rubrum var. longum"],
            ["album", "longum"],
            id="within-a-genus",
        ),
        pytest.param(
            ("Exemplum album", "Alterum album"),
            ["Exemplum album", "Alterum album"],
            ["Exemplum album", "Alterum album"],
            id="of-two-genera",
        ),
        pytest.param(("Exemplum", "Alterum"), ["Exemplum", "Alterum"], ["Exemplum", "Alterum"], id="genera"),
    ],
)
def test_short_names(taxa: tuple[str, ...], short: list[str], last: list[str]) -> None:
    corpus, _ = corpus_of(treated(*taxa))
    ids = list(corpus.taxa)
    assert list(short_names(corpus, ids).values()) == short
    assert list(epithets(corpus, ids).values()) == last
