"""Reading at scale, by hand: `python tests/benchmarks/bench_read.py [treatments]`.

Prints ratios measured in one run, each the median of several: reading cold and warm against `yaml.load` of the
same text with the C safe loader, and `auctorum --help` against `python -c "import click"`.
"""

from __future__ import annotations

import os
import statistics
import subprocess
import sys
import tempfile
import time
from collections.abc import Callable
from pathlib import Path

import yaml

from auctorum.corpus.link import link
from auctorum.records.cache import cache_file
from auctorum.records.read import read

TRAITS = 14
TREATMENTS_PER_FILE = 10


def literature(number: int) -> str:
    """One publication with ten treatments of fourteen statements each."""
    lines = [
        "work:",
        f"  id: work-{number}",
        "  type: book",
        f"  author: [{{family: Author{number}}}]",
        f"  issued: '{1800 + number % 220}'",
        f"  title: Part {number}",
        "acts:",
    ]
    taxa = [
        f"Exemplum species{'abcdefghij'[n]}{'x' * (number % 7)}y{_letters(number)}" for n in range(TREATMENTS_PER_FILE)
    ]
    for taxon in taxa:
        lines.append(f"- {{name: {taxon}, act: new taxon, page: '{number}', rank: species}}")
    lines.append("treatments:")
    for taxon in taxa:
        lines += [f"- taxon: {taxon}", "  status: accepted", "  basis: own material", "  traits:"]
        for trait in range(TRAITS):
            low = 10 + (number + trait) % 40
            words = f'"spurs slender, {low}-{low + 12}(-{low + 20}) mm long"'
            lines.append(f"  - {{character: trait {trait}, verbatim: {words}, page: '{number + trait}'}}")
    return "\n".join(lines) + "\n"


def _letters(number: int) -> str:
    return "".join(chr(97 + int(digit)) for digit in str(number))


def median(work: Callable[[], object], times: int = 3) -> float:
    """Median seconds of several runs."""
    taken = []
    for _ in range(times):
        began = time.perf_counter()
        work()
        taken.append(time.perf_counter() - began)
    return statistics.median(taken)


def make(folder: Path, treatments: int) -> list[Path]:
    (folder / "literature").mkdir()
    (folder / "kb.yaml").write_text("title: Benchmark\n")
    rows = [
        f"- {{name: trait {n}, structure: spur, property: length, kind: measure, unit: mm}}\n" for n in range(TRAITS)
    ]
    (folder / "characters.yaml").write_text("characters:\n" + "".join(rows))
    paths = []
    for number in range(treatments // TREATMENTS_PER_FILE):
        path = folder / "literature" / f"work-{number}.yaml"
        path.write_text(literature(number))
        paths.append(path)
    return paths


def main() -> None:
    treatments = int(sys.argv[1]) if len(sys.argv) > 1 else 10_000
    with tempfile.TemporaryDirectory() as where:
        os.environ["XDG_CACHE_HOME"] = f"{where}/cache"
        kb = Path(where) / "kb"
        kb.mkdir()
        paths = make(kb, treatments)
        texts = [path.read_text() for path in paths]

        def cold() -> None:
            cache_file(kb).unlink(missing_ok=True)
            read(kb)

        base = median(lambda: [yaml.load(text, Loader=yaml.CSafeLoader) for text in texts])
        cold_time, warm_time = median(cold), median(lambda: read(kb))
        records, problems = read(kb)
        assert problems == (), problems[0]
        link_time = median(lambda: link(records), 1)
        print(f"{treatments} treatments of {TRAITS} statements; yaml.load {base:.2f} s")
        print(f"read cold / yaml.load  {cold_time / base:.2f}")
        print(f"read warm / cold       {warm_time / cold_time:.2f}")
        print(f"link / yaml.load       {link_time / base:.2f}")
    script = "from auctorum.cli.main import main; main(['--help'])"  # what the installed command runs
    help_time = median(lambda: subprocess.run([sys.executable, "-c", script], capture_output=True), 15)
    click_time = median(lambda: subprocess.run([sys.executable, "-c", "import click"], capture_output=True), 15)
    print(f"auctorum --help / import click  {help_time / click_time:.2f}")


if __name__ == "__main__":
    main()
