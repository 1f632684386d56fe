"""What holds of any description: no text raises, every span holds its figures, printing changes no reading."""

from __future__ import annotations

import json
import unicodedata
from collections.abc import Sequence
from dataclasses import replace
from fractions import Fraction
from pathlib import Path

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from auctorum.characters.figures import Line
from auctorum.characters.prose.draft import Draft, transcribe
from auctorum.characters.prose.found import Found
from auctorum.characters.prose.items import Is
from auctorum.characters.prose.own_words import own_words
from auctorum.characters.prose.read import read_description
from auctorum.characters.prose.scan import items_of
from auctorum.characters.read import UnreadableValue, read_statement
from auctorum.characters.show import format_value
from auctorum.characters.tokens import Sort, tokens_of
from auctorum.characters.values import Range
from auctorum.characters.vocabulary import Character, Kind, State, Vocabulary
from auctorum.cli.transcribe_run import vocabulary_in

ROOT = Path(__file__).parents[2]
PHRASES: list[str] = [
    json.loads(line)["phrase"]
    for name in ("notation-phrases", "notation-more")
    for line in (ROOT / "tests" / "data" / f"{name}.jsonl").read_text(encoding="utf-8").splitlines()
]
WORDS = sorted({word for phrase in PHRASES for word in phrase.split()})
SIGNS = (
    "(", ")", "[", "]", "-", "–", "—", "−", " - ", ",", ", ", ";", "; ", ":", ". ", ". A", "/", "+", "±", "~", "<",
    ">", "≥",
    "×", " x ", "*", "%", "'", '"', "°", "′", "″", "½", "1/0", "0/3", "1 1/2", "1/2", "&", "=", "\n", "\n\n",
    "-\n", "\t",
    "\u00ad", "\u0301", "\u0316", "\u200b", "²", "٣", "一", "\x00", "\ud800", "1", "0", "9999999999999", "1,000", "0,5",
    "2n = ", "(-3)", "-5", "mm", "cm ", " m", "ft. ", "in. ", "km", "°N", "to ", "up to ", "times ", "half ",
    "twice ", "ratio ",
    "as long as ", "length/width", "except ", "without ", "becoming ", "when young ", "with ", "of the ", "at the ",
)  # fmt: skip
PIECES = st.sampled_from(WORDS).map(lambda word: word + " ") | st.sampled_from(SIGNS) | st.text(max_size=3)
MIXED = st.lists(PIECES, max_size=24).map("".join)
ANYTHING = st.text() | MIXED | MIXED | st.lists(st.sampled_from(PHRASES), min_size=1, max_size=3).map("; ".join)


@pytest.fixture(scope="module")
def demo() -> Vocabulary:
    return vocabulary_in(ROOT / "kb")


def bare(statements: Sequence[Found]) -> list[Found]:
    """The statements without their places."""
    return [replace(one, start=0, end=0) for one in statements]


# Any text at all.


@settings(max_examples=150, deadline=None)
@given(ANYTHING)
def test_spans_lie_in_the_text_in_order(text: str) -> None:
    description = read_description(text)
    places = [(one.start, one.end) for one in description.statements]
    assert places == sorted(places)
    for start, end in places:
        assert 0 <= start < end <= len(text)
        assert text[start:end] == text[start:end].strip() != ""
    reach = 0
    for left in description.left:
        assert reach <= left.start < left.end <= len(text)
        reach = left.end


@settings(max_examples=150, deadline=None)
@given(ANYTHING)
def test_every_word_is_accounted_for(text: str) -> None:
    """What may tell something lies in a statement or is left over; so does every number."""
    description = read_description(text)
    covered = [(one.start, one.end) for one in (*description.statements, *description.left)]
    line = Line(tokens_of(text))
    for item in items_of(line, own_words(())):
        telling = item.sort in (Is.FIGURE, Is.STATE, Is.LIKE, Is.RATIO, Is.STRANGE, Is.PASSED)
        for token in line.tokens[item.start : item.end]:
            if telling or token.sort is Sort.NUMBER:
                assert any(start <= token.start and token.end <= end for start, end in covered), token


@settings(max_examples=50, deadline=None)
@given(ANYTHING, ANYTHING)
def test_reading_does_not_remember(text: str, other: str) -> None:
    first = read_description(text)
    read_description(other)
    assert read_description(text) == first


# Drafts of any text, in the words of the demonstration.


def as_filed(draft: Draft, words: str) -> tuple[tuple[object, str], ...]:
    """What a literature file reads from the words of the draft, with its value and stage."""
    found = read_statement(draft.value or words, draft.choice.character)
    return tuple((one.value, draft.stage or one.stage) for one in found)


