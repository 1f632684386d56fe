"""Write kb-iris: measurements of 150 flowers as specimens, and the ranges they give as treatments.

The figures are E. Anderson's (The irises of the Gaspé Peninsula, Bulletin of the American Iris Society 59: 2-5, 1935)
as printed in table I of R. A. Fisher, The use of multiple measurements in taxonomic problems, Annals of Eugenics 7:
179-188 (1936); read here from the copy in scikit-learn. The bibliographic facts and the name acts are from memory.

Run by hand from the root of the project; what it writes is kept under version control:

    python tests/data/make_kb_iris.py
"""

from __future__ import annotations

import csv
import io
from pathlib import Path

import numpy as np

OUT = Path(__file__).parent / "kb-iris"
CHARACTERS = ("sepal length", "sepal width", "petal length", "petal width")
SPECIES = ("Iris setosa", "Iris versicolor", "Iris virginica")

SETTINGS = """\
title: Three irises
description: >-
  Sepals and petals of fifty flowers each of three species, measured by Anderson (1935) and printed by Fisher
  (1936); for tests. The ranges are computed from the flowers: lowest and highest, and between them the tenth and
  the ninetieth percentile.
focal-taxa: [Iris setosa, Iris versicolor, Iris virginica]
code-edition: Shenzhen 2018
"""

ACTS = """\
work:
  id: {id}
  type: book
  author: [{author}]
  issued: {year}
  title: {title}
  note: From memory; only the acts are recorded.
acts:
{acts}"""


def range_of(values: np.ndarray) -> str:
    """The values in cm as `(min–)q10–q90(–max)`; a bracket is left out where it would repeat a typical bound.

    Percentiles by linear interpolation, to the tenth of a centimetre, as the flowers were measured.
    """
    low, typical_low, typical_high, high = (f"{one:.1f}" for one in np.quantile(values, (0, 0.1, 0.9, 1)))
    first = f"({low}–)" if low != typical_low else ""
    last = f"(–{high})" if high != typical_high else ""
    return f"{first}{typical_low}–{typical_high}{last} cm"


def characters() -> str:
    lines = ["characters:"]
    for name in CHARACTERS:
        structure, property_ = name.split()
        lines.append(f"  - {{name: {name}, structure: {structure}, property: {property_}, kind: measure, unit: cm}}")
    return "\n".join(lines) + "\n"


def treatments(flowers: np.ndarray, species: np.ndarray) -> str:
    lines = [
        "work:",
        "  id: fisher-1936",
        "  type: article-journal",
        "  author: [{family: Fisher, given: R. A.}]",
        "  issued: 1936",
        "  title: The use of multiple measurements in taxonomic problems",
        "  container-title: Annals of Eugenics",
        "  volume: 7",
        "  page: 179-188",
        "  note: Table I; flowers measured by E. Anderson. It prints no ranges, these are computed from it.",
        "covers: [Iris]",
        "treatments:",
    ]
    for number, taxon in enumerate(SPECIES):
        lines += [f"  - taxon: {taxon}", "    under: Iris", "    basis: compiled", "    traits:"]
        for column, character in enumerate(CHARACTERS):
            value = range_of(flowers[species == number, column])
            lines.append(f'      - {{character: {character}, value: "{value}", note: computed from 50 flowers}}')
    return "\n".join(lines) + "\n"


def acts() -> dict[str, str]:
    linnaeus = "".join(f"  - {{name: {name}, act: new taxon}}\n" for name in ("Iris", *SPECIES[1:]))
    setosa = "  - {name: Iris setosa, act: new taxon, authors: Pall. ex Link}\n"
    return {
        "linnaeus-1753": ACTS.format(
            id="linnaeus-1753",
            author="{family: Linnaeus, given: C., literal: L.}",
            year=1753,
            title="Species plantarum",
            acts=linnaeus,
        ),
        "link-1820": ACTS.format(
            id="link-1820",
            author="{family: Link, given: H. F.}",
            year=1820,
            title="Protologue of Iris setosa",
            acts=setosa,
        ),
    }


def specimens(flowers: np.ndarray, species: np.ndarray) -> str:
    text = io.StringIO()
    table = csv.writer(text, lineterminator="\n")
    table.writerow(["occurrenceID", "recordedBy", "scientificName", *(f"{name} [cm]" for name in CHARACTERS)])
    for number, (flower, kind) in enumerate(zip(flowers, species, strict=True), 1):
        table.writerow([f"flower-{number:03}", "E. Anderson", SPECIES[kind], *(f"{value:.1f}" for value in flower)])
    return text.getvalue()


def main() -> None:
    from sklearn.datasets import load_iris  # here, since collecting doctests imports this file

    data = load_iris()
    texts = {
        "kb.yaml": SETTINGS,
        "characters.yaml": characters(),
        "literature/fisher-1936.yaml": treatments(data.data, data.target),
        "specimens.csv": specimens(data.data, data.target),
        **{f"literature/{name}.yaml": text for name, text in acts().items()},
    }
    for name, text in texts.items():
        path = OUT / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text, encoding="utf-8")


if __name__ == "__main__":
    main()
