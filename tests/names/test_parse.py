"""Names read from print. Names and people are invented, except the surnames that show a form (from memory)."""

from __future__ import annotations

import time

import pytest

from auctorum.names.format import format_name
from auctorum.names.name import Name, Ranked, UnreadableName
from auctorum.names.parse import parse, parse_name
from counting import calls


@pytest.mark.parametrize(
    ("printed", "written"),
    [
        pytest.param("Exemplum", "Exemplum", id="genus"),
        pytest.param("Exemplum Orrin", "Exemplum Orrin", id="genus-author"),
        pytest.param("Exemplum album Orrin", "Exemplum album Orrin", id="species"),
        pytest.param("Exemplum album ssp. longum Orrin", "Exemplum album subsp. longum Orrin", id="ssp"),
        pytest.param("Exemplum album subspec. longum", "Exemplum album subsp. longum", id="subspec"),
        pytest.param("Exemplum album v. longum", "Exemplum album var. longum", id="v"),
        pytest.param("Exemplum album varietas longum", "Exemplum album var. longum", id="varietas"),
        pytest.param("Exemplum album var longum", "Exemplum album var. longum", id="no-stop"),
        pytest.param("Exemplum album var.longum", "Exemplum album var. longum", id="no-space"),
        pytest.param("Exemplum album forma longum", "Exemplum album f. longum", id="forma"),
        pytest.param("Exemplum album fo. longum", "Exemplum album f. longum", id="fo"),
        pytest.param("Exemplum album nothossp. longum", "Exemplum album nothosubsp. longum", id="notho"),
        pytest.param("Exemplum album var. ×longum", "Exemplum album nothovar. longum", id="hybrid-variety"),
        pytest.param("Exemplum album [unranked] longum", "Exemplum album [unranked] longum", id="unranked"),
        pytest.param("Exemplum album longum Orrin", "Exemplum album [unranked] longum Orrin", id="no-term"),
        pytest.param(
            "Exemplum album Orrin subsp. longum Veldt var. minus Marsh",
            "Exemplum album Orrin subsp. longum Veldt var. minus Marsh",
            id="authors-at-every-rank",
        ),
        pytest.param("Exemplum x album", "Exemplum ×album", id="letter-x"),
        pytest.param("Exemplum X album", "Exemplum ×album", id="capital-x"),
        pytest.param("Exemplum × album", "Exemplum ×album", id="sign-apart"),
        pytest.param("× Exemplum album", "×Exemplum album", id="nothogenus"),
        pytest.param("xExemplum album", "×Exemplum album", id="nothogenus-joined"),
        pytest.param("Exemplum xgrandiflorum Orrin", "Exemplum ×grandiflorum Orrin", id="letter-x-joined"),
        pytest.param("Exemplum Xgrandiflorum", "Exemplum ×grandiflorum", id="capital-x-joined"),
        pytest.param("Exemplum xanthum", "Exemplum xanthum", id="x-of-a-latin-word"),
        pytest.param("Exemplum album (var.) longum", "Exemplum album var. longum", id="term-in-parentheses"),
        pytest.param("Exemplum sect. Calcaria (Orrin) Veldt", "Exemplum sect. Calcaria (Orrin) Veldt", id="section"),
        pytest.param("Exemplum (sect. Calcaria) album Orrin", "Exemplum (sect. Calcaria) album Orrin", id="in-section"),
        pytest.param("Exemplum (Orrin) Veldt", "Exemplum (Orrin) Veldt", id="genus-basionym"),
        pytest.param(
            "Exemplum subgen. Petraea Orrin sect. Calcaria Veldt",
            "Exemplum subg. Petraea Orrin sect. Calcaria Veldt",
            id="two-divisions",
        ),
        pytest.param("Exemplum Orrin sect. Exemplum", "Exemplum Orrin sect. Exemplum", id="autonym-of-genus"),
        pytest.param("Exemplum album Orrin var. album", "Exemplum album Orrin var. album", id="autonym"),
        pytest.param("Exemplum album var. album Orrin", "Exemplum album Orrin var. album", id="autonym-author-last"),
        pytest.param("EXEMPLUM ALBUM", "Exemplum album", id="capitals"),
        pytest.param("EXEMPLUM ALBUM VAR. LONGUM", "Exemplum album var. longum", id="capitals-all-through"),
        pytest.param("EXEMPLUM ALBUM L.", "Exemplum album L.", id="capitals-author"),
        pytest.param("Exemplum Album Var. Longum", "Exemplum album var. longum", id="title-case"),
        pytest.param("exemplum album", "Exemplum album", id="small-letters"),
        pytest.param("Exemplum_album_var._longum", "Exemplum album var. longum", id="underscores"),
        pytest.param("  Exemplum   album ( Orrin )  Veldt .", "Exemplum album (Orrin) Veldt.", id="stray-spaces"),
        pytest.param("“Exemplum album”", "Exemplum album", id="in-quotation-marks"),
        pytest.param("Exemplum novae-terrae", "Exemplum novae-terrae", id="hyphen"),
        pytest.param("Exemplum phaëthon var. cœruleum", "Exemplum phaëthon var. cœruleum", id="marks-and-ligatures"),
        pytest.param("E. album Orrin", "E. album Orrin", id="genus-abbreviated"),
        pytest.param("Exemplum album L.f. f. longum", "Exemplum album L. f. f. longum", id="son-then-form"),
        pytest.param("Exemplum album L. f. longum", "Exemplum album L. f. longum", id="form-not-son"),
        pytest.param("Exemplum album L. f. var. longum", "Exemplum album L. f. var. longum", id="son-not-form"),
    ],
)
def test_written_as_the_code_prints_it(printed: str, written: str) -> None:
    usage = parse(printed)
    assert (format_name(usage.name), usage.remainder) == (written, "")


