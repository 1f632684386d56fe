"""Templates travel inside the wheel: a site is built from an unpacked wheel far from any checkout."""

from __future__ import annotations

import os
import subprocess
import sys
import zipfile
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]


@pytest.fixture(scope="module")
def wheel(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The wheel of this checkout."""
    folder = tmp_path_factory.mktemp("wheel")
    done = subprocess.run(
        [sys.executable, "-m", "hatchling", "build", "-t", "wheel", "-d", str(folder)],
        cwd=ROOT,
        capture_output=True,
        text=True,
        check=False,
    )
    assert done.returncode == 0, done.stderr
    (made,) = folder.glob("*.whl")
    return made


def test_every_template_is_in_the_wheel(wheel: Path) -> None:
    held = set(zipfile.ZipFile(wheel).namelist())
    templates = [path for path in (ROOT / "site_templates").rglob("*") if path.is_file()]
    assert templates
    for path in templates:
        assert f"auctorum/site_templates/{path.relative_to(ROOT / 'site_templates').as_posix()}" in held
    assert "auctorum/py.typed" in held
    assert not any(name.startswith(("tests/", "kb/")) for name in held)


def test_the_site_is_built_from_the_wheel(wheel: Path, tmp_path: Path) -> None:
    unpacked = tmp_path / "unpacked"
    zipfile.ZipFile(wheel).extractall(unpacked)
    code = (
        "import sys, auctorum.site.templates as t\n"
        "print(t.template_folder())\n"
        "from auctorum.cli.main import main\n"
        f"main(['build', '--kb', {str(ROOT / 'kb')!r}, '--out', 'out'])\n"
    )
    environment = {**os.environ, "PYTHONPATH": str(unpacked), "XDG_CACHE_HOME": str(tmp_path / "cache")}
    done = subprocess.run(
        [sys.executable, "-c", code], cwd=tmp_path, env=environment, capture_output=True, text=True, check=False
    )
    assert done.returncode == 0, done.stderr
    assert Path(done.stdout.splitlines()[0]).is_relative_to(unpacked)
    assert (tmp_path / "out" / "index.html").is_file()


def test_the_checkout_uses_its_own_templates() -> None:
    from auctorum.site.templates import template_folder

    assert template_folder().resolve() == ROOT / "site_templates"