@settings(max_examples=150, deadline=None)
@given(text=ANYTHING)
def test_drafts_have_their_words(text: str, demo: Vocabulary) -> None:
    transcript = transcribe(text, demo)
    for draft in transcript.drafts:
        assert transcript.words(draft).strip()
        assert 0 < draft.confidence <= 1
        filed = as_filed(draft, transcript.words(draft))
        if not draft.value:
            assert filed == tuple((one.value, one.stage) for one in draft.choice.readings)


# Paragraphs as they are written.

ORGANS = ("leaves", "petals", "basal leaves", "corolla tube", "sepals", "bracts", "spur", "calyx lobes", "scape",
          "capsule",
          "folia", "sepala", "stem", "leaf blades", "petioles", "seeds")  # fmt: skip
STATES = ("ovate", "densely pubescent", "glabrous", "white", "pale yellow", "green or white", "ovate to lanceolate",
          "acute", "usually red", "white, rarely pink", "entire", "pale yellow when young",
          "sparsely hairy beneath")  # fmt: skip
UNITS = ("mm", "cm", "in.", "lines")
DASHES = "‐‑‒–—―−﹣－"
SINGLE, DOUBLE = "′’‘‛´`ʹ", "″”“„‟〃ʺ«»"
numbers = st.integers(1, 99).map(str) | st.integers(11, 99).map(lambda tenths: f"{tenths // 10}.{tenths % 10}")


@st.composite
def figures(draw: st.DrawFn) -> str:
    low, high, most = sorted(draw(st.sets(st.integers(1, 99), min_size=3, max_size=3)))
    shape = draw(
        st.sampled_from(("{0}-{1}", "{1}", "({0}-){1}-{2}", "{0}-{1}(-{2})", "to {2}", "{0} to {1}", "about {1}"))
    )
    unit, says = draw(st.sampled_from(UNITS)), draw(st.sampled_from(("long", "wide", "in diameter")))
    return f"{shape.format(low, high, most)} {unit} {says}"


sentences = st.builds(
    lambda organ, first, more: f"{organ} {', '.join([first, *more])}",
    st.sampled_from(ORGANS),
    st.sampled_from(STATES) | figures(),
    st.lists(st.sampled_from(STATES) | figures(), max_size=3),
)


@settings(max_examples=100, deadline=None)
@given(sentences)
def test_every_organ_that_opens_a_sentence_is_read(sentence: str) -> None:
    assert read_description(sentence).statements


@settings(max_examples=150, deadline=None)
@given(sentences)
def test_spans_hold_their_figures(sentence: str) -> None:
    for one in read_description(sentence).statements:
        if isinstance(one.value, Range):
            words = tokens_of(sentence[one.start : one.end])
            printed = {token.number.exact for token in words if token.number is not None}
            stated = (one.value.low, one.value.high, one.value.least, one.value.most)
            assert {Fraction(number) for number in stated if number is not None} <= printed


@settings(max_examples=150, deadline=None)
@given(sentences, sentences, st.sampled_from(["; ", ". ", ".\n", "\n\n", ";\n"]))
def test_sentences_are_read_alone(first: str, second: str, stop: str) -> None:
    if "." in stop or "\n\n" in stop:
        second = second.capitalize()
    parted = len(first) + len(stop)
    alone = [
        replace(one, start=one.start + parted, end=one.end + parted) for one in read_description(second).statements
    ]
    together = read_description(first + stop + second).statements
    assert together == (*read_description(first).statements, *alone)


ALONE = [phrase for phrase in PHRASES if not any(sign in phrase for sign in ".;\"'°,0(") and "elev" not in phrase]


@settings(max_examples=100, deadline=None)
@given(st.sampled_from(ALONE), sentences)
def test_a_printed_phrase_does_not_change_the_next_sentence(phrase: str, sentence: str) -> None:
    together = read_description(f"{phrase}; {sentence}").statements
    assert bare(together) == bare(read_description(phrase).statements) + bare(read_description(sentence).statements)


def gaps(sentence: str, gap: str) -> str:
    return gap.join(sentence.split(" "))


@settings(max_examples=100, deadline=None)
@given(sentences | st.sampled_from(PHRASES), st.sampled_from(["  ", "\u00a0", "\u2009", "\n", " \n ", "\t"]))
def test_spaces_and_ends_of_lines_change_nothing(sentence: str, gap: str) -> None:
    """But for a word with a hyphen, which is joined with the next at the end of a line (`bi- vel`)."""
    assume("\n" not in gap or "- " not in sentence)
    assert bare(read_description(gaps(sentence, gap)).statements) == bare(read_description(sentence).statements)