def test_parts() -> None:
    assert parse_name("Exemplum ×album subsp. longum nothovar. minus") == Name(
        "Exemplum",
        "album",
        (Ranked("subspecies", "longum"), Ranked("variety", "minus", hybrid=True)),
        species_hybrid=True,
    )
    assert parse_name("Exemplum subg. Petraea sect. Calcaria") == Name(
        "Exemplum", divisions=(Ranked("subgenus", "Petraea"), Ranked("section", "Calcaria"))
    )


@pytest.mark.parametrize(
    ("printed", "name", "field", "value"),
    [
        ("Exemplum cf. album", "Exemplum album", "qualifiers", (("cf.", "species"),)),
        ("cf. Exemplum album", "Exemplum album", "qualifiers", (("cf.", "genus"),)),
        ("Exemplum album var. aff. longum", "Exemplum album var. longum", "qualifiers", (("aff.", "lower"),)),
        ("Exemplum ?album", "Exemplum album", "qualifiers", (("?", "species"),)),
        ("Exemplum album agg.", "Exemplum album", "qualifiers", (("agg.", "species"),)),
        ("Exemplum album auct. non Orrin", "Exemplum album", "sense", "auct. non Orrin"),
        ("Exemplum album auct. mult.", "Exemplum album", "sense", "auct. mult."),
        ("Exemplum album Orrin sensu Veldt 1911", "Exemplum album Orrin", "sense", "sensu Veldt 1911"),
        ("Exemplum album s. l.", "Exemplum album", "sense", "s. l."),
        ("Exemplum album sensu lato Orrin", "Exemplum album Orrin", "sense", "sensu lato"),
        ("Exemplum album s.str. var. longum", "Exemplum album var. longum", "sense", "s.str."),
        ("Exemplum album Orrin emend. Veldt", "Exemplum album Orrin", "sense", "emend. Veldt"),
        ("Exemplum album Orrin, non Veldt", "Exemplum album Orrin", "sense", "non Veldt"),
        ("Exemplum album Orrin p.p.", "Exemplum album Orrin", "sense", "p.p."),
        ("Exemplum album Orrin, nom. nud.", "Exemplum album Orrin", "notes", "nom. nud."),
        ("Exemplum ×album Orrin (pro sp.)", "Exemplum ×album Orrin", "notes", "pro sp."),
        ("Exemplum album Orrin in litt.", "Exemplum album Orrin", "notes", "in litt."),
        ("Exemplum sp.", "Exemplum", "notes", "sp."),
        ("Exemplum album β longum", "Exemplum album [unranked] longum", "notes", "β"),
        ("Exemplum album var. β. longum", "Exemplum album var. longum", "notes", "β"),
        ("Exemplum album proles longum", "Exemplum album [unranked] longum", "notes", "proles"),
        ("Exemplum album subsp. var. longum", "Exemplum album var. longum", "notes", "subsp."),
        ("Exemplum a1bum Orrin", "Exemplum", "remainder", "a1bum Orrin"),
        ("Exemplum album lusus longum", "Exemplum album [unranked] longum", "notes", "lusus"),
        ("Exemplum album Orrin 1911", "Exemplum album Orrin", "remainder", "1911"),
        (
            "Exemplum album Orrin, Fl. Cliff. 2: 34 (1911)",
            "Exemplum album Orrin",
            "remainder",
            "Fl. Cliff. 2: 34 (1911)",
        ),
        ("Exemplum album ‘Snow’", "Exemplum album", "remainder", "'Snow'"),
        ("Exemplum 'Snow'", "Exemplum", "remainder", "'Snow'"),
        ("Exemplum album Orrin × E. nigrum", "Exemplum album Orrin", "remainder", "× E. nigrum"),
        ("Exemplum album from the cliff", "Exemplum album", "remainder", "from the cliff"),
    ],
)
def test_what_surrounds_a_name_is_kept_apart(printed: str, name: str, field: str, value: object) -> None:
    usage = parse(printed)
    assert (format_name(usage.name), getattr(usage, field)) == (name, value)


