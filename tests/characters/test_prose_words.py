"""The steps of the free reader one by one: organs, runs of states, comparisons, and what is passed over.

Terms and rules: common practice of floras, no source, where a row names none.
"""

from __future__ import annotations

from decimal import Decimal

import pytest

from auctorum.characters.figures import Line
from auctorum.characters.prose.comparisons import read_likeness, read_ratio_words
from auctorum.characters.prose.found import Passed
from auctorum.characters.prose.nouns import Noun, read_ellipsis, read_noun
from auctorum.characters.prose.passed import passed_over
from auctorum.characters.prose.pieces import read_pieces
from auctorum.characters.prose.wholes import resolved
from auctorum.characters.tokens import tokens_of


def line(words: str) -> Line:
    return Line(tokens_of(words))


@pytest.mark.parametrize(
    ("words", "name", "rest"),
    [
        pytest.param("basal leaves 3 cm", "basal leaf", "3", id="position"),
        pytest.param("leaf-blades ovate", "leaf blade", "ovate", id="hyphen"),
        pytest.param("the lobes of the calyx 5", "calyx lobe", "5", id="of"),
        pytest.param("pairs of leaflets 8", "pair of leaflet", "8", id="pairs"),
        pytest.param("tubus corollae longus", "corolla tube", "longus", id="latin-part-first"),
        pytest.param("foliis basalibus ovatis", "basal leaf", "ovatis", id="latin-adjective-behind"),
        pytest.param("sepalis corollae tubo", "sepal", "corollae", id="latin-neighbours-that-are-not-one"),
        pytest.param("hojas inferiores ovadas", "lower leaf", "ovadas", id="spanish"),
        pytest.param("flower stalks 2 cm", "pedicel", "2", id="compound-of-the-trade"),
        pytest.param("calyx-\nlobes ovate", "calyx lobe", "ovate", id="hyphen-at-a-line-end"),
        pytest.param("nervo centrali albo", "midrib", "albo", id="compound-as-printed"),
        pytest.param("limbo de la hoja ovado", "leaf blade", "ovado", id="compound-of-four-words"),
        pytest.param("fls. white", "flower", "white", id="abbreviation"),
    ],
)
def test_organs(words: str, name: str, rest: str) -> None:
    found = read_noun(line(words), 0)
    assert found is not None
    assert (found[0].name, line(words).text(found[1])) == (name, rest)


@pytest.mark.parametrize("words", ["white flowers", "longer leaves", "3 petals", "and stems", ""])
def test_what_is_no_organ(words: str) -> None:
    assert read_noun(line(words), 0) is None


@pytest.mark.parametrize(
    ("part", "whole", "name"),
    [
        pytest.param(Noun(("tube",), part=True), Noun(("corolla", "lobe")), "corolla tube", id="sister"),
        pytest.param(Noun(("tip",), part=True), Noun(("corolla", "lobe")), "corolla lobe tip", id="part-of-a-part"),
        pytest.param(Noun(("base",), part=True), Noun(("leaf", "apex")), "leaf base", id="sister-end"),
        pytest.param(Noun(("surface",), ("abaxial",), True), Noun(("leaf", "blade")), "lower leaf surface", id="side"),
        pytest.param(Noun(("limb",), part=True), Noun(("spur",)), "limb", id="a-spur-has-no-limb"),
        pytest.param(Noun(("keel",), part=True), Noun(("glume",)), "glume keel", id="keel-of-a-glume"),
        pytest.param(Noun(("keel",), part=True), Noun(("wing",)), "keel", id="keel-of-a-pea-flower"),
        pytest.param(Noun((), ("upper",)), Noun(("glume",), ("lower",)), "upper glume", id="ellipsis"),
        pytest.param(Noun(("tooth",), part=True), Noun(("leaf", "margin")), "leaf tooth", id="teeth-of-the-margin"),
    ],
)
def test_wholes(part: Noun, whole: Noun, name: str) -> None:
    assert resolved(part, whole) == name


def test_ellipsis_needs_an_article_or_a_comma() -> None:
    assert read_ellipsis(line("the upper 3 mm"), 0) == (Noun((), ("upper",)), 2)
    assert read_ellipsis(line("upper 3 mm"), 0) is None


