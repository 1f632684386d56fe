"""Laws of the Code that hold for any records, and a slow second answer for the correct name of a species.

The articles are those of the Shenzhen Code (2018), some from memory; the worlds are invented.
"""

from __future__ import annotations

import random
from collections.abc import Iterable, Sequence
from dataclasses import replace

from hypothesis import assume, given, settings
from hypothesis import strategies as st

from auctorum.names.format import format_name
from auctorum.names.parse import parse_name
from auctorum.nomenclature.code import Code, applied
from auctorum.nomenclature.correct import CorrectName, Outcome, Taxon, correct_name
from auctorum.nomenclature.judgement import Judgement, Legitimacy, Validity
from nomenclature.code_worlds import (
    EPITHETS,
    GENERA,
    Made,
    World,
    act_ids,
    built,
    corpus_from,
    judged,
    literature,
    worlds,
)

examples = settings(deadline=None, max_examples=60)
picks = st.sets(st.integers(0, 11), min_size=1, max_size=3)
genera = st.sampled_from(GENERA)


def names_of(code: Code, world: World, taken: Iterable[int]) -> frozenset[str]:
    """Ids of the names on some specimens."""
    ids = act_ids(world)
    return frozenset(code.corpus.acts[ids[one.number]].name for one in world if one.type in taken)


def specimens(world: World, picked: Iterable[int]) -> set[int]:
    """The specimens of some acts of a world."""
    return {world[number % len(world)].type for number in picked}


def asked(code: Code, world: World, taken: Iterable[int], genus: str) -> CorrectName:
    """The correct name, as a species of that genus, of the taxon that holds some specimens."""
    return correct_name(code, Taxon(names_of(code, world, taken), "species", genus))


# What the order of files has no part in


@given(worlds, st.randoms(use_true_random=False))
@examples
def test_order_of_files_does_not_matter(world: World, chance: random.Random) -> None:
    works = literature(world)
    shuffled = works[:]
    chance.shuffle(shuffled)
    one, other = (applied(corpus_from(listed)) for listed in (works, shuffled))
    assert list(one.corpus.names.items()) == list(other.corpus.names.items())
    assert one.acts == other.acts
    assert one.autonyms.keys() == other.autonyms.keys()
    for genus in GENERA:
        names = frozenset(one.corpus.names) - {id_ for id_, entry in one.corpus.names.items() if entry.rank == "genus"}
        if names:
            first, second = (correct_name(code, Taxon(names, "species", genus)) for code in (one, other))
            assert first == second


# What time has no part in


@given(worlds, picks, st.integers(0, 3), genera)
@examples
def test_a_later_heterotypic_synonym_never_takes_over(
    world: World, picked: set[int], epithet: int, other_genus: str
) -> None:
    """ICN Art. 11.4: it is later, whatever its epithet."""
    code, taken = judged(world), specimens(world, picked)
    late = Made(len(world), 90, world[-1].year + 5, "new taxon", other_genus, epithet, 9)
    longer = (*world, late)
    more = judged(longer)
    for genus in GENERA:
        before, after = asked(code, world, taken, genus), asked(more, longer, taken | {9}, genus)
        if before.outcome is Outcome.NAME:
            assert after.outcome is Outcome.NAME
            assert before.name is not None and after.name is not None
            assert format_name(after.name) == format_name(before.name)


def outcomes(code: Code) -> dict[str, tuple[Validity, Legitimacy | None]]:
    return {id_: (one.validity, one.legitimacy) for id_, one in code.acts.items()}


@given(worlds, st.integers(1, 12))
@examples
def test_later_acts_change_no_verdict(world: World, cut: int) -> None:
    """ICN Art. 6.4: what was legitimate or illegitimate when published stays so, decisions of committees apart.

    The worlds record every species before what stands in it; what comes to be known of it later might tell otherwise.
    """
    year = world[cut % len(world)].year
    early = tuple(one for one in world if one.year < year)
    assume(early)
    known = judged(early)
    whole = judged(world)
    before, after = outcomes(known), outcomes(whole)
    assert {id_: after[id_] for id_ in before} == before


def test_a_name_moved_back_changes_no_verdict() -> None:
    """ICN Art. 6.3 Note 2: Altera longa of 1807 is an isonym of that of 1801, and no circle."""
    world = (
        Made(0, 1, 1801, "new taxon", "Altera", 1, 0),
        Made(1, 2, 1803, "new combination", "Exemplum", 1, 0, older=0),
        Made(2, 3, 1804, "new combination", "Novum", 1, 0, older=1),
        Made(3, 4, 1807, "new combination", "Altera", 1, 0, older=2),
    )
    for length in (3, 4):
        assert judged(world[:length]).acts["work-03.1"].validity is Validity.VALID


