"""No exact place leaves: every command with --json, every exported file and every page, on the demo and on a copy of it
whose sites and plants tell their places in as many ways as somebody may write them.

A command that is new stands in ARGUMENTS before these tests pass. The search here is another than the program's own:
the forms in which each coordinate can be written are listed, and looked for.
"""

from __future__ import annotations

import csv
import io
import json
import re
import shutil
from collections.abc import Iterator
from pathlib import Path

import click
import pytest
from click.testing import CliRunner

from auctorum.cli.main import COMMANDS, Commands, main

KB = Path(__file__).parents[2] / "kb"
LONGUM, ROBUSTUM = "Cremnocentron album var. longum", "Cremnocentron album var. robustum"

# What each command is asked; OUT is a new folder, OWN the folder of the knowledge base.
ARGUMENTS = {
    "check": ["--open"],
    "history": [LONGUM],
    "synonymy": [LONGUM],
    "correct-name": [LONGUM],
    "compare": [LONGUM, ROBUSTUM],
    "diagnosis": [LONGUM, "--observed"],
    "key": [LONGUM, ROBUSTUM],
    "field-sheet": [LONGUM, ROBUSTUM],
    "criterion": [LONGUM],
    "determine": ["--with", "spur length=31 mm"],
    "verify-labels": ["OWN/labels.csv"],
    "survey": [],
    "gaps": ["--limit", "0"],
    "transcribe": ["OUT/text.txt"],
    "match": ["Cremnocentron albun var. longum"],
    "build": ["--out", "OUT/site"],
    "export graph": ["OUT/graph.graphml"],
    "export specimens": ["OUT/specimens.csv"],
    "export sites": ["OUT/sites.geojson"],
    "new kb": ["OUT/new"],
    "new literature": ["orrin-1999"],
    "new schema": ["site-row"],
}
WITHOUT_RECORDS = {"serve": "shows the files of a built site, which are searched, until it is stopped"}
MORE = {
    "export graph, drawn": ("export graph", ["OUT/graph.svg"]),
    "export sites, as a table": ("export sites", ["OUT/sites.csv"]),
}


def commands() -> Iterator[tuple[str, click.Command]]:
    """Every command, and those below it, by the words that call it."""
    assert isinstance(main, Commands)
    context = click.Context(main)
    for name in COMMANDS:
        command = main.get_command(context, name)
        assert command is not None
        if isinstance(command, click.Group):
            yield from ((f"{name} {below}", each) for below, each in command.commands.items())
        else:
            yield name, command


BY_NAME = dict(commands())
ASKED = {name: (name, ARGUMENTS[name]) for name in BY_NAME if name in ARGUMENTS} | MORE


def test_every_command_is_asked() -> None:
    missing = set(BY_NAME) - set(ARGUMENTS) - set(WITHOUT_RECORDS)
    assert not missing, "say in ARGUMENTS how to ask it, so that what it shows is searched"


def degrees(row: int) -> tuple[str, str]:
    return f"-51.{7394 + 131 * row}62", f"127.{3851 + 137 * row}94"


