"""Two works side by side: each type once, with what becomes of it, and what is divided and united.

The words for the kinds of change (sunk, raised, divided, united) are common practice, no source.
"""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from sklearn.metrics.cluster import contingency_matrix

from auctorum.corpus.resolve import called
from auctorum.nomenclature.compare import Kind, UnknownWork, compare
from auctorum.nomenclature.compare_wording import pages, plain, regrouping_sentence, sentence, summary
from building import corpus_of

# Every name that the works below argue about; all invented. Types: album, longum, altum, nigrum, rubrum, and genera.
BASE = """\
work: {id: base-1850, type: book, author: [{family: Base}], issued: "1850", title: T}
acts:
- {name: Exemplum, act: new taxon}
- {name: Alterum, act: new taxon}
- {name: Exemplum album, act: new taxon}
- {name: Exemplum nigrum, act: new taxon}
- {name: Exemplum rubrum, act: new taxon}
- {name: Exemplum album var. longum, act: new taxon}
- {name: Exemplum album var. altum, act: new taxon}
"""
LATER = """\
work: {id: later-1860, type: book, author: [{family: Later}], issued: "1860", title: T}
acts:
- {name: Exemplum longum, act: change of rank, basionym: Exemplum album var. longum}
- {name: Exemplum nigrum var. longum, act: new combination, basionym: Exemplum album var. longum}
- {name: Alterum album, act: new combination, basionym: Exemplum album}
- {name: Exemplum roseum, act: replacement name, replaces: Exemplum rubrum}
- {name: Exemplum rubra, act: new combination, basionym: Exemplum rubrum}
"""


def work(id_: str, *treatments: str, covers: str = "") -> str:
    """A book whose treatments are given as `name`, `name; key: value` and so on."""
    family, year = id_.split("-")
    head = f'work: {{id: {id_}, type: book, author: [{{family: {family.title()}}}], issued: "{year}", title: T}}\n'
    listed = "".join(f"- {{taxon: {one.replace('; ', ', ')}}}\n" for one in treatments)
    return head + (f"covers: [{covers}]\n" if covers else "") + (f"treatments:\n{listed}" if listed else "")


def compared(a: list[str], b: list[str], within: str | None = None, covers_a: str = "", covers_b: str = ""):
    corpus, problems = corpus_of(
        BASE, LATER, work("ann-1900", *a, covers=covers_a), work("bob-1950", *b, covers=covers_b)
    )
    assert not [problem for problem in problems if "warning" not in problem]
    return corpus, compare(corpus, "ann-1900", "bob-1950", within)


def kinds(corpus, found) -> dict[str, str]:
    return {called(corpus, change.group).removeprefix("Exemplum "): change.kind.name for change in found.changes}


VAR = "Exemplum album var. longum; under: Exemplum album"
WIDE = "Exemplum album; synonyms: [Exemplum longum]"


