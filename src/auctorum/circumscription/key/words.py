"""What stands around a key: its heading, its ends, why taxa can't be parted, and how often it errs."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass

from auctorum.circumscription.key.evaluate import Evaluation
from auctorum.circumscription.key.model import Couplet, Key, Lead, Want
from auctorum.circumscription.phrases import capital, listed
from auctorum.corpus.model import Corpus
from auctorum.names.format import Run, parts

Runs = tuple[Run, ...]
Names = Mapping[str, Runs]
ONLY_THESE = "A key names only what it holds: a plant that is none of these taxa comes out as one of them all the same."
_NOT_PARTED = " can’t be parted here. "
_MOST_TOLD = 6  # characters, or mistakes, told one by one


@dataclass(frozen=True, slots=True)
class Page:
    """All that is printed: the key, the names of its taxa, and what stands below it."""

    key: Key
    names: Names
    evaluation: Evaluation | None  # None: no plants at hand
    sec: str  # whose works it rests on, in words
    cautions: tuple[str, ...] = ()


def page(corpus: Corpus, key: Key, evaluation: Evaluation | None, works: Sequence[str] = ()) -> Page:
    """The key with what of the knowledge base stands around it; `works` are the ids it was confined to."""
    said = f"sec. {'; '.join(corpus.works[one].byline for one in works)}" if works else "over all works"
    return Page(key, names_of(corpus, key.taxa), evaluation, said, tuple(corpus.settings.cautions))


def names_of(corpus: Corpus, taxa: Iterable[str]) -> dict[str, Runs]:
    """Id of a taxon -> its name in runs; with authors only where homonyms share it."""
    found: dict[str, Runs] = {}
    for id_ in taxa:
        taxon = corpus.taxa[id_]
        name = corpus.names[taxon.current].name
        runs = parts(name if corpus.has_homonyms(taxon.current) else name.bare)
        found[id_] = (*runs, (taxon.sense.suffix, False)) if taxon.sense.suffix else runs
    return found


def listed_names(taxa: Sequence[str], names: Names, last: str = "and") -> Runs:
    """Names one after the other: `A, B and C`; with semicolons where names hold commas."""
    commas = any("," in text for id_ in taxa for text, _ in names[id_])
    found: list[Run] = []
    for at, id_ in enumerate(taxa):
        joint = "" if at == 0 else f" {last} " if at == len(taxa) - 1 else "; " if commas else ", "
        found += [(joint, False)] if joint else []
        found += names[id_]
    return tuple(found)


def title(told: Page) -> Runs:
    """`Key to A, B and C: over all works`."""
    if len(told.key.taxa) > _MOST_TOLD:
        return ((f"Key to {len(told.key.taxa)} taxa: {told.sec}", False),)
    return (("Key to ", False), *listed_names(told.key.taxa, told.names), (f": {told.sec}", False))


def statement(lead: Lead) -> str:
    """What a lead says, with a capital: `Spur at least 25 mm long; leaf apex acute`."""
    return capital("; ".join(lead.pieces))


def groups(key: Key) -> dict[tuple[str, ...], tuple[str, Want]]:
    """The taxa that end together -> the letter of their note, and why; in the order of print."""
    found: dict[tuple[str, ...], Want] = {}
    for couplet in key.couplets:
        for lead in couplet.leads:
            if lead.want is not None:
                found.setdefault(tuple(sorted(lead.taxa)), lead.want)
    if key.want is not None:
        found[tuple(sorted(key.taxa))] = key.want
    return {taxa: (_letter(number), reason) for number, (taxa, reason) in enumerate(found.items())}


def _letter(number: int) -> str:
    """a to z, then aa, ab ..."""
    before, last = divmod(number, 26)
    return (_letter(before - 1) if before else "") + "abcdefghijklmnopqrstuvwxyz"[last]


def end(lead: Lead, told: Page) -> Runs:
    """The name at the end of a lead; of several, all, and the letter of their note."""
    if len(lead.taxa) == 1:
        return told.names[lead.taxa[0]]
    letter, _ = groups(told.key)[tuple(sorted(lead.taxa))]
    return (*listed_names(lead.taxa, told.names, "or"), (f" ({letter})", False))


def notes(told: Page) -> tuple[Runs, ...]:
    """For each group that can't be parted: why, and what would help."""
    return tuple(
        ((f"({letter}) ", False), *listed_names(taxa, told.names), (_NOT_PARTED, False), *_why(reason, told.names))
        for taxa, (letter, reason) in groups(told.key).items()
    )


