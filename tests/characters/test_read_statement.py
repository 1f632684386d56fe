from __future__ import annotations

import pytest

from auctorum.characters.read import UnreadableValue, read_statement
from auctorum.characters.show import format_value
from auctorum.characters.units import UnfitUnit
from auctorum.characters.values import ReversedRange
from auctorum.characters.vocabulary import Character, Kind, State

SPUR = Character("spur length", "spur", "length", Kind.MEASURE, "mm")
WIDTH = Character("blade width", "blade", "width", Kind.MEASURE, "mm")
ELEVATION = Character("elevation", "habitat", "elevation", Kind.MEASURE, "m")
ASPECT = Character("aspect", "habitat", "aspect", Kind.ANGLE, "degree")
RATIO = Character("spur to petal", "spur", "length to petal", Kind.RATIO)
STAMENS = Character("stamen number", "stamen", "number", Kind.COUNT)
COLOUR = Character(
    "spur colour", "spur", "colour", Kind.NOMINAL,
    states=(State("green", ("viridis",)), State("ivory", ("eburneus",)), State("white", ("alb-",)), State("pink"),
            State("yellow"), State("pale yellow")),
)  # fmt: skip
SHAPE = Character(
    "leaf shape", "leaf", "shape", Kind.ORDERED,
    states=(State("linear"), State("lanceolate", ("lanceolatus",)), State("ovate", ("ovatus",)), State("orbicular")),
)  # fmt: skip
HAIRS = Character(
    "leaf hairs", "leaf", "surface", Kind.ORDERED,
    states=(State("glabrous", ("glaber", "hairless")), State("pubescent", ("pubescens",)), State("tomentose")),
)  # fmt: skip
# Winged is a word of shape to the reader, yet a state of this surface: the vocabulary has the say.
SEED = Character(
    "seed surface", "seed", "surface", Kind.NOMINAL, states=tuple(map(State, ("smooth", "reticulate", "winged")))
)
SPOTS = Character(
    "lip spots", "lip", "spots", Kind.NOMINAL, states=(State("spotted"), State("unspotted", ("without spots",)))
)
BRACTS = Character("bracts", "bract", "presence", Kind.PRESENCE)
BRACTS_WORDED = Character(
    "bracts",
    "bract",
    "presence",
    Kind.PRESENCE,
    states=(State("present", ("bracteate",)), State("absent", ("ebracteate",))),
)


def said(words: str, character: Character, **how: object) -> str:
    """The readings as printed, each with its stage in front."""
    readings = read_statement(words, character, **how)  # type: ignore[arg-type]
    shown = (f"{reading.stage}: {format_value(reading.value, character)}".removeprefix(": ") for reading in readings)
    return " | ".join(shown)


@pytest.mark.parametrize(
    ("words", "character", "value"),
    [
        ("spurs slender, 1½–2 in. (rarely to 2¾ in.) long, blade 3–5 × 1–2 cm", SPUR, "1½–2(–2¾) in."),
        ("spurs slender, 1½–2 in. (rarely to 2¾ in.) long, blade 3–5 × 1–2 cm", WIDTH, "1–2 cm"),
        ("22–34(–41) mm", SPUR, "22–34(–41) mm"),
        ("(3)5-8(10) mm", SPUR, "(3–)5–8(–10) mm"),
        ("(3)-5-8-(10) mm", SPUR, "(3–)5–8(–10) mm"),
        ("[5](8–)12–40(60) mm", SPUR, "(5–)12–40(–60) mm"),
        ("8 mm–1.2 cm", SPUR, "0.8–1.2 cm"),
        ("eight inches to three feet", SPUR, "⅔–3 ft"),
        ("a foot and a half", SPUR, "1½ ft"),
        ("3' 6\"", SPUR, "42 in."),
        ("spur 1-1/2 in.", SPUR, "1½ in."),
        ("spur 0·5–0·8 in.", SPUR, "0.5–0.8 in."),
        ("spur 1,5–2,5 cm", SPUR, "1.5–2.5 cm"),
        ("spur 2.5-\n3 cm long", SPUR, "2.5–3 cm"),
        ("spur 20, 25 or 30 mm", SPUR, "20–30 mm"),
        ("spur more than 10 mm", SPUR, "10+ mm"),
        ("spur rarely more than 10 mm", SPUR, "up to 10 mm"),
        ("20-25 (or more) mm", SPUR, "20–25+ mm"),
        ("spur usually 20 mm, rarely 12", SPUR, "(12–)20 mm"),
        ("4-6 (usually 5) mm", SPUR, "4–6 (usually 5) mm"),
        ("5–8 cm (2–3 in.)", SPUR, "5–8 cm"),
        ("calcar ad 3 lin. longum", SPUR, "up to 3 lines"),
        ("calcar sesquipollicare", SPUR, "1½ in."),
        ("calcar 2-pollicare", SPUR, "2 in."),
        ("spur twice as long as petals, 20 mm", SPUR, "20 mm"),
        ("spur 8–10 mm in flower, 12–15 mm in fruit", SPUR, "flower: 8–10 mm | fruit: 12–15 mm"),
        ("spur 8–10 mm in flower, 12–15 in fruit", SPUR, "flower: 8–10 mm | fruit: 12–15 mm"),
        ("900-1500 m (3000-5000)", ELEVATION, "900–1500 m"),
        ("-50--900 m", ELEVATION, "−50–900 m"),
        ("2,500–3,000 ft.", ELEVATION, "2500–3000 ft"),
        ("above 800 m", ELEVATION, "800+ m"),
    ],
)
def test_measures(words: str, character: Character, value: str) -> None:
    assert said(words, character) == value


