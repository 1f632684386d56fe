"""Field sheets as a browser prints them: one page, of its paper, nothing cut, and a scale bar that measures 100 mm.

Needs Chromium or Chrome; skipped without one.
"""

from __future__ import annotations

import json
import shutil
import subprocess
from itertools import pairwise
from pathlib import Path

import pytest
from click.testing import CliRunner

from auctorum.cli.main import main

pdfplumber = pytest.importorskip("pdfplumber")

ROOT = Path(__file__).parents[2]
BROWSER = next(filter(None, map(shutil.which, ("chromium", "chromium-browser", "google-chrome", "chrome"))), None)
pytestmark = pytest.mark.skipif(BROWSER is None, reason="no Chromium or Chrome to print the page with")
POINT = 25.4 / 72  # mm
LONGUM, ROBUSTUM = (f"Cremnocentron album var. {one}" for one in ("longum", "robustum"))
SIX = (
    "Cremnocentron pendulum Vane", "Cremnocentron album var. album", "Cremnocentron luteolum",
    "Cremnocentron tessarnense", "Cremnocentron skarroense", LONGUM,
)  # fmt: skip
# ISO 216 A4 and ANSI letter, in mm; a browser rounds to its own pixels of 1/96 in.
PAPERS = {"a4": (210, 297), "letter": (215.9, 279.4)}


@pytest.fixture(autouse=True)
def own_cache(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / "cache"))


def field_sheet(*arguments: str) -> str:
    result = CliRunner().invoke(main, ["field-sheet", *arguments, "--kb", str(ROOT / "kb")])
    assert result.exit_code == 0, result.output
    return result.stdout


def printed(text: str, folder: Path) -> Path:
    (folder / "sheet.html").write_text(text, encoding="utf-8")
    quiet = (
        "headless no-sandbox disable-gpu disable-quic no-first-run disable-background-networking "
        "disable-component-update disable-sync no-pdf-header-footer"
    )
    command = [str(BROWSER), *(f"--{one}" for one in quiet.split()), f"--user-data-dir={folder / 'profile'}"]
    command += [f"--print-to-pdf={folder / 'sheet.pdf'}", (folder / "sheet.html").as_uri()]
    subprocess.run(command, check=True, capture_output=True, timeout=120)
    return folder / "sheet.pdf"


@pytest.mark.parametrize("paper", PAPERS)
@pytest.mark.parametrize("taxa", [(LONGUM, ROBUSTUM), (LONGUM,), SIX], ids=["two", "three", "six"])
def test_one_page_of_its_paper_with_all_on_it(taxa: tuple[str, ...], paper: str, tmp_path: Path) -> None:
    data = json.loads(field_sheet(*taxa, "--paper", paper, "--json"))
    with pdfplumber.open(printed(field_sheet(*taxa, "--paper", paper), tmp_path)) as pdf:
        (page,) = pdf.pages
        size = sorted((float(page.width) * POINT, float(page.height) * POINT))
        assert size == pytest.approx(PAPERS[paper], abs=0.3)
        said = " ".join((page.extract_text() or "").replace("\u00a0", " ").split())
        words = set(said.split())
        for one in data["characters"]:
            assert set(one["character"].split()) <= {word.strip("():,") for word in words}
            assert all(threshold["from"].split()[0] in said for at in one["stages"] for threshold in at["thresholds"])
        assert "Take care." in said and "opinion" in said and "Print at 100 %" in said
        assert len(data["characters"]) >= 4 and data["plants"] >= 4
        letters = page.chars
        assert min(one["x0"] for one in letters) >= 7.9 / POINT
        assert max(one["x1"] for one in letters) <= float(page.width) - 7.9 / POINT
        assert max(one["bottom"] for one in letters) <= float(page.height) - 7.9 / POINT
        small = "".join(one["text"] for one in letters if one["size"] < 8.9)  # in points; nobody reads it outdoors
        assert small.startswith(("No room for", "Left out")) and small.endswith("begins with INV.")
        assert min(one["size"] for one in letters) >= 7.4


def test_narrow_columns_make_no_second_page(tmp_path: Path) -> None:
    """Few plants leave room for so many characters that the headings just fit."""
    text = field_sheet(LONGUM, "--paper", "letter", "--plants", "4")
    assert text.count('scope="row"') >= 8
    with pdfplumber.open(printed(text, tmp_path)) as pdf:
        assert len(pdf.pages) == 1


def test_scale_bar_and_rows_have_their_size(tmp_path: Path) -> None:
    with pdfplumber.open(printed(field_sheet(LONGUM, ROBUSTUM), tmp_path)) as pdf:
        (page,) = pdf.pages
        ticks = [one for one in (*page.lines, *page.curves) if one["linewidth"] < 0.5 and one["width"] < 0.01]
        up = sorted({round(one["x0"], 3) for one in ticks if 3.4 < one["height"] * POINT < 3.8})
        down = sorted({round(one["x0"], 3) for one in ticks if 3.9 < one["height"] * POINT < 4.1})
        assert [(one - up[0]) * POINT for one in up] == pytest.approx([10 * cm for cm in range(11)], abs=0.05)
        assert [(one - down[0]) * POINT for one in down] == pytest.approx([25.4 * one for one in range(5)], abs=0.05)
        (heading,) = (one for one in page.extract_words() if one["text"] == "occurrenceID")
        rules = sorted({round(one["top"] * POINT) for one in page.horizontal_edges if one["top"] > heading["bottom"]})
        rules = [one for one in rules if one - 1 not in rules]  # both edges of a rule count as one
        rows = [after - before for before, after in pairwise(rules)]
        assert len(rows) >= 7 and min(rows) >= 7
