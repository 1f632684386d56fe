"""Statements that could not be read, or that leave open at which stage of growth they hold."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from auctorum.circumscription.gaps.ground import Ground
from auctorum.circumscription.gaps.model import Gap, GapKind
from auctorum.circumscription.gaps.rank import UNKNOWN_VALUE, one_more, rank
from auctorum.circumscription.gaps.words import listed, pages
from auctorum.circumscription.phrases import counted
from auctorum.corpus.model import Statement, Treatment
from auctorum.corpus.readings import UNSTATED


@dataclass(frozen=True, slots=True)
class _Unclear:
    statement: Statement
    treatment: Treatment
    unread: bool


def unclear(ground: Ground) -> Iterator[Gap]:
    """One gap for each work that has such statements."""
    by_work: dict[str, list[_Unclear]] = {}
    for treatment in ground.corpus.treatments.values():
        for statement in ground.corpus.statements_of(treatment.id) if ground.asks_of(treatment) else ():
            unread = not statement.readings
            if unread or any(reading.stage == UNSTATED for reading in statement.readings):
                by_work.setdefault(treatment.work.id, []).append(_Unclear(statement, treatment, unread))
    for several in by_work.values():
        yield _gap(ground, several)


def _gap(ground: Ground, several: Sequence[_Unclear]) -> Gap:
    work = several[0].treatment.work
    ranks = [_rank(ground, one) for one in several]
    first = several[ranks.index(max(ranks))]
    unread, open_ = [one for one in several if one.unread], [one for one in several if not one.unread]
    accepted = (ground.accepted.get(one.treatment.id) for one in several)
    todo = [f"Read {pages(work, (one.statement.page for one in several))} again"]
    todo += [f"give `value:` where the words cannot be read ({_characters(ground, unread)})"] if unread else []
    todo += [f"give `stage:` where the work lets it be known ({_characters(ground, open_)})"] if open_ else []
    return Gap(
        GapKind.UNCLEAR,
        max(ranks),
        question=f"{work.byline}: what is meant by “{first.statement.verbatim}”"
        + (f" and {counted(len(several) - 1, 'other statement')}?" if len(several) > 1 else "?"),
        why=_why(unread, open_),
        todo=f"{'; '.join(todo)}.",
        taxa=tuple(dict.fromkeys(taxon for taxon in accepted if taxon is not None)),
        names=tuple(dict.fromkeys(one.treatment.name for one in several)),
        works=(work.id,),
        characters=tuple(dict.fromkeys(one.statement.character for one in several)),
        place=first.statement.place,
    )


def _rank(ground: Ground, one: _Unclear) -> float:
    """As of a work that is silent, since the statement is not compared with others now."""
    taxon, character = ground.accepted.get(one.treatment.id), one.statement.character
    if taxon is None:
        group = ground.corpus.names[one.treatment.name].group
        return rank(UNKNOWN_VALUE, ground.use_of_names((one.treatment.name,))[1], focal=ground.focal(group))
    of_it = (finding for finding in ground.told(taxon) if finding.character == character)
    others = {item.work for finding in of_it for item in finding.evidence} - {one.treatment.work.id}
    return ground.rank(one_more(ground.apart.value(taxon, character), len(others)), taxon)


def _why(unread: Sequence[_Unclear], open_: Sequence[_Unclear]) -> str:
    said = []
    if unread:
        said.append(f"{counted(len(unread), 'statement')} could not be read and {_have(unread)} no say.")
    if open_:
        alone = len(open_) == 1
        said.append(f"{counted(len(open_), 'statement')} give{'s' if alone else ''} no stage of growth, though the "
                    f"character changes with it, so that {'it stands' if alone else 'they stand'} apart.")  # fmt: skip
    return " ".join(said)


def _have(several: Sequence[_Unclear]) -> str:
    return "has" if len(several) == 1 else "have"


def _characters(ground: Ground, several: Sequence[_Unclear]) -> str:
    return listed(ground.labels(one.statement.character for one in several))
