"""The judge of free readings itself: what it calls equal, what it does not, and how it counts (notation.md, section 9).

The words are those of section 9 of notation.md and words made up here.
"""

from __future__ import annotations

import json
from dataclasses import replace
from decimal import Decimal
from pathlib import Path
from types import SimpleNamespace
from typing import Any

import pytest

from auctorum.characters.prose.found import Comparison, Found
from auctorum.characters.values import Modality, Range, Share, States
from notation_labels import judge, labels, read_and_judge, singular, state_words, statements, structure_words

PHRASES = Path(__file__).parents[1] / "data" / "notation-phrases.jsonl"
ITEMS: list[dict[str, Any]] = [json.loads(text) for text in PHRASES.read_text(encoding="utf-8").splitlines()]

Label = dict[str, Any]
FIGURES: Label = {"structure": "petal", "character": "length", "low": 2, "high": 3.5, "unit": "mm"}
RATIO: Label = {"structure": "leaf", "character": "ratio", "low": 2, "high": 2, "unit": "ratio", "of": "length/width"}
TIMES: Label = {
    "structure": "petal",
    "character": "length",
    "relative": {"to": "sepal", "factor_low": 1, "factor_high": 2},
}
COLOUR: Label = {"structure": "petal", "character": "colour", "states": [{"state": "red"}, {"state": "white"}]}
SPAN: Label = {"structure": "leaf", "character": "shape", "states": [{"state": "ovate", "to": "oblong"}]}


def whole(wanted: list[Label], found: list[Label], *also: list[Label]) -> bool:
    return judge({"statements": wanted, "also": list(also)}, found).whole


def states(*said: str | Label) -> list[Label]:
    return [{"state": one} if isinstance(one, str) else one for one in said]


def related(**changed: Any) -> Label:
    return TIMES | {"relative": TIMES["relative"] | changed}


@pytest.mark.parametrize(
    ("one", "other"),
    [
        pytest.param(FIGURES, FIGURES | {"low": 2.0, "high": Decimal("3.50")}, id="number-forms"),
        pytest.param(FIGURES, FIGURES | {"high": 3.501}, id="within-a-thousandth"),
        pytest.param(FIGURES, FIGURES | {"low_extreme": None, "bound": None, "stage": None}, id="absent-null"),
        pytest.param(FIGURES, FIGURES | {"approx": False}, id="approx-absent-false"),
        pytest.param(FIGURES, FIGURES | {"per": "flower", "note": "a remark"}, id="not-compared"),
        pytest.param(FIGURES, FIGURES | {"structure": " Petals "}, id="case-blanks-plural"),
        pytest.param(TIMES, related(to="sepals", factor_low=1.0009), id="relative"),
        pytest.param(COLOUR, COLOUR | {"states": states("white", "red")}, id="order-of-states"),
        pytest.param(COLOUR, COLOUR | {"states": states("white", "red", "white")}, id="states-are-a-set"),
        pytest.param(COLOUR, COLOUR | {"states": states("Red ", {"state": "white", "to": None})}, id="state-text"),
    ],
)
def test_equal(one: Label, other: Label) -> None:
    assert whole([one], [other])
    assert whole([other], [one])


@pytest.mark.parametrize(
    ("one", "other"),
    [
        *(
            pytest.param(FIGURES, FIGURES | {key: value}, id=key)
            for key, value in {
                "structure": "sepal",
                "character": "width",
                "low": 2.002,
                "high": None,
                "low_extreme": 1,
                "high_extreme": 5,
                "unit": "cm",
                "bound": "min",
                "approx": True,
                "modality": "usually",
                "stage": "fruit",
                "of": "length/width",
                "relative": {"to": "sepal", "factor_low": 1, "factor_high": 1},
                "states": [{"state": "long"}],
            }.items()
        ),
        pytest.param(FIGURES | {"low": 0}, FIGURES | {"low": None}, id="nought-is-a-number"),
        pytest.param(RATIO, RATIO | {"of": "width/length"}, id="direction-of-ratio"),
        pytest.param(RATIO, RATIO | {"unit": "none"}, id="unit-of-ratio"),
        pytest.param(TIMES, related(to="calyx"), id="relative-to"),
        pytest.param(TIMES, related(factor_low=None), id="factor-low"),
        pytest.param(TIMES, related(factor_high=2.5), id="factor-high"),
        pytest.param(TIMES, TIMES | {"unit": "ratio"}, id="comparison-has-no-unit"),
        pytest.param(TIMES, TIMES | {"approx": True}, id="approx-of-comparison"),
        pytest.param(COLOUR, COLOUR | {"states": states("red")}, id="state-missing"),
        pytest.param(COLOUR, COLOUR | {"states": states("red", "white", "pink")}, id="state-more"),
        pytest.param(
            COLOUR, COLOUR | {"states": states("red", {"state": "white", "modality": "rarely"})}, id="state-modality"
        ),
        pytest.param(SPAN, SPAN | {"states": states("ovate", "oblong")}, id="span-or-alternatives"),
        pytest.param(SPAN, SPAN | {"states": [{"state": "oblong", "to": "ovate"}]}, id="span-order"),
        pytest.param(COLOUR, COLOUR | {"stage": "young"}, id="stage-of-states"),
    ],
)
def test_different(one: Label, other: Label) -> None:
    assert not whole([one], [other])
    assert not whole([other], [one])


