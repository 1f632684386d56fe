"""Author citations. People are invented, except surnames that show a form (well-known botanists, from memory)."""

from __future__ import annotations

import pytest

from auctorum.names.format import format_authors
from auctorum.names.name import Authors, Credit, Team, UnreadableName
from auctorum.names.parse import parse_authors


@pytest.mark.parametrize(
    ("printed", "written"),
    [
        pytest.param("L.", "L.", id="one"),
        pytest.param("DC.", "DC.", id="capitals"),
        pytest.param("K.Koch", "K. Koch", id="initial-joined"),
        pytest.param("J.F.Gmel.", "J. F. Gmel.", id="two-initials"),
        pytest.param("Hook.f.", "Hook. f.", id="son"),
        pytest.param("Rchb. fil.", "Rchb. fil.", id="fil"),
        pytest.param("Torrey, Jr. et A.Gray", "Torrey Jr. & A. Gray", id="junior"),
        pytest.param("Radcl.-Sm.", "Radcl.-Sm.", id="hyphen-after-stop"),
        pytest.param("Sánchez-Moreno", "Sánchez-Moreno", id="hyphen"),
        pytest.param("C.-F.Liang", "C.-F. Liang", id="hyphened-initials"),
        pytest.param("de Candolle", "de Candolle", id="de"),
        pytest.param("van der Hoek", "van der Hoek", id="van-der"),
        pytest.param("v.Müller & von Mueller", "v. Müller & von Mueller", id="von"),
        pytest.param("d’Urville", "d'Urville", id="d-apostrophe"),
        pytest.param("’t Hart", "'t Hart", id="t-apostrophe"),
        pytest.param("O'Brien and McVaugh", "O'Brien & McVaugh", id="and"),
        pytest.param("Orrin, Veldt et Marsh", "Orrin, Veldt & Marsh", id="three"),
        pytest.param("Orrin & Veldt & Marsh", "Orrin, Veldt & Marsh", id="three-and"),
        pytest.param("Orrin, Veldt, & Marsh", "Orrin, Veldt & Marsh", id="comma-before-and"),
        pytest.param("Orrin et al.", "Orrin & al.", id="et-al"),
        pytest.param("Orrin, Veldt & al.", "Orrin, Veldt & al.", id="two-and-al"),
        pytest.param("Orrin ex Veldt", "Orrin ex Veldt", id="ex"),
        pytest.param("Orrin ex Veldt ex Marsh", "Orrin ex Veldt ex Marsh", id="ex-twice"),
        pytest.param("hort. ex K.Koch", "hort. ex K. Koch", id="hort"),
        pytest.param("Orrin in Veldt & Marsh", "Orrin in Veldt & Marsh", id="in"),
        pytest.param("(Wall. ex A.DC.)Rehder", "(Wall. ex A. DC.) Rehder", id="ex-in-parentheses"),
        pytest.param("(Orrin)", "(Orrin)", id="basionym-alone"),
    ],
)
def test_written(printed: str, written: str) -> None:
    authors = parse_authors(printed)
    assert format_authors(authors) == written
    assert parse_authors(written) == authors


def test_sides() -> None:
    assert parse_authors("(Orrin ex Veldt) Marsh & al. in Wynd") == Authors(
        basionym=Credit(Team(("Veldt",)), ex_before=Team(("Orrin",))),
        own=Credit(Team(("Marsh",), and_others=True), within=Team(("Wynd",))),
    )


@pytest.mark.parametrize(
    ("text", "why"),
    [
        ("", "no author in it"),
        ("Orrin 1911", "`1911` is no author"),
        ("(Orrin", r"`\(Orrin` is no author"),
        ("Orrin ex", "`ex` is no author"),
        ("longum", "`longum` is no author"),
    ],
)
def test_unreadable(text: str, why: str) -> None:
    with pytest.raises(UnreadableName, match=why):
        parse_authors(text)
