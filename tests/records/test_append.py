"""Statements put into literature files: what stood there stays to the byte, and what was put in reads back."""

from __future__ import annotations

import io
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from auctorum.characters.vocabulary import Character, Kind, State
from auctorum.records import schema
from auctorum.records.append import (
    WhichTreatment,
    appended,
    check_treatment,
    conventions_of,
    new_literature,
    statement_line,
)
from auctorum.records.append_characters import (
    as_yaml,
    names_in,
    states_as_yaml,
    states_in,
    with_characters,
    with_states,
)
from auctorum.records.faults import validate_and_salvage
from auctorum.records.insert import Unwritable
from auctorum.records.schema import Conventions, StatementRecord
from auctorum.records.yamltext import CONTROL, parse

KB = Path(__file__).parents[2] / "kb"
FILES = sorted((KB / "literature").glob("*.yaml"))
SPUR = StatementRecord("spur length", verbatim="spur 22–34 mm long", page="107")
COLOUR = StatementRecord("spur colour", verbatim="green, then ivory", value="green", stage="young", page="107")
LINE = '- {character: spur length, verbatim: "spur 22–34 mm long", page: 107}'


def literature(text: str) -> schema.Literature:
    data, problems = parse(text, "x.yaml")
    assert not problems, problems[0]
    found, faults = validate_and_salvage(schema.Literature, data)
    assert found is not None and not faults, faults
    return found


def is_one_insertion(old: str, new: str) -> bool:
    """Whether the old text comes back by deleting one run of characters from the new one."""
    start = 0
    while start < len(old) and old[start] == new[start]:
        start += 1
    return new.endswith(old[start:]) and len(new) >= len(old)


def wrapped(treatments: str) -> str:
    return "work: {id: orrin-1911, type: book, author: [{family: Orrin}], issued: 1911, title: On spurs}\n" + treatments


@pytest.mark.parametrize(
    ("before", "after"),
    [
        pytest.param(
            "treatments:\n  - taxon: A b\n    traits:\n      - {character: x, verbatim: y} # dry\n",
            f"treatments:\n  - taxon: A b\n    traits:\n      - {{character: x, verbatim: y}} # dry\n      {LINE}\n",
            id="as-the-demo",
        ),
        pytest.param(
            "treatments:\n- taxon: A b\n  traits:\n  - character: x\n    verbatim: >-\n      y\n      z\n\n"
            "covers: []\n",
            "treatments:\n- taxon: A b\n  traits:\n  - character: x\n    verbatim: >-\n      y\n      z\n\n"
            f"  {LINE}\ncovers: []\n",
            id="after-folded-words",
        ),
        pytest.param(
            "treatments:\n  - taxon: A b\n    traits:\n      - {character: x, verbatim: y}\n      # from dry plants\n"
            "  # the next\n  - taxon: C d\n    traits: []\n",
            "treatments:\n  - taxon: A b\n    traits:\n      - {character: x, verbatim: y}\n      # from dry plants\n"
            f"      {LINE}\n  # the next\n  - taxon: C d\n    traits: []\n",
            id="comments-stay-with-their-own",
        ),
        pytest.param(
            "treatments:\n  - taxon: A b\n    traits: []   # none yet\n",
            f"treatments:\n  - taxon: A b\n    traits: [{LINE[2:]}]   # none yet\n",
            id="empty-brackets",
        ),
        pytest.param(
            "treatments:\n  - {taxon: A b, traits: [{character: x, verbatim: y},]}\n",
            f"treatments:\n  - {{taxon: A b, traits: [{{character: x, verbatim: y}}, {LINE[2:]},]}}\n",
            id="brackets",
        ),
        pytest.param(
            "treatments:\n  - {taxon: A b, page: }\n",
            f"treatments:\n  - {{taxon: A b, page: , traits: [{LINE[2:]}]}}\n",
            id="braces-without-traits",
        ),
        pytest.param(
            "treatments:\n  - taxon: A b\n    traits:   # to come\n    page: 107\n",
            f"treatments:\n  - taxon: A b\n    traits:   # to come\n      {LINE}\n    page: 107\n",
            id="nothing-behind-the-key",
        ),
        pytest.param(
            "treatments:\n  - taxon: A b\n    page: 107",
            f"treatments:\n  - taxon: A b\n    page: 107\n    traits:\n      {LINE}",
            id="no-key-and-no-last-line-end",
        ),
        pytest.param(
            "covers: []\r\ntreatments:\r\n- taxon: A b\r\n  page: 3\r\n",
            f"covers: []\r\ntreatments:\r\n- taxon: A b\r\n  page: 3\r\n  traits:\r\n  {LINE}\r\n",
            id="line-ends-of-the-file",
        ),
    ],
)
def test_a_statement_goes_to_the_end_of_its_treatment(before: str, after: str) -> None:
    found = appended(wrapped(before), "A b", [SPUR])
    assert found.text == wrapped(after)
    assert (found.added, found.there, found.begun) == ((SPUR,), (), False)