@pytest.mark.parametrize(
    ("text", "why"),
    [
        ("", "no word to begin with"),
        ("…", "begins with|no word"),
        ("1911", "begins with `1911`"),
        ("var. longum", "`var.` is no genus"),
        ("Примерум album", "not in Latin letters"),
        ("E" + "x" * 80, "a word of more than 70 letters"),
        ("Exemplum " * 1000, "longer than 4000 characters"),
    ],
)
def test_unreadable(text: str, why: str) -> None:
    with pytest.raises(UnreadableName, match=why):
        parse(text)


@pytest.mark.parametrize("text", ["Exemplum album × E. nigrum", "Exemplum album x nigrum", "Exemplum × Alterum"])
def test_a_formula_is_no_name(text: str) -> None:
    with pytest.raises(UnreadableName, match="a hybrid formula has two parents"):
        parse_name(text)


@pytest.mark.parametrize("piece", ["(", "a", "A. ", "& ", "Orrin ", "f. ", "ex ", "× ", ", ", "de ", "var. ", "'", "["])
def test_a_megabyte_is_answered_at_once(piece: str) -> None:
    start = time.perf_counter()
    with pytest.raises(UnreadableName):
        parse("Exemplum album " + piece * (1_000_000 // len(piece)))
    assert time.perf_counter() - start < 5


@pytest.mark.parametrize("piece", ["(", "A. ", "A, ", "A & ", "A ex ", "f. ", "× ", "de ", "var. x", "' ", "[", "(A) "])
def test_the_longest_text_takes_linear_time(piece: str) -> None:
    def cost(length: int) -> int:
        text = "Exemplum album " + piece * ((length - 20) // len(piece))
        return calls(lambda: parse(text))

    assert cost(4000) < 4.8 * cost(1000)
