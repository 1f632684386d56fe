"""A document as LaTeX: a whole `article` for pdfLaTeX, XeLaTeX or LuaLaTeX, with longtable and booktabs.

Letters and signs of Latin scripts are set by each of the three; other scripts need one of the latter two and a font
that has them, while pdfLaTeX prints their number, as [U+4E2D]. Characters without a shape are left out.
"""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Iterable, Sequence
from functools import singledispatch

from auctorum.exchange.document import (
    Block,
    Document,
    Heading,
    Items,
    Paragraph,
    Sources,
    Table,
    Text,
    is_unbroken,
    joined,
    words,
)

_PREAMBLE = r"""\documentclass[11pt,a4paper]{article}
\ifdefined\Umathchar\else
\usepackage[T1]{fontenc}
\usepackage[utf8]{inputenc}
\usepackage{textcomp}
\fi
\usepackage[margin=22mm]{geometry}
\usepackage{array}
\usepackage{booktabs}
\usepackage{longtable}
\setlength{\emergencystretch}{3em}
\setlength{\parindent}{0pt}
\setlength{\parskip}{0.5\baselineskip}
\newcommand{\vulgar}[2]{\textsuperscript{#1}/\textsubscript{#2}}
"""
# Signs that LaTeX reads, those it would join with a neighbour, and those that its fonts lack. Brackets and asterisks
# are read behind the end of a row.
_SIGNS = {
    "\\": r"\textbackslash{}", "{": r"\{", "}": r"\}", "$": r"\$", "&": r"\&", "#": r"\#", "_": r"\_", "%": r"\%",
    "^": r"\textasciicircum{}", "~": r"\textasciitilde{}", "[": "{[}", "]": "{]}", "*": "{*}",
    "'": r"\textquotesingle{}", '"': r"\textquotedbl{}", "`": r"\textasciigrave{}",
    "\u00a0": "~", "\u2009": r"\,", "\u202f": r"\,", "\u2011": "-",
    "−": r"\ensuremath{-}", "≤": r"\ensuremath{\leq}", "≥": r"\ensuremath{\geq}", "≈": r"\ensuremath{\approx}",
    "≠": r"\ensuremath{\neq}", "≡": r"\ensuremath{\equiv}", "′": r"\ensuremath{{}^{\prime}}",
    "″": r"\ensuremath{{}^{\prime\prime}}", "∞": r"\ensuremath{\infty}", "→": r"\ensuremath{\rightarrow}",
    "⅓": r"\vulgar{1}{3}", "⅔": r"\vulgar{2}{3}", "⅛": r"\vulgar{1}{8}", "⅜": r"\vulgar{3}{8}",
    "⅝": r"\vulgar{5}{8}", "⅞": r"\vulgar{7}{8}", "⅕": r"\vulgar{1}{5}", "⅖": r"\vulgar{2}{5}",
    "⅗": r"\vulgar{3}{5}", "⅘": r"\vulgar{4}{5}", "⅙": r"\vulgar{1}{6}", "⅚": r"\vulgar{5}{6}",
    "⅐": r"\vulgar{1}{7}", "⅑": r"\vulgar{1}{9}", "⅒": r"\vulgar{1}{10}",
}  # fmt: skip
_JOINING = "-,<>"  # two alike become a dash or a quotation mark
_UNSEEN = ("Cf", "Cs", "Co", "Cn")  # categories of characters that have no shape
_FOREIGN = re.compile("[^\x00-\u017f–—‘’‚“”„†‡•…‰‹›€™]")  # what pdfLaTeX does not know
_SECTION = {1: "section", 2: "subsection"}
LEAST, MOST = 7, 34  # letters by which the widths of columns are shared out
LINE = 96  # letters that a line of a table holds


def as_latex(document: Document) -> str:
    """The whole file, from the document class on; it compiles as it is."""
    body = "\n".join(
        [f"{{\\LARGE {_inline(document.title)}\\par}}\n", *(f"{_block(block)}\n" for block in document.blocks)]
    )
    return f"{_PREAMBLE}{_declared(body)}\\begin{{document}}\n{body}\n\\end{{document}}\n"


