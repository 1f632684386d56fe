"""What a field sheet says, in upright and italic runs: the same for the page and for the measure of its lines."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence

from auctorum.circumscription.key.words import Runs
from auctorum.circumscription.phrases import listed
from auctorum.circumscription.separation_words import percent
from auctorum.determination.sheet import Boundary, Item, Rule, Sheet, Where
from auctorum.determination.sheet_units import DECIMALS

HOW_TO = (
    "Fill in one row for each plant; leave empty what you did not look at. Type the rows under the very headings of "
    "the columns, with what is written once in every row. Write the code of a state, type its name."
)
CHECK_SCALE = "Print at 100 %. Check this scale against a ruler before use: printers shrink pages."
UPRIGHT = False


def title(sheet: Sheet) -> Runs:
    """`Field sheet: A, B and C`, and whose view it is."""
    found: list[tuple[str, bool]] = [("Field sheet: ", UPRIGHT)]
    for number, taxon in enumerate(sheet.taxa):
        joint = "" if not number else " and " if number == len(sheet.taxa) - 1 else ", "
        found += [(joint, UPRIGHT), *sheet.names[taxon]]
    return (*found, (f" (sec. {sheet.sec})" if sheet.sec else "", UPRIGHT))


def character_words(item: Item) -> tuple[str, str]:
    """The name with the stages that count, and how to measure it with its states and their codes."""
    stages = " or ".join(one.stage for one in item.stages if one.stage)
    name = f"{item.character} ({stages})" if stages else item.character
    where = {Where.SITE: "Once for the site.", Where.RECKONED: "Reckoned, not measured."}.get(item.where, "")
    states = f"States: {', '.join(_state(*one) for one in item.states)}." if item.states else ""
    return name, " ".join(filter(None, (where, item.how, states)))


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
    """`robustum < 25 mm (0.98 in.) ≤ longum`, `album to 3, longum from 4`; and the share misjudged."""
    below, above = (_names(taxa, sheet) for taxa in (one.below, one.above))
    wrong = f" ({percent(one.error)} wrong)" if percent(one.error) != "none" else ""
    if one.upto:
        return (
            *below, (f" to {one.upto}, ", UPRIGHT), *above, (f" from {one.start}{wrong}", UPRIGHT),
        )  # fmt: skip
    return (*below, (f" < {one.start} ≤ ", UPRIGHT), *above, (wrong, UPRIGHT))


def _names(taxa: Iterable[str], sheet: Sheet) -> Runs:
    found: list[tuple[str, bool]] = []
    for taxon in taxa:
        found += [(", ", UPRIGHT)] if found else []
        found += sheet.short[taxon]
    return tuple(found)


def notes(sheet: Sheet) -> Iterator[Runs]:
    """Paragraphs below the table: working criteria, what misleads, what the sheet can't tell and what it leaves out."""
    yield from (_rule(one) for one in sheet.rules)
    if sheet.mind:
        yield ((f"Mind the stage: {' '.join(sheet.mind)}", UPRIGHT),)
    for a, b in sheet.untold:
        yield (
            ("No character here parts ", UPRIGHT), *sheet.short[a], (" from ", UPRIGHT), *sheet.short[b], (".", UPRIGHT)
        )  # fmt: skip
    left = [
        f"{lead} {listed(names)}."
        for lead, names in (("No room for", sheet.no_room), ("Left out, parting nothing:", sheet.part_nothing))
        if names
    ]
    yield ((" ".join([HOW_TO, DECIMALS, *left]), UPRIGHT),)


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
