"""Colour references of states as CIELAB, and how far two colours are apart by CIEDE2000.

All CIELAB here is for daylight D65 and the 2° observer. Munsell colours are defined under illuminant C and are brought
to D65 by the Bradford transform (common practice, no source). An instrument that gives CIELAB for D50, as in printing,
must be set to D65.
"""

from __future__ import annotations

import re
from functools import lru_cache
from itertools import combinations
from typing import NamedTuple

from auctorum.characters.munsell import Munsell, UnreadableColour, chromaticity, munsell_of, plainly_apart
from auctorum.characters.vocabulary import Character, State

# Mahy, Van Eycken & Oosterlinck 1994 (Color Research & Application 19: 105-121), from memory; they measured it in plain
# CIELAB distance, and it serves here, as it commonly does, for CIEDE2000.
JUST_NOTICEABLE = 2.3
_ILLUMINANT_C = (0.31006, 0.31616)  # chromaticity for the 2° observer (CIE 15, from memory)
_D65 = (0.3127, 0.329)
_FIGURE = r"([-−+]?\d{1,3}(?:\.\d{1,6})?)"
_LAB = re.compile(rf"(?:cie)?lab[\s:(]\s?{_FIGURE}[ ,]\s?{_FIGURE}[ ,]\s?{_FIGURE}\)?", re.IGNORECASE)


class Lab(NamedTuple):
    """A colour in CIELAB (D65, 2°): lightness from 0 to 100, `a` from green to red, `b` from blue to yellow."""

    lightness: float
    a: float
    b: float


def reference_of(text: str) -> Munsell | Lab:
    """The colour reference as it stands, Munsell or CIELAB; raises UnreadableColour.

    >>> reference_of("lab 62 -20 40")
    Lab(lightness=62.0, a=-20.0, b=40.0)
    """
    said = text.strip()
    if not said.casefold().startswith(("lab", "cielab")):
        return munsell_of(said)
    match = _LAB.fullmatch(said)
    if match is None:
        raise UnreadableColour(text, "CIELAB is the word lab and three figures")
    lab = Lab(*(float(figure.replace("−", "-")) for figure in match.groups()))
    if not 0 <= lab.lightness <= 100:
        raise UnreadableColour(text, "lightness lies between 0 and 100")
    if max(abs(lab.a), abs(lab.b)) > 150:
        raise UnreadableColour(text, "no surface has a or b beyond 150")
    return lab


@lru_cache(maxsize=1024)
def lab_of(text: str) -> Lab:
    """The colour of a reference in CIELAB; raises UnreadableColour, also where the Munsell renotation ends."""
    reference = reference_of(text)
    return reference if isinstance(reference, Lab) else _from_munsell(reference)


def difference(one: Lab, other: Lab) -> float:
    """How far two colours are apart by CIEDE2000: 0 for the same, about 2 just noticeable, 100 black to white."""
    from coloraide import Color

    first, second = Color("lab-d65", one), Color("lab-d65", other)
    return float(first.delta_e(second, method="2000"))


def nearest_state(lab: Lab, character: Character) -> tuple[State, float] | None:
    """The state whose reference is nearest, the first of equals, and how far it is; None where no state has one.

    Raises UnreadableColour for a reference that cannot be read.
    """
    told = [(difference(lab, lab_of(state.colour)), place) for place, state in enumerate(character.states)
            if state.colour]  # fmt: skip
    if not told:
        return None
    far, place = min(told)
    return character.states[place], far


def near_states(character: Character) -> tuple[tuple[State, State, float], ...]:
    """States of one character whose references can hardly be told apart, with their difference; in order.

    References that the notation alone shows to be apart are not computed. Raises UnreadableColour.
    """
    told = [(state, state.colour, reference_of(state.colour)) for state in character.states if state.colour]
    found = []
    for (one, said, first), (other, as_said, second) in combinations(told, 2):
        if isinstance(first, Munsell) and isinstance(second, Munsell) and plainly_apart(first, second):
            continue
        far = difference(lab_of(said), lab_of(as_said))
        if far < JUST_NOTICEABLE:
            found.append((one, other, far))
    return tuple(found)


def screen_colour(lab: Lab) -> str:
    """The nearest colour that a screen can show, as `#rrggbb` (sRGB).

    >>> screen_colour(Lab(100, 0, 0))
    '#ffffff'
    """
    from coloraide import Color

    return str(Color("lab-d65", lab).convert("srgb").fit().to_string(hex=True))


def _from_munsell(colour: Munsell) -> Lab:
    from coloraide import Color

    x, y, luminance = chromaticity(colour)
    if luminance == 0:
        return Lab(0.0, 0.0, 0.0)
    under_c = [x * luminance / y, luminance, (1 - x - y) * luminance / y]
    under_d65 = Color.chromatic_adaptation(_ILLUMINANT_C, _D65, under_c, method="bradford")
    lightness, a, b = Color("xyz-d65", under_d65).convert("lab-d65").coords()
    return Lab(float(lightness), float(a), float(b))