def forms(degrees: str) -> Iterator[str]:
    """Patterns of one coordinate, to a hundredth of a degree more than may be told."""
    whole, _, decimals = degrees.lstrip("-").partition(".")
    yield rf"{whole}[.,·]{decimals[:3]}"
    yield f"{whole}{decimals[:4]}"
    yield f"{whole}[_ -]{decimals[:4]}"
    seconds = float(f"0.{decimals}") * 3600
    minute, second = int(seconds // 60), int(seconds % 60)
    yield rf"\b{whole}[^\w<>]{{1,3}}0?{minute}[^\w<>]{{1,3}}(?:0?{second}|0?{second + 1})\b"
    yield rf"\b{whole}[^\w<>]{{1,3}}0?{minute}\.\d"
    yield f"{whole}{minute:02}{second:02}"


def remarks(row: int) -> list[str]:
    """What people write behind a plant."""
    latitude, longitude = (one.lstrip("-") for one in degrees(row))
    whole, _, rest = latitude.partition(".")
    seconds = float(f"0.{rest}") * 3600
    minute, second = int(seconds // 60), int(seconds % 60)
    return [
        f"at {latitude} S, {longitude} E", f"{latitude.replace('.', ',')}", f"-{latitude}/{longitude}",
        f"{whole}°{minute}'{second}\" S", f"{whole} {minute} {second + 1}", f"{whole}°{seconds / 60:.3f}'",
        f"S{latitude.replace('.', '')}", f"photo {latitude.replace('.', '_')}", f"{whole}{minute:02}{second:02}S",
        "second ledge of the Quillmere stair",
    ]  # fmt: skip


FORBIDDEN = re.compile(
    "|".join(["quillmere", "vossbeck", "hutspring", *(f for row in range(19) for d in degrees(row) for f in forms(d))]),
    re.IGNORECASE,
)


@pytest.fixture(scope="module")
def hostile(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A copy of the demo that tells its places wherever a cell can hold them."""
    kb = tmp_path_factory.mktemp("hostile") / "kb"
    shutil.copytree(KB, kb)
    sites = read(kb / "sites.csv")
    for row, site in enumerate(sites):
        site["decimalLatitude"], site["decimalLongitude"] = degrees(row)
        site |= {"locality": "Quillmere stair, invented", "habitat": "Wall of the Hutspring"}
        site["locationRemarks"] = "From Vossbeck up the gully."
    latitude, longitude = degrees(0)
    sites[1]["substrate"] = f"basalt at {latitude}"
    sites[2]["aspect"] = "S of the Quillmere stair"
    sites.append(sites[0] | {"locationID": "INV-BAD1", "decimalLatitude": f"{latitude} S"})
    sites.append(sites[0] | {"locationID": f"INV {latitude} {longitude}", "role": "candidate"})
    write(kb / "sites.csv", sites)
    plants = read(kb / "specimens.csv")
    for plant in plants:
        plant |= {"decimalLatitude": "", "decimalLongitude": "", "locality": ""}
    for number, said in enumerate(remarks(0)):
        plants[number]["occurrenceRemarks"] = said
        plants[20 + number]["catalogNumber"] = said
        plants[40 + number]["spur colour"] = f"ivory {said}"
    plants[60]["locationID"] = f"{latitude} {longitude}"
    plants[61] |= {"decimalLatitude": latitude, "decimalLongitude": longitude, "locality": "Quillmere stair"}
    plants[62] |= {"locationID": "", "decimalLatitude": latitude, "decimalLongitude": longitude}
    plants[63]["scientificName"] = f"Cremnocentron album {latitude}"
    write(kb / "specimens.csv", plants)
    return kb


def read(path: Path) -> list[dict[str, str]]:
    return list(csv.DictReader(io.StringIO(path.read_text(encoding="utf-8"))))


def write(path: Path, rows: list[dict[str, str]]) -> None:
    with path.open("w", encoding="utf-8", newline="") as file:
        writer = csv.DictWriter(file, list(rows[0]))
        writer.writeheader()
        writer.writerows(rows)


def shown(name: str, kb: Path, out: Path, monkeypatch: pytest.MonkeyPatch) -> dict[str, str]:
    """Everything that a command shows or writes, by where; `new` and `transcribe` take a text and write to a copy."""
    monkeypatch.setenv("XDG_CACHE_HOME", str(out / "cache"))
    called, arguments = ASKED[name]
    (out / "text.txt").write_text("Spur 22–34 mm long; leaves acute.", encoding="utf-8")
    if called.startswith("new "):
        kb = Path(shutil.copytree(kb, out / "kb"))
    takes = {parameter.name for parameter in BY_NAME[called].params}
    line = [*called.split(), *(one.replace("OUT", str(out)).replace("OWN", str(kb)) for one in arguments)]
    line += [*(["--kb", str(kb)] if "kb" in takes else []), *(["--json"] if "as_json" in takes else [])]
    result = CliRunner().invoke(main, line)
    assert result.exit_code in (0, 1), result.output
    assert "a fault of the program" not in result.stderr, result.stderr
    if "as_json" in takes:
        json.loads(result.stdout)
    texts = {"what it prints": result.stdout, "what it says of it": result.stderr}
    for path in sorted(out.rglob("*")):
        inside = path.relative_to(out)
        if path.is_file() and inside.parts[0] not in ("cache", "kb"):
            texts[str(inside)] = path.read_text(encoding="utf-8", errors="replace")
    assert any(len(text) > 20 for text in texts.values())
    return texts


@pytest.mark.parametrize("name", ASKED)
def test_no_place_of_the_hostile_copy(
    name: str, hostile: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    for where, text in shown(name, hostile, tmp_path, monkeypatch).items():
        found = FORBIDDEN.search(text)
        assert found is None, f"{where}: …{text[max(0, found.start() - 80) : found.end() + 20]}…"


@pytest.mark.parametrize("name", ASKED)
def test_no_place_of_the_demo(name: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Names of localities may stand in printed works, which are quoted; those that do not are nowhere."""
    printed = "\n".join(path.read_text(encoding="utf-8") for path in (KB / "literature").iterdir())
    patterns = []
    for site in read(KB / "sites.csv"):
        patterns += [p for key in ("decimalLatitude", "decimalLongitude") for p in forms(site[key])]
        patterns += [re.escape(site[key]) for key in ("locality", "locationRemarks")]
        name_alone = site["locality"].partition(",")[0]
        patterns += [re.escape(name_alone)] if name_alone not in printed else []
    forbidden = re.compile("|".join(patterns))
    for where, text in shown(name, KB, tmp_path, monkeypatch).items():
        found = forbidden.search(text)
        assert found is None, f"{where}: …{text[max(0, found.start() - 80) : found.end() + 20]}…"


def test_the_search_finds_what_it_is_for() -> None:
    for said in remarks(0):
        assert FORBIDDEN.search(said), said
    for harmless in ("-51.7", "127.3", "51.73", "basalt", "2023-10-03"):
        assert not FORBIDDEN.search(harmless), harmless


def test_exact_only_with_a_warning(hostile: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / "cache"))
    out = tmp_path / "sites.csv"
    result = CliRunner().invoke(main, ["export", "sites", str(out), "--exact", "--kb", str(hostile)])
    assert result.exit_code == 0
    assert (
        "Exact localities leave: coordinates, localities, elevations, habitats and remarks of sites." in result.stderr
    )
    assert "protected plants are lost" in result.stderr
    text = out.read_text(encoding="utf-8")
    assert degrees(3)[0] in text and "Vossbeck" in text and "dataGeneralizations" in text


@pytest.mark.parametrize("out", ["plants.txt", "plants.geojson", "plants"])
def test_plants_are_written_as_csv_only(out: str, tmp_path: Path) -> None:
    result = CliRunner().invoke(main, ["export", "specimens", str(tmp_path / out), "--kb", str(KB)])
    assert result.exit_code == 2 and "end it in .csv" in result.stderr
    assert not (tmp_path / out).exists()


def test_dangers_stand_on_the_terminal_of_who_goes_there(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / "cache"))
    line = ["gaps", "--kind", "site", "--kb", str(KB)]
    assert "Rope access only" in CliRunner().invoke(main, line).stdout
    row = json.loads(CliRunner().invoke(main, [*line, "--json"]).stdout)["gaps"][0]
    assert row["information_withheld"].startswith("Withheld to protect the plants: remarks on the place.")
