"""Every format gives back the words that go in, whatever they are, and never runs them.

The formats are read by others: Markdown by markdown-it-py (CommonMark and the tables of GitHub), HTML by html.parser,
CSV by csv; LaTeX by a strict reader of our own (document_reading), since no LaTeX need be installed.
"""

from __future__ import annotations

import csv
import io
import re
from xml.etree import ElementTree

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from auctorum.exchange import as_latex as latex
from auctorum.exchange.as_csv import as_csv, neutral
from auctorum.exchange.as_html import as_html
from auctorum.exchange.as_latex import as_latex
from auctorum.exchange.as_markdown import as_markdown
from auctorum.exchange.document import (
    Document,
    Heading,
    Items,
    Paragraph,
    Run,
    Sources,
    Table,
    UnevenTable,
    joined,
    text,
    words,
)
from auctorum.names.parse import parse_name
from document_reading import Page, inline_words, latex_rows, markdown_tables, markdown_tokens, page_of, squeezed

HOSTILE = [
    "a | b",
    "|",
    "\\|",
    "ends in \\",
    "<script>alert(1)</script>",
    "</td></table>",
    "&amp; & &#60;",
    '=cmd("x")',
    "+1",
    "-1",
    "@a",
    "\\write18{rm}",
    "\\end{document}",
    "50% of $4 #1 a_b^c~d {e}",
    "`tick` ``two``",
    "*bold* _under_ **x**",
    "[link](http://example.org) ![i](x)",
    "# no heading",
    "1. no list",
    "- no item",
    "> no quotation",
    "--- -- ,, << >> ?` !` ''",
    "line\nbreak\r\nand\ttab",
    "\u202eturned\u202c",
    "a\u200fb",
    "‹⅞–1⅜ poll.› × 2½ °C −5 ≥ 3′",
    "[*] starts like an argument",
    "中文 and ø ł ő",
    "\x1b[31mred\x1b[0m",
    "\x00\x07",
    " blank at both ends ",
    "~~struck~~ $x$",
    "www.example.org",
]
TEXTS = st.lists(st.tuples(st.text(max_size=8) | st.sampled_from(HOSTILE), st.booleans()), min_size=0, max_size=4).map(
    lambda runs: joined(Run(*run) for run in runs)
)


def tables() -> st.SearchStrategy[Table]:
    def of_width(width: int) -> st.SearchStrategy[Table]:
        row = st.lists(TEXTS, min_size=width, max_size=width).map(tuple)
        return st.builds(Table, TEXTS, row, st.lists(row, max_size=3).map(tuple), st.just((width - 1,)))

    return st.integers(1, 4).flatmap(of_width)


def cells(table: Table) -> list[list[str]]:
    return [[words(cell) for cell in row] for row in (table.headings, *table.rows)]


HARD = Table(text("All of it"), (text("words"), text("again")), tuple((text(one), text(one)) for one in HOSTILE))


# --- the document


def test_a_run_is_one_line_that_turns_nothing() -> None:
    assert words(text("a\r\n\tb\u202ec\u202c\x1bd")) == "a bc d"


def test_names_have_their_latin_words_in_italics() -> None:
    made = text("See ", parse_name("Exemplum album var. longum Orrin"), ".")
    assert [run.text for run in made if run.italic] == ["Exemplum album", "longum"]
    assert words(made) == "See Exemplum album var. longum Orrin."


def test_a_table_is_even() -> None:
    with pytest.raises(UnevenTable, match="a row of 1 cells under 2 headings"):
        Table((), (text("a"), text("b")), ((text("c"),),))


# --- CSV


@pytest.mark.parametrize(
    ("cell", "printed"),
    [
        ("22–34 mm", "22–34 mm"),
        ("–", "–"),
        ("−5", "−5"),
        ("=1+1", "'=1+1"),
        (" =1+1", "' =1+1"),
        ("+1", "'+1"),
        ("-1", "'-1"),
        ("@SUM(A1)", "'@SUM(A1)"),
        ("\t=1", "'\t=1"),
        ("a=1", "a=1"),
        ("", ""),
    ],
)
def test_no_cell_is_run(cell: str, printed: str) -> None:
    assert neutral(cell) == printed


def test_quoting_as_rfc_4180_has_it() -> None:
    """RFC 4180, section 2, rules 6 and 7 (from memory): commas and quotes are enclosed, quotes doubled."""
    made = Table((), (text("a"), text("b")), ((text("x, y"), text('say "z"')),))
    assert as_csv(made) == 'a,b\n"x, y","say ""z"""\n'


@settings(deadline=None, max_examples=100)
@given(tables())
def test_csv_gives_back_every_cell(table: Table) -> None:
    found = list(csv.reader(io.StringIO(as_csv(table))))
    assert found == [[neutral(cell) for cell in row] for row in cells(table)] or len(table.headings) == 1
    assert not any(cell[:1] in tuple("=+-@\t\r") and cell for row in found for cell in row)


# --- Markdown


