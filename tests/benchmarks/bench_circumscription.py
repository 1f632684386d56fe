"""Circumscription at scale, by hand: `python tests/benchmarks/bench_circumscription.py [--large]`.

Synthetic literature is built as records and linked in memory, which is not measured: each genus has ten species, and
ten works that treat them all, ten characters each (lengths in three units, counts, states); one work in three follows
an earlier one and repeats its figures. Printed are, each the median of several runs in one process:

- the diagnosis, independence included, of every taxon: cost of a treatment at 1, 4 and 16 times as many genera, and at
  1, 4 and 16 times as many works on one taxon (1.0 where cost grows linearly), and what independence alone takes of it;
- separation of two taxa, and of ten in pairs;
- a key to 3, 10, 30 and 100 taxa, and its expected error;
- the gaps of 200 and 800 treatments, against linking them (with `--large` of 200 and 10,000).
"""

from __future__ import annotations

import random
import statistics
import sys
import time
from collections.abc import Callable, Sequence
from typing import TypeVar

from auctorum.circumscription.diagnosis import diagnosis
from auctorum.circumscription.gaps.find import gaps
from auctorum.circumscription.independence import lineage
from auctorum.circumscription.key.build import key_of
from auctorum.circumscription.separation import separation
from auctorum.corpus.link import link
from auctorum.corpus.model import Corpus
from auctorum.records import schema

T = TypeVar("T")
SPECIES, WORKS = 10, 10
KEYED = (3, 10, 30, 100)
LENGTHS = ("stem height", "leaf length", "leaf width", "petal length", "sepal length", "spur length")
COUNTS = ("petal number", "stamen number")
STATES = ("spur colour", "seed surface")
COLOURS, SURFACES = ("green", "cream", "ivory", "buff"), ("smooth", "reticulate", "winged")
ALPHABET = "abcdefgklmnoprst"
FIRST_YEAR = 1800


def letters(number: int) -> str:
    """A number in letters, five at least."""
    text = ""
    while number or len(text) < 5:
        number, digit = divmod(number, len(ALPHABET))
        text += ALPHABET[digit]
    return text


def vocabulary() -> schema.Characters:
    found = []
    for name in (*LENGTHS, *COUNTS, *STATES):
        structure, property_ = name.split()
        more: dict[str, object] = {"kind": "count"}
        if name in LENGTHS:
            more = {"kind": "measure", "unit": "mm"}
        elif name in STATES:
            named = COLOURS if name == "spur colour" else SURFACES
            more = {
                "kind": "ordered" if named is COLOURS else "nominal",
                "states": tuple(schema.StateRecord(name=one) for one in named),
            }
        found.append(schema.CharacterRecord(name=name, structure=structure, property=property_, **more))  # type: ignore[arg-type]
    return schema.Characters(characters=tuple(found))


def length(rng: random.Random, middle: float) -> str:
    """A range about a length in millimetres, with or without extremes, in one of three units."""
    low, high = middle * rng.uniform(0.75, 0.95), middle * rng.uniform(1.05, 1.25)
    unit, size, digits = rng.choice((("mm", 1, 0), ("cm", 10, 1), ("in.", 25.4, 1)))
    most = f"(–{high * 1.15 / size:.{digits}f})" if rng.random() < 0.4 else ""
    return f"{low / size:.{digits}f}–{high / size:.{digits}f}{most} {unit}"


def statements(rng: random.Random, middles: dict[str, float]) -> tuple[schema.StatementRecord, ...]:
    found = [(name, length(rng, middles[name])) for name in LENGTHS]
    found += [(name, str(round(middles[name] + rng.choice((0, 0, 0, 1))))) for name in COUNTS]
    for name, named in zip(STATES, (COLOURS, SURFACES), strict=True):
        found.append((name, named[int(middles[name] + rng.choice((0, 0, 0, 1))) % len(named)]))
    return tuple(schema.StatementRecord(character=name, value=value) for name, value in found)


def middles(rng: random.Random) -> dict[str, float]:
    """What one species is like."""
    found = {name: rng.uniform(20, 200) for name in LENGTHS}
    return found | {name: rng.randint(4, 8) for name in COUNTS} | {name: rng.randint(0, 3) for name in STATES}