def test_paris_lines_and_signs_of_the_work() -> None:
    assert said("calcar 5-6 lin. longum", SPUR, line="paris") == "5–6 Paris lines"
    assert said("spur 5-10' long", SPUR, signs={"′": "in", '"': "line"}) == "5–10 in."
    assert said('spur 3"-4" long', SPUR, signs={"'": "in", "″": "line"}) == "3–4 lines"


@pytest.mark.parametrize(
    ("words", "low", "high"),
    [
        ("facing N to NNE", "0", "22.5"),
        ("NW-facing", "315", "315"),
        ("NE to NW", "315", "405"),
        ("septentrionem versus", "0", "0"),
        ("on northern and north-eastern slopes", "0", "45"),
        ("315–45°", "315", "405"),
        ("slopes facing south or south-west", "180", "225"),
    ],
)
def test_aspect_runs_clockwise_and_crosses_north(words: str, low: str, high: str) -> None:
    (reading,) = read_statement(words, ASPECT)
    assert (str(reading.value.low), str(reading.value.high)) == (low, high)  # type: ignore[union-attr]


@pytest.mark.parametrize(
    ("words", "character", "value"),
    [
        ("1.5–2 times as long as the petals", RATIO, "1.5–2"),
        ("twice as long as the petals", RATIO, "2"),
        ("half as long as the petals", RATIO, "½"),
        ("2-3 times shorter than the petals", RATIO, "⅓–½"),
        ("equalling the petals", RATIO, "1"),
        ("exceeding the petals", RATIO, "1+"),
        ("ratio 3:2", RATIO, "1½"),
        ("stamens five or six", STAMENS, "5–6"),
        ("stamens 10–12, rarely 14, petals 5", STAMENS, "10–12(–14)"),
        ("petals 5, stamens 3(–4+)", STAMENS, "3(–4)"),
        ("2n = 18, stamens solitary", STAMENS, "1"),
        ("stamina decem, fig. 3", STAMENS, "10"),
    ],
)
def test_ratios_and_counts(words: str, character: Character, value: str) -> None:
    assert said(words, character) == value


@pytest.mark.parametrize(
    ("words", "character", "value"),
    [
        ("green when young, ivory in age", COLOUR, "young: green | old: ivory"),
        ("green, less often ivory", COLOUR, "green; sometimes ivory"),
        ("green, not rarely ivory", COLOUR, "green; often ivory"),
        ("green becoming ivory", COLOUR, "young: green | old: ivory"),
        ("white, drying yellow", COLOUR, "fresh: white | dry: yellow"),
        ("green; rarely ivory", COLOUR, "green; rarely ivory"),
        ("usually green, sometimes white or pink", COLOUR, "usually green; sometimes white or pink"),
        ("green or white (rarely pink)", COLOUR, "green or white; rarely pink"),
        ("calcari viridi, rarius albo", COLOUR, "green; rarely white"),
        ("pale yellow, rarely deep pink", COLOUR, "pale yellow; rarely pink"),
        ("greenish", COLOUR, "green"),
        ("corolla white; spur green", COLOUR, "green"),
        ("spur green, tip pink", COLOUR, "green"),
        ("not green", COLOUR, "not green"),
        ("lanceolate to ovate", SHAPE, "lanceolate to ovate"),
        ("linear-lanceolate", SHAPE, "linear to lanceolate"),
        ("foliis ovatis vel lanceolatis", SHAPE, "lanceolate or ovate"),
        ("ovate to orbicular or rarely linear", SHAPE, "ovate to orbicular; rarely linear"),
        ("foliis glabris", HAIRS, "glabrous"),
        ("smooth or winged", SEED, "smooth or winged"),
        ("seeds winged, rarely reticulate", SEED, "winged; rarely reticulate"),
        ("folia glabra, raro pubescentia", HAIRS, "glabrous; rarely pubescent"),
        ("lip without spots", SPOTS, "unspotted"),
        ("lip rarely spotted", SPOTS, "rarely spotted"),
        ("bracts 3", BRACTS, "present"),
        ("no bracts", BRACTS, "absent"),
        ("bracteis nullis", BRACTS, "absent"),
        ("inflorescence ebracteate", BRACTS, "absent"),
        ("bracts usually absent", BRACTS, "usually absent"),
        ("bracts never present", BRACTS, "absent"),
        ("inflorescence ebracteate", BRACTS_WORDED, "absent"),
    ],
)
def test_states(words: str, character: Character, value: str) -> None:
    assert said(words, character) == value


@pytest.mark.parametrize(
    ("words", "character", "error", "message"),
    [
        ("spur 22-34", SPUR, UnreadableValue, "the figure has no unit, and a length needs one"),
        ("spur 12 in fruit", SPUR, UnreadableValue, "the figure has no unit"),
        ("spur slender", SPUR, UnreadableValue, "they hold no figure"),
        ("", SPUR, UnreadableValue, "there are no words"),
        ("spur twice as long as the petals", SPUR, UnreadableValue, "they only compare it with another organ"),
        ("spur 3 mm wide", SPUR, UnreadableValue, "no figure in them is a length"),
        ("stamens numerous", STAMENS, UnreadableValue, "they hold no figure"),
        ("n times longer than the petals", RATIO, UnreadableValue, "no value of `spur to petal`"),
        ("spur mauve", COLOUR, UnreadableValue, "they name none of its states"),
        ("spur 4 degrees", SPUR, UnfitUnit, "the unit `degree` does not fit the character `spur length`"),
        ("spur 10–5 mm", SPUR, ReversedRange, "lower bound 10 is above upper bound 5"),
    ],
)
def test_what_cannot_be_read_says_why(words: str, character: Character, error: type[Exception], message: str) -> None:
    with pytest.raises(error, match=message):
        read_statement(words, character)
