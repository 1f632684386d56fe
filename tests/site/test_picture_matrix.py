"""The group matrix: a table whose cells say verdict and weight to eye and ear, escaped, with links."""

from __future__ import annotations

from xml.etree import ElementTree

import pytest

from auctorum.site.pictures.group_matrix import Cell, GroupMatrix, Row, group_matrix, shade
from auctorum.site.words import Run, plain, text_of

SIGNS = (
    ("conflicting", "≠", "Some cannot both be right."),
    ("consistent", "≈", "All leave room for the same plants."),
    ("single author", "1", "Only one author."),
    ("silent", "–", "Nobody says anything."),
)
TAXA = ((Run("Exemplum album", True), Run(" Orrin")), (Run("Exemplum luteum", True, "taxa/exemplum-luteum.html"),))
ROWS = (
    Row((Run("spur length", href="characters/spur-length.html"),), "mature", (
        Cell("conflicting", 8, "taxa/a.html#spur-length"), Cell("consistent", 3))),
    Row(plain("leaf width"), "", (Cell("single author", 1), Cell("silent", 0))),
    Row(plain("aspect"), "", (None, Cell("consistent", 2))),
)  # fmt: skip
MATRIX = GroupMatrix("All at a glance", "Two taxa and three characters.", TAXA, ROWS, SIGNS)


def read(matrix: GroupMatrix, root: str = "") -> ElementTree.Element:
    return ElementTree.fromstring(group_matrix(matrix, "k", root))


def heard(element: ElementTree.Element) -> str:
    """What is read out of an element: all but what is hidden from those who listen."""
    if element.get("aria-hidden") == "true":
        return ""
    return (element.text or "") + "".join(heard(child) + (child.tail or "") for child in element)


def body(element: ElementTree.Element) -> list[list[ElementTree.Element]]:
    """The rows below the heads, each with its own head first."""
    return [list(row) for group in element.iter("tbody") for row in group]


def test_every_cell_is_read_out_in_words_under_its_heads() -> None:
    table = read(MATRIX)
    heads = [heard(head) for head in table.iter("th") if head.get("scope") == "col"]
    assert heads == [text_of(taxon) for taxon in TAXA]
    assert [[heard(cell) for cell in row] for row in body(table)] == [
        ["spur length (mature)", "conflicting, eight independent works", "consistent, three independent works"],
        ["leaf width", "single author, one independent work", "nobody says anything"],
        ["aspect", "", "consistent, two independent works"],
    ]


def test_every_cell_shows_the_sign_and_the_figure_silence_a_dot() -> None:
    shown = [["".join(part.text or "" for part in cell.iter("span") if part.get("aria-hidden")) for cell in row[1:]]
             for row in body(read(MATRIX))]  # fmt: skip
    assert shown == [["≠8", "≈3"], ["11", "·"], ["", "≈2"]]


def test_links_are_relative_to_the_page() -> None:
    links = [link.get("href") for link in read(MATRIX, "../").iter("a")]
    assert links == ["../taxa/exemplum-luteum.html", "../characters/spur-length.html", "../taxa/a.html#spur-length"]


def test_the_key_has_the_signs_that_are_used_and_no_others() -> None:
    (key,) = read(MATRIX).iter("ul")
    words = [heard(line).strip() for line in key]
    assert words[:3] == ["conflicting", "consistent", "single author"]
    assert "nobody says anything" in words and "blank: not asked" in words
    asked = GroupMatrix("T", "D", TAXA, ROWS[:1], SIGNS)
    words = [heard(line).strip() for line in next(read(asked).iter("ul"))]
    assert words[:2] == ["conflicting", "consistent"] and "nobody says anything" not in words
    assert "blank: not asked" not in words


def test_the_box_that_scrolls_can_be_reached_by_keyboard_and_has_a_name() -> None:
    table = read(MATRIX)
    (box,) = [each for each in table.iter("div") if each.get("role") == "region"]
    assert box.get("tabindex") == "0"
    named = {each.get("id"): heard(each) for each in table.iter() if each.get("id")}
    assert named[box.get("aria-labelledby")] == "All at a glance"
    assert named[next(table.iter("table")).get("aria-describedby")] == "Two taxa and three characters."


def test_more_works_never_give_a_lighter_ground() -> None:
    grounds = [shade(count) for count in range(40)]
    assert grounds == sorted(grounds) and set(grounds) == {0, 1, 2, 3, 4}


def test_a_large_group_keeps_one_cell_for_each_taxon_and_character() -> None:
    taxa = tuple((Run(f"Exemplum taxon {number}", True),) for number in range(20))
    rows = tuple(Row(plain(f"character {n}"), "", tuple(Cell("consistent", n % 9) for _ in taxa)) for n in range(40))
    text = group_matrix(GroupMatrix("T", "D", taxa, rows, SIGNS), "k")
    assert [len(row) for row in body(ElementTree.fromstring(text))] == [21] * 40
    assert len(text) < 250 * 800


def test_a_row_that_does_not_fit_is_refused() -> None:
    with pytest.raises(ValueError, match="zip"):
        group_matrix(GroupMatrix("T", "D", TAXA, (Row(plain("x"), "", (None,)),), SIGNS), "k")


def test_hostile_words_stay_words_and_no_style_or_script_is_written() -> None:
    nasty = '</caption><script>alert(1)</script>&"<b>'
    cell = Cell(nasty, 2, f'"{nasty}')
    matrix = GroupMatrix(nasty, nasty, ((Run(nasty, True, nasty),),), (Row(plain(nasty), nasty, (cell,)),),
                         ((nasty, nasty, nasty),))  # fmt: skip
    found = read(matrix)
    assert not {"script", "b", "style"} & {each.tag for each in found.iter()}
    assert not any(each.get("style") or each.get("onclick") for each in found.iter())
    assert nasty in [each.text for each in found.iter("caption")]
