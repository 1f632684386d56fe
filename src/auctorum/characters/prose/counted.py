"""Adjectives of number: `8–12-flowered`, `3-celled`, `seven-lobed`, `quinqueloba`, and what they count."""

from __future__ import annotations

import re
from collections.abc import Mapping

from auctorum.characters.figures import Line
from auctorum.characters.prose.organs import organ_of
from auctorum.characters.tokens import Sort
from auctorum.characters.wording import counted_adjective

_FIXED: Mapping[str, str] = {
    "celled": "locule", "loculed": "locule", "locular": "locule", "loculate": "locule", "seeded": "seed", "spermous": "seed",
    "nerved": "vein", "veined": "vein", "flowered": "flower", "flower": "flower", "leaved": "leaf", "leaf": "leaf", "foliolate": "leaflet",
    "foliate": "leaflet", "foliated": "leaflet", "parted": "lobe", "cleft": "lobe", "fid": "lobe", "partite": "lobe", "lobate": "lobe",
    "lobed": "lobe", "toothed": "tooth", "dentate": "tooth", "ribbed": "rib", "angled": "angle", "valved": "valve", "jugate": "pair of leaflets",
    "ovulate": "ovule", "ovuled": "ovule", "rayed": "ray", "headed": "head", "stemmed": "stem", "styled": "style", "petalled": "petal",
    "bracted": "bract", "costate": "rib", "winged": "wing", "sepalled": "sepal", "pinnate": "pinna", "noded": "node", "spined": "spine",
    "florus": "flower", "flora": "flower", "florum": "flower", "florae": "flower", "floris": "flower", "flori": "flower", "flor": "flower",
    "florum": "flower", "flore": "flower", "flores": "flower", "floras": "flower", "floros": "flower", "floro": "flower", "bluetig": "flower",
    "blutig": "flower", "blutige": "flower", "zahlig": "part", "lobulate": "lobe", "carpellate": "carpel", "striped": "stripe", "spotted": "spot",
    "sulcate": "groove", "grooved": "groove", "furrowed": "furrow", "fruited": "fruit", "branched": "branch", "valvis": "valve",
    "loculare": "locule", "locularis": "locule", "locularia": "locule", "locularibus": "locule", "seriate": "series", "merous": "part",
    "foliolados": "leaflet", "foliolada": "leaflet", "floral": "flower", "floras": "flower", "flos": "flower", "flora": "flower", "staminate": "stamen",
}  # fmt: skip
_LATIN_PARTS: Mapping[str, str] = {
    "flor": "flower", "foliol": "leaflet", "locular": "locule", "ovulat": "ovule", "sperm": "seed", "nerv": "vein",
    "cost": "rib", "dent": "tooth", "lob": "lobe", "fid": "lobe", "jug": "pair of leaflets", "partit": "lobe", "valv": "valve",
    "petal": "petal", "sepal": "sepal", "phyll": "leaf", "andr": "stamen", "gyn": "style",
}  # fmt: skip
_LATIN = re.compile(r"[a-z]+?(" + "|".join(_LATIN_PARTS) + r")[a-z]{1,6}")


def counted_noun(line: Line, start: int, end: int) -> tuple[str, int]:
    """What a figure of the tokens start to end counts by an adjective behind it or in it, and the place after."""
    word = line.text(end - 1)
    if end == start + 1 and line.sort(start) is Sort.WORD and counted_adjective(word):
        match = _LATIN.fullmatch(word)
        return (_LATIN_PARTS[match[1]], end) if match else ("", end)
    place = line.skip(end, Sort.DASH)
    text = line.text(place)
    if line.sort(place) is not Sort.WORD:
        return "", end
    if text in ("flower", "leaf") and place == end:
        return "", end
    if (noun := _FIXED.get(text)) is not None:
        return noun, place + 1
    organ = organ_of(text[:-2]) or organ_of(text[:-1]) if text.endswith("ed") else None
    return (organ.name, place + 1) if organ and not organ.subject else ("", end)
