"""The built site in a real browser: nothing is wider than a telephone, search finds a misspelt name, and the line of a
survey moves."""

from __future__ import annotations

import json
import re
import shutil
import subprocess
from html import unescape
from pathlib import Path
from urllib.parse import quote

import pytest

from auctorum.circumscription.plants import plants
from auctorum.determination.survey.model import Count
from auctorum.determination.survey.words import interval_words, of_words, share_words
from auctorum.site.survey_moving import at_place
from auctorum.site.surveys import Surveys
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


MOVER = """
window.addEventListener("load", () => {
  const slide = document.getElementById("slide"), typed = document.getElementById("typed");
  const told = document.getElementById("told");
  const line = () => [...document.querySelectorAll(".histogram .cut")].map((cut) =>
    cut.getAttribute("transform").replace(/[^0-9.]+/g, " ").trim() + " " + cut.querySelector("text").textContent);
  const rows = () => [...document.querySelectorAll("[data-row]")].map((row) =>
    [...row.querySelectorAll(".now, .rate, .near")].map((cell) => cell.textContent).join("; "));
  const hidden = document.querySelectorAll(".controls[hidden]").length;
  const found = {first: [slide.value, told.textContent, line()[0], hidden], moved: []};
  for (let place = Number(slide.min); place <= Number(slide.max); place += Number(slide.step)) {
    slide.value = String(place);
    slide.dispatchEvent(new Event("input"));
    found.moved.push([slide.value, told.textContent, line()[0], rows(), typed.value]);
  }
  typed.value = "24.85";
  typed.dispatchEvent(new Event("input"));
  found.typed = [told.textContent, line()[0], document.getElementById("beside").textContent];
  typed.value = "";
  typed.dispatchEvent(new Event("input"));
  found.emptied = told.textContent;
  document.getElementById("back").click();
  found.back = [slide.value, typed.value, told.textContent, document.activeElement.id];
  document.body.dataset.told = JSON.stringify(found);
});
"""


@pytest.mark.parametrize("taxon", ["cremnocentron-album-var-longum", "cremnocentron-album-var-robustum"])
def test_the_threshold_moves_and_tells_what_the_command_counts(taxon: str, demo, demo_code, tmp_path: Path) -> None:
    """At every place of the slider, overall and at each site; then typed, emptied, and set back."""
    path = f"survey/{taxon}.html"
    page = demo[path].replace("</head>", '<script src="../assets/mover.js" defer></script></head>')
    kept = {name: text for name, text in demo.items() if name.startswith("assets/")}
    write([*(kept | {path: page}).items(), ("assets/mover.js", MOVER)], tmp_path / "site")
    text = shown((tmp_path / "site" / path).as_uri(), tmp_path / "profile")
    told = re.search(r'data-told="([^"]*)"', text)
    assert told is not None
    found = json.loads(unescape(told[1]))

    corpus = demo_code.corpus
    survey = Surveys(corpus, plants(corpus)).of(taxon)
    curve, character = survey.curve, corpus.vocabulary["spur length"]
    assert curve is not None
    side = "have {} mm or more" if curve.fitting else "have less than {} mm"

    def said(place: str, site: str | None = None) -> tuple[Count, int]:
        here = [one for one in survey.readings if site is None or one.site == site]
        return at_place(here, curve, character, float(place))

    first = unescape(re.search(r'id="told"[^>]*>([^<]*)<', demo[path])[1])  # type: ignore[index]
    assert found["first"][:2] == ["25", first] and found["first"][3] == 0
    assert len(found["moved"]) > 80
    across = []
    for place, sentence_, line, rows, typed in found["moved"]:
        count, within = said(place)
        assert sentence_.startswith(f"{count.named} of 189 plants {side.format(place)} ({share_words(count)}, ")
        verb = "is" if within == 1 else "are"
        assert sentence_.endswith(f"{interval_words(count)}); {within} {verb} within the error of measuring.")
        assert typed == place and line.endswith(f" {place} mm")
        across.append((float(place), float(line.split()[0])))
        for row, site in zip(rows, [*(one.site for one in survey.sites), None], strict=True):
            count, within = said(place, site)
            assert row == f"{of_words(count)}; {share_words(count)} ({interval_words(count)}); {within or ''}"
    (low, start), (high, end) = across[0], across[-1]
    assert [x for _, x in across] == pytest.approx(
        [start + (place - low) / (high - low) * (end - start) for place, _ in across], abs=0.11
    )
    count, _ = said("24.85")
    assert found["typed"][0].startswith(f"{count.named} of 189 plants {side.format('24.85')}")
    assert found["typed"][1].endswith("24.85 mm") and found["typed"][2] == "= 0.98 in"
    assert found["emptied"] == found["typed"][0], "an empty box moves nothing"
    assert found["back"] == ["25", "25", first, "slide"]
