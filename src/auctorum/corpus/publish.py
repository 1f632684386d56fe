"""Acts -> names: which act publishes a name, which repeats one, which is a homonym.

Two acts with the same words make one name if they rest on one type (the later is an isonym, ICN Art. 6.3
Note 2), two names if they do not (the later is a homonym, Art. 53.1). Types are followed through basionyms
and replaced names to the oldest act; two that state the same specimen share a type. Names carry the authors of
their own here; those in parentheses depend on the Code's rules and are put in by `nomenclature`.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import chain, count

from auctorum.corpus.credit import own_credit, shown
from auctorum.corpus.model import Act, Work
from auctorum.corpus.resolve import same_authors
from auctorum.corpus.spelling import recorded_genders, spelled
from auctorum.names.format import slug, words
from auctorum.names.name import Authors, Name


@dataclass(frozen=True, slots=True)
class Published:
    """One name as acts make it; `acts` by date, the publishing one first."""

    id: str
    name: Name
    rank: str
    acts: tuple[Act, ...]


@dataclass(frozen=True, slots=True)
class Older:
    """The name that an act rests on, as its record refers to it; `year` is None where the reference gives none."""

    name: Name
    year: int | None = None


def older_act(act: Act, words_of: Mapping[str, Sequence[Act]], older: Older | None) -> Act | None:
    """The act that published the name on which `act` rests: the earliest that fits, by authors and year if given."""
    if older is None:
        return None
    candidates = [one for one in words_of.get(words(older.name), ()) if one is not act]
    if older.name.authors:
        fitting = [one for one in candidates if same_authors(older.name.authors, Authors(own=own_credit(one)))]
        candidates = fitting or candidates
    candidates = [one for one in candidates if one.work.year == older.year] or candidates
    return candidates[0] if candidates else None


def published_names(acts: Sequence[Act], older_names: Mapping[str, Older]) -> tuple[Published, ...]:
    """Every name that the establishing acts (by date) publish, in order of date.

    `older_names` gives, for an act's id, the name it rests on (basionym or replaced synonym).
    """
    genders = recorded_genders(acts)
    names = {act.id: spelled(act, genders) for act in acts}
    by_words: dict[str, list[Act]] = {}
    by_print: dict[str, list[Act]] = {}  # under the corrected and under the printed words
    for act in acts:
        by_words.setdefault(words(names[act.id]), []).append(act)
        for key in dict.fromkeys((words(names[act.id]), words(act.printed))):
            by_print.setdefault(key, []).append(act)
    older = {act.id: older_act(act, by_print, older_names.get(act.id)) for act in acts}
    by_id = {act.id: act for act in acts}
    roots = {id_: by_id[root] for id_, root in _root_of(older).items()}
    found: list[Published] = []
    taken: set[str] = set()
    for same_words in by_words.values():
        by_type: dict[str, list[Act]] = {}
        for act in same_words:
            by_type.setdefault(_type_key(act, roots), []).append(act)
        homonyms = len(by_type) > 1
        for members in by_type.values():
            first = members[0]
            name = replace(names[first.id].bare, authors=Authors(own=shown(own_credit(first))))
            found.append(Published(_id(name, first.work, homonyms, taken), name, first.rank, tuple(members)))
    return tuple(sorted(found, key=lambda one: (one.acts[0].work.date, one.acts[0].id)))


def _id(name: Name, work: Work, homonyms: bool, taken: set[str]) -> str:
    """An id of its own: the words; with author and year for homonyms, and a number where even those are shared."""
    own = Name("-".join(name.authors.own.team.members))
    plain = f"{slug(name)}-{slug(own)}-{work.year}" if homonyms else slug(name)
    free = next(id_ for id_ in chain((plain,), (f"{plain}-{number}" for number in count(2))) if id_ not in taken)
    taken.add(free)
    return free


def _root_of(older: Mapping[str, Act | None]) -> dict[str, str]:
    """Act id -> id of the oldest act it rests on, itself if it rests on none; a circle ends where it closes."""
    roots: dict[str, str] = {}
    for start in older:
        walk: dict[str, None] = {}
        here = start
        while here not in roots and here not in walk:
            walk[here] = None
            above = older.get(here)
            here = here if above is None else above.id
        if here not in roots:  # the oldest act, or a circle: then its first by id
            circle = list(walk)
            roots[here] = min(circle[circle.index(here) :])
        roots |= dict.fromkeys(walk, roots[here])
    return roots


def _type_key(act: Act, roots: Mapping[str, Act]) -> str:
    root = roots[act.id]
    type_ = root.record.type
    if type_ is not None and type_.settles:
        return f"{type_.specimen} {type_.herbarium}"
    return root.id
