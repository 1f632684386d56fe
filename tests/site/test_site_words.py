"""Words for pages: counts, lists, and names in italics wherever they stand."""

from __future__ import annotations

import pytest

from auctorum.site.words import NameFinder, Run, article, counted, listed, plain, text_of, years

ALBUM = (Run("Exemplum album", True),)
LONGUM = (Run("Exemplum album ", True), Run("var. "), Run("longum", True))
FINDER = NameFinder({"Exemplum album": ALBUM, "Exemplum album var. longum": LONGUM})


@pytest.mark.parametrize(
    ("text", "italic"),
    [
        pytest.param("see Exemplum album, too", ["Exemplum album"], id="before-a-comma"),
        pytest.param("(Exemplum album)", ["Exemplum album"], id="in-brackets"),
        pytest.param("Exemplum album var. longum.", ["Exemplum album ", "longum"], id="longest-first"),
        pytest.param("Exemplum albumen", [], id="no-part-of-a-word"),
        pytest.param("Exemplum", [], id="no-half-name"),
        pytest.param("", [], id="nothing"),
        pytest.param("Exemplum album Exemplum album", ["Exemplum album"] * 2, id="twice"),
    ],
)
def test_names_are_found_in_running_text(text: str, italic: list[str]) -> None:
    found = FINDER.set(text)
    assert text_of(found) == text
    assert [run.text for run in found if run.italic] == italic


def test_a_long_text_takes_linear_time() -> None:
    words = "Exemplum " * 50_000
    assert text_of(FINDER.set(words)) == words


def test_lists_and_counts() -> None:
    assert text_of(listed([plain("a")])) == "a"
    assert text_of(listed([plain("a"), plain("b")])) == "a and b"
    assert (counted(0, "work"), counted(13, "work")) == ("no works", "13 works")
    assert (article("species"), article("unranked name"), article("infraspecific taxon")) == (
        "a species", "an unranked name", "an infraspecific taxon"
    )  # fmt: skip
    assert (years(1887, 1887), years(1887, 1904)) == ("1887", "1887–1904")
