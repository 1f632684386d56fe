"""Colours of states: Munsell notation, CIELAB, CIEDE2000, each against published values and a second library."""

from __future__ import annotations

import itertools
import re
import subprocess
import sys
import warnings
from decimal import Decimal

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from auctorum.characters.colours import (
    JUST_NOTICEABLE,
    Lab,
    difference,
    lab_of,
    near_states,
    nearest_state,
    reference_of,
    screen_colour,
)
from auctorum.characters.munsell import (
    FAMILIES,
    Munsell,
    UnreadableColour,
    chromaticity,
    munsell_in,
    munsell_of,
    plainly_apart,
)
from auctorum.characters.vocabulary import Character, Kind, State

with warnings.catch_warnings():
    warnings.simplefilter("ignore")
    import colour as science

# Sharma, Wu & Dalal 2005 (Color Research & Application 30: 21-30), table 1: L a b, L a b, CIEDE2000; from memory.
SHARMA = """\
50 2.6772 -79.7751 50 0 -82.7485 2.0425
50 3.1571 -77.2803 50 0 -82.7485 2.8615
50 2.8361 -74.0200 50 0 -82.7485 3.4412
50 -1.3802 -84.2814 50 0 -82.7485 1.0000
50 -1.1848 -84.8006 50 0 -82.7485 1.0000
50 -0.9009 -85.5211 50 0 -82.7485 1.0000
50 0 0 50 -1 2 2.3669
50 -1 2 50 0 0 2.3669
50 2.4900 -0.0010 50 -2.4900 0.0009 7.1792
50 2.4900 -0.0010 50 -2.4900 0.0010 7.1792
50 2.4900 -0.0010 50 -2.4900 0.0011 7.2195
50 2.4900 -0.0010 50 -2.4900 0.0012 7.2195
50 -0.0010 2.4900 50 0.0009 -2.4900 4.8045
50 -0.0010 2.4900 50 0.0010 -2.4900 4.8045
50 -0.0010 2.4900 50 0.0011 -2.4900 4.7461
50 2.5 0 50 0 -2.5 4.3065
50 2.5 0 73 25 -18 27.1492
50 2.5 0 61 -5 29 22.8977
50 2.5 0 56 -27 -3 31.9030
50 2.5 0 58 24 15 19.4535
50 2.5 0 50 3.1736 0.5854 1.0000
50 2.5 0 50 3.2972 0 1.0000
50 2.5 0 50 1.8634 0.5757 1.0000
50 2.5 0 50 3.2592 0.3350 1.0000
60.2574 -34.0099 36.2677 60.4626 -34.1751 39.4387 1.2644
63.0109 -31.0961 -5.8663 62.8187 -29.7946 -4.0864 1.2630
61.2901 3.7196 -5.3901 61.4292 2.2480 -4.9620 1.8731
35.0831 -44.1164 3.7933 35.0232 -40.0716 1.5901 1.8645
22.7233 20.0904 -46.6940 23.0331 14.9730 -42.5619 2.0373
36.4612 47.8580 18.3852 36.2715 50.5065 21.2231 1.4146
90.8027 -2.0831 1.4410 91.1528 -1.6435 0.0447 1.4441
90.9257 -0.5406 -0.9208 88.6381 -0.8985 -0.7239 1.5381
6.7747 -0.2908 -2.4247 5.8714 -0.0985 -2.2286 0.6377
2.0776 0.0795 -1.1350 0.9033 -0.0636 -0.5514 0.9082
"""
PAIRS = [tuple(float(figure) for figure in line.split()) for line in SHARMA.splitlines()]

