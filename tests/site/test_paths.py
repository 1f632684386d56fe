"""Paths of pages never leave the folder; links lead only where a page may link to."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from auctorum.site.errors import UnsafePath
from auctorum.site.paths import checked, root_of, safe_link, slug, slugs


@given(st.text(max_size=300))
@settings(deadline=None, max_examples=200)
def test_every_slug_is_a_safe_file_name(text: str) -> None:
    assert checked(f"names/{slug(text)}.html") == f"names/{slug(text)}.html"
    assert len(slug(text)) < 120


@given(st.lists(st.text(max_size=12), max_size=30))
@settings(deadline=None, max_examples=100)
def test_slugs_differ_whenever_texts_do(texts: list[str]) -> None:
    found = slugs(texts)
    assert set(found) == set(texts)
    assert len(set(found.values())) == len(set(texts))


@pytest.mark.parametrize(
    "path",
    [
        "../index.html", "/etc/passwd.html", "names/../../a.html", "names//a.html", "C:\\a.html", "a\\b.html",
        "names/.html", "a.php", "a.html\n", "a b.html", "Ä.html", "a.html/", "", ".a.html",
    ],
)  # fmt: skip
def test_paths_that_could_leave_the_folder_are_refused(path: str) -> None:
    with pytest.raises(UnsafePath, match="would leave the folder"):
        checked(path)


def test_root_of_a_deep_page() -> None:
    assert root_of("a/b/c.html") == "../../"


@pytest.mark.parametrize(
    ("address", "link"),
    [
        pytest.param("https://example.org/x?y=1#z", "https://example.org/x?y=1#z", id="https"),
        pytest.param("HTTP://example.org", "HTTP://example.org", id="http"),
        pytest.param("mailto:a@example.org", "mailto:a@example.org", id="mail"),
        pytest.param("doi:10.1000/182", "https://doi.org/10.1000/182", id="doi"),
        pytest.param('10.1000/a"onclick=b', "https://doi.org/10.1000/a%22onclick%3Db", id="doi-quoted"),
        pytest.param("javascript:alert(1)", "", id="script"),
        pytest.param(" jAvaScript:alert(1)", "", id="script-in-disguise"),
        pytest.param("java\nscript:alert(1)", "", id="script-broken"),
        pytest.param("data:text/html,<b>", "", id="data"),
        pytest.param("//example.org", "", id="no-scheme"),
        pytest.param("file:///etc/passwd", "", id="file"),
        pytest.param("https://a/\"><script>", "", id="breaking-out"),
        pytest.param("", "", id="nothing"),
    ],
)  # fmt: skip
def test_safe_link(address: str, link: str) -> None:
    assert safe_link(address) == link