def test_a_basionym_is_an_earlier_name() -> None:
    """ICN Art. 6.10, 41.1: Exemplum album was a nomen nudum in 1801, so that Novum album of 1802 rests on nothing, and
    without a description is not validly published; that somebody described Exemplum album in 1803 is no help."""
    world = (
        Made(0, 1, 1801, "new taxon", "Exemplum", 0, 0, described=False),
        Made(1, 2, 1802, "new combination", "Novum", 0, 0, older=0, described=False),
        Made(2, 3, 1803, "new taxon", "Exemplum", 0, 0),
    )
    assert judged(world[:2]).acts["work-02.1"].validity is Validity.NOT_VALID
    assert judged(world).acts["work-02.1"].validity is Validity.NOT_VALID


# What an answer must be


@given(worlds, picks, genera)
@examples
def test_the_correct_name_may_be_used(world: World, picked: set[int], genus: str) -> None:
    code, taken = judged(world), specimens(world, picked)
    found = asked(code, world, taken, genus)
    if found.outcome is not Outcome.NAME:
        assert found.id is None
        return
    assert found.id is not None and found.name is not None
    verdict, entry = code.of_name(found.id), code.corpus.names[found.id]
    assert verdict is not None and verdict.validity is Validity.VALID
    assert verdict.legitimacy is not Legitimacy.ILLEGITIMATE and verdict.isonym_of is None
    assert (entry.rank, entry.name.genus) == ("species", genus)
    assert entry.group in {code.corpus.names[name].group for name in names_of(code, world, taken)}
    assert entry.name == found.name


@given(worlds, picks, genera)
@examples
def test_a_chain_ends_in_the_answer_and_names_what_is_barred(world: World, picked: set[int], genus: str) -> None:
    code, taken = judged(world), specimens(world, picked)
    found = asked(code, world, taken, genus)
    *_, last = found.steps
    if found.name is not None:
        words = format_name(found.name, authors=found.outcome is Outcome.NAME)
        assert words in last.text
    elif found.outcome is Outcome.UNDETERMINED:
        assert all(code.inquiry.called(name) in last.text for name in found.rivals)
    else:
        assert "a new name would be needed" in last.text
    for one in found.barred:
        assert any(one.epithet in step.text and one.reason in step.text for step in found.steps)
        assert one.article and one.key


@given(worlds)
@examples
def test_citations_are_read_as_they_are_written(world: World) -> None:
    for entry in judged(world).corpus.names.values():
        assert parse_name(format_name(entry.name)) == entry.name


@given(worlds)
@examples
def test_applied_twice_is_applied_once(world: World) -> None:
    once = applied(corpus_from(literature(world)))
    twice = applied(once.corpus)
    assert (twice.corpus.names, twice.autonyms) == (once.corpus.names, once.autonyms)
    assert outcomes(twice) == outcomes(once)
    for id_, one in once.acts.items():
        again = twice.acts[id_]
        assert (again.treated_as, again.basionym, again.replaced) == (one.treated_as, one.basionym, one.replaced)
        assert [ruling.key for ruling in again.rulings] == [ruling.key for ruling in one.rulings]


def test_rulings_cite_names_as_the_rules_do() -> None:
    """ICN Art. 49.1: the name in the way is (Vanb) Vanc, in the list of names and in the reason alike."""
    world = (
        Made(0, 1, 1801, "new taxon", "Exemplum", 0, 0),
        Made(1, 2, 1802, "new combination", "Novum", 0, 0, older=0),
        Made(2, 3, 1803, "new taxon", "Novum", 0, 1),
    )
    code = judged(world)
    [homonym] = code.acts["work-03.1"].bars()
    assert homonym.other is not None
    assert code.inquiry.called(homonym.other) == "Novum album (Vanab) Vanac"
    assert "Novum album (Vanab) Vanac" in homonym.reason


def test_a_new_type_under_the_epithet_that_ought_to_have_been_used() -> None:
    """ICN Art. 52.1: it takes in the type of Exemplum album, whose epithet was free in Novum until this very act."""
    world = (
        Made(0, 1, 1801, "new taxon", "Exemplum", 0, 0),
        Made(1, 2, 1802, "new taxon", "Novum", 0, 1, cites=(0,)),
    )
    assert judged(world).acts["work-02.1"].legitimacy is Legitimacy.ILLEGITIMATE