@pytest.mark.parametrize(
    ("a", "b", "expected"),
    [
        pytest.param(
            ["Exemplum nigrum"],
            ["Exemplum nigrum"],
            {"nigrum": "Exemplum nigrum: kept under the same name"},
            id="kept",
        ),
        pytest.param(
            ["Exemplum album", VAR],
            ["Exemplum album", "Exemplum longum"],
            {
                "album": "Exemplum album is narrower in Bob 1950 than in Ann 1900: it leaves out Exemplum longum",
                "album var. longum": "Exemplum album var. longum in Ann 1900 is Exemplum longum in Bob 1950: "
                "another rank on the same type",
            },
            id="moved-to-another-rank",
        ),
        pytest.param(
            ["Exemplum album var. longum; under: Exemplum album", "Exemplum album", "Exemplum nigrum"],
            ["Exemplum nigrum var. longum; under: Exemplum nigrum", "Exemplum album", "Exemplum nigrum"],
            {
                "album": "Exemplum album is narrower in Bob 1950 than in Ann 1900: "
                "it leaves out Exemplum nigrum var. longum",
                "album var. longum": "Exemplum album var. longum in Ann 1900 is Exemplum nigrum var. longum "
                "in Bob 1950: another species on the same type",
                "nigrum": "Exemplum nigrum is wider in Bob 1950 than in Ann 1900: "
                "it takes in Exemplum album var. longum",
            },
            id="moved-to-another-species",
        ),
        pytest.param(
            ["Exemplum album"],
            ["Alterum album"],
            {"album": "Exemplum album in Ann 1900 is Alterum album in Bob 1950: another genus on the same type"},
            id="moved-to-another-genus",
        ),
        pytest.param(
            ["Exemplum rubrum"],
            ["Exemplum roseum"],
            {
                "rubrum": "Exemplum rubrum in Ann 1900 is Exemplum roseum in Bob 1950: "
                "another epithet on the same type",
            },
            id="replacement-name-is-another-epithet",
        ),
        pytest.param(
            ["Exemplum rubrum"],
            ["Exemplum rubra"],
            {"rubrum": "Exemplum rubrum in Ann 1900 is Exemplum rubra in Bob 1950: another spelling on the same type"},
            id="gender-is-no-other-epithet",
        ),
        pytest.param(
            ["Exemplum album", "Exemplum longum"],
            [WIDE],
            {
                "album": "Exemplum album is wider in Bob 1950 than in Ann 1900: it takes in Exemplum longum",
                "album var. longum": "Exemplum longum, accepted as species in Ann 1900, "
                "is a synonym of Exemplum album in Bob 1950",
            },
            id="sunk",
        ),
        pytest.param(
            ["Exemplum album; synonyms: [Exemplum album var. longum]"],
            ["Exemplum album", "Exemplum longum"],
            {
                "album": "Exemplum album is narrower in Bob 1950 than in Ann 1900: it leaves out Exemplum longum",
                "album var. longum": "Exemplum longum, a synonym of Exemplum album (as Exemplum album var. longum) "
                "in Ann 1900, is accepted as species in Bob 1950",
            },
            id="raised-under-another-name",
        ),
        pytest.param(
            [WIDE, "Exemplum nigrum"],
            ["Exemplum album", "Exemplum nigrum; synonyms: [Exemplum longum]"],
            {
                "album": "Exemplum album is narrower in Bob 1950 than in Ann 1900: it leaves out Exemplum longum",
                "album var. longum": "Exemplum longum, a synonym of Exemplum album in Ann 1900, "
                "is a synonym of Exemplum nigrum in Bob 1950",
                "nigrum": "Exemplum nigrum is wider in Bob 1950 than in Ann 1900: it takes in Exemplum longum",
            },
            id="sunk-into-another",
        ),
        pytest.param(
            [WIDE, "Exemplum nigrum"],
            ["Exemplum album; synonyms: [Exemplum nigrum]", "Exemplum longum"],
            {
                "album": "Exemplum album is drawn otherwise in Bob 1950 than in Ann 1900: it takes in Exemplum nigrum; "
                "it leaves out Exemplum longum",
                "album var. longum": "Exemplum longum, a synonym of Exemplum album in Ann 1900, "
                "is accepted as species in Bob 1950",
                "nigrum": "Exemplum nigrum, accepted as species in Ann 1900, "
                "is a synonym of Exemplum album in Bob 1950",
            },
            id="types-in-and-out",
        ),
        pytest.param(
            [WIDE],
            ["Exemplum longum; status: synonym; accepted-as: Alterum album", "Alterum album"],
            {
                "album": "Exemplum album in Ann 1900 is Alterum album in Bob 1950: another genus on the same type",
                "album var. longum": "Exemplum longum: a synonym of Exemplum album in Ann 1900, "
                "a synonym of Alterum album in Bob 1950",
            },
            id="a-synonym-goes-with-its-type",
        ),
        pytest.param(
            ["Exemplum album; misapplied: [Exemplum nigrum]"],
            ["Exemplum album", "Exemplum nigrum"],
            {
                "album": "Exemplum album: kept under the same name",
                "nigrum": "Exemplum nigrum: misapplied to Exemplum album in Ann 1900, accepted as species in Bob 1950",
            },
            id="misapplied-then-accepted",
        ),
        pytest.param(
            ["Exemplum nigrum; status: misapplied; accepted-as: Exemplum album", "Exemplum album"],
            ["Exemplum album; misapplied: [Exemplum nigrum]"],
            {
                "album": "Exemplum album: kept under the same name",
                "nigrum": "Exemplum nigrum: misapplied to Exemplum album in both",
            },
            id="misapplied-in-both",
        ),
        pytest.param(
            ["Exemplum album", "Exemplum longum; status: doubtful"],
            [WIDE],
            {
                "album": "Exemplum album: kept under the same name",
                "album var. longum": "Exemplum longum: kept with doubt as species in Ann 1900, "
                "a synonym of Exemplum album in Bob 1950",
            },
            id="doubt-makes-no-species-wider",
        ),
        pytest.param(
            ["Exemplum album var. altum; under: Exemplum album"],
            ["Exemplum album var. altum; under: Exemplum nigrum"],
            {
                "album": "Exemplum album is narrower in Bob 1950 than in Ann 1900: "
                "it leaves out Exemplum album var. altum",
                "album var. altum": "Exemplum album var. altum: the same name, placed in Exemplum album in Ann 1900 "
                "and in Exemplum nigrum in Bob 1950",
                "nigrum": "Exemplum nigrum: accepted as species (without an entry of its own) in Bob 1950; "
                "Ann 1900 does not set out to treat it",
            },
            id="placed-elsewhere",
        ),
        pytest.param(
            ["Exemplum album"],
            [WIDE],
            {
                "album": "Exemplum album: kept under the same name",
                "album var. longum": "Exemplum longum: a synonym of Exemplum album in Bob 1950; "
                "Ann 1900 does not set out to treat it",
            },
            id="what-one-does-not-speak-of-makes-no-species-wider",
        ),
    ],
)
def test_what_becomes_of_each_type(a: list[str], b: list[str], expected: dict[str, str]) -> None:
    corpus, found = compared(a, b)
    said = {
        called(corpus, change.group).removeprefix("Exemplum "): plain(sentence(corpus, found, change))
        for change in found.changes
    }
    species = {group: text for group, text in said.items() if group in expected or "without an entry" not in text}
    assert species == expected


