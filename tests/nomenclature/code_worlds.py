"""Small random worlds of acts, for laws and slow second answers: invented names, built straight from records.

A world is a list of acts by date. Every new taxon has a specimen from a small pool; what rests on a name has its type.
All works lie between 1800 and 1952, so that a description and a reference to the older name are all that is asked.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from typing import Any

from hypothesis import strategies as st

from auctorum.corpus.link import link
from auctorum.corpus.model import Corpus
from auctorum.nomenclature.code import Code, applied
from auctorum.records import schema
from auctorum.records.faults import validate_and_salvage
from building import CHARACTERS, read_text

GENERA = ("Exemplum", "Novum", "Altera")  # two neuter, one feminine
EPITHETS = (("album", "alba"), ("longum", "longa"), ("pendulum", "pendula"), ("vanei", "vanei"))
TERMS = {"variety": "var.", "subspecies": "subsp."}
FIRST_YEAR = 1800


@dataclass(frozen=True)
class Made:
    """One act of a world; epithets are numbers in EPITHETS, `older` and `cites` numbers of acts before it."""

    number: int
    work: int
    year: int
    kind: str
    genus: str
    epithet: int
    type: int
    lower: tuple[str, int] | None = None
    older: int | None = None
    cites: tuple[int, ...] = ()
    described: bool = True

    @property
    def rank(self) -> str:
        return self.lower[0] if self.lower else "species"

    @property
    def final(self) -> int:
        return self.lower[1] if self.lower else self.epithet

    @property
    def words(self) -> str:
        form = 1 if self.genus == "Altera" else 0
        lower = f" {TERMS[self.lower[0]]} {EPITHETS[self.lower[1]][form]}" if self.lower else ""
        return f"{self.genus} {EPITHETS[self.epithet][form]}{lower}"


World = tuple[Made, ...]


def author(work: int) -> str:
    """The author of a work, another for each: letters only."""
    return f"Van{chr(97 + work // 26)}{chr(97 + work % 26)}"


def first_of(world: Sequence[Made], one: Made) -> Made:
    """The act that put forward the same words on the same type first."""
    return next(other for other in world if (other.words, other.type) == (one.words, one.type))


def called(world: Sequence[Made], number: int) -> str:
    """A name as records refer to it, with authors."""
    first = first_of(world, world[number])
    return f"{first.words} {author(first.work)}"


def act_ids(world: Sequence[Made]) -> dict[int, str]:
    """Number of an act in the world -> its id in the corpus."""
    found, counted = {}, dict.fromkeys((one.work for one in world), 0)
    for one in world:
        counted[one.work] += 1
        found[one.number] = f"work-{one.work:02}.{counted[one.work]}"
    return found


def literature(world: Sequence[Made], genera: bool = True) -> list[dict[str, Any]]:
    """The world as publications, each as YAML would hold it; the genera are published before all."""
    works: dict[int, dict[str, Any]] = {}
    if genera:
        described = {"act": "new taxon", "rank": "genus", "description": {"kind": "description"}}
        works[-1] = _work("genera", "Orrin", FIRST_YEAR - 10, [{"name": genus} | described for genus in GENERA])
    for one in world:
        made = works.setdefault(one.work, _work(f"work-{one.work:02}", author(one.work), one.year, []))
        made["acts"].append(_act(world, one))
    return list(works.values())


def _work(id_: str, family: str, year: int, acts: list[dict[str, Any]]) -> dict[str, Any]:
    work = {"id": id_, "type": "book", "author": [{"family": family}], "issued": str(year), "title": "A book"}
    return {"work": work, "acts": acts}


def _act(world: Sequence[Made], one: Made) -> dict[str, Any]:
    act: dict[str, Any] = {"name": one.words, "act": one.kind, "rank": one.rank}
    act["description"] = {"kind": "description" if one.described else "none", "language": "latin"}
    if one.older is None:
        act["type"] = {"kind": "holotype", "specimen": f"Specimen {one.type}", "herbarium": "TESN"}
    else:
        act["replaces" if one.kind == "replacement name" else "basionym"] = called(world, one.older)
    if one.cites:
        act["cites"] = list(dict.fromkeys(called(world, number) for number in one.cites))
    return act


def corpus_from(works: Iterable[dict[str, Any]]) -> Corpus:
    """The linked corpus of publications as YAML would hold them; each must be a good record."""
    read = []
    for work in works:
        record, problems = validate_and_salvage(schema.Literature, work)
        assert not problems, problems[0]
        read.append(record)
    settings, characters = _shared()
    return link(schema.Records(settings=settings, characters=characters, literature=tuple(read)))[0]


_SHARED: list[Any] = []


def _shared() -> list[Any]:
    if not _SHARED:
        _SHARED.append(read_text("title: Test\n", schema.Settings, "kb.yaml"))
        _SHARED.append(read_text(CHARACTERS, schema.Characters, "characters.yaml"))
    return _SHARED


def judged(world: Sequence[Made]) -> Code:
    """The Code applied to a world."""
    return applied(corpus_from(literature(world)))


Recipe = tuple[int, int, int, int, int, int, int, tuple[int, ...], bool, int]
_RECIPE = st.tuples(
    st.integers(0, 6),  # kind
    st.integers(0, 2),  # genus
    st.integers(0, 3),  # epithet
    st.integers(0, 3),  # epithet below the species; of what replaces a name
    st.integers(0, 1),  # variety or subspecies
    st.integers(0, 3),  # specimen
    st.integers(0, 30),  # which older act it rests on
    st.lists(st.integers(0, 30), max_size=2).map(tuple),  # which it cites
    st.sampled_from((True, True, True, True, False)),  # described
    st.integers(0, 3),  # 0: in the same work as the act before; 1: another work of that year; else years later
)


def built(recipes: Iterable[Recipe]) -> World:
    """The world that some recipes make; those that make no sense are passed over."""
    world: list[Made] = []
    work, year = 0, FIRST_YEAR
    for recipe in recipes:
        step = recipe[-1] if world else 2
        here = (work, year) if step == 0 else (work + 1, year + step - 1)
        one = _one(world, recipe, *here)
        if one is None or any(other.work == one.work and other.words == one.words for other in world):
            continue
        if one.lower is not None and not any(one.words.startswith(f"{other.words} ") for other in world):
            continue  # its species is not known
        work, year = here
        world.append(one)
    return tuple(world)


def _one(world: Sequence[Made], recipe: Recipe, work: int, year: int) -> Made | None:
    kind, genus_at, epithet, other, rank_at, type_, pick, cited, described, _ = recipe
    genus, rank, number = GENERA[genus_at], ("variety", "subspecies")[rank_at], len(world)
    before = [one for one in world if one.work != work]
    cites = tuple(dict.fromkeys(before[at % len(before)].number for at in cited)) if before else ()
    older = before[pick % len(before)] if before else None
    rest = {"cites": cites, "described": described}
    if kind <= 1 or older is None:
        return Made(number, work, year, "new taxon", genus, epithet, type_, **rest)
    if kind == 2:
        if other == older.epithet:
            return None
        lower = (rank, other)
        return Made(number, work, year, "new taxon", older.genus, older.epithet, type_, lower, **rest)
    rest |= {"older": older.number, "described": described and kind == 6}
    if kind in (3, 6) and older.lower is None and genus != older.genus:
        return Made(number, work, year, "new combination", genus, older.epithet, older.type, **rest)
    if kind in (3, 6) and older.lower is not None and older.final != epithet:
        return Made(number, work, year, "new combination", genus, epithet, older.type, older.lower, **rest)
    if kind == 4 and older.lower is not None:
        return Made(number, work, year, "change of rank", genus, older.final, older.type, **rest)
    if kind == 4 and older.epithet != epithet:
        lower = (rank, older.epithet)
        return Made(number, work, year, "change of rank", genus, epithet, older.type, lower, **rest)
    if kind == 5 and older.lower is None and other != older.epithet:
        return Made(number, work, year, "replacement name", genus, other, older.type, **rest)
    return None


worlds = st.lists(_RECIPE, min_size=1, max_size=12).map(built)
