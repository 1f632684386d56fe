"""Every format gives back the words that go in, whatever they are, and never runs them.

The formats are read by others: Markdown by markdown-it-py (CommonMark and the tables of GitHub), HTML by html.parser,
CSV by csv; LaTeX by a strict reader below, since no LaTeX need be installed.
"""

from __future__ import annotations

import csv
import io
import re
from html.parser import HTMLParser
from xml.etree import ElementTree

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from markdown_it import MarkdownIt

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


def squeezed(said: str) -> str:
    """Without blanks at the ends, which formats drop, those that do not break included."""
    return re.sub("[\t\n\r ]+", " ", said).strip()


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


def markdown_tables(made: str) -> list[list[list[str]]]:
    """The cells of every table, as a reader of GitHub's Markdown has them."""
    found: list[list[list[str]]] = []
    for token in MarkdownIt("commonmark").enable(["table", "strikethrough"]).parse(made):
        if token.type == "table_open":
            found.append([])
        elif token.type == "tr_open":
            found[-1].append([])
        elif token.type == "inline" and found and token.level and found[-1]:
            found[-1][-1].append(inline_words(token))
    return found


def inline_words(token) -> str:
    kinds = {child.type for child in token.children}
    assert kinds <= {"text", "text_special", "em_open", "em_close", "html_inline"}, kinds
    assert all(child.content in ("<i>", "</i>") for child in token.children if child.type == "html_inline")
    return squeezed("".join(child.content for child in token.children if child.type.startswith("text")))


@settings(deadline=None, max_examples=100)
@given(tables())
def test_markdown_gives_back_every_cell(table: Table) -> None:
    made = as_markdown(Document(text("T"), (Table((), table.headings, table.rows, table.right),)))
    assert markdown_tables(made) == [[[squeezed(cell) for cell in row] for row in cells(table)]]


@settings(deadline=None, max_examples=100)
@given(TEXTS)
def test_a_paragraph_of_markdown_stays_one(of) -> None:
    tokens = (
        MarkdownIt("commonmark")
        .enable(["table", "strikethrough"])
        .parse(as_markdown(Document(text("T"), (Paragraph(text("end")), Paragraph(of), Paragraph(text("end"))))))
    )
    said = [one for token in tokens if token.type == "inline" if (one := inline_words(token))]
    assert said == ["T", "end", *filter(None, [squeezed(words(of))]), "end"]
    assert {token.tag for token in tokens if token.nesting} == {"h1", "p"}


# --- HTML

VOID = {"meta"}


class Page(HTMLParser):
    """Tags must balance; gathers tables, paragraphs and every attribute."""

    def __init__(self) -> None:
        super().__init__(convert_charrefs=True)
        self.open: list[str] = []
        self.tables: list[list[list[str]]] = []
        self.blocks: list[str] = []
        self.attributes: list[tuple[str, str, str | None]] = []

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.attributes += [(tag, name, value) for name, value in attrs]
        if tag not in VOID:
            self.open.append(tag)
        if tag == "table":
            self.tables.append([])
        elif tag == "tr":
            self.tables[-1].append([])
        elif tag in ("td", "th"):
            self.tables[-1][-1].append("")
        elif tag in ("p", "li", "h1", "h2", "h3", "caption"):
            self.blocks.append("")

    def handle_endtag(self, tag: str) -> None:
        assert self.open.pop() == tag

    def handle_data(self, data: str) -> None:
        if {"td", "th"} & set(self.open):
            self.tables[-1][-1][-1] += data
        elif {"p", "li", "h1", "h2", "h3", "caption"} & set(self.open):
            self.blocks[-1] += data


def page(document: Document) -> Page:
    found = Page()
    found.feed(as_html(document))
    found.close()
    assert found.open == []
    return found


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

COMMANDS = {
    "textbackslash": "\\", "textasciicircum": "^", "textasciitilde": "~", "textquotesingle": "'", "textquotedbl": '"',
    "textasciigrave": "`", "textbar": "|",
}  # fmt: skip
MATHS = {"-": "−", r"\leq": "≤", r"\geq": "≥", r"\approx": "≈", r"\neq": "≠", r"\equiv": "≡", r"{}^{\prime}": "′",
         r"{}^{\prime\prime}": "″", r"\infty": "∞", r"\rightarrow": "→"}  # fmt: skip
VULGAR = {(1, 3): "⅓", (2, 3): "⅔", (1, 8): "⅛", (3, 8): "⅜", (5, 8): "⅝", (7, 8): "⅞", (1, 5): "⅕", (2, 5): "⅖",
          (3, 5): "⅗", (4, 5): "⅘", (1, 6): "⅙", (5, 6): "⅚", (1, 7): "⅐", (1, 9): "⅑", (1, 10): "⅒"}  # fmt: skip


def group(said: str, at: int) -> tuple[str, int]:
    """What stands between the braces that open at a place, and the place behind them."""
    assert said[at] == "{", said[at:]
    depth, start = 0, at
    while True:
        if said[at] == "\\":
            at += 1
        elif said[at] in "{}":
            depth += 1 if said[at] == "{" else -1
        at += 1
        if not depth:
            return said[start + 1 : at - 1], at


def latex_words(said: str) -> str:
    """The words of a cell or line, read strictly: what is no word must be one of the known commands."""
    found, at = "", 0
    while at < len(said):
        sign = said[at]
        if sign == "\\":
            name = re.compile(r"\\([a-zA-Z]+|.)").match(said, at)
            assert name
            at = name.end()
            if name[1] in COMMANDS:
                assert said[at : at + 2] == "{}", said
                found, at = found + COMMANDS[name[1]], at + 2
            elif name[1] in ("textit", "ensuremath", "mbox"):
                inner, at = group(said, at)
                found += MATHS[inner] if name[1] == "ensuremath" else latex_words(inner)
            elif name[1] == "vulgar":
                above, at = group(said, at)
                below, at = group(said, at)
                found += VULGAR[int(above), int(below)]
            elif name[1] == ",":
                found += "\u2009"
            else:
                assert name[1] in "{}$&#_%", name[1]
                found += name[1]
        elif sign == "{":
            inner, at = group(said, at)
            found += latex_words(inner)
        else:
            assert sign not in "}$&#^_%", said
            found, at = found + ("\u00a0" if sign == "~" else sign), at + 1
    return found


def latex_rows(made: str) -> list[list[str]]:
    inside = made.split("\\toprule\n")[1].split("\\end{longtable}")[0]
    rules = ("\\midrule", "\\endhead", "\\bottomrule", "\\endfoot")
    lines = [line for line in inside.split("\n") if line and line not in rules]
    assert all(line.endswith(" \\\\") for line in lines)
    return [[squeezed(latex_words(cell)) for cell in re.split(r"(?<!\\) ?& ?", line[:-3])] for line in lines]


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
