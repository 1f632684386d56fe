"""The Code at scale, by hand: `python tests/benchmarks/bench_code.py [acts ...] [--profile]` (default 10000 100000).

Synthetic acts are built as records in memory, which is not measured; then `link` (records -> corpus) and `applied`
(corpus -> judgements and citations) are timed, each the median of several runs, every size in a process of its own so
that its peak memory is its own. Printed are microseconds an act, acts a second, `applied` against `link`, and the cost
of an act against that of the smallest size: 1.0 where cost grows linearly. `--profile` lists the dearest functions of
`applied` and `link` instead.

Of each ten acts five are new species, two varieties of one species, one a variety raised, one a species moved to
another genus, and one a new species that cites an older one as its synonym; a genus holds two hundred acts, a work ten.
"""

from __future__ import annotations

import cProfile
import json
import pstats
import resource
import statistics
import subprocess
import sys
import time
from collections.abc import Callable, Iterator
from typing import Any, TypeVar

from auctorum.corpus.link import link
from auctorum.nomenclature.code import applied
from auctorum.records import schema

T = TypeVar("T")
TEN = 10  # acts of a block, and of a work
BLOCKS_OF_GENUS = 20
ALPHABET = "abcdefgklmnoprst"
FIRST_YEAR, YEARS = 1760, 260


def letters(number: int) -> str:
    """A number in letters, five at least; none of those that are corrected into one another (ICN Art. 60.5)."""
    text = ""
    while number or len(text) < 5:
        number, digit = divmod(number, len(ALPHABET))
        text += ALPHABET[digit]
    return text


def genus(block: int) -> str:
    return f"G{letters(block // BLOCKS_OF_GENUS)}um"


def species(block: int, number: int) -> str:
    return f"{genus(block)} {letters(TEN * block + number)}um"


def variety(block: int, number: int) -> str:
    return f"{species(block, 0)} var. {letters(TEN * block + number)}atum"


DESCRIBED = schema.DescriptionRecord(kind=schema.DescriptionKind.DIAGNOSIS, language="latin")


def act(name: str, kind: schema.ActKind, rank: str, **more: Any) -> schema.Act:
    aliased = {key.replace("_", "-"): value for key, value in more.items()}
    return schema.Act(name=name, act=kind, rank=rank, **aliased)


def new_taxon(name: str, rank: str, specimen: str, **more: Any) -> schema.Act:
    kind = schema.TypeKind.HOLOTYPE
    type_ = schema.TypeRecord(kind=kind, specimen=specimen, herbarium="TESN", word="holotypus")
    return act(name, schema.ActKind.NEW_TAXON, rank, type=type_, description=DESCRIBED, **more)


def acts(block: int) -> Iterator[schema.Act]:
    if block % BLOCKS_OF_GENUS == 0:
        of_genus = {"description": DESCRIBED, "type_indicated": True}
        yield act(genus(block), schema.ActKind.NEW_TAXON, "genus", **of_genus)
    for number in range(5):
        yield new_taxon(species(block, number), "species", f"{block}.{number}")
    for number in (5, 6):
        yield new_taxon(variety(block, number), "variety", f"{block}.{number}")
    older, elsewhere = max(block - 1, 0), block - BLOCKS_OF_GENUS
    raised = f"{genus(block)} {letters(TEN * older + 5)}atum"
    full = {"basionym_reference": "full"}
    yield act(raised, schema.ActKind.CHANGE_OF_RANK, "species", basionym=variety(older, 5), **full)
    if elsewhere >= 0:
        moved = f"{genus(block)} {species(elsewhere, 1).split()[1]}"
        yield act(moved, schema.ActKind.NEW_COMBINATION, "species", basionym=species(elsewhere, 1), **full)
    cites = (species(older, 2),) if block else ()
    yield new_taxon(species(block, 9), "species", f"{block}.9", cites=cites)


def records(size: int) -> schema.Records:
    blocks = size // TEN
    literature = []
    for block in range(blocks):
        person = schema.Person(family=f"V{letters(block)}")
        year, month = divmod(FIRST_YEAR * 12 + block * YEARS * 12 // blocks, 12)
        day = f"{year}-{month + 1:02}"
        id_ = f"work-{block:07}"
        work = schema.Work(id=id_, type="book", author=(person,), issued=day, title="A book")
        literature.append(schema.Literature(work=work, acts=tuple(acts(block))))
    return schema.Records(
        settings=schema.Settings(title="Benchmark"),
        characters=schema.Characters(characters=()),
        literature=tuple(literature),
    )


def timed(work: Callable[[], T], times: int) -> tuple[float, T]:
    """Median seconds of several runs, and what the last gave."""
    taken = []
    for _ in range(times):
        began = time.perf_counter()
        found = work()
        taken.append(time.perf_counter() - began)
    return statistics.median(taken), found


def one(size: int) -> dict[str, float]:
    """Figures of one size, measured in this process."""
    made = records(size)
    base = _peak()
    times = 3 if size <= 100_000 else 1
    link_time, (corpus, problems) = timed(lambda: link(made), times)
    assert not [problem for problem in problems if problem.severity == "error"], problems[0]
    linked = _peak()
    applied_time, code = timed(lambda: applied(corpus), times)
    count = len(code.acts)
    return {
        "acts": count,
        "link": link_time / count,
        "applied": applied_time / count,
        "records_mb": base,
        "linked_mb": linked,
        "peak_mb": _peak(),
        "illegitimate": sum(str(judged.legitimacy) == "illegitimate" for judged in code.acts.values()),
        "invalid": sum(str(judged.validity) == "not validly published" for judged in code.acts.values()),
    }


def _peak() -> float:
    """Most memory ever used by this process, in megabytes."""
    return resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024


def profile(size: int) -> None:
    """The dearest functions of `link` and of `applied`, by their own time."""
    made = records(size)
    corpus = _profiled("link", lambda: link(made))[0]
    _profiled("applied", lambda: applied(corpus))


def _profiled(what: str, work: Callable[[], T]) -> T:
    profiler = cProfile.Profile()
    found = profiler.runcall(work)
    print(what)
    pstats.Stats(profiler).sort_stats("tottime").print_stats(15)
    pstats.Stats(profiler).sort_stats("cumtime").print_stats(25)
    return found


def main() -> None:
    arguments = sys.argv[1:]
    sizes = [int(said) for said in arguments if said.isdigit()] or [10_000, 100_000]
    if "--one" in arguments:
        print(json.dumps(one(sizes[0])))
    elif "--profile" in arguments:
        profile(sizes[-1])
    else:
        compare(sizes)


def compare(sizes: list[int]) -> None:
    first: dict[str, float] = {}
    for size in sizes:
        ran = subprocess.run([sys.executable, __file__, "--one", str(size)], capture_output=True, text=True, check=True)
        got = json.loads(ran.stdout)
        first = first or got
        print(f"{got['acts']:,} acts, {got['illegitimate']:,} illegitimate, {got['invalid']:,} not valid")
        for step in ("link", "applied"):
            told = f"{got[step] * 1e6:6.1f} µs an act, {1 / got[step]:8,.0f} acts/s"
            print(f"  {step:8} {told}, {got[step] / first[step]:.2f} of the smallest size")
        print(f"  applied / link {got['applied'] / got['link']:.2f}")
        memory = (
            f"records {got['records_mb']:,.0f} MB, linked {got['linked_mb']:,.0f} MB, in all {got['peak_mb']:,.0f} MB"
        )
        print(f"  peak memory: {memory}; {got['peak_mb'] * 1024 / got['acts']:.1f} kB an act")


if __name__ == "__main__":
    main()