@pytest.mark.parametrize(
    ("before", "after"),
    [
        pytest.param(
            "treatments:\n  - taxon: A b\n    traits:\n      - {character: x, verbatim: y}\n",
            "treatments:\n  - taxon: A b\n    traits:\n      - {character: x, verbatim: y}\n"
            f"  - taxon: C d var. e\n    status: accepted\n    page: 107\n    traits:\n      {LINE}\n",
            id="as-the-demo",
        ),
        pytest.param(
            "",
            f"treatments:\n- taxon: C d var. e\n  status: accepted\n  page: 107\n  traits:\n  {LINE}\n",
            id="no-list",
        ),
        pytest.param(
            "treatments: []\n",
            f"treatments: [{{taxon: C d var. e, status: accepted, page: 107, traits: [{LINE[2:]}]}}]\n",
            id="brackets",
        ),
    ],
)
def test_a_taxon_without_treatment_gets_one_at_the_end(before: str, after: str) -> None:
    found = appended(wrapped(before), "C d var. e", [SPUR])
    assert found.text == wrapped(after)
    assert found.begun and literature(found.text).treatments[-1].traits == (SPUR,)


def test_a_byte_order_mark_stays() -> None:
    text = "\ufeff" + wrapped("treatments:\n- taxon: A b\n")
    found = appended(text, "A b", [SPUR]).text
    assert found == text + f"  traits:\n  {LINE}\n"


def test_a_treatment_is_found_by_the_words_of_its_name() -> None:
    taxa = ("Exemplum album Orrin var. longum", "Exemplum nigrum", "Exemplum altum Orrin", "Exemplum altum Veldt")
    text = wrapped("treatments:\n" + "".join(f"- taxon: {taxon}\n" for taxon in taxa))
    assert appended(text, "Exemplum album v. longum", [SPUR]).taxon == "Exemplum album Orrin var. longum"
    assert appended(text, "Exemplum altum Veldt", [SPUR]).taxon == "Exemplum altum Veldt"
    assert appended(text, "Exemplum altum Marsh", [SPUR]).begun, "a homonym by another author is another name"
    with pytest.raises(WhichTreatment, match="2 taxa that may be `Exemplum altum`") as caught:
        appended(text, "Exemplum altum", [SPUR])
    assert caught.value.remedy == "name one of: Exemplum altum Orrin; Exemplum altum Veldt"


def test_two_treatments_of_one_name_are_told_by_their_lines() -> None:
    with pytest.raises(WhichTreatment, match="the file has 2 treatments of `Exemplum altum`") as caught:
        check_treatment(wrapped("treatments:\n- taxon: Exemplum altum\n- taxon: Exemplum  altum\n"), "Exemplum altum")
    assert caught.value.remedy == "a work treats a name once: make one treatment of those at lines 3 and 4"
    with pytest.raises(WhichTreatment) as unnamed:
        check_treatment(wrapped("treatments: [{taxon: A b}, {taxon: C d}, {taxon: A b}]\n"), "")
    assert unnamed.value.remedy == "name one of: A b; C d"


@pytest.mark.parametrize(
    ("treatments", "said"),
    [
        pytest.param("", "the file treats no taxa, and none is named", id="none"),
        pytest.param("treatments: [{taxon: A b}, {taxon: C d}]\n", "the file treats 2 taxa, and none is", id="two"),
    ],
)
def test_without_a_name_only_one_treatment_is_clear(treatments: str, said: str) -> None:
    with pytest.raises(WhichTreatment, match=said):
        check_treatment(wrapped(treatments), "")
    assert appended(wrapped("treatments: [{taxon: A b}]\n"), "", [SPUR]).taxon == "A b"


def test_nothing_is_added_twice_nor_overwritten() -> None:
    first = appended(wrapped("treatments:\n- taxon: A b\n  page: 107\n"), "A b", [SPUR, SPUR, COLOUR])
    assert first.added == (SPUR, COLOUR)
    again = appended(first.text, "A b", [SPUR, StatementRecord("spur length", verbatim="spur 22–34 mm\nlong")])
    assert (again.text, again.added, again.there) == (first.text, (), (SPUR, SPUR))
    corrected = first.text.replace('value: "green"', 'value: "green or ivory"')
    assert appended(corrected, "A b", [COLOUR]).text == corrected, "a value put right by hand stands"