@settings(deadline=None, max_examples=100)
@given(tables())
def test_markdown_gives_back_every_cell(table: Table) -> None:
    made = as_markdown(Document(text("T"), (Table((), table.headings, table.rows, table.right),)))
    assert markdown_tables(made) == [[[squeezed(cell) for cell in row] for row in cells(table)]]


@settings(deadline=None, max_examples=100)
@given(TEXTS)
def test_a_paragraph_of_markdown_stays_one(of) -> None:
    end = Paragraph(text("end"))
    tokens = markdown_tokens(as_markdown(Document(text("T"), (end, Paragraph(of), end))))
    said = [one for token in tokens if token.type == "inline" if (one := inline_words(token))]
    assert said == ["T", "end", *filter(None, [squeezed(words(of))]), "end"]
    assert {token.tag for token in tokens if token.nesting} == {"h1", "p"}


# --- HTML


def page(document: Document) -> Page:
    return page_of(as_html(document))


@settings(deadline=None, max_examples=100)
@given(tables(), TEXTS)
def test_html_gives_back_every_cell_and_word(table: Table, of) -> None:
    found = page(Document(of, (Paragraph(of), Items((of,)), Sources((of,)), Heading(of), table)))
    assert [[squeezed(cell) for cell in row] for row in found.tables[0]] == [
        [squeezed(cell) for cell in row] for row in cells(table)
    ]
    caption = [said] if (said := squeezed(words(table.caption))) else []
    assert [squeezed(block) for block in found.blocks] == [squeezed(words(of))] * 5 + caption


def test_a_page_asks_nothing_of_anybody() -> None:
    found = page(Document(text("T"), (HARD,)))
    assert {name for _, name, _ in found.attributes} == {
        "lang", "charset", "name", "content", "class", "role", "tabindex", "aria-label", "scope"
    }  # fmt: skip
    style = re.search("<style>(.*?)</style>", as_html(Document(text("T"), ())), re.S)
    assert style and "url(" not in style[1] and "@import" not in style[1] and "prefers-color-scheme: dark" in style[1]


def test_headings_and_rows_say_what_they_head() -> None:
    found = page(Document(text("T"), (HARD,), lang="en-GB"))
    scopes = [value for tag, name, value in found.attributes if (tag, name) == ("th", "scope")]
    assert scopes == ["col"] * 2 + ["row"] * len(HOSTILE)
    assert ("html", "lang", "en-GB") in found.attributes


def test_a_page_is_well_formed_xml_too() -> None:
    made = as_html(Document(text("T"), (HARD, Paragraph(text("a & b <c>")))))
    tree = ElementTree.fromstring(re.sub(r"<meta ([^>]*)>", r"<meta \1/>", made.removeprefix("<!doctype html>\n")))
    assert len(list(tree.iter("tr"))) == len(HOSTILE) + 1


# --- LaTeX


def drawn(cell: str) -> str:
    """What LaTeX can draw of a cell: characters without a shape, and other spaces than blanks, are not compared."""
    import unicodedata

    kept = (one for one in unicodedata.normalize("NFC", cell) if unicodedata.category(one) not in latex._UNSEEN)
    return squeezed("".join(kept).replace("\u202f", "\u2009").replace("\u2011", "-"))


@settings(deadline=None, max_examples=100)
@given(tables())
def test_latex_gives_back_every_cell(table: Table) -> None:
    made = as_latex(Document(text("T"), (Table((), table.headings, table.rows, table.right),)))
    assert latex_rows(made) == [[drawn(cell) for cell in row] for row in cells(table)]


def test_no_two_signs_of_latex_become_a_third() -> None:
    assert latex.escaped("-- ,, << >>") == "-{-} ,{,} <{<} >{>}"
    assert latex.escaped("?` !` ''") == (r"?\textasciigrave{} !\textasciigrave{} \textquotesingle{}\textquotesingle{}")


def test_a_row_that_starts_with_a_bracket_is_no_argument_of_the_row_before() -> None:
    made = as_latex(Document(text("T"), (Table((), (text("a"),), ((text("[2cm]"),), (text("*"),))),)))
    assert "\n\\mbox{{[}2cm{]}} \\\\\n{*} \\\\\n" in made


def test_signs_of_other_scripts_are_declared_for_pdflatex() -> None:
    assert r"\DeclareUnicodeCharacter{4E2D}{{[}U+4E2D{]}}" in as_latex(Document(text("中"), ()))
    assert r"\DeclareUnicodeCharacter" not in as_latex(Document(text("ő – × ° ½ ⅞ − ‹›"), ()))


def test_environments_and_braces_of_latex_balance() -> None:
    made = as_latex(Document(text("T"), (Heading(text("H")), HARD, Items((text("[a]"),)), Sources((text("b"),)))))
    depth: list[str] = []
    for kind, name in re.findall(r"(?<!\\)\\(begin|end)\{([a-z]+)\}", made):
        if kind == "begin":
            depth.append(name)
        else:
            assert depth.pop() == name
    assert depth == []
    assert made.count(r"\write18") == 0 and made.count(r"\end{document}") == 1
