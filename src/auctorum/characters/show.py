"""Values and figures in the notation of the trade; what is printed here reads back as the same value."""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction
from itertools import groupby

from auctorum.characters.directions import compass_point
from auctorum.characters.tokens import VULGAR
from auctorum.characters.values import Modality, Range, Share, States, Value
from auctorum.characters.vocabulary import Character

_SIGN_OF = {fraction: sign for sign, fraction in VULGAR.items()}
_GLUED = {"degree": "°", "percent": "%"}
_PRINTED = {
    "in": "in.", "line": "lines", "paris-line": "Paris lines", "paris-inch": "Paris inches", "paris-foot": "Paris feet"
}  # fmt: skip
_SAID = {Modality.ALWAYS: "", Modality.NEVER: "not "}


def format_range(range_: Range) -> str:
    """The range as a description prints it, extremes in parentheses, a single value once.

    >>> format_range(Range(Decimal(22), Decimal(34), "mm", Decimal(18), Decimal(41)))
    '(18–)22–34(–41) mm'
    >>> format_range(Range(None, Decimal("1.5"), "in", parts=(1, 1, 2, 1)))
    'up to 1½ in.'
    """
    if range_.step is not None and (arc := _arc(range_)):
        return arc
    least, low, high, most = _figures(range_)
    lead = ("up to " if low is None else "") + ("ca. " if range_.approximate else "")
    core = _core(low, high)
    opened = "+" if high is None or range_.more else ""
    before = f"({least}–){' ' if core.startswith('−') else ''}" if least is not None else ""
    after = f"(–{most})" if most is not None else ""
    return f"{lead}{before}{core}{opened}{after}{_usual(range_)}{_unit(range_.unit)}"


def format_value(value: Value, character: Character | None = None) -> str:
    """A range, or states with how often each occurs: `green or white; rarely ivory to yellow`.

    With its character, the states of a group stand in the order of the vocabulary.
    """
    if isinstance(value, Range):
        return format_range(value)
    return "; ".join(
        f"{_SAID.get(modality, f'{modality} ')}{' or '.join(_share(share) for share in _in_order(shares, character))}"
        for modality, shares in _grouped(value)
    )


def format_number(value: Fraction, digits: int = 3) -> str:
    """A computed number as a person would write it: at most `digits` significant ones, whole digits never cut.

    >>> format_number(Fraction("0.98425")), format_number(Fraction("1234.5")), format_number(Fraction(30))
    ('0.984', '1234', '30')
    """
    size, places = abs(value), digits
    while size >= 1 and places > 0:
        size, places = size / 10, places - 1
    while 0 < size < Fraction(1, 10) and places < 12:
        size, places = size * 10, places + 1
    return _digits(Decimal(round(value * 10**places)).scaleb(-places).normalize())


def format_span(low: Fraction | None, high: Fraction | None, unit: str) -> str:
    """A computed span in its unit; None is an open end, `any` where both are.

    >>> format_span(Fraction(22), Fraction(41), "mm"), format_span(None, Fraction(5), "mm"), format_span(None, None, "")
    ('22–41 mm', 'up to 5 mm', 'any')
    """
    if low is None and high is None:
        return "any"
    core = _core(_number(low), _number(high))
    lead, opened = ("up to " if low is None else ""), ("+" if high is None else "")
    return f"{lead}{core}{opened}{_unit(unit)}"


def _number(value: Fraction | None) -> str | None:
    return None if value is None else format_number(value)


def _core(low: str | None, high: str | None) -> str:
    if low is None or high is None or low == high:
        return low or high or ""
    return f"{low}–{high}"


def _unit(unit: str) -> str:
    return _GLUED.get(unit, f" {_PRINTED.get(unit, unit)}" if unit else "")


def _figures(range_: Range) -> tuple[str | None, str | None, str | None, str | None]:
    least, low, high, most = range_.parts
    return (
        _figure(range_.least, least),
        _figure(range_.low, low),
        _figure(range_.high, high) if range_.high != range_.low else _figure(range_.low, low),
        _figure(range_.most, most),
    )


def _figure(value: Decimal | None, parts: int) -> str | None:
    """The printed digits, or whole and fraction for a number printed with one."""
    if value is None:
        return None
    whole, over = divmod(round(abs(Fraction(value)) * parts), parts)
    if parts == 1 or over == 0:
        return _digits(value)
    rest = Fraction(over, parts)
    sign, minus = _SIGN_OF.get(rest), "−" if value < 0 else ""
    if sign is None:
        return f"{minus}{whole} {rest}" if whole else f"{minus}{rest}"
    return f"{minus}{whole or ''}{sign}"


def _digits(value: Decimal) -> str:
    return format(value, "f").replace("-", "−")


def _usual(range_: Range) -> str:
    if range_.usual is None:
        return ""
    low, high = (_digits(value) for value in range_.usual)
    return f" (usually {low if low == high else f'{low}–{high}'})"


def _arc(range_: Range) -> str:
    if range_.unit != "degree" or range_.low is None or range_.high is None:
        return ""
    first, last = compass_point(range_.low), compass_point(range_.high)
    if not first or not last:
        return ""
    return first if range_.low == range_.high else f"{first} to {last}"


def _grouped(value: States) -> list[tuple[Modality, tuple[Share, ...]]]:
    """Neighbouring shares of one modality together, in the order of the work."""
    return [(modality, tuple(shares)) for modality, shares in groupby(value.shares, lambda share: share.modality)]


def _in_order(shares: tuple[Share, ...], character: Character | None) -> tuple[Share, ...]:
    if character is None:
        return shares
    places = {state.name: index for index, state in enumerate(character.states)}
    return tuple(sorted(shares, key=lambda share: places.get(share.state, len(places))))


def _share(share: Share) -> str:
    return share.state if share.to is None else f"{share.state} to {share.to}"
