"""Each kind of gap: it stands where exactly that is not known, and is gone when the record is added."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import replace

import pytest

from auctorum.circumscription.gaps.find import gaps
from auctorum.circumscription.gaps.model import Gap, GapKind
from auctorum.corpus.model import Corpus
from auctorum.records import schema
from auctorum.records.rows import Role
from building import corpus_of, read_text
from measuring import VOCABULARY, with_plants

HOLOTYPE = "{kind: holotype, specimen: Orrin %s, herbarium: XX}"
GENUS = "- {name: Exemplum, act: new taxon, rank: genus, type: {kind: name, specimen: Exemplum album}}\n"
SPUR, PETALS, STYLE = "spur length", "petal number", "style length"
Taxa = dict[str, Sequence[tuple[str, ...]]]  # epithet -> character, words and, where it is given, stage

CRITERION = """\
id: long
taxon: Exemplum nigrum
title: Long-spurred
decisive: {character: spur length, stage: mature, at-least: 20 mm}
otherwise: Exemplum album
"""
ALBUM, NIGRUM = [(SPUR, "10–12 mm")], [(SPUR, "30–34 mm")]


def protologue(*types: str, epithets: Sequence[str] = ("album", "nigrum")) -> str:
    """The work that publishes the genus and its species; `types` as YAML, those left out are known in full."""
    given = [*types, *(HOLOTYPE % number for number in range(len(types), len(epithets)))]
    acts = "".join(
        f"- {{name: Exemplum {epithet}, act: new taxon, rank: species, page: 9{f', type: {type_}' if type_ else ''}}}\n"
        for epithet, type_ in zip(epithets, given, strict=True)
    )
    head = 'work: {id: zero-1800, type: book, author: [{family: Zero}], issued: "1800", title: T}\n'
    return f"{head}acts:\n{GENUS}{acts}"


def work(author: str, year: int, taxa: Taxa, more: str = "") -> str:
    """A work that accepts species of the genus."""
    text = f"work: {{id: {author.lower()}-{year}, type: book, author: [{{family: {author}}}], "
    text += f'issued: "{year}", title: T}}\n'
    text += more + "treatments:\n"
    for epithet, traits in taxa.items():
        text += f"- taxon: Exemplum {epithet}\n  under: Exemplum\n  page: 5\n  traits:\n"
        for name, words, *stage in traits:
            staged = f", stage: {stage[0]}" if stage else ""
            text += f'  - {{character: {name}, verbatim: "{words}", page: 7{staged}}}\n'
    return text


def corpus(*literature: str, settings: str = "title: Test\n") -> Corpus:
    return corpus_of(*literature, characters=VOCABULARY, settings=settings)[0]


def plants(found: Corpus, *several: tuple[str, str, int], column: str = "spur length [mm]", site: str = "") -> Corpus:
    """The corpus with plants: epithet, figure and how many of it; mature."""
    rows = [
        f"P{at}-{number},{site},Exemplum {epithet},mature,{figure}"
        for at, (epithet, figure, many) in enumerate(several)
        for number in range(many)
    ]
    head = f"occurrenceID,locationID,scientificName,lifeStage,{column}\n"
    return with_plants(found, head + "\n".join(rows) + "\n")


# --- one function a kind: without the record, and with it


def a_pair() -> tuple[Corpus, Corpus]:
    same = {"album": [(SPUR, "20–30 mm")], "nigrum": [(SPUR, "20–30 mm")]}
    apart = {"album": [*same["album"], (PETALS, "5")], "nigrum": [*same["nigrum"], (PETALS, "8")]}
    return corpus(protologue(), work("Vane", 1900, same)), corpus(protologue(), work("Vane", 1900, apart))


def a_character_untold() -> tuple[Corpus, Corpus]:
    partly = work("Vane", 1900, {"album": [*ALBUM, (PETALS, "5")], "nigrum": NIGRUM})
    whole = work("Vane", 1900, {"album": [*ALBUM, (PETALS, "5")], "nigrum": [*NIGRUM, (PETALS, "5")]})
    return corpus(protologue(), partly), corpus(protologue(), whole)


def a_character_measured() -> tuple[Corpus, Corpus]:
    found = corpus(protologue(), work("Vane", 1900, {"album": [*ALBUM, (PETALS, "5")], "nigrum": NIGRUM}))
    return found, plants(found, ("nigrum", "5", 1), column=PETALS)


def a_silent_work() -> tuple[Corpus, Corpus]:
    both = {"album": [*ALBUM, (PETALS, "5")], "nigrum": [*NIGRUM, (PETALS, "5")]}
    quiet = {"album": [(PETALS, "5")], "nigrum": [(PETALS, "5")]}
    three = [work(author, year, both) for author, year in (("Vane", 1900), ("Orrin", 1910), ("Hale", 1920))]
    before, after = (work("Brandow", 1934, last) for last in (quiet, both))
    return corpus(protologue(), *three, before), corpus(protologue(), *three, after)


def a_name_without_protologue() -> tuple[Corpus, Corpus]:
    used = work("Vane", 1900, {"album": ALBUM, "rubrum": NIGRUM})
    return corpus(protologue(), used), corpus(protologue(epithets=("album", "nigrum", "rubrum")), used)


def _typed(before: str, after: str, *later: str) -> tuple[Corpus, Corpus]:
    used = work("Vane", 1900, {"album": ALBUM, "nigrum": NIGRUM})
    return corpus(protologue(before), used), corpus(protologue(after), used, *later)


def a_name_without_type() -> tuple[Corpus, Corpus]:
    return _typed("", HOLOTYPE % 9)


def a_type_without_herbarium() -> tuple[Corpus, Corpus]:
    return _typed("{kind: holotype, specimen: Orrin 9}", HOLOTYPE % 9)


def a_type_without_specimen() -> tuple[Corpus, Corpus]:
    return _typed("{kind: holotype, herbarium: XX}", HOLOTYPE % 9)


LOST = '{kind: holotype, specimen: Orrin 9, herbarium: XX, verbatim: "sheet lost in the fire"}'
CHOSEN = """\
work: {id: hale-1950, type: book, author: [{family: Hale}], issued: "1950", title: T}
acts:
- name: Exemplum album
  act: type designation
  of: Exemplum album
  type: {kind: %s, specimen: Hale 1, herbarium: XX}