@pytest.mark.parametrize("page", ["", "107", "108"])
def test_the_same_words_with_another_page_stand_there_already(page: str) -> None:
    text = wrapped("treatments:\n- taxon: A b\n  page: 5\n  traits: [{character: x, verbatim: y z}]\n")
    found = appended(text, "A b", [StatementRecord("x", verbatim="y  z", page=page)])
    assert (found.text, found.added) == (text, ())
    assert found.there == (StatementRecord("x", verbatim="y z", page="5"),), "with the page of its treatment"
    assert appended(text, "A b", [StatementRecord("x", verbatim="y", page="5")]).added


@pytest.mark.parametrize(
    ("text", "said"),
    [
        pytest.param("", "the file is empty", id="empty"),
        pytest.param("work: [\n", "the file cannot be read: not readable as YAML", id="broken"),
        pytest.param("- a\n", "the file is not a record", id="list"),
        pytest.param("title: On spurs\n", "no literature file: it has no `work:`", id="settings"),
        pytest.param("work: Orrin 1911\n", "no literature file: it has no `work:`", id="work-in-words"),
        pytest.param(wrapped("treatments: ~\n"), "`treatments:` holds no list", id="null"),
        pytest.param(wrapped("treatments: none\n"), "`treatments:` holds no list", id="words"),
    ],
)
def test_what_cannot_be_written_into_says_why(text: str, said: str) -> None:
    with pytest.raises(Unwritable, match=said):
        appended(text, "A b", [SPUR])


@pytest.mark.parametrize("path", FILES, ids=lambda path: path.stem)
def test_the_demo_stays_to_the_byte(path: Path) -> None:
    """Every treatment of every file, and a new one; each result is a good file."""
    text = path.read_bytes().decode("utf-8")
    before = literature(text)
    for treatment in before.treatments:
        found = appended(text, treatment.taxon, [SPUR, COLOUR])
        assert is_one_insertion(text, found.text)
        (grown,) = [one for one in literature(found.text).treatments if one.taxon == treatment.taxon]
        assert grown.traits == (*treatment.traits, SPUR, COLOUR)
    begun = appended(text, "Cremnocentron novum", [SPUR])
    assert begun.begun and begun.text.startswith(text)
    assert literature(begun.text).treatments[:-1] == before.treatments


WORDS = st.text(st.characters(exclude_categories=("Cs",)), max_size=40)
MESSY = st.one_of(
    WORDS, st.text(st.sampled_from("ab \t\n\r\"'\\:#,-{}[]|>&*!%@`~–½×′\u2028\u2029\x85\ufeff\u00a0"), max_size=30)
)


@settings(deadline=None, max_examples=150)
@given(MESSY, MESSY, MESSY, st.sampled_from(FILES))
def test_any_words_read_back(verbatim: str, value: str, page: str, path: Path) -> None:
    said = StatementRecord("spur length", verbatim="x" + verbatim, value=value, page="p" + page)
    clean = {key: CONTROL.sub("", getattr(said, key)) for key in ("verbatim", "value", "page")}
    wanted = StatementRecord("spur length", **clean)
    text = path.read_bytes().decode("utf-8")
    found = appended(text, literature(text).treatments[0].taxon, [said])
    assert literature(found.text).treatments[0].traits[-1] == wanted
    assert is_one_insertion(text, found.text)
    assert len(found.text.splitlines()) >= len(text.splitlines()) and "\n" not in statement_line(said)


@settings(deadline=None, max_examples=100)
@given(
    st.lists(st.sampled_from(["page: 3", "rank: variety", "note: >+\n      a\n\n      b\n"]), unique=True),
    st.sampled_from(["", "    traits: []\n", "    traits:\n", "    traits: [ ] # none\n"]),
    st.sampled_from(["", "    # in\n", "  # out\n", "# far\n", "\n\n"]),
    st.sampled_from(["", "covers: []\n", "..."]),
    st.sampled_from(["\n", "\r\n"]),
)
def test_any_layout_stays_to_the_byte(fields: list[str], traits: str, comment: str, after: str, ends: str) -> None:
    inner = "".join(f"    {one}\n" for one in fields)
    text = wrapped(f"treatments:\n  - taxon: A b\n{traits}{inner}{comment}  - taxon: C d\n{after}").replace("\n", ends)
    found = appended(text, "A b", [SPUR, COLOUR])
    assert is_one_insertion(text, found.text)
    before, grown = literature(text).treatments, literature(found.text).treatments
    assert grown[0].traits == (SPUR, COLOUR)
    assert [(one.taxon, one.page, one.note) for one in grown] == [(one.taxon, one.page, one.note) for one in before]