@pytest.mark.parametrize(
    ("covers", "id_", "absence"),
    [
        pytest.param("Exemplum", "bob-1950", "covers the group and is silent", id="silent"),
        pytest.param("Exemplum album", "bob-1950", "does not set out to treat it", id="covers-another-species"),
        pytest.param("", "bob-1950", "does not set out to treat it", id="covers-nothing"),
        pytest.param("Exemplum", "bob-1840", "appeared before the type had a name", id="earlier-than-the-name"),
    ],
)
def test_a_work_is_silent_only_of_what_it_covers(covers: str, id_: str, absence: str) -> None:
    corpus, _ = corpus_of(BASE, LATER, work("ann-1900", "Exemplum nigrum"), work(id_, covers=covers))
    one, other = compare(corpus, "ann-1900", id_), compare(corpus, id_, "ann-1900")
    assert [(change.kind, change.absence) for change in one.changes] == [(Kind.ONLY_A, absence)]
    assert [(change.kind, change.absence) for change in other.changes] == [(Kind.ONLY_B, absence)]
    lost = () if absence == "does not set out to treat it" else ("exemplum-nigrum",)
    assert (one.lost, one.gained, other.gained, other.lost) == (lost, (), lost, ())


@pytest.mark.parametrize(
    ("a", "b", "expected"),
    [
        pytest.param(
            [WIDE],
            ["Exemplum album", "Exemplum longum"],
            [
                "Exemplum album sec. Ann 1900 is divided into Exemplum album and Exemplum longum sec. Bob 1950",
            ],
            id="divided",
        ),
        pytest.param(
            ["Exemplum album", "Exemplum longum", "Exemplum nigrum"],
            ["Exemplum album; synonyms: [Exemplum longum, Exemplum nigrum]"],
            [
                "Exemplum album sec. Bob 1950 unites Exemplum album, Exemplum longum and Exemplum nigrum sec. Ann 1900",
            ],
            id="united",
        ),
        pytest.param(
            ["Exemplum album", "Exemplum album var. album; under: Exemplum album", VAR],
            [WIDE],
            [
                "Exemplum album sec. Bob 1950 unites Exemplum album var. album and Exemplum album var. longum "
                "sec. Ann 1900",
            ],
            id="varieties-united",
        ),
        pytest.param(
            ["Exemplum album", VAR],
            [WIDE],
            [
                "Exemplum album sec. Bob 1950 unites Exemplum album in the strict sense and Exemplum album var. longum "
                "sec. Ann 1900",
            ],
            id="varieties-united-without-autonym",
        ),
        pytest.param(
            ["Exemplum album", VAR],
            ["Exemplum album", "Exemplum longum"],
            ["Exemplum album sec. Ann 1900 is divided into Exemplum album and Exemplum longum sec. Bob 1950"],
            id="a-raised-variety-divides-the-species",
        ),
        pytest.param(
            ["Exemplum album; synonyms: [Exemplum longum]", "Exemplum nigrum"],
            ["Exemplum album", "Exemplum nigrum; synonyms: [Exemplum longum]"],
            [
                "Exemplum album sec. Ann 1900 is divided into Exemplum album and Exemplum nigrum (in part) "
                "sec. Bob 1950",
                "Exemplum nigrum sec. Bob 1950 unites Exemplum album (in part) and Exemplum nigrum sec. Ann 1900",
            ],
            id="a-type-changes-over-in-part",
        ),
        pytest.param(
            ["Exemplum album; synonyms: [Exemplum longum]"],
            ["Exemplum album", "Exemplum rubrum; synonyms: [Exemplum longum]"],
            [
                "Exemplum album sec. Ann 1900 is divided into Exemplum album and Exemplum rubrum (in part) "
                "sec. Bob 1950",
            ],
            id="a-taxon-with-its-own-type-outside-is-in-part",
        ),
        pytest.param(
            ["Exemplum; rank: genus", "Alterum; rank: genus"],
            ["Exemplum; rank: genus, synonyms: [Alterum]"],
            ["Exemplum sec. Bob 1950 unites Alterum and Exemplum sec. Ann 1900"],
            id="genera-united",
        ),
        pytest.param(
            ["Exemplum album; synonyms: [Exemplum nigrum]", VAR],
            ["Exemplum album", VAR, "Exemplum nigrum"],
            ["Exemplum album sec. Ann 1900 is divided into Exemplum album and Exemplum nigrum sec. Bob 1950"],
            id="a-synonym-of-a-divided-species-is-in-no-variety",
        ),
        pytest.param(["Exemplum album"], ["Alterum album"], [], id="a-new-name-divides-nothing"),
    ],
)
def test_lumping_and_splitting(a: list[str], b: list[str], expected: list[str]) -> None:
    corpus, found = compared(a, b)
    assert [plain(regrouping_sentence(corpus, found, one)) for one in found.regroupings] == expected


