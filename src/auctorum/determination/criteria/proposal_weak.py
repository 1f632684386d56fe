"""Where a proposed criterion is weak, in sentences; each only where it applies."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass

from auctorum.characters.vocabulary import Character
from auctorum.circumscription.findings import RangeAgreement
from auctorum.circumscription.phrases import capital, counted, listed
from auctorum.circumscription.plants import Plant
from auctorum.circumscription.separation_names import short_names
from auctorum.circumscription.separation_words import label, percent
from auctorum.circumscription.trend import drifts
from auctorum.corpus.model import Corpus
from auctorum.corpus.resolve import taxa_of_criterion
from auctorum.determination.criteria.proposal_model import Proposal
from auctorum.determination.criteria.tally import Tally
from auctorum.determination.places.cultivation import in_gardens
from auctorum.records.schema import Specimen

WORKS_WANTED = 3  # that state the decisive character of both taxa, of their own
PLANTS_WANTED = 20  # measured plants of each taxon; both figures are judgements of ours
OVERLAPS = 0.01  # expected error from which an overlap is told
_BORDERLINE = 0.05  # share of measured plants within the error of measuring from which it is told
_IN_CONFLICT = 0.1  # share of measured plants in conflict from which it is told
_TROUBLESOME = 3  # cost from which a character needs a lens, or more


@dataclass(frozen=True, slots=True)
class _Case:
    """All that the sentences speak of."""

    corpus: Corpus
    made: Proposal
    plants: Sequence[Plant]
    names: Mapping[str, str]
    character: Character

    @property
    def what(self) -> str:
        return label(self.character, self.made.limit.stage)

    @property
    def shown(self) -> Iterator[Tally]:
        """The tallies of the taxon and of the sisters that the threshold parts from it."""
        return (one for one in self.made.tallies if one.taxon == self.made.taxon or one.taxon in self.made.parted)


def weak_points(corpus: Corpus, made: Proposal, several: Sequence[Plant]) -> tuple[str, ...]:
    """The sentences in the order of `_POINTS`; `several` are the plants of the knowledge base."""
    names = short_names(corpus, (made.taxon, *made.against))
    case = _Case(corpus, made, several, names, corpus.vocabulary[made.limit.character])
    return tuple(sentence for point in _POINTS for sentence in point(case))


# --- what authors state


def _not_parted(case: _Case) -> Iterator[str]:
    silent = [case.names[one.sister] for one in case.made.stands if one.error is None]
    others = [case.names[one.sister] for one in case.made.stands if one.error is not None and not one.parts]
    if others:
        yield f"One threshold cannot part it from {listed(others)} as well: ask for another character there."
    if silent:
        yield f"Nobody states the {case.what} of {listed(silent)}, so that it is not known to part it from that."


def _overlap(case: _Case) -> Iterator[str]:
    worst = case.made.worst
    if (worst.error or 0.0) > OVERLAPS:
        own, other = case.names[case.made.taxon], case.names[worst.sister]
        yield (
            f"{capital(own)} and {other} overlap: by what authors state, {percent(worst.lost or 0.0)} of {own} would "
            f"be lost and {percent(worst.strays or 0.0)} of {other} taken in."
        )


def _stages(case: _Case) -> Iterator[str]:
    for blur in case.made.blurs:
        yield f"{capital(blur)}: judge no plant at another stage."


def _few_works(case: _Case) -> Iterator[str]:
    works = len(case.made.said)
    if works < WORKS_WANTED:
        rests = f"only {counted(works, 'independent work')} state{'s' * (works == 1)}" if works else "no work states"
        yield f"It rests on little: {rests} the {case.what} of both."


def _copied(case: _Case) -> Iterator[str]:
    for taxon, finding in zip((case.made.taxon, case.made.worst.sister), case.made.findings, strict=True):
        if repeated := finding.count.repeated:
            works, verb = counted(finding.count.works, "work"), "repeats" if repeated == 1 else "repeat"
            yield f"Of the {works} on {case.names[taxon]}, {repeated} only {verb} the figures of another."


def _drift(case: _Case) -> Iterator[str]:
    """Bounds that face the threshold, and moved with the years."""
    at_least = case.made.limit.at_least
    sides = ((case.made.taxon, at_least), (case.made.worst.sister, not at_least))
    for (taxon, lower), finding in zip(sides, case.made.findings, strict=True):
        agreed = finding.agreement
        if isinstance(agreed, RangeAgreement) and drifts(agreed.lower if lower else agreed.upper):
            which = "lower" if lower else "upper"
            yield f"The {which} bound of {case.names[taxon]}, which faces the limit, moved over the years."


def _better(case: _Case) -> Iterator[str]:
    told = [f"{label(case.corpus.vocabulary[one.character], one.stage)} ({' against '.join(one.says)})"
            for one in case.made.better]  # fmt: skip
    if told:
        part = "parts" if len(told) == 1 else "part"
        yield f"By what authors state, {listed(told)} {part} the two better, but no threshold can be set there."


def _trouble(case: _Case) -> Iterator[str]:
    if case.character.cost >= _TROUBLESOME:
        yield f"The {case.what} takes trouble to see: {case.character.how or 'it needs a lens, or more'}"


# --- measured plants


def _few_plants(case: _Case) -> Iterator[str]:
    few = [one for one in case.shown if one.measured < PLANTS_WANTED]
    if few:
        told = (f"{counted(one.measured, 'plant')} of {case.names[one.taxon]}" for one in few)
        wanted = f"{PLANTS_WANTED} of each would show how many it misplaces"
        yield f"Few plants were measured for it: {listed(told)}; {wanted}."


def _one_sided(case: _Case) -> Iterator[str]:
    measured = [one for one in case.plants if one.at(case.made.limit.character, case.made.limit.stage) is not None]
    for tally in case.shown:
        sites = {one.site for one in measured if one.taxon == tally.taxon}
        if tally.measured > 1 and len(sites) == 1 and None not in sites:
            yield f"All measured plants of {case.names[tally.taxon]} are of one site, and may be one family."


def _circular(case: _Case) -> Iterator[str]:
    """Plants that may have been named by the very character that they are to test."""
    told = [one for one in case.shown if one.measured]
    people = sorted({who for one in told for who in one.named_by})
    if not people:
        return
    made, by = case.made, listed(people)
    for criterion in case.corpus.criteria:
        decisive = criterion.decisive
        if made.taxon in taxa_of_criterion(case.corpus, criterion) and decisive.character == made.limit.character:
            yield (
                f"The plants were named by {by}; those named by “{criterion.title}”, which decides by the same "
                "character, cannot test it."
            )
            return
    if sum(one.wrong(fitting=one.taxon == made.taxon) for one in told) == 0:
        yield (
            f"No plant lies on the wrong side, as would be if {by} named the plants by this very character: "
            "then they cannot test it."
        )


def _error_of_measuring(case: _Case) -> Iterator[str]:
    measured, near = sum(one.measured for one in case.shown), sum(one.borderline for one in case.shown)
    if measured and near / measured > _BORDERLINE:
        yield f"{near} of {counted(measured, 'measured plant')} lie within the error of measuring: measure more finely."


def _conflicts(case: _Case) -> Iterator[str]:
    for one in case.shown:
        if one.measured and one.conflicts / one.measured > _IN_CONFLICT:
            yield (
                f"The supporting traits speak against the verdict on {one.conflicts} of {one.measured} plants of "
                f"{case.names[one.taxon]}: they support little there."
            )


def _not_judged(case: _Case) -> Iterator[str]:
    without = sum(one.insufficient for one in case.shown)
    if without:
        yield (
            f"{counted(without, 'named plant')} could not be judged: the {case.what} was not observed, or at another "
            "stage only."
        )


def _dried(case: _Case) -> Iterator[str]:
    kept = _measured_rows(case, lambda record: bool(record.catalogNumber))
    if kept:
        yield (
            f"{counted(kept, 'measured plant')} {'is' if kept == 1 else 'are'} in a herbarium: parts shrink as they "
            "dry (common practice, no source), so that dried and fresh figures do not mix without care."
        )


def _cultivated(case: _Case) -> Iterator[str]:
    grown = _measured_rows(case, lambda record: in_gardens(record.degreeOfEstablishment))
    if grown:
        was = "was" if grown == 1 else "were"
        yield f"{counted(grown, 'measured plant')} {was} cultivated, and may be larger for it."


def _measured_rows(case: _Case, holds: Callable[[Specimen], bool]) -> int:
    """How many of the measured plants of the taxa have a row for which it holds."""
    limit, taxa = case.made.limit, {one.taxon for one in case.shown}
    wanted = {row.record.organismID or row.record.occurrenceID for row in case.corpus.specimens if holds(row.record)}
    return sum(
        plant.id in wanted and plant.taxon in taxa and plant.at(limit.character, limit.stage) is not None
        for plant in case.plants
    )


_POINTS: tuple[Callable[[_Case], Iterable[str]], ...] = (
    _not_parted,
    _overlap,
    _stages,
    _few_works,
    _copied,
    _drift,
    _better,
    _trouble,
    _few_plants,
    _one_sided,
    _circular,
    _error_of_measuring,
    _conflicts,
    _not_judged,
    _dried,
    _cultivated,
)