# McCamy, Marcus & Davidson 1976 (Journal of Applied Photographic Engineering 2: 95-99): the patches of their chart in
# Munsell notation, with x, y and Y under illuminant C, Y relative to magnesium oxide; from memory.
PATCHES = [
    ("3YR 3.7/3.2", 0.400, 0.350, 10.1), ("2.2YR 6.47/4.1", 0.377, 0.345, 35.8), ("4.3PB 4.95/5.5", 0.247, 0.251, 19.3),
    ("6.7GY 4.2/4.1", 0.337, 0.422, 13.3), ("9.7PB 5.47/6.7", 0.265, 0.240, 24.3), ("2.5BG 7/6", 0.261, 0.343, 43.1),
    ("5YR 6/11", 0.506, 0.407, 30.1), ("7.5PB 4/10.7", 0.211, 0.175, 12.0), ("2.5R 5/10", 0.453, 0.306, 19.8),
    ("5P 3/7", 0.285, 0.202, 6.6), ("5GY 7.1/9.1", 0.380, 0.489, 44.3), ("10YR 7/10.5", 0.473, 0.438, 43.1),
    ("7.5PB 2.9/12.7", 0.187, 0.129, 6.1), ("5R 4/12", 0.539, 0.313, 12.0), ("5Y 8/11.1", 0.448, 0.470, 59.1),
    ("2.5RP 5/12", 0.364, 0.233, 19.8), ("5B 5/8", 0.196, 0.252, 19.8), ("N 9.5/", 0.310, 0.316, 90.0),
    ("N 8/", 0.310, 0.316, 59.1), ("N 6.5/", 0.310, 0.316, 36.2), ("N 5/", 0.310, 0.316, 19.8),
    ("N 3.5/", 0.310, 0.316, 9.0), ("N 2/", 0.310, 0.316, 3.1),
]  # fmt: skip
MAGNESIUM_OXIDE = 0.975  # its luminance factor in ASTM D1535, from memory


@pytest.mark.parametrize("pair", PAIRS, ids=lambda pair: f"{pair[6]}")
def test_published_pairs(pair: tuple[float, ...]) -> None:
    one, other = Lab(*pair[:3]), Lab(*pair[3:6])
    assert round(difference(one, other), 4) == round(difference(other, one), 4) == pair[6]
    assert difference(one, other) == pytest.approx(float(science.difference.delta_E_CIE2000(one, other)), abs=1e-9)


def test_the_table_is_whole() -> None:
    assert len(PAIRS) == 34


@pytest.mark.parametrize(("notation", "x", "y", "luminance"), PATCHES, ids=[patch[0] for patch in PATCHES])
def test_published_munsell_colours(notation: str, x: float, y: float, luminance: float) -> None:
    found = chromaticity(munsell_of(notation))
    assert found[:2] == pytest.approx((x, y), abs=0.006)
    assert 100 * found[2] / MAGNESIUM_OXIDE == pytest.approx(luminance, rel=0.03)


@pytest.mark.parametrize("notation", ["5GY 6/6", "2.5Y 9/2", "7.5PB 2.9/12.7", "5R 4/12", "N 5/", "N 0/", "N 10/"])
def test_lab_is_that_of_colour_science(notation: str) -> None:
    whites = science.CCS_ILLUMINANTS["CIE 1931 2 Degree Standard Observer"]
    under_c = science.xyY_to_XYZ(chromaticity(munsell_of(notation)))
    c, d65 = (science.xy_to_XYZ(whites[name]) for name in ("C", "D65"))
    under_d65 = science.adaptation.chromatic_adaptation_VonKries(under_c, c, d65, transform="Bradford")
    second = [float(figure) for figure in science.XYZ_to_Lab(under_d65, whites["D65"])]
    assert list(lab_of(notation)) == pytest.approx(second, abs=0.01)


def test_a_step_of_value_is_ten_in_lightness() -> None:
    """Common practice, no source."""
    assert [round(lab_of(f"N {value}/").lightness, -1) for value in range(1, 10)] == list(range(10, 100, 10))


@pytest.mark.parametrize(
    ("said", "written"),
    [
        ("5GY 6/6", "5GY 6/6"), ("5GY6/6", "5GY 6/6"), ("2.5 Y 9 / 2", "2.5Y 9/2"), ("2,5Y 8,5/1,5", "2.5Y 8.5/1.5"),
        ("N 5/", "N 5/"), ("N5", "N 5/"), ("N 5.5/0", "N 5.5/"), ("10RP 2/14", "10RP 2/14"),
    ],
)  # fmt: skip
def test_notation(said: str, written: str) -> None:
    assert str(munsell_of(said)) == written