def test_names_gained_lost_and_changed() -> None:
    """A species that moves to another genus takes its autonym along: changed, not lost and gained."""
    _, found = compared(
        ["Exemplum album", "Exemplum album var. album; under: Exemplum album", VAR, "Exemplum nigrum"],
        ["Alterum album", "Alterum album var. album; under: Alterum album", "Exemplum rubrum"],
        covers_a="Exemplum",
        covers_b="Exemplum",
    )
    assert found.gained == ("exemplum-rubrum",)
    assert found.lost == ("exemplum-album-var-longum", "exemplum-nigrum")
    assert found.renamed == (
        ("exemplum-album", "alterum-album"),
        ("exemplum-album-var-album", "alterum-album-var-album"),
    )
    assert summary(found) == (
        "From Ann 1900 to Bob 1950, 4 types: 1 renamed on the same type, "
        "2 only in Ann 1900 (Bob 1950 covers the group and is silent on 2), "
        "1 only in Bob 1950 (Ann 1900 covers the group and is silent on 1). "
        "Accepted names: 1 gained, 2 lost, 2 changed."
    )


def test_a_name_kept_with_doubt_is_neither_gained_nor_lost() -> None:
    _, found = compared(["Exemplum nigrum"], ["Exemplum nigrum; status: doubtful"])
    assert [change.kind for change in found.changes] == [Kind.DOUBTFUL]
    assert (found.gained, found.lost, found.renamed) == ((), (), ())


def test_order_is_by_genus_then_accepted_name() -> None:
    _, found = compared(
        ["Exemplum nigrum", "Exemplum album; synonyms: [Exemplum rubrum]", "Alterum; rank: genus"],
        ["Exemplum longum", "Exemplum album; synonyms: [Exemplum album var. altum]"],
    )
    assert [change.group for change in found.changes] == [
        "alterum",
        "exemplum-album",
        "exemplum-rubrum",  # a synonym of album in the first work
        "exemplum-nigrum",
        "exemplum-album-var-altum",  # a synonym of album in the second only
        "exemplum-album-var-longum",
    ]