@given(worlds)
@examples
def test_homotypic_groups_are_those_of_the_specimens(world: World) -> None:
    """An equivalence: names share a group if and only if they rest on one specimen."""
    code, ids = judged(world), act_ids(world)
    group = {one.number: code.corpus.names[code.corpus.acts[ids[one.number]].name].group for one in world}
    for one in world:
        for other in world:
            assert (group[one.number] == group[other.number]) is (one.type == other.type)
    for id_, members in code.corpus.groups.items():
        assert id_ in members and all(code.corpus.names[name].group == id_ for name in members)


@given(worlds)
@examples
def test_only_names_have_a_legitimacy(world: World) -> None:
    """ICN Art. 6.3: what is not validly published is no name, and neither legitimate nor illegitimate."""
    for one in judged(world).acts.values():
        assert (one.validity is Validity.NOT_VALID) is (one.legitimacy is None)
        assert (one.validity is Validity.NOT_VALID) <= bool(one.bars())


@given(worlds)
@examples
def test_one_autonym_for_each_species_and_rank(world: World) -> None:
    """ICN Art. 26.3: made by the first valid name of that rank under a legitimate name, and of its date."""
    code, ids = judged(world), act_ids(world)
    wanted: dict[tuple[str, str], tuple[int, int]] = {}
    for one in world:
        act, verdict = code.corpus.acts[ids[one.number]], code.acts[ids[one.number]]
        above = code.inquiry.above(act)
        if one.lower is None or above is None or verdict.validity is not Validity.VALID:
            continue
        if verdict.isonym_of is not None:  # the name is there already, in whichever homonym of the species
            continue
        if code.inquiry.legitimacy_of(above) is not Legitimacy.ILLEGITIMATE:
            wanted.setdefault((above, one.rank), (one.year, one.number))
    assert {key: code.corpus.acts[made.act].work.year for key, made in code.autonyms.items()} == {
        key: year for key, (year, _) in wanted.items()
    }
    for (above, rank), made in code.autonyms.items():
        name = made.name
        assert (name.final_epithet, name.lower[-1].rank) == (code.corpus.names[above].name.species, rank)
        assert name.species_authors == code.corpus.names[above].name.authors and not name.authors


# A slow second answer


@given(worlds)
@examples
def test_legitimacy_against_a_slow_second_answer(world: World) -> None:
    """Art. 52.1, 52.4, 53.1, 53.3 read off each pair of acts, from what the engine says of all other acts."""
    code, ids = judged(world), act_ids(world)
    verdicts = {one.number: code.acts[ids[one.number]] for one in world}
    valid = {number: one.validity is not Validity.NOT_VALID for number, one in verdicts.items()}
    words = {Legitimacy.LEGITIMATE: True, Legitimacy.ILLEGITIMATE: False, Legitimacy.UNDETERMINED: None}
    others = {number: words[one.legitimacy] for number, one in verdicts.items() if one.legitimacy is not None}
    for one in world:
        if valid[one.number] and not adopts_one_of_several(world, valid, others, one):
            assert others[one.number] is slow_legitimacy(world, valid, others, one)


def adopts_one_of_several(world: World, valid: dict[int, bool], legitimate: dict[int, bool | None], one: Made) -> bool:
    """Whether the author took up one of several epithets of one date: free to do so, as the next test has it."""
    first = earliest_free(world, valid, legitimate, one)
    return len(first) > 1 and any((other.final, other.type) == (one.final, one.type) for other in first)


def test_any_of_several_names_of_one_date_may_be_adopted() -> None:
    """ICN Art. 11.5, 52.1: neither alba nor longa has priority, so that Novum longum is not superfluous."""
    world = (
        Made(0, 1, 1801, "new taxon", "Altera", 0, 0),
        Made(1, 1, 1801, "new taxon", "Altera", 1, 1),
        Made(2, 2, 1802, "new combination", "Novum", 1, 1, older=1, cites=(0,)),
    )
    assert not judged(world).acts["work-02.1"].superfluous


def test_a_combination_on_a_designation_changes_no_other_verdict() -> None:
    """ICN Art. 52.1: Altera vanei of 1804 is superfluous, whether or not somebody had built on the designation."""
    nude = Made(0, 1, 1801, "new taxon", "Altera", 3, 0, described=False)
    older = (Made(1, 2, 1803, "new taxon", "Novum", 2, 0), Made(2, 3, 1804, "new taxon", "Altera", 3, 0))
    assert judged((nude, *older)).acts["work-03.1"].legitimacy is Legitimacy.ILLEGITIMATE
    built_on = Made(3, 4, 1802, "new combination", "Exemplum", 3, 0, older=0, described=False)
    assert judged((nude, *older, built_on)).acts["work-03.1"].legitimacy is Legitimacy.ILLEGITIMATE


