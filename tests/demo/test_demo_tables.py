"""The tables of the demo knowledge base: as untidy as field notes, all invented, and made again byte for byte."""

from __future__ import annotations

import csv
import importlib.util
import sys
from pathlib import Path

import pytest

from auctorum.corpus.model import Corpus

ROOT = Path(__file__).parent.parent.parent
KB = ROOT / "kb"
INVENTED = "# Invented: no real plant, person, place, publication or herbarium."


def table(name: str) -> list[dict[str, str]]:
    with (KB / name).open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))


def test_specimens_are_as_untidy_as_field_notes() -> None:
    rows = table("specimens.csv")
    observers = {row["recordedBy"] for row in rows}
    assert len(observers) == 2
    inches = [row for row in rows if row["spur length [in]"]]
    assert {row["recordedBy"] for row in inches} < observers
    assert any(row["spur length [mm]"] for row in rows if row["recordedBy"] == inches[0]["recordedBy"])
    assert {row["lifeStage"] for row in rows} == {"young", "mature"}
    assert 0 < sum(row["degreeOfEstablishment"] == "cultivated" for row in rows) < 15
    named = sum(bool(row["scientificName"]) for row in rows)
    assert len(rows) / 2 < named < len(rows)
    for column in ("plant height [cm]", "spur colour", "leaf hairiness", "flower number"):
        assert 0 < sum(not row[column] for row in rows) < 30, column


def test_spurs_of_wild_plants_overlap() -> None:
    """Round the working threshold of 25 mm stand plants of mixed cliffs, so that no count is beyond doubt."""
    lengths = [
        float(row["spur length [mm]"])
        for row in table("specimens.csv")
        if row["spur length [mm]"] and row["lifeStage"] == "mature"
    ]
    assert sum(22 <= one < 28 for one in lengths) >= 20
    assert min(lengths) < 12
    assert max(lengths) > 45


def test_labels_go_wrong_in_many_ways(corpus: Corpus) -> None:
    known = set(corpus.homonyms)
    written = [row["verbatimIdentification"] for row in table("labels.csv")]
    right = [label for label in written if label in known]
    assert 4 <= len(right) <= len(written) / 3
    assert "Cremnocentron candidum" in right, "a synonym"
    assert any(not label.startswith(("C", "K")) for label in written), "a name that is not of the group"


def test_everything_says_that_it_is_invented(corpus: Corpus) -> None:
    files = sorted(KB.rglob("*.yaml"))
    assert len(files) >= 19
    assert [file.name for file in files if not file.read_text(encoding="utf-8").startswith(INVENTED)] == []
    assert corpus.settings.notice.startswith("Invented")
    ids = [next(iter(row.values())) for name in ("sites", "specimens", "labels") for row in table(f"{name}.csv")]
    assert all(one.startswith("INV-") for one in ids)
    assert all(site.locality.endswith(", invented") for site in corpus.sites.values())


def test_sites_lie_in_open_ocean(corpus: Corpus) -> None:
    """About 45° S, 119° W in the South Pacific, some 2,000 km from any land (from memory, no source)."""
    for site in corpus.sites.values():
        assert site.decimalLatitude is not None and site.decimalLongitude is not None
        assert -45 < site.decimalLatitude < -44
        assert -119 < site.decimalLongitude < -118


def test_cautions_name_every_danger(corpus: Corpus) -> None:
    text = " ".join(corpus.settings.cautions).lower()
    for word in (
        "permit",
        "protected",
        "exact localities",
        "cliffs",
        "weather",
        "poisonous",
        "eat nothing",
        "law",
        "herbarium",
    ):
        assert word in text, word


@pytest.mark.parametrize("genus", ["Cremnocentron", "Cremnocentrum", "Kremnocentron", "Pelladoria"])
def test_genus_is_not_among_real_names(genus: str, listed_names: list[str]) -> None:
    genera = {line.replace("×", "").split()[0] for line in listed_names}
    assert len(genera) > 5000
    assert genus not in genera


def test_generator_gives_the_same_bytes() -> None:
    spec = importlib.util.spec_from_file_location("make_specimens", ROOT / "examples" / "make_specimens.py")
    assert spec is not None and spec.loader is not None
    module = importlib.util.module_from_spec(spec)
    sys.modules[spec.name] = module
    spec.loader.exec_module(module)
    made = module.table()
    assert made.encode() == (KB / "specimens.csv").read_bytes()
    assert module.table(seed=1) != made