def _why(reason: Want, names: Names) -> Runs:
    found: list[Run] = []
    if reason.overlapping > 1:
        text = f"All {reason.overlapping} characters stated for each of them overlap, {reason.closest} the least"
        found.append((f"{text} ({_percent(reason.overlap)} in common where they are most alike).", False))
    elif reason.overlapping:
        found.append((f"One character alone is stated for each of them, {reason.closest}; it overlaps.", False))
    else:
        found.append(("No character is stated for each of them.", False))
    if reason.silent:
        found.append((" What would help: ", False))
        by_taxa: dict[tuple[str, ...], list[str]] = {}
        for character, missing in reason.silent:
            by_taxa.setdefault(missing, []).append(character)
        for number, (missing, characters) in enumerate(by_taxa.items()):
            found.append((f"{'; ' if number else ''}{_series(characters)} of ", False))
            found += listed_names(missing, names)
        found.append((", of which nobody says anything.", False))
    return tuple(found)


def _series(words: Sequence[str]) -> str:
    """`a`, `a and b`, `a, b and c`; of very many the first, and how many more."""
    more = len(words) - _MOST_TOLD
    told = [*words[:_MOST_TOLD], f"{more} more"] if more > 1 else list(words)
    return listed(told)


def below(told: Page) -> tuple[Runs, ...]:
    """What stands below the key, a paragraph each: steps and errors to expect, plants run through, the limits."""
    plain = [_expected(told.key)] if told.key.couplets else []
    found: list[Runs] = [((text, False),) for text in plain]
    if told.evaluation is not None and told.key.couplets:
        found += _observed(told.evaluation, told)
    found.append(((ONLY_THESE, False),))
    return tuple(found)


def _expected(key: Key) -> str:
    one = key.expected
    undecided = f", and {_percent(one.undecided)} in a group that can’t be parted" if one.undecided >= 0.005 else ""
    steps = f"{one.steps:.1f} {'step' if one.steps < 1.05 else 'steps'} to a name"
    wrong = f"{_percent(one.wrong)} of plants come out wrong"
    return f"By what the authors state, with all taxa alike: {steps}; {wrong}{undecided}."


def _observed(one: Evaluation, told: Page) -> list[Runs]:
    if not one.plants:
        return [(("No measured plant of the knowledge base bears the name of one of these taxa.", False),)]
    low, high = one.interval
    by = f", named by {' and '.join(one.named_by)}" if one.named_by else ""
    first = (
        f"Tried on {one.plants} measured plants of the knowledge base{by}: right {_many(one.right)}, wrong "
        f"{_many(one.wrong)} ({_percent(one.wrong / one.plants)}; 95 % interval {_percent(low, '')}–{_percent(high)}), "
        f"undecided {_many(one.undecided)}."
    )
    if one.unseen:
        first += f" On {one.unseen} more nothing was observed that the key asks."
    if any(part != round(part) for part in (one.right, one.wrong, one.undecided)):
        first += " Where a character was not observed, a plant follows both leads by halves."
    found: list[Runs] = [((first, False),)]
    return found + ([_mistakes(one, told)] if one.mistaken else [])


def _mistakes(one: Evaluation, told: Page) -> Runs:
    runs: list[Run] = [("Most often mistaken: ", False)]
    for number, (taxon, taken_for, many) in enumerate(one.mistaken[:3]):
        runs += [("; ", False)] if number else []
        runs += [*told.names[taxon], (" for ", False), *told.names[taken_for], (f" ({_many(many)})", False)]
    if one.misled:
        number, lost, asked = one.misled[0]
        couplet = told.key.couplets[number - 1]
        text = f"Most go astray at couplet {number}, on {couplet.characters[0]}: {_many(lost)} of {_many(asked)} plants"
        runs.append((f". {text}.", False))
    else:
        runs.append((".", False))
    return tuple(runs)


def _many(weight: float) -> str:
    """A number of plants, to a tenth."""
    return f"{weight:.1f}".removesuffix(".0")


def _percent(share: float, sign: str = " %") -> str:
    """A share with two significant digits at most: `0.4 %`, `6.2 %`, `18 %`."""
    hundredths = 100 * share
    digits = 0 if hundredths >= 9.95 or hundredths < 0.05 else 1
    return f"{hundredths:.{digits}f}".removesuffix(".0") + sign


def came_from(couplet: Couplet) -> str:
    """The number of a couplet, with that of the one that led to it: `2(1)`."""
    return str(couplet.number) if couplet.came_from is None else f"{couplet.number}({couplet.came_from})"