@pytest.mark.parametrize(
    ("within", "expected"),
    [
        pytest.param("exemplum-album", {"album", "album var. longum", "album var. altum"}, id="species-with-its-parts"),
        pytest.param("exemplum-longum", {"album var. longum"}, id="any-name-on-the-type"),
        pytest.param("exemplum", {"album", "album var. longum", "album var. altum", "nigrum"}, id="genus"),
        pytest.param("alterum", set(), id="nothing-of-it"),
    ],
)
def test_within_one_taxon(within: str, expected: set[str]) -> None:
    """What lies in the taxon in either work: altum for the first, longum for both."""
    corpus, found = compared(
        ["Exemplum album", VAR, "Exemplum album var. altum; under: Exemplum album", "Exemplum nigrum"],
        ["Exemplum album; synonyms: [Exemplum longum]", "Exemplum nigrum; synonyms: [Exemplum album var. altum]"],
        within=within,
    )
    assert set(kinds(corpus, found)) == expected
    assert found.within == within
    unions = [plain(regrouping_sentence(corpus, found, one)) for one in found.regroupings]
    assert ("Exemplum nigrum sec. Bob 1950" in " ".join(unions)) is (within == "exemplum")


def test_an_act_without_treatment_is_a_position() -> None:
    """Who publishes a name and accepts it keeps the taxon; who does not accept it (ICN Art. 36.1) does not."""
    corpus, _ = corpus_of(
        BASE,
        LATER,
        'work: {id: ann-1900, type: book, author: [{family: Ann}], issued: "1900", title: T}\n'
        "acts:\n- {name: Exemplum latum, act: new taxon, page: '7'}\n"
        "- {name: Exemplum vanum, act: new taxon, accepted: false}\n",
        work("bob-1950", "Exemplum latum; page: '12'"),
    )
    found = compare(corpus, "ann-1900", "bob-1950")
    assert [(change.group, change.kind) for change in found.changes] == [("exemplum-latum", Kind.KEPT)]
    assert pages(found, found.changes[0]) == "Ann 1900: 7; Bob 1950: 12"


def test_the_synonym_of_a_synonym_is_one_of_what_is_accepted() -> None:
    corpus, found = compared(
        [
            "Exemplum rubrum; status: synonym; accepted-as: Exemplum nigrum",
            "Exemplum nigrum; status: synonym; accepted-as: Exemplum album; synonyms: [Exemplum longum]",
            "Exemplum album",
        ],
        ["Exemplum album"],
    )
    targets = {change.group: change.a.accepted for change in found.changes}
    assert set(targets.values()) == {"exemplum-album"} and len(targets) == 4
    assert kinds(corpus, found)["album"] == "KEPT"


def test_synonyms_in_a_circle_come_to_an_end() -> None:
    corpus, _ = corpus_of(
        BASE,
        LATER,
        work(
            "ann-1900",
            "Exemplum rubrum; status: synonym; accepted-as: Exemplum nigrum",
            "Exemplum nigrum; status: synonym; accepted-as: Exemplum rubrum",
        ),
        work("bob-1950", "Exemplum nigrum; status: synonym"),
    )
    found = compare(corpus, "ann-1900", "bob-1950")
    assert {change.group for change in found.changes} == {"exemplum-nigrum", "exemplum-rubrum"}


def test_a_species_that_is_only_named_as_parent_is_accepted_all_the_same() -> None:
    corpus, found = compared([VAR], ["Exemplum album", "Exemplum longum"])
    assert kinds(corpus, found) == {"album": "NARROWED", "album var. longum": "RENAMED"}


def test_an_unknown_work_is_answered_with_the_nearest() -> None:
    corpus, _ = corpus_of(BASE, LATER, work("ann-1900"), work("bob-1950"))
    with pytest.raises(UnknownWork, match="no work `anne-1900` in the knowledge base") as caught:
        compare(corpus, "anne-1900", "bob-1950")
    assert caught.value.remedy == "nearest: ann-1900"


def test_two_works_of_one_author_and_year_go_by_their_ids() -> None:
    texts = (work("ann-1900", "Exemplum nigrum"), work("ann-1900", "Exemplum nigrum").replace("ann-1900", "ann-1900-b"))
    corpus, _ = corpus_of(BASE, LATER, *texts)
    assert summary(compare(corpus, "ann-1900", "ann-1900-b")).startswith("From ann-1900 to ann-1900-b, 1 type: 1 kept")


# --- laws, and slow second answers, over any two ways to sort five types ---

SPECIES = ("album", "longum", "nigrum", "rubrum", "latum")
GROUPS = {epithet: f"exemplum-{epithet}" for epithet in SPECIES}
FIVE = "\n".join(
    [
        'work: {id: base-1850, type: book, author: [{family: Base}], issued: "1850", title: T}',
        "acts:",
        "- {name: Exemplum, act: new taxon}",
        *(f"- {{name: Exemplum {epithet}, act: new taxon}}" for epithet in SPECIES),
    ]
)
MIRRORED = {
    "SUNK": "RAISED", "RAISED": "SUNK", "WIDENED": "NARROWED", "NARROWED": "WIDENED",
    "ONLY_A": "ONLY_B", "ONLY_B": "ONLY_A",
}  # fmt: skip