RED, WHITE = (COLOUR | {"states": states(name)} for name in ("red", "white"))
RARELY = COLOUR | {"states": states("red", {"state": "white", "modality": "rarely"})}


@pytest.mark.parametrize(
    ("wanted", "found", "right"),
    [
        pytest.param([COLOUR], [RED, WHITE], True, id="merged"),
        pytest.param([WHITE, RED], [COLOUR], True, id="labels-merged"),
        pytest.param([RED, WHITE | {"structure": "petals"}], [COLOUR], True, id="merged-after-normalising"),
        pytest.param([RARELY], [RED, WHITE | {"modality": "rarely"}], True, id="modality-moves-to-states"),
        pytest.param([COLOUR], [RED, WHITE | {"modality": "rarely"}], False, id="modality-is-kept"),
        pytest.param([COLOUR], [RED, WHITE | {"stage": "old"}], False, id="stages-apart"),
        pytest.param([COLOUR], [RED, WHITE | {"structure": "sepal"}], False, id="structures-apart"),
        pytest.param([COLOUR], [RED, WHITE | {"character": "surface"}], False, id="characters-apart"),
        pytest.param([FIGURES], [FIGURES, FIGURES], False, id="figures-twice"),
    ],
)
def test_merging(wanted: list[Label], found: list[Label], right: bool) -> None:
    assert whole(wanted, found) is right


@pytest.mark.parametrize(
    ("found", "right", "asked"),
    [
        pytest.param([RATIO, FIGURES], 2, 2, id="any-order"),
        pytest.param([FIGURES | {"character": "width"}], 1, 1, id="also"),
        pytest.param([FIGURES, FIGURES | {"character": "width"}], 1, 2, id="lists-are-not-mixed"),
        pytest.param([FIGURES], 1, 2, id="missing"),
        pytest.param([], 0, 2, id="nothing-met-of-either-list-so-the-first-counts"),
        pytest.param([FIGURES, RATIO, COLOUR], 2, 3, id="one-more-counts-as-asked"),
        pytest.param([FIGURES, RATIO | {"low": 1}], 1, 2, id="wrong-counts-once"),
        pytest.param([COLOUR, SPAN, TIMES], 0, 3, id="all-wrong-and-more"),
    ],
)
def test_counting(found: list[Label], right: int, asked: int) -> None:
    outcome = judge({"statements": [FIGURES, RATIO], "also": [[FIGURES | {"character": "width"}]]}, found)
    assert (outcome.right, outcome.asked) == (right, asked)
    assert outcome.whole is (right == asked)


def test_nothing_to_read() -> None:
    assert whole([], [])
    assert not whole([], [FIGURES])
    assert whole([], [FIGURES], [FIGURES])


def test_a_reader_that_fails_is_wrong_even_where_there_is_nothing_to_read() -> None:
    def fails(phrase: str, *, signs: object) -> object:
        raise ValueError(phrase)

    outcome = read_and_judge({"phrase": "plate 3", "statements": []}, fails)
    assert not outcome.whole
    assert outcome.failed == "ValueError: plate 3"


def test_the_signs_given_reach_the_reader() -> None:
    def reads(phrase: str, *, signs: dict[str, str] | None) -> object:
        unit = (signs or {}).get('"', "in")
        return SimpleNamespace(statements=(Found("petal", "width", Range(Decimal(3), Decimal(3), unit)),))

    wanted = {"structure": "petal", "character": "width", "low": 3, "high": 3, "unit": "line"}
    item = {"phrase": 'petal 3" wide', "statements": [wanted]}
    assert read_and_judge(item | {"given": {'"': "line"}}, reads).whole
    assert not read_and_judge(item, reads).whole


@pytest.mark.parametrize("item", ITEMS, ids=[item["id"] for item in ITEMS])
def test_labels_of_the_phrases_meet_themselves_only(item: Label) -> None:
    for wanted in (item["statements"], *item.get("also", ())):
        assert judge(item, wanted[::-1]).whole
        for place, label in enumerate(wanted):
            assert not whole(wanted, wanted[:place] + wanted[place + 1 :])
            assert not whole(wanted, [*wanted[:place], label | {"structure": "keel"}, *wanted[place + 1 :]])