def genus(number: int, species: int, works: int) -> list[schema.Literature]:
    """The works on one genus; of each three the last repeats the one before it."""
    rng = random.Random(number)
    name = f"G{letters(number)}um"
    like = [middles(rng) for _ in range(species)]
    literature: list[schema.Literature] = []
    before: list[tuple[schema.StatementRecord, ...]] = []
    for place in range(works):
        id_ = f"work-{number}-{place}"
        follows = (f"work-{number}-{place - 1}",) if place % 3 == 2 else ()
        said = before if follows else [statements(rng, one) for one in like]
        treatments = tuple(
            schema.TreatmentRecord(taxon=f"{name} {letters(one)}um", under=name, follows=follows, traits=said[one])
            for one in range(species)
        )
        acts: tuple[schema.Act, ...] = ()
        if place == 0:
            published = (name, *(treatment.taxon for treatment in treatments))
            acts = tuple(schema.Act(name=one, act=schema.ActKind.NEW_TAXON) for one in published)
        person = schema.Person(family=f"V{letters(number * works + place)}")
        work = schema.Work(id=id_, type="book", author=(person,), issued=str(FIRST_YEAR + place % 220), title="A book")
        literature.append(schema.Literature(work=work, acts=acts, treatments=treatments))
        before = said
    return literature


def records(genera: int, species: int = SPECIES, works: int = WORKS) -> schema.Records:
    return schema.Records(
        settings=schema.Settings(title="Benchmark"),
        characters=vocabulary(),
        literature=tuple(one for number in range(genera) for one in genus(number, species, works)),
    )


def linked(genera: int, species: int = SPECIES, works: int = WORKS) -> Corpus:
    corpus, problems = link(records(genera, species, works))
    assert not [one for one in problems if one.severity == "error"], problems[0]
    return corpus


def median(work: Callable[[], T], times: int = 5) -> tuple[float, T]:
    """Median processor seconds of several runs, and what the last gave."""
    taken = []
    for _ in range(times):
        began = time.process_time()
        found = work()
        taken.append(time.process_time() - began)
    return statistics.median(taken), found


def every_diagnosis(corpus: Corpus) -> None:
    for taxon in corpus.taxa:
        diagnosis(corpus, taxon)


def every_lineage(corpus: Corpus) -> None:
    for taxon in corpus.taxa.values():
        lineage(corpus, [corpus.treatments[one] for one in taxon.treatments])


def diagnoses(what: str, sizes: Sequence[tuple[int, int, int]]) -> None:
    first = 0.0
    for genera, species, works in sizes:
        corpus = linked(genera, species, works)
        count = len(corpus.treatments)
        took, alone = median(lambda: every_diagnosis(corpus), 3)[0], median(lambda: every_lineage(corpus), 3)[0]  # noqa: B023
        first = first or took / count
        print(
            f"diagnosis, {what}: {count:6,} treatments, {took / count * 1e3:.2f} ms each, "
            f"{took / count / first:.2f} of the smallest size; independence {alone / took:.0%} of it"
        )


def separations() -> None:
    corpus = linked(1)
    taxa = tuple(corpus.taxa)
    one = median(lambda: every_diagnosis(corpus))[0] / len(taxa)
    for several in (2, SPECIES):
        took = median(lambda: separation(corpus, taxa[:several]), 3)[0]  # noqa: B023
        pairs = several * (several - 1) // 2
        print(f"separation of {several:2} taxa: {took / pairs * 1e3:.1f} ms a pair, {took / one / pairs:.2f} diagnoses")


def keys() -> None:
    corpus = linked(KEYED[-1] // SPECIES)
    findings = {taxon: diagnosis(corpus, taxon).findings for taxon in corpus.taxa}
    first = 0.0
    for several in KEYED:
        chosen = {taxon: findings[taxon] for taxon in tuple(corpus.taxa)[:several]}
        took, made = median(lambda: key_of(chosen, corpus.vocabulary), 3)  # noqa: B023
        first = first or took / several
        print(
            f"key to {several:3} taxa: {took:6.2f} s, {took / several / first:.2f} of the smallest for each taxon; "
            f"{len(made.couplets)} couplets, expected to name {made.expected.wrong:.1%} of plants wrongly"
        )


def open_questions(genera: Sequence[int]) -> None:
    first = 0.0
    for several in genera:
        made = records(several)
        linking, (corpus, _) = median(lambda: link(made), 1)  # noqa: B023
        took, found = median(lambda: gaps(corpus), 1)  # noqa: B023
        count = len(corpus.treatments)
        first = first or took / count
        print(
            f"gaps of {count:6,} treatments: {took:5.1f} s, {took / count / first:.2f} of the smallest for each, "
            f"{took / linking:.0f} times as long as linking; {len(found):,} gaps"
        )


if __name__ == "__main__":
    diagnoses("more genera", ((2, SPECIES, WORKS), (8, SPECIES, WORKS), (32, SPECIES, WORKS)))
    diagnoses("more works on a taxon", ((1, 1, 25), (1, 1, 100), (1, 1, 400)))
    separations()
    keys()
    open_questions((2, 100) if "--large" in sys.argv else (2, 8))