@pytest.mark.parametrize(
    ("said", "why"),
    [
        ("5RG 3/4", "there is no hue `RG`; hues are R, YR, Y, GY, G, BG, B, PB, P, RP"),
        ("11R 4/4", "the figure before the hue lies between 0 and 10"),
        ("0R 4/4", "the figure before the hue lies between 0 and 10"),
        ("5R 11/4", "the value lies between 0 (black) and 10 (white)"),
        ("N 12/", "the value lies between 0 (black) and 10 (white)"),
        ("N 5/6", "it is no Munsell notation"), ("5R", "it is no Munsell notation"), ("", "it is no Munsell notation"),
        ("#889c4f", "it is no Munsell notation"), ("lab 62 -20", "CIELAB is the word lab and three figures"),
        ("lab 101 0 0", "lightness lies between 0 and 100"), ("lab 50 0 900", "no surface has a or b beyond 150"),
        ("lab inf nan 1", "CIELAB is the word lab and three figures"),
    ],
)  # fmt: skip
def test_what_is_no_colour(said: str, why: str) -> None:
    with pytest.raises(UnreadableColour) as caught:
        reference_of(said)
    assert str(caught.value) == f"no colour `{said}`: {why}"


@pytest.mark.parametrize("said", ["5GY 6/40", "5R 0.5/2", "5R 10/2"])
def test_where_the_renotation_ends(said: str) -> None:
    with pytest.raises(UnreadableColour, match="the Munsell renotation knows no such colour"):
        lab_of(said)


@pytest.mark.parametrize("said", ["lab 62 -20 40", "Lab 62, −20, 40", "CIELAB(62 -20 40)", " lab: 62 -20 40.0 "])
def test_cielab(said: str) -> None:
    assert lab_of(said) == Lab(62, -20, 40)


@pytest.mark.parametrize(
    ("words", "found"),
    [
        ("spur 2.5Y 9/2", ["2.5Y 9/2"]),
        ("spur ivory (Munsell 5Y 9/4).", ["5Y 9/4"]),
        ("10YR8/4 or 5YR 5/6, N 5/ in age", ["10YR 8/4", "5YR 5/6", "N 5/"]),
        ("leaves 5 G 1/2 in. long", ["5G 1/2"]),  # five G would be odd words; nothing tells them from a colour
        ("facing N 5 m above", []), ("rows of 5 by 3/4 in.", []), ("12R 4/4", []), ("5R 4/4/2", []), ("A5R 4/4", []),
        ("10 B 3", []), ("N 5/8", []), ("", []),
    ],
)  # fmt: skip
def test_notation_in_words(words: str, found: list[str]) -> None:
    assert [notation for *_, notation in munsell_in(words)] == found
    assert all(str(munsell_of(words[start:end])) == notation for start, end, notation in munsell_in(words))


tenths = st.decimals(0, 10, places=1, allow_nan=False)


@given(tenths.filter(bool), st.sampled_from(FAMILIES), tenths, st.decimals(0, 30, places=1))
@settings(max_examples=200, deadline=None)
def test_written_notation_is_read_again(step: Decimal, family: str, value: Decimal, chroma: Decimal) -> None:
    colour = Munsell(step, family, value, chroma)
    assert munsell_of(str(colour)) == colour
    assert [notation for *_, notation in munsell_in(f"spur {colour}, hairy")] == [str(colour)]


def test_a_long_text_takes_no_longer_by_the_letter() -> None:
    """Figures, letters and strokes without end give nothing, and are gone through once."""
    for hostile in ("5GY " * 40_000, "5" * 200_000, "5R 4/" * 40_000, "N 5" * 60_000, "5.5" * 60_000):
        assert munsell_in(hostile) == ()


labs = st.builds(Lab, st.floats(0, 100), st.floats(-120, 120), st.floats(-120, 120))


@given(labs, labs)
@settings(max_examples=200, deadline=None)
def test_difference_is_none_to_itself_and_has_no_order(one: Lab, other: Lab) -> None:
    assert difference(one, one) == pytest.approx(0, abs=1e-9)
    assert difference(one, other) == pytest.approx(difference(other, one), abs=1e-9)
    assert difference(one, other) == pytest.approx(float(science.difference.delta_E_CIE2000(one, other)), abs=1e-6)


