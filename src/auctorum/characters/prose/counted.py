"""Adjectives of number: `8–12-flowered`, `3-celled`, `seven-lobed`, `quinqueloba`, and what they count."""

from __future__ import annotations

import re
from collections.abc import Mapping

from auctorum.characters.figures import Line
from auctorum.characters.prose.organs import organ_of
from auctorum.characters.tokens import Sort
from auctorum.characters.wording import counted_adjective

_FIXED: Mapping[str, str] = {
    word: name
    for name, words in {
        "locule": "celled loculed locular loculate facherig facherige zweifacherig",
        "seed": "seeded spermous",
        "vein": "nerved veined nervig nervado nervada nervadas nervados nerve nerves",
        "flower": "flowered blutig blutige blutigen bluhend bluetig floro flora floros floras flore flores floral",
        "leaf": "leaved",
        "leaflet": "foliolate foliate foliolado foliolada folioladas foliolados foliole folioles",
        "lobe": "parted cleft lobed lobulate lappig lobado lobada lobados lobadas",
        "tooth": "toothed dentate denticulate zahnig dentado dentada dentados dentadas",
        "rib": "ribbed costate rippig",
        "pair of leaflets": "jugate paarig",
        "valve": "valved valvate",
        "ovule": "ovulate ovuled",
        "ray": "rayed strahlig",
        "series": "seriate",
        "part": "merous zahlig mero mera meros meras mere meres",
        "carpel": "carpellate",
        "groove": "grooved furrowed",
        "angle": "angled",
    }.items()
    for word in words.split()
}
_LATIN_PARTS: Mapping[str, str] = {
    "flor": "flower", "foliolat": "leaflet", "foliat": "leaf", "locul": "locule", "ovulat": "ovule", "sperm": "seed",
    "nerv": "vein", "ven": "vein", "costat": "rib", "dentat": "tooth", "denticulat": "tooth", "dent": "tooth",
    "lob": "lobe",
    "fid": "lobe", "jug": "pair of leaflets", "partit": "lobe", "valv": "valve", "radiat": "ray", "petal": "petal",
    "sepal": "sepal", "phyll": "leaf", "andr": "stamen", "gyn": "style", "angul": "angle", "angulat": "angle",
    "seriat": "series", "seriad": "series", "mer": "part", "glum": "glume", "stachy": "spike",
    "cephal": "head", "carpell": "carpel", "sulcat": "groove", "striat": "stria", "fl": "flower",
}  # fmt: skip
_ENDINGS = "[a-z]{1,6}"
_NAMED = "|".join(sorted(_LATIN_PARTS, key=len, reverse=True))
_LATIN = re.compile(rf"[a-z]{{2,10}}?({_NAMED}){_ENDINGS}")
_LATIN_ALONE = re.compile(rf"({_NAMED}){_ENDINGS}")


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
    if (noun := _FIXED.get(text)) is not None:
        return noun, place + 1
    if place > end and (latin := _LATIN_ALONE.fullmatch(text)) is not None:
        return _LATIN_PARTS[latin[1]], place + 1
    organ = organ_of(text[:-2]) or organ_of(text[:-1]) if text.endswith("ed") else None
    return (organ.name, place + 1) if organ and not organ.subject else ("", end)
