"""Readers of the formats that documents are written in, for tests: what a reader of each would see.

Markdown by markdown-it-py (CommonMark with the tables of GitHub), HTML by html.parser, LaTeX by a strict reader that
knows the few commands that words may hold.
"""

from __future__ import annotations

import re
from html.parser import HTMLParser

from markdown_it import MarkdownIt
from markdown_it.token import Token


def squeezed(said: str) -> str:
    """Without blanks at the ends, which formats drop, those that do not break included."""
    return re.sub("[\t\n\r ]+", " ", said).strip()


def markdown_tokens(made: str) -> list[Token]:
    """The blocks of a text in GitHub's Markdown."""
    return MarkdownIt("commonmark").enable(["table", "strikethrough"]).parse(made)


def markdown_tables(made: str) -> list[list[list[str]]]:
    """The cells of every table, as a reader of GitHub's Markdown has them."""
    found: list[list[list[str]]] = []
    inside = False
    for token in markdown_tokens(made):
        if token.type in ("table_open", "table_close"):
            inside = token.type == "table_open"
            found += [[]] if inside else []
        elif token.type == "tr_open":
            found[-1].append([])
        elif token.type == "inline" and inside:
            found[-1][-1].append(inline_words(token))
    return found


def inline_words(token: Token) -> str:
    """The words of a paragraph or cell; nothing in it may be more than words and italics."""
    kinds = {child.type for child in token.children}
    assert kinds <= {"text", "text_special", "em_open", "em_close", "html_inline"}, kinds
    assert all(child.content in ("<i>", "</i>") for child in token.children if child.type == "html_inline")
    return squeezed("".join(child.content for child in token.children if child.type.startswith("text")))


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


def page_of(made: str) -> Page:
    """The page, read to its end."""
    found = Page()
    found.feed(made)
    found.close()
    assert found.open == []
    return found


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