@settings(max_examples=100, deadline=None)
@given(sentences)
def test_case_changes_nothing(sentence: str) -> None:
    """But for a point before a capital, which ends a sentence: in capitals the inch has none here."""
    read = bare(read_description(sentence).statements)
    assert bare(read_description(sentence.capitalize()).statements) == read
    sentence = sentence.replace("in. ", "inches ")
    assert bare(read_description(sentence.upper()).statements) == bare(read_description(sentence).statements)


@settings(max_examples=100, deadline=None)
@given(st.sampled_from(PHRASES))
def test_accents_set_apart_change_nothing(phrase: str) -> None:
    composed, apart = (unicodedata.normalize(form, phrase) for form in ("NFC", "NFD"))
    for one, other in zip(read_description(composed).statements, read_description(apart).statements, strict=True):
        assert replace(one, start=0, end=0) == replace(other, start=0, end=0)
        assert unicodedata.normalize("NFC", apart[other.start : other.end]) == composed[one.start : one.end]


@settings(max_examples=100, deadline=None)
@given(sentences | st.sampled_from(PHRASES), st.sampled_from(DASHES))
def test_every_dash_reads_alike(sentence: str, dash: str) -> None:
    assume("−" not in sentence and "elev" not in sentence.lower() and "alt" not in sentence.lower())  # − may be a minus
    assert bare(read_description(sentence.replace("-", dash)).statements) == bare(read_description(sentence).statements)


@pytest.mark.parametrize("quotes", [*zip(SINGLE, DOUBLE, strict=False), ("'", "''")], ids=ascii)
def test_every_quote_reads_alike(quotes: tuple[str, str]) -> None:
    for phrase in (phrase for phrase in PHRASES if "'" in phrase or '"' in phrase):
        printed = phrase.replace("'", quotes[0]).replace('"', quotes[1])
        assert bare(read_description(printed).statements) == bare(read_description(phrase).statements), printed


@settings(max_examples=60, deadline=None)
@given(st.sampled_from(PHRASES), st.integers(0, 400))
def test_soft_hyphens_change_nothing(phrase: str, at: int) -> None:
    at %= len(phrase) + 1
    printed = phrase[:at] + "\u00ad\u200b" + phrase[at:]
    assert bare(read_description(printed).statements) == bare(read_description(phrase).statements)


@settings(max_examples=100, deadline=None)
@given(text=st.lists(sentences, min_size=1, max_size=4).map("; ".join))
def test_drafts_are_read_back_as_they_are_filed(text: str, demo: Vocabulary) -> None:
    transcript = transcribe(text, demo)
    for draft in transcript.drafts:
        wanted = tuple((one.value, one.stage) for one in draft.choice.readings)
        assert as_filed(draft, transcript.words(draft)) == wanted, draft.choice.character.name


@pytest.mark.parametrize(
    ("character", "value"),
    [
        (Character("plant width", "plant", "width", Kind.MEASURE, "mm"), "20–30 cm"),
        (Character("plant width", "plant", "width", Kind.MEASURE, "mm"), "(2.8–)3 in."),
        (Character("pool depth", "habitat", "depth", Kind.MEASURE, "mm"), "up to 2 m"),
        (Character("ovary shape", "ovary", "shape", Kind.NOMINAL, states=(State("seven-lobed"),)), "seven-lobed"),
        (Character("tube shape", "tube", "shape", Kind.NOMINAL, states=(State("equal"),)), "equal"),
    ],
)
def test_plain_values_need_no_word_of_the_property(character: Character, value: str) -> None:
    (reading,) = read_statement(value, character)
    assert format_value(reading.value, character) == value


@pytest.mark.parametrize("words", ["herb 20–30 cm tall", "herb to 30 cm", "not equal"])
def test_words_of_another_property_are_no_plain_value(words: str) -> None:
    for character in (
        Character("plant width", "plant", "width", Kind.MEASURE, "mm"),
        Character("tube shape", "tube", "shape", Kind.NOMINAL, states=(State("equal"),)),
    ):
        with pytest.raises(UnreadableValue):
            read_statement(words, character)


def test_drafts_of_printed_phrases_are_read_back(demo: Vocabulary) -> None:
    for phrase in PHRASES:
        transcript = transcribe(phrase, demo)
        for draft in transcript.drafts:
            wanted = tuple((one.value, one.stage) for one in draft.choice.readings)
            assert as_filed(draft, transcript.words(draft)) == wanted, (phrase, draft.choice.character.name)