"""


def a_lost_type() -> tuple[Corpus, Corpus]:
    return _typed(LOST, LOST, CHOSEN % "neotype")


def syntypes() -> tuple[Corpus, Corpus]:
    several = "{kind: syntype, specimen: Orrin 9, herbarium: XX}"
    return _typed(several, several, CHOSEN % "lectotype")


def a_stage_left_open() -> tuple[Corpus, Corpus]:
    def said(*stage: str) -> str:
        return work("Vane", 1900, {"album": [*ALBUM, ("spur colour", "spur ivory", *stage)]})

    return corpus(protologue(), said()), corpus(protologue(), said("mature"))


def an_unread_statement() -> tuple[Corpus, Corpus]:
    def said(words: str) -> str:
        return work("Vane", 1900, {"album": [*ALBUM, (PETALS, words)]})

    return corpus(protologue(), said("petals in an odd array")), corpus(protologue(), said("petals 5"))


def a_conflict() -> tuple[Corpus, Corpus]:
    works = [work("Vane", 1900, {"album": ALBUM}), work("Orrin", 1910, {"album": [(SPUR, "20–22 mm")]})]
    found = corpus(protologue(), *works)
    return found, plants(found, ("album", "11", 60), ("album", "21", 40))


FOUR = [(SPUR, "10–12 mm"), (PETALS, "5"), (STYLE, "4–6 mm", "female"), ("bracteoles", "bracteoles present")]


def a_repetition() -> tuple[Corpus, Corpus]:
    first = work("Vane", 1900, {"album": FOUR})
    before, after = (work("Hale", 1950, {"album": FOUR}, more) for more in ("", "cites: [vane-1900]\n"))
    return corpus(protologue(), first, before), corpus(protologue(), first, after)


def _with_criterion(found: Corpus) -> Corpus:
    return replace(found, criteria=(read_text(CRITERION, schema.Criterion, "criteria/long.yaml"),))


def _of_works(number: int) -> Corpus:
    both = {"album": ALBUM, "nigrum": NIGRUM}
    several = [work(author, 1900, both) for author in ("Vane", "Orrin", "Hale")[:number]]
    return _with_criterion(corpus(protologue(), *several))


def a_criterion_on_few_works() -> tuple[Corpus, Corpus]:
    few, enough = (plants(_of_works(number), ("album", "11", 20), ("nigrum", "32", 20)) for number in (2, 3))
    return few, enough


def a_criterion_on_few_plants() -> tuple[Corpus, Corpus]:
    few, enough = (plants(_of_works(3), ("album", "11", 20), ("nigrum", "32", number)) for number in (4, 20))
    return few, enough


def a_site_not_searched() -> tuple[Corpus, Corpus]:
    site = schema.Site(locationID="S1", locality="Hidden Wall", island="Main", role=Role.CANDIDATE)
    found = replace(corpus(protologue(), work("Vane", 1900, {"album": ALBUM})), sites={"S1": site})
    return found, plants(found, ("album", "11", 1), site="S1")


KINDS: list[tuple[Callable[[], tuple[Corpus, Corpus]], GapKind, str, str]] = [
    (a_pair, GapKind.PAIR, "Exemplum album and Exemplum nigrum: what", "Measure the spur length at maturity of both"),
    (a_character_untold, GapKind.UNTOLD, "Exemplum nigrum: what about petal number?", "Measure or note it"),
    (a_character_measured, GapKind.UNTOLD, "Exemplum nigrum: what about petal number?", "Measure or note it"),
    (a_silent_work, GapKind.SILENT, "Brandow 1934: does it give the spur length of", "Look up page 5 of Brandow 1934"),
    (a_name_without_protologue, GapKind.NAME, "Exemplum rubrum: where was it published?", "Look up its protologue"),
    (a_name_without_type, GapKind.NAME, "Exemplum album: what is its type?", "Look up page 9 of Zero 1800 for a type"),
    (a_type_without_herbarium, GapKind.NAME, "album: which herbarium keeps its holotype?", "for the herbarium"),
    (a_type_without_specimen, GapKind.NAME, "album: which specimen is its holotype?", "for the specimen"),
    (a_lost_type, GapKind.NAME, "album: what stands for its lost type?", "later works for a neotype or lectotype"),
    (syntypes, GapKind.NAME, "album: which syntype is its type?", "for a lectotype"),
    (a_stage_left_open, GapKind.UNCLEAR, "Vane 1900: what is meant by “spur ivory”?", "Read page 7 of Vane 1900 again"),
    (an_unread_statement, GapKind.UNCLEAR, "Vane 1900: what is meant by “petals in an odd array”?", "give `value:`"),
    (a_conflict, GapKind.CONFLICT, "is its spur length at maturity 10–12 mm (Vane 1900) or 20–22 mm (Orrin 1910)?",
     "Measure the spur length of 93 mature plants"),
    (a_repetition, GapKind.REPETITION, "Hale 1950: are its figures those of Vane 1900?", "Look whether Hale 1950"),
    (a_criterion_on_few_works, GapKind.CRITERION, "is the limit of spur length at maturity sound?", "1 more work that"),
    (a_criterion_on_few_plants, GapKind.CRITERION, "do plants bear out the limit", "16 mature plants of Exemplum n"),
    (a_site_not_searched, GapKind.SITE, "Site S1 (Main): what grows there?", "Search it with the permits it needs"),
]  # fmt: skip


@pytest.mark.parametrize(("make", "kind", "question", "todo"), KINDS, ids=[make.__name__ for make, *_ in KINDS])
def test_a_gap_stands_alone_and_goes_when_it_is_filled(make, kind, question, todo) -> None:
    before, after = make()
    (gap,) = gaps(before)
    assert gap.kind is kind
    assert question in gap.question and gap.question.endswith("?")
    assert todo in gap.todo and gap.todo.endswith(".")
    assert 0 < gap.rank <= 1
    assert gaps(after) == ()


def _key(gap: Gap) -> tuple[object, ...]:
    return gap.kind, gap.taxa, gap.names, gap.sites, gap.works if gap.kind is GapKind.SILENT else ()


@pytest.mark.parametrize("make", [make for make, *_ in KINDS], ids=[make.__name__ for make, *_ in KINDS])
def test_filling_one_gap_raises_no_other(make) -> None:
    """Another gap of its own stands beside: rubrum has no protologue, and its colour is given without a stage."""
    beside = work("Other", 1950, {"rubrum": [(SPUR, "70–80 mm"), (PETALS, "20"), ("spur colour", "ivory")]})
    before, after = ({_key(gap): gap.rank for gap in gaps(_joined(one, beside))} for one in make())
    assert len(before) > len(after) >= 2
    assert set(after) < set(before)
    assert all(rank <= before[key] + 1e-9 for key, rank in after.items())


def _joined(found: Corpus, literature: str) -> Corpus:
    """The corpus with one more work, in a genus of its own, so that the works on the first stay as many."""
    other = corpus(literature.replace("Exemplum", "Alterum").replace("album", "rubrum"))
    parts = ("works", "names", "treatments", "statements", "taxa", "groups", "by_work", "by_name", "by_group")
    return replace(found, **{part: {**getattr(found, part), **getattr(other, part)} for part in parts})


# --- figures


def test_a_pair_ranks_by_twice_its_error_and_a_character_told_of_one_is_named() -> None:
    said = {"album": [(SPUR, "20–30 mm"), (PETALS, "5")], "nigrum": [(SPUR, "20–30 mm")]}
    pair = next(gap for gap in gaps(corpus(protologue(), work("Vane", 1900, said))) if gap.kind is GapKind.PAIR)
    assert pair.rank == pytest.approx(1.0)
    assert "errs for 50 % of the plants" in pair.why
    assert pair.todo.startswith("Measure or look up petal number of Exemplum nigrum")


def test_where_they_grow_tells_no_pair_apart() -> None:
    said = {
        "album": [(SPUR, "20–30 mm"), ("aspect", "facing N")],
        "nigrum": [(SPUR, "20–30 mm"), ("aspect", "facing S")],
    }
    assert [gap.kind for gap in gaps(corpus(protologue(), work("Vane", 1900, said)))] == [GapKind.PAIR]


def test_focal_names_count_double() -> None:
    text = work("Vane", 1900, {"album": ALBUM, "nigrum": NIGRUM}), work("Hale", 1950, {"nigrum": NIGRUM})
    plain = gaps(corpus(protologue(""), *text))
    focal = gaps(corpus(protologue(""), *text, settings="title: Test\nfocal-taxa: [Exemplum album]\n"))
    assert [gap.rank for gap in plain] == [pytest.approx(0.25)]  # half of the two works on the genus use it
    assert [gap.rank for gap in focal] == [pytest.approx(0.5)]


def test_a_conflict_is_weighed_by_its_smaller_side_and_the_plants_that_are_wanting() -> None:
    works = [work(author, year, {"album": ALBUM}) for author, year in (("Vane", 1900), ("Hale", 1910), ("Mott", 1920))]
    found = corpus(protologue(), *works, work("Orrin", 1930, {"album": [(SPUR, "20–22 mm")]}))
    (alone,) = gaps(found)
    assert alone.rank == pytest.approx(0.25)
    (measured,) = gaps(plants(found, ("album", "11", 5), ("album", "21", 5)))
    assert measured.rank == pytest.approx(0.25 * (1 - 10 / 93))
    assert "10 plants are measured, 5 of them 10–12 mm" in measured.why
    assert "83 more mature plants" in measured.todo


def test_one_entry_for_a_work_that_is_silent_on_two_taxa() -> None:
    (gap,) = gaps(a_silent_work()[0])
    assert set(gap.taxa) == {"exemplum-album", "exemplum-nigrum"} and gap.works == ("brandow-1934",)
    assert gap.rank == pytest.approx(1 / 4)  # one voice beside three, of a character that errs never


def test_a_repetition_says_what_it_would_change() -> None:
    (gap,) = gaps(a_repetition()[0])
    assert "the same in 4 of 4 characters" in gap.why
    assert "1 independent author instead of 2" in gap.why
    assert gap.rank == pytest.approx(1 / 2)


def test_names_asked_for_limit_the_list_to_their_taxa_and_types() -> None:
    said = {"album": [*ALBUM, ("spur colour", "ivory")], "nigrum": [*NIGRUM, ("spur colour", "ivory", "mature")]}
    found = corpus(protologue("", ""), work("Vane", 1900, said))
    of_album = gaps(found, ["exemplum-album"])
    assert {gap.kind for gap in of_album} == {GapKind.NAME, GapKind.UNCLEAR}
    assert {name for gap in of_album for name in gap.names} == {"exemplum-album"}
    assert {gap.kind for gap in gaps(found, ["exemplum-nigrum"])} == {GapKind.NAME}
    assert gaps(found, ["exemplum-nigrum"], [GapKind.UNCLEAR]) == ()


def test_a_site_is_called_by_its_id_alone() -> None:
    (gap,) = gaps(a_site_not_searched()[0])
    assert "Hidden Wall" not in f"{gap.question} {gap.why} {gap.todo}"


# --- works that move, and how characters are called

RATIO = VOCABULARY + "- {name: spur to petal, structure: spur, property: ratio, kind: ratio}\n"
AUTHORS = ("Vane", "Orrin", "Hale", "Brandow", "Mott")


def _moving(*ranges: str, character: str = SPUR) -> tuple[Gap, ...]:
    """The gaps of works that each give the next of these figures of one species."""
    several = [
        work(author, 1900 + 10 * at, {"album": [(character, said)]})
        for at, (author, said) in enumerate(zip(AUTHORS, ranges, strict=True))
    ]
    return gaps(corpus_of(protologue(), *several, characters=RATIO)[0])


def test_a_drift_is_asked_about_from_the_first_range_to_the_last() -> None:
    (gap,) = _moving("10–12 mm", "10–14 mm", "10–16 mm", "10–18 mm", "10–20 mm")
    assert gap.question.endswith(": is its spur length at maturity 10–12 mm (Vane 1900) or 10–20 mm (Mott 1940)?")
    # Two fifths of the works hold 16–18 mm; 2 of the 10 mm are common to both; no plant is measured.
    assert gap.rank == pytest.approx(0.4 * 0.8)


def test_a_slight_drift_ranks_below_a_wide_one() -> None:
    wide, slight = (_moving(*(f"10–{end} mm" for end in ends)) for ends in ((20, 24, 28, 32, 36), (20, 21, 22, 23, 24)))
    assert wide[0].rank > slight[0].rank > 0


def test_a_single_figure_inside_later_ranges_is_no_side_of_a_drift() -> None:
    (gap,) = _moving(
        "2 times", "1.8–2.2 times", "1.6–2.4 times", "1.4–2.6 times", "1.2–2.8 times", character="spur to petal"
    )
    assert "is its spur to petal ratio 1.8–2.2 (Orrin 1910) or 1.2–2.8 (Mott 1940)?" in gap.question
    assert gap.todo.startswith("Note the spur to petal ratio of 93 plants")


def test_a_conflict_of_states_reads_as_a_question() -> None:
    works = [
        work("Vane", 1900, {"album": [("bracteoles", "bracteoles present")]}),
        work("Orrin", 1910, {"album": [("bracteoles", "bracteoles absent")]}),
    ]
    (gap,) = gaps(corpus(protologue(), *works))
    assert gap.question == "Exemplum album: bracteoles present (Vane 1900) or absent (Orrin 1910)?"
    assert gap.rank == pytest.approx(1 / 2)


def test_figures_of_a_conflict_have_the_digits_that_were_stated() -> None:
    works = [
        work("Vane", 1900, {"album": [(SPUR, "4–5 lines")]}),
        work("Orrin", 1910, {"album": [(SPUR, "20–24 mm")]}),
    ]
    found = corpus(protologue(), *works)
    (gap,) = gaps(plants(found, ("album", "9.1", 3)))
    assert "3 plants are measured, all of them 8–11 mm" in gap.why  # a line of 2.117 mm, told to a line
    assert "is its spur length at maturity 8–11 mm (Vane 1900)" in gap.question


def test_where_a_taxon_grows_is_asked_for_with_half_the_weight() -> None:
    places = {"album": [*ALBUM, ("aspect", "facing N")], "nigrum": NIGRUM}
    petals = {"album": [*ALBUM, (PETALS, "5")], "nigrum": NIGRUM}
    of_place, of_plant = (gaps(corpus(protologue(), work("Vane", 1900, said)))[0] for said in (places, petals))
    assert of_place.kind is of_plant.kind is GapKind.UNTOLD
    assert of_place.rank == pytest.approx(of_plant.rank / 2)


# --- order


@pytest.mark.parametrize(
    "make", [a_silent_work, a_repetition, a_conflict, a_pair], ids=["silent", "repetition", "conflict", "pair"]
)
def test_the_order_of_files_does_not_matter(make: Callable[[], tuple[Corpus, Corpus]], monkeypatch) -> None:
    found = gaps(make()[0])
    monkeypatch.setitem(globals(), "corpus", lambda *literature: corpus_of(*literature[::-1], characters=VOCABULARY)[0])
    assert gaps(make()[0]) == found