def _declared(body: str) -> str:
    """For pdfLaTeX, each sign of another script as its number, so that it is missed and stops nothing."""
    signs = sorted(set(_FOREIGN.findall(body)))
    if not signs:
        return ""
    lines = (f"\\DeclareUnicodeCharacter{{{ord(sign):04X}}}{{{{[}}U+{ord(sign):04X}{{]}}}}" for sign in signs)
    return "\n".join([r"\ifdefined\Umathchar\else", *lines, r"\fi", ""])


@singledispatch
def _block(block: Block) -> str:
    raise TypeError(type(block))


@_block.register
def _(block: Heading) -> str:
    return f"\\{_SECTION[block.level]}*{{{_inline(block.text)}}}"


@_block.register
def _(block: Paragraph) -> str:
    return f"{{\\small {_inline(block.text)}\\par}}" if block.aside else _inline(block.text)


@_block.register
def _(block: Items) -> str:
    return _listed("itemize", block.texts)


@_block.register
def _(block: Sources) -> str:
    label = "\\renewcommand{\\labelenumi}{{[}\\arabic{enumi}{]}}"
    return f"{{{label}\n{_listed('enumerate', block.entries)}\n}}"


@_block.register
def _(block: Table) -> str:
    caption = _inline(block.caption)
    weights = [_weight(column) for column in zip(block.headings, *block.rows, strict=True)]
    whole = sum(weights) <= LINE
    return "\n".join(
        [
            *([f"{{\\small {caption}\\par}}", r"\nopagebreak"] if caption else []),
            r"{\footnotesize\setlength{\tabcolsep}{4pt}\renewcommand{\arraystretch}{1.15}\setlength{\LTleft}{0pt}",
            f"\\begin{{longtable}}{{{_columns(weights, block.right)}}}",
            r"\toprule",
            _row(block.headings, whole),
            r"\midrule",
            r"\endhead",
            r"\bottomrule",
            r"\endfoot",
            *(_row(row, whole) for row in block.rows),
            r"\end{longtable}}",
        ]
    )


def _row(cells: Iterable[Text], whole: bool) -> str:
    """A row; where there is room for it, short figures stay `whole` on one line."""
    told = (f"\\mbox{{{_inline(cell)}}}" if whole and is_unbroken(cell) else _inline(cell) for cell in cells)
    return " & ".join(told) + r" \\"


def _listed(environment: str, texts: Iterable[Text]) -> str:
    items = "\n".join(f"\\item {_inline(text)}" for text in texts)
    return f"\\begin{{{environment}}}\n{items}\n\\end{{{environment}}}"


def _columns(weights: Sequence[int], right: Sequence[int]) -> str:
    """Columns that share the line by their weights."""
    whole = sum(weights)
    made = []
    for number, weight in enumerate(weights):
        side = r"\raggedleft" if number in right else r"\raggedright"
        width = f"\\dimexpr {weight / whole:.4f}\\linewidth-2\\tabcolsep\\relax"
        made.append(f">{{{side}\\arraybackslash}}p{{{width}}}")
    return "".join(made)


def _weight(cells: Sequence[Text]) -> int:
    """What a column asks for: room for its widest cell that is not broken, its longest word, and for much text more."""
    whole = max((len(words(cell)) for cell in cells if is_unbroken(cell)), default=0)
    word = max((len(one) for cell in cells for one in words(cell).split()), default=0)
    return max(LEAST, min(max(whole, word) + 1, MOST), min(max(len(words(cell)) for cell in cells), MOST) * 2 // 3)


def _inline(of: Text) -> str:
    runs = (f"\\textit{{{escaped(run.text)}}}" if run.italic else escaped(run.text) for run in joined(of))
    return "".join(runs).strip(" ")


def escaped(said: str) -> str:
    """Words in which no sign is a command, and no two signs become a third.

    >>> escaped("50% of 4–8 × 2–3 mm, c. 7°")
    '50\\\\% of 4–8 × 2–3 mm, c. 7°'
    """
    found: list[str] = []
    last = ""
    for sign in unicodedata.normalize("NFC", said):
        if sign not in _SIGNS and unicodedata.category(sign) in _UNSEEN:
            continue
        found.append(f"{{{sign}}}" if sign == last and sign in _JOINING else _SIGNS.get(sign, sign))
        last = sign
    return "".join(found)