@pytest.mark.parametrize(
    ("one", "other"),
    [
        ("calyx-lobe", "calyx lobe"),
        ("mid-vein", "midrib"),
        ("midvein", "midrib"),
        ("midnerve", "midrib"),
        ("perigynia", "perigynium"),
        ("phyllaries", "phyllary"),
        ("teeth", "tooth"),
        ("pair of leaflets", "pairs of leaflet"),
        ("lamina", "leaf blade"),
        ("blade", "leaf blade"),
        ("leaf blade base", "leaf base"),
        ("leaf blade tip", "leaf apex"),
        ("leaf blade edge", "leaf margin"),
        ("lower leaf blade midnerve", "lower leaf midrib"),
        ("lower leaf blade surface", "lower leaf surface"),
        ("corolla nerve", "corolla vein"),
        ("leaf stalk", "petiole"),
        ("flower-stalks", "pedicel"),
        ("disk", "disc"),
        ("disk flower", "disc floret"),
        ("ray flowers", "ray floret"),
        ("tomentum", "hair"),
        ("indumentum", "hairs"),
        ("ovary cell", "locule"),
        ("abaxial leaf surface", "lower leaf surface"),
        ("adaxial leaf blade surfaces", "upper leaf surface"),
    ],
)
def test_structures_equal(one: str, other: str) -> None:
    assert structure_words(one) == structure_words(other)


@pytest.mark.parametrize(
    ("one", "other"),
    [
        ("upper bract blade", "upper bract leaf blade"),
        ("leaf blade", "leaf"),
        ("leaf blade tooth", "leaf tooth"),
        ("hair cell", "locule"),
        ("flower", "floret"),
        ("lower leaf surface", "upper leaf surface"),
        ("calyx lobe", "lobe"),
    ],
)
def test_structures_different(one: str, other: str) -> None:
    assert structure_words(one) != structure_words(other)


@pytest.mark.parametrize(
    ("plural", "one"),
    [
        ("leaves", "leaf"),
        ("branches", "branch"),
        ("calyces", "calyx"),
        ("bases", "base"),
        ("ovaries", "ovary"),
        ("setae", "seta"),
        ("stigmata", "stigma"),
        ("sori", "sorus"),
        ("caryopses", "caryopsis"),
    ],
)
def test_singular(plural: str, one: str) -> None:
    assert singular(plural) == one
    assert singular(one) == one


@pytest.mark.parametrize("word", ["series", "axis", "pappus", "moss", "calyx", "corolla", "lens"])
def test_singular_stays(word: str) -> None:
    assert singular(word) == word


@pytest.mark.parametrize(
    ("one", "other"),
    [
        ("reddish-brown", "Reddish brown"),
        ("gray", "grey"),
        ("rose coloured", "rose"),
        ("rose-colored", "rose"),
        ("light brown", "pale brown"),
        ("+- red", "± red"),
        ("+-red", "± red"),
        ("more or less red", "± red"),
        ("nearly glabrous", "almost glabrous"),
        ("wholly glabrous", "completely glabrous"),
        ("entirely glabrous", "completely glabrous"),
        ("totally glabrous", "completely glabrous"),
        ("circular", "orbicular"),
        ("hairless", "glabrous"),
        ("bare", "glabrous"),
        ("egg-shaped", "ovate"),
        ("spatulate", "spathulate"),
        ("densely puberulent", "densely puberulous"),
        ("tinged with rose", "tinged rose"),
        ("white flushed with pink", "white flushed pink"),
        ("suffused with red", "suffused red"),
    ],
)
def test_states_equal(one: str, other: str) -> None:
    assert state_words(one, colour=True) == state_words(other, colour=True)


@pytest.mark.parametrize(
    ("one", "other"),
    [
        ("downy", "pubescent"),
        ("greyish", "grey"),
        ("subglabrous", "almost glabrous"),
        ("suborbicular", "orbicular"),
        ("lighter", "pale"),
        ("light", "pale"),
        ("spotted with red", "spotted red"),
        ("densely pubescent", "pubescent"),
    ],
)
def test_states_different(one: str, other: str) -> None:
    assert state_words(one, colour=True) != state_words(other, colour=True)


def test_light_is_pale_of_colours_only() -> None:
    assert state_words("light green") != state_words("pale green")


def range_(low: str | None, high: str | None, unit: str = "", **more: Any) -> Range:
    numbers = [None if end is None else Decimal(end) for end in (low, high)]
    return Range(numbers[0], numbers[1], unit, **more)


