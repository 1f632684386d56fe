"""The built site in a real browser: nothing is wider than a telephone, and search finds a misspelt name."""

from __future__ import annotations

import re
import shutil
import subprocess
from html import unescape
from pathlib import Path
from urllib.parse import quote

import pytest

from auctorum.site.write import write

BROWSERS = ("chromium", "chromium-browser", "google-chrome", "chrome", "msedge")
BROWSER = next(filter(None, map(shutil.which, BROWSERS)), None)
PHONE = 360  # px

pytestmark = pytest.mark.skipif(BROWSER is None, reason=f"no browser here: none of {', '.join(BROWSERS)} is installed")

PROBE = """
window.addEventListener("load", () => {
  const page = document.documentElement;
  let widest = "";
  for (const each of document.body.querySelectorAll("*")) {
    const beyond = each.getBoundingClientRect().right > page.clientWidth + 1;
    if (beyond && !each.closest("svg, .matrix-box") && !each.matches(".skip")) {  // a matrix scrolls in its own box
      widest = each.tagName + "." + each.className;
    }
  }
  parent.postMessage([location.pathname.split("/").slice(-2).join("/"), page.scrollWidth, widest], "*");
});
"""
# The parent listens before the first frame is there.
FRAMES = """<!doctype html><title>frames</title><script>
addEventListener("message", (event) => {{
  const line = document.createElement("li");
  line.textContent = event.data.join(" | ");
  document.getElementById("told").append(line);
}});
</script><body><ol id="told"></ol>{frames}"""


def probed(site: dict[str, str], out: Path) -> Path:
    """The site on disk, each page with a probe that tells its parent how wide it is."""
    pages = [
        (path, text.replace("</head>", f'<script src="{"../" * path.count("/")}assets/probe.js"></script></head>'))
        for path, text in site.items()
    ]
    write([*pages, ("assets/probe.js", PROBE)], out)
    return out


@pytest.fixture(scope="module")
def folder(site, tmp_path_factory) -> Path:
    return probed(site, tmp_path_factory.mktemp("browser") / "site")


@pytest.fixture(scope="module")
def demo_folder(demo, tmp_path_factory) -> Path:
    """Of each kind of page of the shipped knowledge base the longest, which is likeliest to be too wide."""
    kinds = {path.partition("/")[0] for path in demo}
    longest = {
        max((path for path in demo if path.startswith(kind)), key=lambda path: len(demo[path])) for kind in kinds
    }
    kept = {path: text for path, text in demo.items() if path in longest or path.startswith("assets/")}
    return probed(kept, tmp_path_factory.mktemp("demo") / "site")


def shown(address: str, profile: Path) -> str:
    """The document after its scripts have run."""
    assert BROWSER is not None
    command = [
        BROWSER, "--headless", "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run",
        "--disable-background-networking", "--disable-component-update", "--disable-sync",
        f"--user-data-dir={profile}", "--virtual-time-budget=8000", "--dump-dom", address,
    ]  # fmt: skip
    done = subprocess.run(command, capture_output=True, encoding="utf-8", timeout=120, check=True)
    return done.stdout


@pytest.mark.parametrize("built", ["folder", "demo_folder"])
def test_no_page_is_wider_than_a_telephone(built: str, tmp_path: Path, request) -> None:
    folder: Path = request.getfixturevalue(built)
    found = sorted(folder.rglob("*.html"))
    frames = "".join(f'<iframe src="{page.as_uri()}" width="{PHONE}" height="800"></iframe>' for page in found)
    (tmp_path / "frames.html").write_text(FRAMES.format(frames=frames), encoding="utf-8")
    told = re.findall(r"<li>(.*?)</li>", shown((tmp_path / "frames.html").as_uri(), tmp_path / "profile"))
    assert len(told) == len(found), "every page has told its width"
    for line in map(unescape, told):
        page, width, widest = line.split(" | ")
        assert int(width) <= PHONE, f"{page} is {width} px wide: {widest}"
        assert widest == "", f"{page}: {widest} reaches over the edge"


@pytest.mark.parametrize(
    ("asked", "first"),
    [
        pytest.param("Exemplum lognum", "names/exemplum-longum.html", id="letters-swapped"),
        pytest.param("exemplym longum", "names/exemplum-longum.html", id="y-for-u"),
        pytest.param("spurr lenth", "characters/spur-length.html", id="character"),
        pytest.param("Orin", "authors/orrin.html", id="author"),
    ],
)
def test_search_finds_what_is_misspelt(folder: Path, tmp_path: Path, asked: str, first: str) -> None:
    text = shown(f"{(folder / 'search.html').as_uri()}?q={quote(asked)}", tmp_path / "profile")
    results = re.search(r'<ol[^>]*id="search-results"[^>]*>(.*?)</ol>', text, re.DOTALL)
    assert results is not None
    links = re.findall(r'href="([^"]+)"', results[1])
    assert first in links[:2], links


def test_search_admits_when_nothing_is_like_it(folder: Path, tmp_path: Path) -> None:
    text = shown((folder / "search.html").as_uri() + "?q=zzzzzzzz", tmp_path / "profile")
    assert "Nothing is spelt like that. The whole index is below." in text


CHOOSER = """
window.addEventListener("load", () => {
  const seen = () => [...document.querySelectorAll(".view")].filter((view) => view.getClientRects().length)
    .map((view) => view.parentElement.querySelector("input").id).join(" ");
  const told = [seen()];
  const buttons = [...document.querySelectorAll(".views label")];
  buttons[buttons.length - 1].click();
  told.push(seen(), document.querySelectorAll(".views input:checked").length);
  document.body.dataset.told = told.join(" | ");
});
"""


def test_one_view_of_the_synonymy_is_shown_at_a_time(site: dict[str, str], tmp_path: Path) -> None:
    """The page itself has no script: the one here only presses a button and says what is seen."""
    path = "taxa/exemplum-album-var-longum.html"
    page = site[path].replace("</head>", '<script src="../assets/chooser.js"></script></head>')
    write([*(site | {path: page}).items(), ("assets/chooser.js", CHOOSER)], tmp_path / "site")
    text = shown((tmp_path / "site" / path).as_uri(), tmp_path / "profile")
    told = re.search(r'data-told="([^"]*)"', text)
    assert told is not None
    assert told[1] == "sec-all-works | sec-hask-1961 | 1"
