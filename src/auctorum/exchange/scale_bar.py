"""A scale bar of 10 cm and 4 in. as an SVG picture in millimetres: true to size where it is printed at 100 %."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

LENGTH_MM = 100
INCHES = 4
WIDTH_MM, HEIGHT_MM = 110, 16
_LEFT = 3
_LINE = 7  # where millimetres stand on the line and inches hang from it
_INCH = Fraction("25.4")
_PARTS = 16  # of an inch


def scale_bar() -> str:
    """The picture: millimetres above the line, sixteenths of an inch below it, every centimetre and inch numbered."""
    ticks = [*_millimetres(), *_sixteenths()]
    return "\n".join(
        [
            f'<svg class="scale" xmlns="http://www.w3.org/2000/svg" width="{WIDTH_MM}mm" height="{HEIGHT_MM}mm" '
            f'viewBox="0 0 {WIDTH_MM} {HEIGHT_MM}" role="img" aria-label="Scale bar: 10 cm and 4 inches">',
            f'<path d="M{_LEFT} {_LINE}h{_mm(INCHES * _INCH)}" stroke="#000" stroke-width=".2"/>',
            f'<path d="{"".join(ticks)}" stroke="#000" stroke-width=".15" fill="none"/>',
            *(_number(_LEFT + 10 * cm, _LINE - 4.2, str(cm)) for cm in range(LENGTH_MM // 10 + 1)),
            *(_number(_LEFT + float(inch * _INCH), _LINE + 7, str(inch)) for inch in range(INCHES + 1)),
            _number(_LEFT + LENGTH_MM + 5, _LINE - 4.2, "cm"),
            _number(_LEFT + float(INCHES * _INCH) + 3.4, _LINE + 7, "in."),
            "</svg>",
        ]
    )


def _millimetres() -> Iterator[str]:
    for mm in range(LENGTH_MM + 1):
        height = 3.6 if mm % 10 == 0 else 2.6 if mm % 5 == 0 else 1.6
        yield f"M{_LEFT + mm} {_LINE}v-{height}"


def _sixteenths() -> Iterator[str]:
    """Longer at halves, quarters and eighths."""
    for part in range(INCHES * _PARTS + 1):
        step = next(step for step in (16, 8, 4, 2, 1) if part % step == 0)
        height = {16: 4.0, 8: 3.2, 4: 2.5, 2: 1.9, 1: 1.3}[step]
        yield f"M{_mm(_LEFT + part * _INCH / _PARTS)} {_LINE}v{height}"


def _number(x: float, y: float, text: str) -> str:
    return f'<text x="{x:g}" y="{y:g}" font-size="3.2" text-anchor="middle">{text}</text>'


def _mm(value: Fraction) -> str:
    return f"{float(value):.4f}".rstrip("0").rstrip(".")
