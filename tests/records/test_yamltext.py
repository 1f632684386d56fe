"""YAML text -> data with places: what is kept, what is refused, and where."""

from __future__ import annotations

import time

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from auctorum.problems import Place
from auctorum.records.schema import PLACE_KEY
from auctorum.records.yamltext import Places, parse


def without_places(data: object) -> object:
    if isinstance(data, dict):
        return {key: without_places(value) for key, value in data.items() if key != PLACE_KEY}
    return [without_places(item) for item in data] if isinstance(data, list) else data


def test_words_stay_as_printed() -> None:
    data, problems = parse("a: 8.00\nb: no\nc: 45:23\nd: 1904-06\ne: 'null'\nf: null\ng:\n", "f.yaml")
    assert without_places(data) == {"a": "8.00", "b": "no", "c": "45:23", "d": "1904-06", "e": "null"}
    assert problems == []


def test_mappings_keep_their_places() -> None:
    data, _ = parse("work:\n  id: x\nacts:\n- name: A b\n", "f.yaml")
    assert data[PLACE_KEY] == Place("f.yaml", 1, 1)
    assert data["work"][PLACE_KEY] == Place("f.yaml", 2, 3)
    assert data["acts"][0][PLACE_KEY] == Place("f.yaml", 4, 3)


@pytest.mark.parametrize(
    ("text", "said"),
    [
        pytest.param("", "f.yaml:1:1: the file is empty (fill it in, or delete it)", id="empty"),
        pytest.param(
            "# only a remark\n", "f.yaml:1:1: the file is empty (fill it in, or delete it)", id="only-comment"
        ),
        pytest.param("a: 1\n\tb: 2\n", "f.yaml:2:1: a tab where YAML wants spaces (indent with spaces)", id="tab"),
        pytest.param(
            "a:\n  - x\n\t- y\n", "f.yaml:3:1: a tab where YAML wants spaces (indent with spaces)", id="tab-list"
        ),
        pytest.param(
            "a: 1\nb: 2\na: 3\n",
            "f.yaml:3:1: the key `a` stands twice in one record (keep one; the first was read)",
            id="duplicate-key",
        ),
        pytest.param(
            "a: !!python/object/apply:os.system [ls]\n",
            "f.yaml:1:4: YAML tag tag:yaml.org,2002:python/object/apply:os.system "
            "(take the tag out: records hold words only)",
            id="tag",
        ),
        pytest.param(
            "a: &x [1]\nb: *x\n",
            "f.yaml:1:4: YAML anchor or alias (write the value out (in quotes if it begins with & or *))",
            id="anchor",
        ),
        pytest.param(
            "a: " + "[" * 10_000,
            "f.yaml:1:1003: nested more than 40 deep (records need five levels; check the brackets)",
            id="10000-deep-flow",
        ),
        pytest.param(
            "\n".join(" " * n + "a:" for n in range(200)),
            "f.yaml:41:41: nested more than 40 deep (records need five levels; check the brackets)",
            id="deep-block",
        ),
        pytest.param(
            "a: 1\n---\nb: 2\n",
            "f.yaml:2:1: a second document begins here (keep one record in one file)",
            id="two-documents",
        ),
        pytest.param(
            "a: 1\nb: \x07\n", "f.yaml:2:4: a control character that YAML does not allow (delete it)", id="control"
        ),
        pytest.param(
            "- a\n- b\n",
            "f.yaml:1:1: the file is not a record of `key: value` lines (begin as `auctorum new` shows)",
            id="list-at-the-top",
        ),
        pytest.param("'@': 1\n", "f.yaml:1:1: a key is not a plain word (write `key: value`)", id="our-own-key"),
    ],
)
def test_one_problem_with_its_place(text: str, said: str) -> None:
    _, problems = parse(text, "f.yaml")
    assert [str(problem) for problem in problems] == [said]


def test_alias_bomb_is_refused_at_once() -> None:
    lines = ["a0: &a0 [x,x,x,x,x,x,x,x,x]"]
    lines += [f"a{n}: &a{n} [{','.join([f'*a{n - 1}'] * 9)}]" for n in range(1, 30)]
    began = time.perf_counter()
    data, problems = parse("\n".join(lines), "bomb.yaml")
    assert data is None and "anchor or alias" in problems[0].what
    assert time.perf_counter() - began < 10


def test_byte_order_mark_is_a_warning_and_nothing_is_lost() -> None:
    data, problems = parse("\ufeffa: b\n", "f.yaml")
    assert without_places(data) == {"a": "b"}
    assert str(problems[0]).startswith("f.yaml:1:1: warning: the file begins with a byte order mark")


def test_a_repeated_key_keeps_the_first_value_and_reads_on() -> None:
    data, problems = parse("a: 1\na: {x: [1, 2]}\nb: 3\n", "f.yaml")
    assert without_places(data) == {"a": "1", "b": "3"}
    assert len(problems) == 1


TEXT = """\
work:
  id: x
acts:
- name: A b
  cites: [X, Y]
- name: C d
  cites:
  - Z
  page: 12
"""


@pytest.mark.parametrize(
    ("within", "start", "line", "column"),
    [
        pytest.param(("work", "id"), None, 2, 3, id="value-is-placed-at-its-key"),
        pytest.param(("acts", 1), None, 6, 3, id="list-item"),
        pytest.param(("acts", 0, "cites", 1), None, 5, 14, id="item-of-inner-list"),
        pytest.param(("cites", 0), Place("f.yaml", 6, 3), 8, 5, id="below-a-record"),
        pytest.param(("page",), Place("f.yaml", 6, 3), 9, 3, id="key-below-a-record"),
        pytest.param(("work", "issued"), None, 1, 1, id="missing-key-is-placed-at-its-record"),
    ],
)
def test_locate(within: tuple[str | int, ...], start: Place | None, line: int, column: int) -> None:
    assert Places(TEXT, "f.yaml").locate(within, start) == Place("f.yaml", line, column)


words = st.text(st.characters(codec="utf-8", exclude_categories=["Cs", "Cc"], exclude_characters="\ufeff\ufffe\uffff"))
plain = st.recursive(
    words, lambda inner: st.lists(inner, max_size=4) | st.dictionaries(words, inner, max_size=4), max_leaves=12
)


@settings(deadline=None, max_examples=150)
@given(st.dictionaries(words.filter(lambda key: key != PLACE_KEY), plain, min_size=1, max_size=5))
def test_what_pyyaml_writes_is_read_back(data: dict[str, object]) -> None:
    """Second answer: PyYAML's own dump with every word in quotes."""
    import yaml

    text = yaml.dump(data, default_style='"', allow_unicode=True)
    read, problems = parse(text, "f.yaml")
    said = {problem.what for problem in problems}
    assert said <= {"a key is not a plain word"}  # our own place key inside the data
    if not said:
        assert without_places(read) == data


@settings(deadline=None, max_examples=200)
@given(st.text(max_size=400))
def test_no_text_raises(text: str) -> None:
    data, problems = parse(text, "f.yaml")
    assert data is not None or problems