@st.composite
def views(draw: st.DrawFn) -> dict[str, tuple[str, str]]:
    """Epithet -> how it stands and, for what is not kept, which accepted epithet it belongs to; some are left out."""
    accepted = draw(st.sets(st.sampled_from(SPECIES), min_size=1))
    view = {epithet: ("accepted", epithet) for epithet in accepted}
    for epithet in SPECIES:
        if epithet not in accepted:
            how = draw(st.sampled_from(["absent", "synonym", "misapplied", "doubtful"]))
            target = draw(st.sampled_from(sorted(accepted)))
            if how != "absent":
                view[epithet] = (how, epithet if how == "doubtful" else target)
    return view


def written(id_: str, view: dict[str, tuple[str, str]]) -> str:
    treatments = []
    for epithet, (how, target) in view.items():
        if how in ("accepted", "doubtful"):
            treatments.append(f"Exemplum {epithet}; status: {how}")
        else:
            treatments.append(f"Exemplum {epithet}; status: {how}; accepted-as: Exemplum {target}")
    return work(id_, *treatments, covers="Exemplum")


@given(views(), views())
@settings(deadline=None, max_examples=100)
def test_laws(a: dict[str, tuple[str, str]], b: dict[str, tuple[str, str]]) -> None:
    texts = (FIVE, written("ann-1900", a), written("bob-1950", b))
    corpus, _ = corpus_of(*texts)
    found, back = compare(corpus, "ann-1900", "bob-1950"), compare(corpus, "bob-1950", "ann-1900")
    # Every type once, no type that neither has.
    assert sorted(change.group for change in found.changes) == sorted(GROUPS[one] for one in {*a, *b})
    # The way back: gained and lost, wider and narrower, divided and united change places.
    assert (back.gained, back.lost) == (found.lost, found.gained)
    there = {change.group: change for change in found.changes}
    for change in back.changes:
        other = there[change.group]
        assert change.kind.name == MIRRORED.get(other.kind.name, other.kind.name)
        assert (change.gains, change.loses, change.a, change.b) == (other.loses, other.gains, other.b, other.a)
    assert {(not one.is_division, one.whole, one.shares) for one in back.regroupings} == {
        (one.is_division, one.whole, one.shares) for one in found.regroupings
    }
    # Nothing changes from a work to itself.
    same = compare(corpus, "ann-1900", "ann-1900")
    assert not [change for change in same.changes if change.is_change]
    assert (same.gained, same.lost, same.renamed, same.regroupings) == ((), (), (), ())
    # The order of files does not matter.
    turned, _ = corpus_of(*reversed(texts))
    assert compare(turned, "ann-1900", "bob-1950") == found


@given(views(), views())
@settings(deadline=None, max_examples=100)
def test_second_answers(a: dict[str, tuple[str, str]], b: dict[str, tuple[str, str]]) -> None:
    """Names by set difference; divisions and unions by the contingency table of two clusterings (scikit-learn)."""
    corpus, _ = corpus_of(FIVE, written("ann-1900", a), written("bob-1950", b))
    found = compare(corpus, "ann-1900", "bob-1950")
    kept = [{one for one, (how, _) in view.items() if how == "accepted"} for view in (a, b)]
    doubted = [{one for one, (how, _) in view.items() if how == "doubtful"} for view in (a, b)]
    assert {name.removeprefix("exemplum-") for name in found.lost} == kept[0] - kept[1] - doubted[1]
    assert {name.removeprefix("exemplum-") for name in found.gained} == kept[1] - kept[0] - doubted[0]
    both = [one for one in SPECIES if all(view.get(one, ("",))[0] in ("accepted", "synonym") for view in (a, b))]
    divided, united = set(), set()
    if both:
        rows, columns = ([view[one][1] for one in both] for view in (a, b))
        table = contingency_matrix(rows, columns)
        divided = {row for row, counts in zip(sorted(set(rows)), table, strict=True) if (counts > 0).sum() > 1}
        united = {one for one, counts in zip(sorted(set(columns)), table.T, strict=True) if (counts > 0).sum() > 1}
    told = [(one.is_division, one.whole.name.removeprefix("exemplum-")) for one in found.regroupings]
    assert sorted(told) == sorted([*((True, one) for one in divided), *((False, one) for one in united)])
