"""A working criterion proposed from the records: what decides, what supports, who says so, and where it is weak."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Collection, Mapping, Sequence
from dataclasses import replace

from auctorum.characters.show import format_value
from auctorum.characters.vocabulary import Character
from auctorum.circumscription.diagnosis import findings_of
from auctorum.circumscription.findings import Finding
from auctorum.circumscription.key.beside import NoSisters, with_sisters
from auctorum.circumscription.phrases import capital
from auctorum.circumscription.plants import plants
from auctorum.circumscription.separation import Parting, separation_known
from auctorum.circumscription.separation_known import Knowledge, knowledge
from auctorum.circumscription.separation_names import full_name
from auctorum.circumscription.sisters import NEIGHBOURS, sisters
from auctorum.corpus.criteria import MAY_DECIDE, Limit, limit_of
from auctorum.corpus.model import Corpus
from auctorum.corpus.readings import find_character
from auctorum.corpus.resolve import called, find_taxon, lookup
from auctorum.determination.criteria.proposal_model import Proposal, SaidOf
from auctorum.determination.criteria.proposal_support import supporting
from auctorum.determination.criteria.proposal_threshold import NoThreshold, Stand, Threshold, best_threshold
from auctorum.determination.criteria.proposal_weak import weak_points
from auctorum.determination.criteria.tally import best_on_plants, tallies
from auctorum.problems import AuctorumError
from auctorum.records.schema import Criterion, Decisive, Supporting


class NothingBeside(NoSisters):
    """A taxon beside which no work places another, so that it has to be said from what it is to be parted."""

    remedy = "name the taxa that it is to be parted from with --against"


class AgainstItself(AuctorumError, ValueError):
    """A taxon that is to be parted from itself."""

    remedy = "name other taxa with --against, or none for those placed beside it"

    def __init__(self, name: str) -> None:
        super().__init__(name)
        self.name = name

    def __str__(self) -> str:
        return f"{self.name} cannot be parted from itself"


def propose(
    corpus: Corpus,
    taxon: str,
    *,
    against: Sequence[str] = (),
    character: str | None = None,
    works: Collection[str] | None = None,
) -> Proposal:
    """The best decisive threshold for the taxon with that id, against others (ids) or those placed beside it.

    Only what `works` state if given, and only the named character. Raises KeyError for an unknown taxon, NothingBeside,
    AgainstItself, UnknownCharacter, UnusableCriterion for a character that has no thresholds, NoThreshold.
    """
    others = _others(corpus, taxon, against)
    if character is not None and find_character(character, corpus.vocabulary).kind not in MAY_DECIDE:
        limit_of(Decisive(character, "", "-"), corpus.vocabulary)  # raises, and says why
    findings = {one: findings_of(corpus, one, works=works) for one in (taxon, *others)}
    known = {one: knowledge(several, corpus.vocabulary) for one, several in findings.items()}
    partings = {
        other: separation_known(corpus, {taxon: known[taxon], other: known[other]}).partings for other in others
    }
    found = best_threshold(corpus, known[taxon], {one: known[one] for one in others}, partings, character)
    if found is None:
        names = tuple(full_name(corpus, one) for one in others)
        raise NoThreshold(full_name(corpus, taxon), names, character or "")
    return _proposal(corpus, taxon, found, findings, known, partings)


def _others(corpus: Corpus, taxon: str, against: Sequence[str]) -> tuple[str, ...]:
    if taxon in against:
        raise AgainstItself(full_name(corpus, taxon))
    if against:
        return tuple(dict.fromkeys(against))
    nearest = sisters(corpus).get(taxon, ())
    try:
        beside = with_sisters(corpus, taxon)[1:]
    except NoSisters as error:
        if not nearest:
            raise NothingBeside(error.name) from None
        return nearest[:NEIGHBOURS]
    order = {other: number for number, other in enumerate(nearest)}
    kept = set(sorted(beside, key=lambda one: order.get(one, len(order)))[:NEIGHBOURS])
    return tuple(one for one in beside if one in kept)


def _proposal(
    corpus: Corpus,
    taxon: str,
    found: Threshold,
    findings: Mapping[str, Sequence[Finding]],
    known: Mapping[str, Knowledge],
    partings: Mapping[str, Sequence[Parting]],
) -> Proposal:
    limit, worst, several = found.limit, found.worst, plants(corpus)
    parted = {one.sister: partings[one.sister] for one in found.stands if one.parts}
    traits = supporting(corpus, findings[taxon], limit, parted)
    criterion = _criterion(corpus, taxon, found, traits)
    here = next(one for one in partings[worst.sister] if (one.character, one.stage) == (limit.character, limit.stage))
    numeric = corpus.vocabulary[limit.character].kind.is_numeric
    made = Proposal(
        taxon=taxon,
        criterion=criterion,
        limit=limit,
        stands=found.stands,
        worst=worst,
        said=_said(corpus, taxon, found, findings),
        findings=(_finding(findings[taxon], limit), _finding(findings[worst.sister], limit)),
        tallies=tallies(corpus, criterion, (taxon, *(one.sister for one in found.stands)), several),
        on_plants=best_on_plants(limit, taxon, worst.sister, several) if numeric else None,
        better=_better(corpus, partings[worst.sister], worst),
        blurs=here.blurs,
    )
    weak = weak_points(corpus, made, several)
    return replace(made, weak=weak, criterion=_criterion(corpus, taxon, found, traits, " ".join(weak)))


def _criterion(
    corpus: Corpus, taxon: str, found: Threshold, traits: tuple[Supporting, ...], note: str = ""
) -> Criterion:
    """The criterion; a plant that does not fit has a name only where one sister alone is meant."""
    limit, character = found.limit, corpus.vocabulary[found.limit.character]
    stage = limit.stage if limit.stage in character.stages else ""
    decisive = Decisive(limit.character, stage, *((limit.printed, "") if limit.at_least else ("", limit.printed)))
    others = [one.sister for one in found.stands]
    name = words_of(corpus, taxon)
    rule = f"{limit.character} {'from' if limit.at_least else 'up to'} {limit.printed}{' on' if limit.at_least else ''}"
    return Criterion(
        id=_id(f"{corpus.names[corpus.taxa[taxon].current].name.final_epithet} {limit.character} {limit.printed}"),
        taxon=name,
        title=capital(rule),
        decisive=decisive,
        supporting=traits,
        otherwise=words_of(corpus, others[0]) if len(others) == 1 else "",
        note=note,
    )


def words_of(corpus: Corpus, taxon: str) -> str:
    """The words by which a criterion names a taxon, so that they mean it again."""
    one = corpus.taxa[taxon]
    for name in (one.current, *reversed(one.names)):
        words = called(corpus, name)
        try:
            if find_taxon(corpus, lookup(corpus, words)).id == taxon:
                return words
        except AuctorumError:
            continue
    return called(corpus, one.current)


def _id(words: str) -> str:
    """An id of plain letters and figures.

    >>> _id("longum spur length 25 mm"), _id("äquale 1.6")
    ('longum-spur-length-25-mm', 'aquale-1-6')
    """
    plain = unicodedata.normalize("NFKD", words).encode("ascii", "ignore").decode().casefold()
    return re.sub("[^a-z0-9]+", "-", plain).strip("-")[:80].strip("-") or "criterion"


def _finding(findings: Sequence[Finding], limit: Limit) -> Finding:
    return next(one for one in findings if (one.character, one.stage) == (limit.character, limit.stage))


def _said(
    corpus: Corpus, taxon: str, found: Threshold, findings: Mapping[str, Sequence[Finding]]
) -> tuple[SaidOf, ...]:
    worst, character = found.worst, corpus.vocabulary[found.limit.character]
    each = [_by_work(_finding(findings[one], found.limit), character) for one in (taxon, worst.sister)]
    order = [work for work in corpus.works if work in (*worst.support, *worst.against)]
    return tuple(SaidOf(work, each[0][work], each[1][work], work in worst.support) for work in order)


def _by_work(finding: Finding, character: Character) -> dict[str, str]:
    told: dict[str, list[str]] = {}
    for item in finding.evidence:
        told.setdefault(item.work, []).append(format_value(item.value, character))
    return {work: "; ".join(dict.fromkeys(words)) for work, words in told.items()}


def _better(corpus: Corpus, partings: Sequence[Parting], worst: Stand) -> tuple[Parting, ...]:
    """Characters of the plants that part the two better, and that cannot decide: they have no lower and higher."""
    limit = worst.error or 0.0
    return tuple(
        one
        for one in partings
        if one.error is not None
        and one.error < limit
        and corpus.vocabulary[one.character].kind not in MAY_DECIDE
        and corpus.vocabulary[one.character].structure != "habitat"
    )
