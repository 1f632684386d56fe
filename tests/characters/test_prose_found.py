"""Faults once found by reading invented descriptions line by line.

What a botanist would say of each phrase is common practice, no source; the phrases are invented.
"""

from __future__ import annotations

from pathlib import Path

import pytest

from auctorum.characters.prose.draft import transcribe
from auctorum.characters.vocabulary import Character, Kind, Vocabulary
from auctorum.cli.transcribe_run import vocabulary_in

SURE = 0.9  # from here on a reading goes into a file unseen


@pytest.fixture(scope="module")
def demo() -> Vocabulary:
    return vocabulary_in(Path(__file__).parents[2] / "kb")


def sure(text: str, vocabulary: Vocabulary) -> list[str]:
    """What is claimed as sure, each as `character: value`, with its stage where it has one."""
    return [
        f"{draft.choice.character.name}: {draft.choice.value}"
        + "".join(f" [{reading.stage}]" for reading in draft.choice.readings if reading.stage)
        for draft in transcribe(text, vocabulary).drafts
        if draft.confidence >= SURE
    ]


def organs(text: str, vocabulary: Vocabulary) -> list[str]:
    """The organs of every reading, sure or not."""
    return [draft.choice.character.structure for draft in transcribe(text, vocabulary).drafts]


NOT_SURE = [
    # A figure that is no value of the character.
    pytest.param("Spur 24.5 ± 3.2 mm long.", "spur length: ca. 3.2 mm", id="mean-and-deviation"),
    pytest.param("Spur 20–30 (mean 24.5) mm.", "spur number: 20–30", id="unit-behind-a-bracket"),
    pytest.param("Spur 3–5 mm longer than the petal.", "spur length: 3–5 mm", id="longer-by"),
    pytest.param("Spur exceeding the petals by 5 mm.", "spur length: 5 mm", id="exceeding-by"),
    pytest.param("Leaves O.5 cm long.", "leaf length: 5 cm", id="letter-for-nought"),
    pytest.param("Seeds 1 . 2 mm.", "seed length: 2 mm", id="parted-decimal"),
    # A denied figure.
    pytest.param("Spur 22–30 mm, not 9–16 mm.", "spur length: 9–16 mm", id="denied-figure"),
    pytest.param("Spur 20 mm versus 9–16 mm in the latter.", "spur length: 9–16 mm", id="versus"),
    # Another taxon.
    pytest.param("Spur 22 mm. In C. album the spur is 9–16 mm long.", "spur length: 9–16 mm", id="in-another-taxon"),
    pytest.param("Petals white (yellow in C. album).", "petal colour: white or yellow", id="bracket-of-another-taxon"),
    pytest.param("Spur 22 mm. Similar to C. album, which has a spur 9 mm long.", "spur length: 9 mm", id="which-has"),
    # Numbers of a key.
    pytest.param("1. Spur 25 mm; bracteoles absent ........ 2\n1'. Spur 9 mm.", "bracteole length: 1 ft", id="prime"),
    pytest.param("1. Leaves glabrous ........ 2\n2. Leaves villous.", "leaf number: 2", id="couplet"),
    pytest.param("spur cream\n214      CREMNOCENTRON\nor ivory.", "spur number: 214", id="page-heading"),
    # Another organ.
    pytest.param("Herb from a stout woody rootstock.", "plant shape: stout", id="from-a-rootstock"),
    pytest.param("Herb from a creeping rhizome 5 cm long.", "plant height: 5 cm", id="from-a-rhizome"),
    pytest.param("Leaves upon stalks an inch long, egg-shaped.", "leaf stalk shape: egg-shaped", id="upon-stalks"),
    pytest.param("Folia margine crenata, supra glabra.", "upper leaf margin surface: glabrous", id="ablative-passes"),
    pytest.param("Flowers white, in a lax raceme.", "flower, other: lax", id="adjective-of-a-later-noun"),
    pytest.param("Spur 2 cm, 1 mm wide at the mouth.", "mouth width: 1 mm", id="mouth-of-the-spur"),
    # Doubt and reach.
    pytest.param("Leaves probably glabrous.", "leaf hairiness: glabrous", id="probably"),
    pytest.param("Sepals 5, two 6 mm, three 4 mm.", "sepal number: 2", id="part-of-the-sepals"),
    pytest.param(
        "Hojas glabras por el haz, pubescentes por el envés.", "leaf hairiness: glabrous or pubescent", id="haz-y-enves"
    ),
]


@pytest.mark.parametrize(("text", "claim"), NOT_SURE)
def test_what_a_botanist_would_not_read_is_not_claimed_as_sure(text: str, claim: str, demo: Vocabulary) -> None:
    assert claim not in sure(text, demo)


@pytest.mark.parametrize(
    ("text", "organ"),
    [
        pytest.param("CREMNOCENTRON foliis ovatis.", "cremnocentron leaf", id="genus-in-capitals"),
        pytest.param("Mit bis 2 cm dickem Wurzelstock.", "dickem rhizome", id="adjective-before-its-noun"),
        pytest.param("The leaves are mostly radical, upon stalks an inch long.", "upon leaf stalk", id="preposition"),
        pytest.param("Leaves opposite below, alternate above.", "lower leaf surface", id="leaves-below-on-the-stem"),
        pytest.param("Calyx lobes 5, the upper three 3–4 mm.", "upper calyx", id="the-upper-of-the-lobes"),
        pytest.param("Petals with a yellow blotch at the base.", "petal blotch base", id="blotch-at-the-base"),
    ],
)
def test_no_organ_is_made_up_of_words_that_name_none(text: str, organ: str, demo: Vocabulary) -> None:
    assert organ not in organs(text, demo)


@pytest.mark.parametrize(
    ("text", "reading"),
    [
        pytest.param("Spur green (young) to ivory (old).", "spur colour: green [young]", id="stage-in-a-bracket"),
        pytest.param("Espolón verde en el botón.", "spur colour: green [young]", id="en-el-boton"),
        pytest.param("Éperon vert en bouton.", "spur colour: green [young]", id="en-bouton"),
        pytest.param("Absence of bracteoles.", "bracteoles: absent", id="absence-of"),
        pytest.param("Bractéoles nulles.", "bracteoles: absent", id="nulles"),
        pytest.param("Éperon long de 2–2,5 cm.", "spur length: 2–2.5 cm", id="long-de"),
        pytest.param("Petalo lungo 12 mm.", "petal length: 12 mm", id="lungo"),
        pytest.param("Feuilles longues de 3–5 cm et larges de 1–2 cm.", "leaf width: 1–2 cm", id="larges-de"),
    ],
)
def test_what_a_botanist_reads_at_sight_is_read(text: str, reading: str, demo: Vocabulary) -> None:
    assert reading in sure(text, demo)


def test_no_organ_is_called_lower_twice() -> None:
    text = "Stems simple or branched above, sparsely pilose below."
    bare = Vocabulary((Character("leaf length", "leaf", "length", Kind.MEASURE, "mm"),))
    added = [draft.choice.character for draft in transcribe(text, bare).drafts]
    assert not any("lower lower" in organ for organ in organs(text, Vocabulary((*bare.characters, *added))))