def test_a_second_reader_of_yaml_agrees() -> None:
    """ruamel.yaml (YAML 1.2) as a reference library: the same data, and its comments still at their place."""
    ruamel = pytest.importorskip("ruamel.yaml")
    said = StatementRecord("spur length", verbatim='a "b": #\n\u2028\\ {c, [d]', value="yes", page="1:30")
    for path in FILES:
        found = appended(path.read_bytes().decode("utf-8"), "Cremnocentron novum", [said]).text
        read = ruamel.YAML(typ="safe", pure=True).load(io.StringIO(found))["treatments"][-1]["traits"][0]
        assert read == {"character": "spur length", "verbatim": said.verbatim, "value": "yes", "page": "1:30"}


def test_a_new_file_has_the_conventions_of_its_work() -> None:
    said = Conventions(line="paris", signs={"'": "in", '"': "line"})
    text = new_literature("orrin-1811", said)
    assert conventions_of(text) == said
    assert conventions_of(new_literature("orrin-1811", Conventions())) == Conventions()
    found = appended(text, "Exemplum album", [SPUR])
    assert is_one_insertion(text, found.text) and "\ntreatments:\n- taxon: Exemplum album\n" in found.text


STYLE = Character("style length", "style", "length", Kind.MEASURE, "mm")
ODD = Character("style: form", "style", "shape", Kind.NOMINAL, states=(State("bent, not straight"), State("no")))


def test_characters_go_to_the_end_of_the_vocabulary() -> None:
    text = (KB / "characters.yaml").read_bytes().decode("utf-8")
    made = with_characters(text, [STYLE, ODD])
    assert made == text + as_yaml([STYLE, ODD]) + "\n"
    assert names_in(made)[-2:] == ["style length", "style: form"]
    assert with_characters(made, [STYLE]) == made
    data, problems = parse(made, "")
    found, faults = validate_and_salvage(schema.Characters, data)
    assert found is not None and not problems and not faults
    assert [state.name for state in found.characters[-1].states] == ["bent, not straight", "no"]


def test_characters_go_into_brackets_and_into_an_empty_vocabulary() -> None:
    assert names_in(with_characters("characters: []\n", [STYLE])) == ["style length"]
    assert with_characters("characters:\n", [STYLE]).startswith(
        "characters:\n- name: style length\n  structure: style\n"
    )


OBLONG, BENT = State("oblong"), State("bent, not straight")


@pytest.mark.parametrize(
    ("before", "after"),
    [
        pytest.param(
            "states:\n      - {name: ovate} # common\n      # rare ones follow\n    how: look\n",
            "states:\n      - {name: ovate} # common\n      # rare ones follow\n      - {name: oblong}\n"
            '      - {name: "bent, not straight"}\n    how: look\n',
            id="lines",
        ),
        pytest.param(
            "states: [{name: ovate},\n      {name: elliptic}]  # all\n",
            'states: [{name: ovate},\n      {name: elliptic}, {name: oblong}, {name: "bent, not straight"}]  # all\n',
            id="brackets",
        ),
        pytest.param("states: []\n", 'states: [{name: oblong}, {name: "bent, not straight"}]\n', id="empty"),
        pytest.param(
            "how: look\n",
            'how: look\n    states:\n      - {name: oblong}\n      - {name: "bent, not straight"}\n',
            id="none",
        ),
    ],
)
def test_states_go_to_the_end_of_their_character(before: str, after: str) -> None:
    head = "characters:\n  - name: x\n    kind: nominal\n    states: [{name: a}]\n  - name: leaf shape\n    "
    tail = "  # the last\n  - {name: y, states: [{name: oblong}]}\n"
    made = with_states(head + before + tail, {"leaf shape": [OBLONG, BENT], "z": [OBLONG]})
    assert made == head + after + tail
    assert with_states(made, {"leaf shape": [State("Oblong")], "y": [OBLONG]}) == made


def test_states_go_into_every_character_of_the_demo() -> None:
    text = (KB / "characters.yaml").read_bytes().decode("utf-8")
    before = states_in(text)
    for name in before:
        made = with_states(text, {name: [OBLONG]})
        assert is_one_insertion(text, made)
        assert states_in(made) == {**before, name: [*before[name], "oblong"]}


def test_states_ready_to_paste_read_back() -> None:
    pasted = "characters:\n  - name: leaf shape\n    states:\n" + states_as_yaml({"leaf shape": [OBLONG, BENT]}) + "\n"
    assert states_in(pasted) == {"leaf shape": ["oblong", "bent, not straight"]}
