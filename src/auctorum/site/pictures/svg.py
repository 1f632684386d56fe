"""The few elements of SVG that the pictures need, as text.

Shapes carry classes and no colours: the style sheet of the site gives them ink, for light, dark and paper.
The attributes that a picture cannot be read without (font size, anchor) stand in the element itself.
"""

from __future__ import annotations

from functools import lru_cache
from xml.sax.saxutils import escape, quoteattr

FONT = 12.5  # px in the picture's own units
# Widths in parts of the size, of a serif face that sets rather wide; see `width_of`.
_WIDTHS = {**dict.fromkeys("iljtfI.,:;|'()[]-– ", 0.35), **dict.fromkeys("mMW@%—", 0.95), **dict.fromkeys("w&", 0.79)}


_quoted = lru_cache(4096)(quoteattr)  # classes and anchors come again and again


@lru_cache(8192)
def number(value: float) -> str:
    """At most one decimal, and no trailing zero, so that a picture is the same text everywhere.

    >>> number(12.0), number(3.14159), number(-0.01)
    ('12', '3.1', '0')
    """
    short = f"{value:.1f}"
    return "0" if short in ("-0.0", "0.0") else short.removesuffix(".0")


def element(tag: str, content: str = "", /, **attributes: str | float) -> str:
    """One element; `class_` gives `class`, and underscores give hyphens. `content` is SVG, not words."""
    given = "".join(
        f" {name.rstrip('_').replace('_', '-')}={_quoted(value if isinstance(value, str) else number(value))}"
        for name, value in attributes.items()
    )
    return f"<{tag}{given}>{content}</{tag}>" if content else f"<{tag}{given}/>"


def words(x: float, y: float, text: str, class_: str = "", anchor: str = "start", size: float = FONT) -> str:
    """A line of text whose foot stands at `y`; anchor is start, middle or end."""
    kind = {"class_": class_} if class_ else {}
    return element("text", escape(text), x=x, y=y, text_anchor=anchor, font_size=size, **kind)


def line(x1: float, y1: float, x2: float, y2: float, class_: str) -> str:
    """A straight line."""
    return element("line", x1=x1, y1=y1, x2=x2, y2=y2, class_=class_)


def box(x: float, y: float, width: float, height: float, class_: str, radius: float = 0) -> str:
    """A rectangle, with round corners where `radius` is given."""
    corners: dict[str, str | float] = {"rx": radius} if radius else {}
    return element("rect", x=x, y=y, width=max(width, 0), height=height, class_=class_, **corners)


def hatch(key: str) -> str:
    """The definition of a fill of slanting lines, to be used as `url(#key-hatch)`."""
    stroke = element("line", x1=0.0, y1=0.0, x2=0.0, y2=7.0, class_="hatch-line")
    pattern = element(
        "pattern", stroke, id=f"{key}-hatch", width="7", height="7",
        patternUnits="userSpaceOnUse", patternTransform="rotate(45)",
    )  # fmt: skip
    return element("defs", pattern)


def width_of(text: str, size: float = FONT) -> float:
    """About how wide `text` is when set; errs on the wide side, as labels must not touch."""
    units = sum(_WIDTHS.get(sign, 0.8 if sign.isupper() else 0.56) for sign in text)
    return units * size


def shortened(text: str, room: float, size: float = FONT) -> str:
    """`text`, or as much of it as fits into `room` with an ellipsis; a year at the end is kept.

    >>> shortened("Orrin & Thornquist 1947", 110)
    'Orrin & T… 1947'
    """
    if width_of(text, size) <= room:
        return text
    year = f" {text[-4:]}" if text[-4:].isdigit() else ""
    kept = text[: len(text) - len(year)]
    while kept and width_of(f"{kept}…{year}", size) > room:
        kept = kept[:-1]
    return f"{kept.rstrip(' ,(–')}…{year}"


def wrapped(text: str, room: float, size: float = FONT) -> tuple[str, ...]:
    """`text` broken at spaces and hyphens into lines that fit into `room`; a word too long is shortened."""
    lines: list[str] = []
    for word in text.replace("-", "- ").split():
        joined = f"{lines[-1]}{'' if lines[-1].endswith('-') else ' '}{word}" if lines else word
        if lines and width_of(joined, size) <= room:
            lines[-1] = joined
        else:
            lines.append(word)
    return tuple(shortened(each, room, size) for each in lines)


def picture(key: str, size: tuple[float, float], title: str, description: str, body: list[str], class_: str) -> str:
    """A whole picture: an image to those who cannot see it, with its title and description read out."""
    wide, high = size
    head = element("title", escape(title), id=f"{key}-title") + element("desc", escape(description), id=f"{key}-desc")
    return element(
        "svg", head + "".join(body), xmlns="http://www.w3.org/2000/svg", class_=f"picture {class_}", role="img",
        aria_labelledby=f"{key}-title {key}-desc", viewBox=f"0 0 {number(wide)} {number(high)}",
        width=wide, height=high,
    )  # fmt: skip
