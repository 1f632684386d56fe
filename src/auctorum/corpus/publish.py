"""Acts -> names: which act publishes a name, which repeats one, which is a homonym, and how each is cited.

Two acts with the same words make one name if they rest on one type (the later is an isonym, ICN Art. 6.3
Note 2), two names if they do not (the later is a homonym, Art. 53.1). Types are followed through basionyms
and replaced names; two new taxa share a type if they state the same specimen.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import takewhile

from auctorum.corpus.model import Act, Work
from auctorum.corpus.resolve import same_authors
from auctorum.names.format import slug, words
from auctorum.names.name import Authors, Credit, Name, Team
from auctorum.names.parse import parse_authors
from auctorum.problems import AuctorumError
from auctorum.records.schema import ActKind


@dataclass(frozen=True, slots=True)
class Published:
    """One name as acts make it; `acts` by date, the publishing one first."""

    id: str
    name: Name
    rank: str
    acts: tuple[Act, ...]


def own_credit(act: Act) -> Credit:
    """Authors of the name after the parentheses: as recorded, else those of the work (ICN Art. 46.1 Note 1)."""
    if act.record.authors:
        try:
            return parse_authors(act.record.authors).own
        except AuctorumError:
            return Credit(Team((act.record.authors,)))  # named as a problem by the linker
    return Credit(Team(act.work.authors))


def older_act(act: Act, words_of: Mapping[str, Sequence[Act]], older: Name | None) -> Act | None:
    """The act that published the name `older` on which `act` rests: the earliest that fits, by authors if given."""
    if older is None:
        return None
    candidates = [one for one in words_of.get(words(older), ()) if one is not act]
    if older.authors:
        fitting = [one for one in candidates if same_authors(older.authors, Authors(own=own_credit(one)))]
        candidates = fitting or candidates
    return candidates[0] if candidates else None


def published_names(acts: Sequence[Act], older_names: Mapping[str, Name]) -> tuple[Published, ...]:
    """Every name that the establishing acts (by date) publish, in order of date.

    `older_names` gives, for an act's id, the name it rests on (basionym or replaced synonym).
    """
    by_words: dict[str, list[Act]] = {}
    for act in acts:
        by_words.setdefault(words(act.printed), []).append(act)
    older = {act.id: older_act(act, by_words, older_names.get(act.id)) for act in acts}
    found: list[Published] = []
    for same_words in by_words.values():
        by_type: dict[str, list[Act]] = {}
        for act in same_words:
            by_type.setdefault(_type_key(act, older), []).append(act)
        homonyms = len(by_type) > 1
        for members in by_type.values():
            first = members[0]
            name = replace(first.printed.bare, authors=_citation(first, older))
            found.append(Published(_id(name, first.work, homonyms), name, first.rank, tuple(members)))
    return tuple(sorted(found, key=lambda one: (one.acts[0].work.date, one.acts[0].id)))


def _id(name: Name, work: Work, homonyms: bool) -> str:
    own = Name("-".join(name.authors.own.team.members))
    return f"{slug(name)}-{slug(own)}-{work.year}" if homonyms else slug(name)


def _roots(act: Act, older: Mapping[str, Act | None]) -> list[Act]:
    """The act, then those it rests on, oldest last; a cycle ends where it closes."""
    chain, seen = [act], {act.id}
    while (next_ := older.get(chain[-1].id)) is not None and next_.id not in seen:
        chain.append(next_)
        seen.add(next_.id)
    return chain


def _type_key(act: Act, older: Mapping[str, Act | None]) -> str:
    root = _roots(act, older)[-1]
    type_ = root.record.type
    if type_ is not None and type_.specimen and root.record.act is ActKind.NEW_TAXON:
        return f"{type_.specimen} {type_.herbarium}"
    return root.id


def _citation(act: Act, older: Mapping[str, Act | None]) -> Authors:
    """Parentheses hold the authors of the basionym itself, never those of a step between (ICN Art. 49.1)."""
    roots = _roots(act, older)
    carrying = sum(1 for _ in takewhile(_carries_an_epithet, roots))
    # The first act that takes no epithet over published the basionym, unless it is the act itself.
    basionym = own_credit(roots[min(carrying, len(roots) - 1)]) if carrying and len(roots) > 1 else Credit()
    return Authors(basionym=_shown(basionym), own=_shown(own_credit(act)))


def _carries_an_epithet(act: Act) -> bool:
    return act.record.act in (ActKind.NEW_COMBINATION, ActKind.CHANGE_OF_RANK)


def _shown(credit: Credit) -> Credit:
    """`in` belongs to the reference, not to the name."""
    return replace(credit, within=Team())
