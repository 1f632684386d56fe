"""What a field sheet says, in upright and italic runs: the same for the page and for the measure of its lines."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence

from auctorum.circumscription.key.words import Runs
from auctorum.circumscription.phrases import listed
from auctorum.circumscription.separation_words import percent
from auctorum.determination.sheet.sheet import Boundary, Item, Rule, Sheet, Where
from auctorum.determination.sheet.units import DECIMALS

CHECK_SCALE = "Print at 100 % and check this scale against a ruler: printers shrink pages."
FILL_IN = (
    "Leave empty what you did not look at. Write the code of a state, type its name. Type each plant under these very "
    f"headings, with what is written once in every row. {DECIMALS}"
)
TAKE_CARE = "Take care."
LIMITS = "Thresholds, and plants misjudged"
_NO_BREAK = "\u00a0"
UPRIGHT = False


def title(sheet: Sheet) -> Runs:
    """`Field sheet: A, B and C`, and whose view it is."""
    found: list[tuple[str, bool]] = [("Field sheet: ", UPRIGHT)]
    for number, taxon in enumerate(sheet.taxa):
        joint = "" if not number else " and " if number == len(sheet.taxa) - 1 else ", "
        found += [(joint, UPRIGHT), *sheet.names[taxon]]
    return (*found, (f" (sec. {sheet.sec})" if sheet.sec else "", UPRIGHT))


def best_first(*, beside: bool) -> str:
    """What heads the characters; it says what stands below them where thresholds have no column of their own."""
    return "What to measure, the best first" if beside else f"The best first; below: {LIMITS[:1].lower()}{LIMITS[1:]}"


def character_words(item: Item) -> tuple[str, str]:
    """The name with the stages that count, and what can be written: codes and states, or that nothing is."""
    stages = " or ".join(one.stage for one in item.stages if one.stage)
    name = f"{item.character} ({stages})" if stages else item.character
    where = {Where.SITE: "once for the site", Where.RECKONED: "reckoned"}.get(item.where, "")
    return name, ": ".join(filter(None, (where, ", ".join(_state(*one) for one in item.states))))


def how_to_measure(sheet: Sheet) -> tuple[tuple[str, str], ...]:
    """Each character with how it is measured, in the order of the sheet; those of which nothing is said left out."""
    return tuple((f"{item.character}:", item.how) for item in sheet.items if item.how)


def _state(code: str, name: str) -> str:
    return name if code == name else f"{code} {name}"


def said_of(item: Item, taxon: int) -> str:
    """What most authors say of the taxon with that number; by stage where there are several."""
    several = len(item.stages) > 1
    return "; ".join(f"{one.stage} {one.says[taxon]}" if several else one.says[taxon] for one in item.stages)


def thresholds(item: Item, sheet: Sheet) -> tuple[Runs, ...]:
    """A line for each threshold: what decides by a working criterion first."""
    found: list[Runs] = []
    for one in item.stages:
        stage = f"{one.stage}: " if len(item.stages) > 1 else ""
        found += [((f"{stage}DECIDES {said}", UPRIGHT),) for said in one.decides]
        found += [((stage, UPRIGHT), *_boundary(boundary, sheet)) for boundary in one.boundaries]
    return tuple(found)


def _boundary(one: Boundary, sheet: Sheet) -> Runs:
    """`robustum < 25 mm (0.98 in.) ≤ longum (13 %)`, `album to 3, longum from 4`: behind it the share misjudged."""
    below, above = (_names(taxa, sheet) for taxa in (one.below, one.above))
    wrong = f" ({percent(one.error).replace(' ', _NO_BREAK)})" if percent(one.error) != "none" else ""
    start = one.start.replace(" ", _NO_BREAK)
    if one.upto:
        return (
            *below, (f" to {one.upto}, ", UPRIGHT), *above, (f" from {start}{wrong}", UPRIGHT),
        )  # fmt: skip
    return (*below, (f" < {start} ≤ ", UPRIGHT), *above, (wrong, UPRIGHT))


def _names(taxa: Iterable[str], sheet: Sheet) -> Runs:
    found: list[tuple[str, bool]] = []
    for taxon in taxa:
        found += [(", ", UPRIGHT)] if found else []
        found += sheet.short[taxon]
    return tuple(found)


def notes(sheet: Sheet) -> Iterator[Runs]:
    """Paragraphs below the table: working criteria, what misleads, what the sheet can't tell."""
    yield from (_rule(one) for one in sheet.rules)
    if sheet.mind:
        spaced = [(" ", UPRIGHT)]
        yield (("Mind the stage:", UPRIGHT), *(run for one in sheet.mind for run in (*spaced, *one)))
    if sheet.untold:
        told: list[tuple[str, bool]] = [("No character here parts ", UPRIGHT)]
        for number, (a, b) in enumerate(sheet.untold):
            told += [("; " if number else "", UPRIGHT), *sheet.short[a], (" from ", UPRIGHT), *sheet.short[b]]
        yield (*told, (".", UPRIGHT))


def left_out(sheet: Sheet) -> str:
    """The characters that are not on the sheet, and why; empty where all are."""
    told = (("No room for", sheet.no_room), ("Left out since they part nothing:", sheet.part_nothing))
    return " ".join(f"{lead} {listed(names)}." for lead, names in told if names)


def small_print(sheet: Sheet) -> str:
    """What nobody has to read outdoors."""
    return " ".join(filter(None, (left_out(sheet), sheet.notice)))


def _rule(one: Rule) -> Runs:
    by = f" ({one.by})" if one.by else ""
    otherwise: Sequence[tuple[str, bool]] = ((", otherwise ", UPRIGHT), *one.otherwise) if one.otherwise else ()
    support = f". In support: {'; '.join(one.supporting)}" if one.supporting else ""
    return (
        (f"Working criterion “{one.title}”{by}: {one.decisive} decides for ", UPRIGHT),
        *one.name,
        *otherwise,
        (f"{support}.", UPRIGHT),
    )