def spectrum(*colours: str) -> Character:
    states = tuple(State(f"state {place}", (), said or None) for place, said in enumerate(colours, 1))
    return Character("spur colour", "spur", "colour", Kind.ORDERED, states=states)


def test_nearest_state() -> None:
    character = spectrum("5GY 6/6", "", "lab 90 0 15")
    state, far = nearest_state(lab_of("2.5Y 9/2"), character) or (None, 0.0)
    assert state is character.states[2] and 0 < far < 1
    assert nearest_state(lab_of("2.5Y 9/2"), spectrum("", "")) is None


def test_nearest_is_the_first_of_equals() -> None:
    character = spectrum("lab 50 0 0", "lab 50 0 0")
    assert (nearest_state(Lab(50, 0, 0), character) or ())[0] is character.states[0]


def test_near_states() -> None:
    character = spectrum("2.5Y 9/2", "5GY 6/6", "lab 90 0 15", "")
    ((one, other, far),) = near_states(character)
    assert (one.name, other.name) == ("state 1", "state 3") and far < JUST_NOTICEABLE


def test_notation_alone_never_hides_two_colours_that_are_near() -> None:
    """Pairs of the renotation at one value, every second of its colours, by the table of another library."""
    from colour.notation.datasets.munsell import MUNSELL_COLOURS_REAL

    placed: dict[float, list[tuple[Munsell, list[float]]]] = {}
    for (hue, value, chroma), xyy in MUNSELL_COLOURS_REAL:
        parts = re.fullmatch(r"([\d.]+)([A-Z]+)", hue)
        assert parts is not None
        notation = Munsell(Decimal(parts[1]), parts[2], Decimal(str(value)), Decimal(str(chroma)))
        if value >= 1:
            placed.setdefault(float(value), []).append((notation, [float(figure) for figure in xyy]))
    apart = near = 0
    for several in placed.values():
        some = several[::2]
        labs = _labs([xyy for _, xyy in some])
        pairs = list(itertools.combinations(range(len(some)), 2))
        first, second = ([labs[pair[side]] for pair in pairs] for side in (0, 1))
        for pair, far in zip(pairs, science.difference.delta_E_CIE2000(first, second), strict=True):
            told = plainly_apart(some[pair[0]][0], some[pair[1]][0])
            assert far > JUST_NOTICEABLE or not told, (some[pair[0]], some[pair[1]])
            apart, near = apart + told, near + (not told)
    assert apart > 10 * near > 0  # it settles most pairs, and leaves those that matter


def _labs(xyy: list[list[float]]) -> list[list[float]]:
    whites = science.CCS_ILLUMINANTS["CIE 1931 2 Degree Standard Observer"]
    c, d65 = (science.xy_to_XYZ(whites[name]) for name in ("C", "D65"))
    under_c = science.xyY_to_XYZ([[x, y, luminance * MAGNESIUM_OXIDE / 100] for x, y, luminance in xyy])
    under_d65 = science.adaptation.chromatic_adaptation_VonKries(under_c, c, d65, transform="Bradford")
    return [list(map(float, row)) for row in science.XYZ_to_Lab(under_d65, whites["D65"])]


def test_a_step_of_value_is_never_hidden() -> None:
    for hue, chroma in itertools.product(("5R", "5Y", "5G", "5B", "5P"), (2, 4)):
        steps = [lab_of(f"{hue} {value}/{chroma}") for value in range(2, 9)]
        assert all(difference(one, other) > 2 * JUST_NOTICEABLE for one, other in itertools.pairwise(steps))


@pytest.mark.parametrize(
    ("said", "there"), [("lab 62 -20 40", False), ("5GY 6/6", True)], ids=["CIELAB alone", "Munsell"]
)
def test_the_slow_library_is_met_only_for_munsell(said: str, there: bool) -> None:
    code = f"""
import sys
from auctorum.characters.colours import lab_of, reference_of
reference_of("5GY 6/6")
lab_of({said!r})
assert ("colour" in sys.modules) is {there}
"""
    subprocess.run([sys.executable, "-W", "error", "-c", code], check=True)


@given(labs)
@settings(max_examples=100, deadline=None)
def test_screen_colour_is_one(lab: Lab) -> None:
    assert re.fullmatch("#[0-9a-f]{6}", screen_colour(lab))