def slow_legitimacy(world: World, valid: dict[int, bool], legitimate: dict[int, bool | None], one: Made) -> bool | None:
    """True, False, or None where the year does not tell which came first."""
    names = [other for other in first_names(world, valid) if other.number != one.number]
    same = [other for other in first_names(world, valid) if (other.words, other.type) == (one.words, one.type)]
    if same[0].number != one.number:
        return legitimate[same[0].number]  # an isonym has the standing of its name
    alike = [other for other in names if are_alike(other, one) and other.type != one.type]
    if any(other.year < one.year for other in alike) or is_superfluous(world, names, valid, legitimate, one):
        return False
    return None if any(other.year == one.year and other.work != one.work for other in alike) else True


def first_names(world: World, valid: dict[int, bool]) -> list[Made]:
    """The first valid act of each name: words on a type."""
    found: dict[tuple[str, int], Made] = {}
    for one in world:
        if valid[one.number]:
            found.setdefault((one.words, one.type), one)
    return list(found.values())


def are_alike(one: Made, other: Made) -> bool:
    """Homonyms if on two types: of one species whatever the rank, of one genus at the rank of species."""
    if bool(one.lower) != bool(other.lower) or one.genus != other.genus:
        return False
    return one.final == other.final and (one.lower is None or one.epithet == other.epithet)


def is_superfluous(
    world: World, names: Sequence[Made], valid: dict[int, bool], legitimate: dict[int, bool | None], one: Made
) -> bool:
    """Whether it took in the type of a name whose epithet was older at its rank, and free; not where a legitimate
    basionym rescues it (52.4)."""
    first = earliest_free(world, valid, legitimate, one)[:1]
    own = (one.final, one.type)
    adopted = any((other.final, other.type) == own or other.words == one.words for other in first)
    return bool(first) and not adopted and not rescued(world, valid, legitimate, one)


def earliest_free(world: World, valid: dict[int, bool], legitimate: dict[int, bool | None], one: Made) -> list[Made]:
    """The earliest names with an epithet that was free for an act to use, of its rank and on a type it took in."""
    names = [other for other in first_names(world, valid) if other.number != one.number]
    included = {one.type, *(world[number].type for number in one.cites)}
    older = [other for other in names if other.rank == one.rank and other.type in included]
    older = [other for other in older if legitimate.get(other.number, False) is not False]
    lines: dict[tuple[int, int], Made] = {}
    for other in sorted(older, key=lambda made: made.year):
        lines.setdefault((other.final, other.type), other)
    free = [other for other in lines.values() if other.year < one.year and is_free(names, one, other)]
    return [other for other in free if other.year == free[0].year]


def is_free(names: Sequence[Made], one: Made, other: Made) -> bool:
    """Whether the epithet of `other` could have been used in the place of `one` when that was published."""
    if one.lower is not None and other.final == one.epithet:
        # it would have repeated the epithet of the species (27.1), or been the autonym
        return any(
            sp.words.split()[:2] == one.words.split()[:2] and sp.type == other.type and not sp.lower for sp in names
        )
    there = replace(one, epithet=other.final) if one.lower is None else replace(one, lower=(one.rank, other.final))
    alike = [like for like in names if are_alike(like, there)]
    made = [like.year for like in alike if like.type == other.type and like.year < one.year]
    rivals = [like for like in alike if like.type != other.type]
    if made:  # the combination was there: only what was earlier still stood in its way
        return not any(like.year < min(made) for like in rivals)
    return not any(like.work == one.work or like.year < one.year for like in rivals)


def rescued(world: World, valid: dict[int, bool], legitimate: dict[int, bool | None], one: Made) -> bool:
    """Whether a combination rests on a legitimate name: one that stands by itself as what it rests on is not."""
    if one.kind not in ("new combination", "change of rank") or one.older is None:
        return False
    there = (world[one.older].words, one.type)
    first = next((made for made in first_names(world, valid) if (made.words, made.type) == there), None)
    return first is not None and first.year <= one.year and legitimate.get(first.number) is not False


@given(worlds, picks, genera)
@settings(deadline=None, max_examples=100)
def test_the_correct_name_against_a_slow_second_answer(world: World, picked: set[int], genus: str) -> None:
    """Section 7 of the rules as one reads them, on what the engine says of validity and legitimacy."""
    code, taken = judged(world), specimens(world, picked)
    found = asked(code, world, taken, genus)
    outcome, words = slow_correct_name(code, world, taken, genus)
    assert str(found.outcome) == outcome
    if words:
        assert found.name is not None and format_name(found.name, authors=False) == words