@pytest.mark.parametrize(
    ("found", "wanted"),
    [
        pytest.param(Found("petal", "length", range_("2", "3.5", "mm")), FIGURES, id="range"),
        pytest.param(
            Found("petal", "length", range_("2", "3.5", "mm", least=Decimal(1), most=Decimal(5), approximate=True)),
            FIGURES | {"low_extreme": 1, "high_extreme": 5, "approx": True},
            id="extremes-approx",
        ),
        pytest.param(
            Found("petal", "length", range_("2", "3.5", "mm", more=True)), FIGURES | {"bound": "min"}, id="more"
        ),
        pytest.param(
            Found("petal", "length", range_(None, "3.5", "mm")), FIGURES | {"low": None, "bound": "max"}, id="up-to"
        ),
        pytest.param(
            Found("petal", "length", range_(None, "3.5", "mm", more=True)),
            FIGURES | {"low": None, "bound": "max"},
            id="up-to-and-more",
        ),
        pytest.param(
            Found("petal", "length", range_("2", None, "mm")), FIGURES | {"high": None, "bound": "min"}, id="over"
        ),
        pytest.param(
            Found("petal", "length", range_("2", "3.5", "mm"), stage="fruit", modality=Modality.USUALLY),
            FIGURES | {"stage": "fruit", "modality": "usually"},
            id="stage-modality",
        ),
        pytest.param(
            Found("petal", "length", range_("2", "3.5", "mm"), modality=Modality.ALWAYS), FIGURES, id="always-is-plain"
        ),
        pytest.param(
            Found("seed", "count", range_("0", "4"), per="locule"),
            {"structure": "seed", "character": "count", "low": 0, "high": 4, "unit": "none"},
            id="count-from-nought",
        ),
        pytest.param(Found("leaf", "ratio", range_("2", "2"), of="length/width"), RATIO, id="ratio"),
        pytest.param(
            Found("habitat", "elevation", range_("-30", "0", "m")),
            {"structure": "habitat", "character": "elevation", "low": -30, "high": 0, "unit": "m"},
            id="elevation",
        ),
        pytest.param(
            Found("petal", "angle", range_("30", "30", "degree")),
            {"structure": "petal", "character": "angle", "low": 30, "high": 30, "unit": "degree"},
            id="angle",
        ),
        pytest.param(
            Found("petal", "length", range_("2", "3.5", "paris-line")), FIGURES | {"unit": "line"}, id="paris-line"
        ),
        pytest.param(
            Found("petal", "length", Comparison("sepal", Range(Decimal(1), Decimal(2), approximate=True))),
            TIMES | {"approx": True},
            id="comparison",
        ),
        pytest.param(
            Found("petal", "length", Comparison("sepal", Range(Decimal(1), None))),
            related(factor_high=None) | {"bound": "min"},
            id="longer-than",
        ),
        pytest.param(
            Found("petal", "length", Comparison("sepal", Range(None, Decimal(2))), modality=Modality.OFTEN),
            related(factor_low=None) | {"bound": "max", "modality": "often"},
            id="at-most",
        ),
        pytest.param(
            Found("leaf", "shape", States((Share("ovate", "oblong"), Share("lobed", None, Modality.NEVER)))),
            SPAN | {"states": states(*SPAN["states"], {"state": "lobed", "modality": "always-not"})},
            id="states",
        ),
        pytest.param(
            Found("petal", "colour", States((Share("red"),)), modality=Modality.RARELY),
            COLOUR | {"states": states({"state": "red", "modality": "rarely"})},
            id="modality-of-states",
        ),
    ],
)
def test_labels_of_what_was_found(found: Found, wanted: Label) -> None:
    assert statements(labels([found])) == statements([wanted])


def test_thirds_are_rounded_to_three_places() -> None:
    third = Decimal("0.333333")
    thirds = [
        Found("petal", "length", Range(third, third, "in", parts=(1, 3, 3, 1))),
        Found("petal", "length", Comparison("sepal", Range(third, third))),
    ]
    assert [label.get("low") or label["relative"]["factor_low"] for label in labels(thirds)] == [Decimal("0.333")] * 2


def test_the_usual_part_is_a_second_statement() -> None:
    value = range_("4", "6", usual=(Decimal(5), Decimal(5)), approximate=True)
    first, second = labels([Found("petal", "count", value, stage="fruit")])
    assert "modality" not in first
    assert (second["low"], second["high"], second["modality"], second["stage"]) == (5, 5, "usually", "fruit")
    assert second["unit"] == "none"
    plain = labels([Found("petal", "count", replace(value, usual=None), stage="fruit")])
    assert plain == [first]