@pytest.mark.parametrize(
    ("words", "pieces"),
    [
        pytest.param(
            "densely brown pubescent", ["colour brown hair", "surface densely pubescent"], id="colour-of-hairs"
        ),
        pytest.param("grey-downy", ["colour grey hair", "surface downy"], id="colour-of-hairs-hyphened"),
        pytest.param("pale yellow-green", ["colour pale yellow-green"], id="shade"),
        pytest.param("blackish brown", ["colour blackish brown"], id="two-colours-are-one"),
        pytest.param("tinged with rose", ["colour tinged rose"], id="tint"),
        pytest.param("purple-spotted", ["colour purple of spot"], id="marks"),
        pytest.param("spotted with crimson", ["colour crimson of spot"], id="marks-before"),
        pytest.param("± circular", ["shape ± circular"], id="degree"),
        pytest.param("retrorsely hispid", ["surface retrorsely hispid"], id="adverb-not-listed"),
        pytest.param("verde-escura", ["colour dark green"], id="portuguese-shade-behind"),
        pytest.param("ovato-lanceolata", ["shape ovate-lanceolate"], id="latin-compound"),
        pytest.param("egg-shaped", ["shape egg-shaped"], id="shaped"),
        pytest.param("serrate", ["shape serrate of margin"], id="margin"),
    ],
)
def test_runs_of_states(words: str, pieces: list[str]) -> None:
    found = read_pieces(line(words), 0)
    assert found is not None
    shown = [
        f"{one.property} {one.words}{' hair' if one.hair else ''}{f' of {one.part}' if one.part else ''}"
        for one in found[0]
    ]
    assert sorted(shown) == sorted(pieces)
    assert found[1] == len(line(words).tokens)


@pytest.mark.parametrize(
    ("words", "low", "high", "name", "against"),
    [
        pytest.param("as long as the petals", "1", "1", "length", "", id="equal"),
        pytest.param("slightly longer than the calyx", "1", None, "length", "", id="longer"),
        pytest.param("as long as or slightly longer than limb", "1", None, "length", "", id="equal-or-longer"),
        pytest.param("shorter than petals", None, "1", "length", "", id="shorter"),
        pytest.param("exceeding the sepals", "1", None, "length", "", id="exceeding"),
        pytest.param("broader than long", "1", None, "width", "length", id="within-one-organ"),
        pytest.param("aequans", "1", "1", "length", "", id="latin"),
        pytest.param("mas cortos que los sepalos", None, "1", "length", "", id="spanish"),
    ],
)
def test_comparisons_without_a_figure(words: str, low: str | None, high: str | None, name: str, against: str) -> None:
    found = read_likeness(line(words), 0, None)
    assert found is not None
    ends = [number.value if number else None for number in (found.low, found.high)]
    assert ends == [Decimal(end) if end else None for end in (low, high)]
    assert (found.property, found.against) == (name, against)


@pytest.mark.parametrize("words", ["longer leaves", "lower bracts", "times longer than", "long petioles"])
def test_what_compares_nothing(words: str) -> None:
    assert read_likeness(line(words), 0, None) is None


@pytest.mark.parametrize(
    ("words", "of"),
    [("ratio of width to length", "width/length"), ("length/width ratio", "length/width"), ("l/w 2", "length/width"),
     ("ratio", "")],
)  # fmt: skip
def test_words_of_a_ratio(words: str, of: str) -> None:
    found = read_ratio_words(line(words), 0)
    assert found is not None
    assert found[0] == of


@pytest.mark.parametrize(
    ("words", "why"),
    [
        pytest.param("2n = 26", Passed.CHROMOSOMES, id="chromosomes"),
        pytest.param("Nov.–Dec.", Passed.DATE, id="months"),
        pytest.param("V–VI", Passed.DATE, id="roman-months"),
        pytest.param("15 May", Passed.DATE, id="day"),
        pytest.param("plate 355", Passed.REFERENCE, id="plate"),
        pytest.param("3(3): 421", Passed.REFERENCE, id="volume-issue-page"),
        pytest.param("41°17′N", Passed.PLACE, id="coordinates"),
        pytest.param("about 40 species", Passed.TALLY, id="species"),
        pytest.param("Harrow 2215", Passed.COLLECTION, id="collector"),
        pytest.param("var. longum", Passed.NAME, id="rank-and-epithet"),
        pytest.param("Quorrelia rubra Tunn", Passed.NAME, id="name-with-author"),
    ],
)
def test_what_is_no_trait(words: str, why: Passed) -> None:
    assert why in [found for found, _ in passed_over(line(words)).values()]


@pytest.mark.parametrize("words", ["Leaves thin, 3 mm", "blade/stipe ratio 2:1", "may be longer", "Flowers 60"])
def test_what_may_be_a_trait(words: str) -> None:
    assert passed_over(line(words)) == {}
