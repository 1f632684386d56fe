"""The templates are found, refuse what they do not know, and ask no other host for anything."""

from __future__ import annotations

import re

import pytest
from jinja2 import UndefinedError

from auctorum.site.templates import ASSETS, asset_texts, environment, template_folder


def test_every_template_compiles() -> None:
    names = environment().list_templates(["jinja"])
    assert "base.html.jinja" in names
    for name in names:
        environment().get_template(name)


def test_every_asset_is_written_and_none_is_left_behind() -> None:
    assert [path for path, _ in asset_texts()] == [f"assets/{name}" for name in ASSETS]
    assert sorted(path.name for path in (template_folder() / "assets").iterdir()) == sorted(ASSETS)


def test_an_unknown_word_in_a_template_is_refused() -> None:
    with pytest.raises(UndefinedError, match="nowhere"):
        environment().from_string("{{ nowhere }}").render()


def test_everything_is_escaped() -> None:
    assert environment().from_string("{{ word }}").render(word="<b>") == "&lt;b&gt;"


def test_no_style_or_script_asks_another_host() -> None:
    for path, text in asset_texts():
        found = re.findall(
            r"(?:https?:)?//[a-z][^\s\"')]*|url\(|@import", text.replace("http://www.w3.org/2000/svg", "")
        )
        assert found == [], path
    assert not re.search(
        r"innerHTML|insertAdjacentHTML|document\.write|eval\(|fetch\(", dict(asset_texts())["assets/search.js"]
    )
