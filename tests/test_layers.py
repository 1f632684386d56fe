"""The folder is the architecture: which part may import which, and the one door of each outside library."""

from __future__ import annotations

import ast
from pathlib import Path

import pytest

SRC = Path(__file__).parent.parent / "src" / "auctorum"

# A part may import itself and what stands here; a new arrow is decided here.
MAY_IMPORT = {
    "problems": "",
    "pytest_options": "",
    "names": "problems",
    "characters": "problems",
    "records.dates": "",
    "records.schema": "names characters problems records.dates",
    "corpus": "records.schema records.dates names characters problems",
    "nomenclature": "corpus records.schema records.dates names characters problems",
    "circumscription": "corpus records.schema records.dates names characters problems",
    "matching": "corpus records.schema records.dates names characters problems",
    "determination": "circumscription matching corpus records.schema records.dates names characters problems",
    "records": "records.schema records.dates names characters problems",
    "exchange": "determination nomenclature circumscription matching corpus "
    "records.schema records.dates names characters problems",
    "site": "determination nomenclature circumscription matching corpus "
    "records.schema records.dates names characters problems",
    "cli": "exchange site records determination nomenclature circumscription matching corpus "
    "records.schema records.dates names characters problems",
}

# The rooms of determination, and which of the others each may enter; "core" are the modules beside them.
ROOMS = {
    "counting": "",
    "sheet": "",
    "places": "counting",
    "core": "counting",
    "criteria": "core places counting",
    "telling": "core criteria places",
    "labels": "core criteria places telling",
    "survey": "core criteria places counting",
}

# Each outside library has its doors; where it is not named here, it is not used.
DOORS = {
    "yaml": {"records"},
    "pydantic": {"records", "records.schema"},
    "pydantic_core": {"records", "records.schema"},
    "networkx": {"nomenclature"},
    "rapidfuzz": {"names", "matching"},
    "jinja2": {"site"},
    "markupsafe": {"site"},
    "click": {"cli"},
    "rich": {"cli"},
    "numpy": {"circumscription", "determination", "matching"},
    "coloraide": {"characters"},
    "colour": {"characters"},
}
# The record classes: pure, though they stand in the folder of an edge.
SCHEMA = {f"records.{name}" for name in ("schema", "fields", "acts", "literature", "settings", "rows")}
STANDARD = __import__("sys").stdlib_module_names


def part_of(module: str) -> str:
    """The part of the architecture that a module below `auctorum` belongs to."""
    if module in SCHEMA:
        return "records.schema"
    if module == "records.dates":
        return module
    return module.split(".")[0]


def modules() -> list[Path]:
    return sorted(path for path in SRC.rglob("*.py") if path != SRC / "__init__.py")


def imports(path: Path) -> list[tuple[int, str]]:
    """Line and module of every import in a file, those inside functions, too."""
    found = []
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if isinstance(node, ast.Import):
            found += [(node.lineno, alias.name) for alias in node.names]
        elif isinstance(node, ast.ImportFrom):
            assert node.level == 0, f"{path}:{node.lineno}: a relative import hides the arrow"
            module = node.module or ""
            found += [
                (node.lineno, f"{module}.{alias.name}" if module.count(".") < 2 else module) for alias in node.names
            ]
    return found


def own_module(path: Path) -> str:
    return ".".join(path.relative_to(SRC).with_suffix("").parts).removesuffix(".__init__")


@pytest.mark.parametrize("path", modules(), ids=own_module)
def test_rows_and_doors(path: Path) -> None:
    here = part_of(own_module(path))
    allowed = {here, *MAY_IMPORT[here].split()}
    for line, module in imports(path):
        top, _, below = module.partition(".")
        if top == "auctorum":
            assert below, f"{path}:{line}: imports the package root"
            assert part_of(below) in allowed, f"{path}:{line}: {here} may not import {module}"
        elif top not in STANDARD and top != "__future__":
            assert here in DOORS.get(top, set()), f"{path}:{line}: {top} has no door in {here}"


def room_of(module: str) -> str:
    """The room of a module below `determination`: its folder, or "core"."""
    inside = module.split(".")[1:]
    folder = inside[0] if inside else ""
    return folder if (SRC / "determination" / folder).is_dir() and folder else "core"


@pytest.mark.parametrize("path", sorted((SRC / "determination").rglob("*.py")), ids=own_module)
def test_rooms_of_determination(path: Path) -> None:
    here = room_of(own_module(path))
    assert here in ROOMS, f"decide in ROOMS which others {here} may enter"
    allowed = {here, *ROOMS[here].split()}
    for line, module in imports(path):
        if module.startswith("auctorum.determination."):
            there = room_of(module.removeprefix("auctorum."))
            assert there in allowed, f"{path}:{line}: {here} may not import {module}"


def test_every_part_is_placed() -> None:
    parts = {part_of(own_module(path)) for path in modules()}
    assert parts <= set(MAY_IMPORT), "decide the row of a new part in MAY_IMPORT"


def test_only_edges_open_files() -> None:
    edges = {"records", "exchange", "site", "cli"}
    for path in modules():
        if part_of(own_module(path)) in edges:
            continue
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            calls_open = (
                isinstance(node, ast.Call) and isinstance(node.func, ast.Name) and node.func.id in ("open", "print")
            )
            assert not calls_open, f"{path}:{node.lineno}: the core opens no file and prints nothing"
