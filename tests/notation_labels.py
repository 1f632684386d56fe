"""Readings of a description as labels, and labels compared as notation.md (section 9) lays down.

A label is a mapping of the form of tests/data/notation-phrases.jsonl. The rules are kept to the letter: what section 9
does not call equal is different here. The plurals are written anew, so that no table of the reader judges itself.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from decimal import Decimal
from typing import Any

from auctorum.characters.prose.found import Comparison, Found
from auctorum.characters.values import Modality, Range, States

Label = Mapping[str, Any]

NEAR = Decimal("0.001")
EXACT = ("character", "of", "unit", "bound", "stage", "modality")
NUMBERS = ("low", "high", "low_extreme", "high_extreme")
FACTORS = ("factor_low", "factor_high")
PARIS = {"paris-line": "line", "paris-inch": "in", "paris-foot": "ft"}
UNITLESS = {"count": "none", "ratio": "ratio"}


# What was read, as labels.


def labels(statements: Iterable[Found]) -> list[dict[str, Any]]:
    """The statements in their order as labels; a range with a usual part gives two."""
    return [_without_blanks(label) for found in statements for label in _labels(found)]


def _labels(found: Found) -> Iterator[dict[str, Any]]:
    about = {"structure": found.structure, "character": found.property, "stage": found.stage, "of": found.of}
    beside = about | {"modality": _modality(found.modality)}
    value = found.value
    if isinstance(value, States):
        shares = [{"state": one.state, "to": one.to, "modality": _modality(one.modality)} for one in value.shares]
        yield beside | {"states": [_without_blanks(share) for share in shares]}
    elif isinstance(value, Comparison):
        times = value.times
        factors = {"factor_low": _rounded(times.low), "factor_high": _rounded(times.high)}
        bound = "min" if times.high is None else "max" if times.low is None else None
        yield beside | {"relative": {"to": value.to} | factors, "bound": bound, "approx": times.approximate}
    else:
        unit = PARIS.get(value.unit, value.unit) or UNITLESS.get(found.property)
        yield beside | {"unit": unit} | _figures(value)
        if value.usual is not None:
            low, high = map(_rounded, value.usual)
            yield about | {"unit": unit, "low": low, "high": high, "modality": "usually"}


def _figures(value: Range) -> dict[str, Any]:
    numbers = map(_rounded, (value.low, value.high, value.least, value.most))
    bound = "max" if value.low is None else "min" if value.high is None or value.more else None
    return dict(zip(NUMBERS, numbers, strict=True)) | {"bound": bound, "approx": value.approximate}


def _rounded(number: Decimal | None) -> Decimal | None:
    return None if number is None else round(number, 3)


def _modality(modality: Modality | None) -> str | None:
    if modality is None or modality is Modality.ALWAYS:
        return None
    return "always-not" if modality is Modality.NEVER else modality.value


def _without_blanks(label: Mapping[str, Any]) -> dict[str, Any]:
    return {key: value for key, value in label.items() if not (value is None or value is False or value == "")}


# Labels made ready to be compared.


@dataclass(frozen=True, slots=True)
class Statement:
    """A label with its words normalised; `states` are state, end of the span and modality, empty where not given."""

    structure: str
    exact: tuple[str, ...]
    approx: bool
    numbers: tuple[Decimal | None, ...]
    to: str
    states: frozenset[tuple[str, str, str]]
    shown: str = field(compare=False)

    def equals(self, other: Statement) -> bool:
        """Whether every field is the same; numbers within 0.001."""
        return _rest(self) == _rest(other) and all(map(_near, self.numbers, other.numbers))


def _rest(one: Statement) -> tuple[object, ...]:
    return one.structure, one.exact, one.approx, one.to, one.states


def _near(one: Decimal | None, other: Decimal | None) -> bool:
    if one is None or other is None:
        return one is other
    return abs(one - other) <= NEAR


def statements(given: Iterable[Label]) -> list[Statement]:
    """The labels normalised, those with states only merged by structure, character and stage."""
    whole: list[Statement] = []
    merged: dict[tuple[str, str, str], list[Label]] = {}
    for label in given:
        if label.get("states") and not _has_figures(label):
            key = structure_words(label["structure"]), label["character"], label.get("stage") or ""
            merged.setdefault(key, []).append(label)
        else:
            whole.append(_statement(label))
    return whole + [_statement(_merge(some)) for some in merged.values()]


def _has_figures(label: Label) -> bool:
    return bool(label.get("relative")) or any(label.get(key) is not None for key in NUMBERS)


def _merge(some: Sequence[Label]) -> dict[str, Any]:
    states = [
        dict(state, modality=state.get("modality") or label.get("modality"))
        for label in some
        for state in label["states"]
    ]
    together = {key: value for label in some for key, value in label.items()}
    return together | {"modality": None, "states": [_without_blanks(state) for state in states]}


def _statement(label: Label) -> Statement:
    relative = label.get("relative") or {}
    numbers = [label.get(key) for key in NUMBERS] + [relative.get(key) for key in FACTORS]
    colour = label["character"] == "colour"
    return Statement(
        structure=structure_words(label["structure"]),
        exact=tuple(label.get(key) or "" for key in EXACT),
        approx=bool(label.get("approx")),
        numbers=tuple(None if number is None else Decimal(str(number)) for number in numbers),
        to=structure_words(relative.get("to") or ""),
        states=frozenset(
            (
                state_words(one["state"], colour=colour),
                state_words(one.get("to") or "", colour=colour),
                one.get("modality") or "",
            )
            for one in label.get("states") or ()
        ),
        shown=show(label),
    )


def show(label: Label) -> str:
    """A label in one line, without what is not compared: `leaf length (young): low 2, high 3, unit cm`."""
    stage = f" ({label['stage']})" if label.get("stage") else ""
    parts = [f"{key} {float(label[key]):g}" for key in NUMBERS if label.get(key) is not None]
    parts += [f"{key} {label[key]}" for key in ("unit", "of", "bound", "modality") if label.get(key)]
    parts += ["approx"] if label.get("approx") else []
    if relative := label.get("relative"):
        low, high = ("" if relative.get(key) is None else f"{float(relative[key]):g}" for key in FACTORS)
        parts.append(f"{low}..{high} times {relative['to']}")
    for one in label.get("states") or ():
        span = f" to {one['to']}" if one.get("to") else ""
        parts.append(f"{one.get('modality') or ''} {one['state']}{span}".strip())
    return f"{label['structure']} {label['character']}{stage}: {', '.join(parts)}"


# Words that are equal.

WORDS = {
    "edge": "margin",
    "tip": "apex",
    "nerve": "vein",
    "disk": "disc",
    "tomentum": "hair",
    "indumentum": "hair",
    "midvein": "midrib",
    "midnerve": "midrib",
}
PHRASES = {
    "mid vein": "midrib",  # mid-vein, and mid-nerve
    "leaf stalk": "petiole",
    "flower stalk": "pedicel",
    "disc flower": "disc floret",
    "ray flower": "ray floret",
}
OF_BLADE = ("base", "apex", "margin", "midrib", "surface")
WITH_CELLS = ("ovary", "fruit", "achene", "berry", "capsule", "drupe", "follicle", "legume", "nut", "nutlet", "pod")
STATE_WORDS = {
    "gray": "grey",
    "nearly": "almost",
    "wholly": "completely",
    "entirely": "completely",
    "totally": "completely",
    "circular": "orbicular",
    "hairless": "glabrous",
    "bare": "glabrous",
    "spatulate": "spathulate",
    "puberulent": "puberulous",
}


def structure_words(text: str) -> str:
    """The structure in lower case and the singular, and in the one of its equal names that is kept.

    >>> structure_words("Leaf-blade tips"), structure_words("pairs of leaflets")
    ('leaf apex', 'pair of leaflet')
    """
    words = [singular(word) for word in _plain(text).split()]
    name = " ".join(WORDS.get(word, word) for word in words)
    for said, kept in PHRASES.items():
        name = _replaced(name, said, kept)
    if name in ("lamina", "blade"):
        return "leaf blade"
    if name.split(" ")[-1] in OF_BLADE:
        name = _replaced(name, "leaf blade", "leaf")
    if name in {f"{whole} cell" for whole in WITH_CELLS}:
        return "locule"
    name = _replaced(name, "abaxial leaf surface", "lower leaf surface")
    return _replaced(name, "adaxial leaf surface", "upper leaf surface")


def state_words(text: str, *, colour: bool = False) -> str:
    """The state in lower case, and in the one of its equal forms that is kept; `colour` where it is one.

    >>> state_words("More or less egg-shaped"), state_words("light gray", colour=True)
    ('± ovate', 'pale grey')
    """
    signs = text.lower().replace("+-", " ± ").replace("±", " ± ")
    state = _replaced(_replaced(_plain(signs), "more or less", "±"), "egg shaped", "ovate")
    words = [STATE_WORDS.get(word, word) for word in state.split()]
    if len(words) > 1 and words[-1] in ("colored", "coloured"):
        words.pop()
    state = " ".join(words)
    for word in ("tinged", "flushed", "suffused"):
        state = _replaced(state, f"{word} with", word)
    return re.sub(r"\blight (?=\S)", "pale ", state) if colour else state


def _plain(text: str) -> str:
    return " ".join(re.sub("[-\u2010\u2011]", " ", text.lower()).split())


def _replaced(text: str, said: str, kept: str) -> str:
    """`text` with whole words replaced."""
    return f" {text} ".replace(f" {said} ", f" {kept} ").strip()


IRREGULAR = {
    "teeth": "tooth",
    "leaves": "leaf",
    "halves": "half",
    "axes": "axis",
    "calyces": "calyx",
    "cortices": "cortex",
    "apices": "apex",
    "caudices": "caudex",
    "rachides": "rachis",
    "septa": "septum",
    "capitula": "capitulum",
    "labella": "labellum",
    "opercula": "operculum",
    "series": "series",
    "species": "species",
    "lens": "lens",
}
# Endings of plurals, the first that fits; a word in -ss, -us or -is is none.
ENDINGS = (
    ("mata", "ma"),
    ("pses", "psis"),
    ("ises", "is"),
    ("uses", "us"),
    ("sses", "ss"),
    ("ches", "ch"),
    ("shes", "sh"),
    ("xes", "x"),
    ("ies", "y"),
    ("ae", "a"),
    ("ia", "ium"),
    ("i", "us"),
    ("ss", "ss"),
    ("us", "us"),
    ("is", "is"),
    ("s", ""),
)


def singular(word: str) -> str:
    """The singular of an English or Latin noun in the nominative; a singular stays.

    >>> [singular(word) for word in ("perigynia", "phyllaries", "branches", "setae", "rachis")]
    ['perigynium', 'phyllary', 'branch', 'seta', 'rachis']
    """
    if word in IRREGULAR:
        return IRREGULAR[word]
    for plural, one in ENDINGS:
        if len(word) > len(plural) + 1 and word.endswith(plural):
            return word.removesuffix(plural) + one
    return word


# The judgement of an item.


@dataclass(frozen=True, slots=True)
class Outcome:
    """A reading against one list of labels: how many are met, which are not, and what was read beside them."""

    right: int
    missing: tuple[Statement, ...]
    extra: tuple[Statement, ...]
    failed: str = ""  # why there is no reading at all

    @property
    def asked(self) -> int:
        """Labelled statements, and one more for each statement read beyond their number."""
        return self.right + max(len(self.missing), len(self.extra))

    @property
    def whole(self) -> bool:
        """Whether the reading equals the list."""
        return self.right == self.asked and not self.failed


def read_and_judge(item: Mapping[str, Any], read: Callable[..., Any]) -> Outcome:
    """The phrase of the item read by `read` (as read_description), and judged; whatever it raises is a failure."""
    try:
        found = labels(read(item["phrase"], signs=item.get("given")).statements)
    except Exception as error:
        return Outcome(0, tuple(statements(item["statements"])), (), f"{type(error).__name__}: {error}")
    return judge(item, found)


def judge(item: Mapping[str, Any], read: Iterable[Label]) -> Outcome:
    """The reading against `statements` or the list of `also` that it meets best, each as a whole."""
    found = statements(read)
    outcomes = [_against(statements(one), found) for one in (item["statements"], *(item.get("also") or ()))]
    return max(outcomes, key=lambda outcome: (outcome.whole, outcome.right / max(outcome.asked, 1)))


def _against(wanted: Sequence[Statement], found: Sequence[Statement]) -> Outcome:
    extra, missing = list(found), []
    for statement in wanted:
        met = next((one for one in extra if statement.equals(one)), None)
        if met is None:
            missing.append(statement)
        else:
            extra.remove(met)
    return Outcome(len(wanted) - len(missing), tuple(missing), tuple(extra))