def test_no_combination_is_advised_that_is_there_and_illegitimate() -> None:
    """ICN Art. 6.3 Note 2, 58.1: Exemplum album is superfluous; to combine Novum album, described later on that type,
    in Exemplum would make the same name on the same type again, so that only a new name is left."""
    world = (
        Made(0, 1, 1801, "new taxon", "Exemplum", 2, 0),
        Made(1, 2, 1802, "new taxon", "Exemplum", 0, 1, cites=(0,)),
        Made(2, 3, 1803, "new taxon", "Novum", 0, 1),
    )
    code = judged(world)
    found = correct_name(code, Taxon(names_of(code, world, {1}), "species", "Exemplum"))
    assert found.outcome is Outcome.NAME_NEEDED


def slow_correct_name(code: Code, world: World, taken: set[int], genus: str) -> tuple[str, str]:
    """The outcome, and the words of the name there is or would be needed."""
    ids = act_ids(world)
    verdicts = {one.number: code.acts[ids[one.number]] for one in world}
    valid = {number: one.validity is not Validity.NOT_VALID for number, one in verdicts.items()}
    names = [one for one in first_names(world, valid) if one.rank == "species"]
    bad = {one.number for one in names if verdicts[one.number].legitimacy is Legitimacy.ILLEGITIMATE}
    lines: dict[tuple[int, int], Made] = {}
    for one in sorted(names, key=lambda made: made.year):
        if one.type in taken and one.number not in bad:
            lines.setdefault((one.final, one.type), one)
    free = []
    for (epithet, type_), first in lines.items():
        made = [one for one in names if (one.genus, one.final, one.type) == (genus, epithet, type_)]
        made.sort(key=lambda one: one.number in bad)
        rivals = [one for one in names if (one.genus, one.final) == (genus, epithet) and one.type != type_]
        if made and (made[0].number in bad or any(one.year < made[0].year for one in rivals)):
            continue
        if not made and rivals:
            continue
        free.append((first.year, f"{genus} {EPITHETS[epithet][genus == 'Altera']}", bool(made)))
    if not free:
        low = [one for one in first_names(world, valid) if one.type in taken and one.lower]
        low = [one for one in low if fits(code, verdicts, one, names, genus)]
        return ("new combination needed", "") if low else ("new name needed", "")
    year, words, there = free[0]
    if sum(one[0] == year for one in free) > 1:
        return "undetermined", ""
    return ("name" if there else "new combination needed"), words


def fits(code: Code, verdicts: dict[int, Judgement], one: Made, names: Sequence[Made], genus: str) -> bool:
    """Whether the epithet of an infraspecific name could be raised in the genus: nothing like it is there."""
    verdict = verdicts[one.number]
    legitimate = verdict.legitimacy is not Legitimacy.ILLEGITIMATE
    return legitimate and not any((made.genus, made.final) == (genus, one.final) for made in names)


def test_the_worlds_hold_what_the_laws_are_about() -> None:
    """No law holds for want of cases: among many worlds all verdicts and kinds of answer occur."""
    chance, seen = random.Random(7), set()
    for _ in range(150):
        world = random_world(chance)
        code = judged(world)
        seen |= {str(one.validity) for one in code.acts.values()} | {str(one.legitimacy) for one in code.acts.values()}
        seen |= {ruling.key for one in code.acts.values() for ruling in one.rulings}
        names = names_of(code, world, {0, 1})
        if names:
            found = correct_name(code, Taxon(names, "species", chance.choice(GENERA)))
            seen |= {str(found.outcome)} | {one.key for one in found.barred}
    assert seen >= {
        "validly published", "not validly published", "legitimate", "illegitimate", "undetermined", "later-homonym",
        "superfluous", "superfluous-yet-legitimate", "name", "new combination needed", "new name needed", "homonym",
        "basionym-not-valid", "basionym-illegitimate", "nomen-nudum",
    }  # fmt: skip


def random_world(chance: random.Random) -> World:
    def one() -> tuple[object, ...]:
        cites = tuple(chance.randint(0, 30) for _ in range(chance.randint(0, 2)))
        picked = (chance.randint(0, top) for top in (6, 2, 3, 3, 1, 3, 30))
        return (*picked, cites, chance.random() < 0.8, chance.randint(0, 3))

    return built(one() for _ in range(12))  # type: ignore[misc]
