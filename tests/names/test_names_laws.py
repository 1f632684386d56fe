"""Laws of reading and writing names, over generated names with invented words and authors."""

from __future__ import annotations

import re
from dataclasses import replace
from itertools import pairwise

from hypothesis import given, settings
from hypothesis import strategies as st

from auctorum.names.format import format_authors, format_name, parts, slug, words
from auctorum.names.lexicon import NOT_EPITHETS, PARTICLES
from auctorum.names.name import NO_AUTHORS, Authors, Credit, Name, Ranked, Team, UnreadableName
from auctorum.names.parse import parse, parse_authors, parse_name
from auctorum.names.ranks import GENUS, RANKS, SPECIES, UNRANKED, read_term

FEW = settings(deadline=None, max_examples=150)
BELOW = [rank.name for rank in RANKS if rank > SPECIES and rank is not UNRANKED]
DIVISIONS = [rank.name for rank in RANKS if GENUS < rank < SPECIES]

SYLLABLES = "al bo cre di fu gno hy ka lo mi në pha quo ri sœ tu va xi zü"
syllables = st.sampled_from(SYLLABLES.split())
stems = st.lists(syllables, min_size=2, max_size=4).map("".join)
genera = stems.map(lambda stem: stem.capitalize() + "um")
plain_epithets = st.builds(str.__add__, stems, st.sampled_from(["us", "a", "um", "is", "ii", "ensis", "ax", "oides"]))
hyphened = st.builds("{}-{}".format, stems, plain_epithets)
epithets = st.one_of(plain_epithets, plain_epithets, hyphened).filter(
    lambda word: word not in NOT_EPITHETS | PARTICLES and read_term(word) is None
)
surnames = st.sampled_from(
    ["Orrin", "Veldt", "Marsh", "L.", "Wy.", "O'Dell", "d'Orr", "McWynd", "Pá.-Sö.", "Vel-Tör", "Øst", "'t Wyl", "DX."]
)
initials = st.sampled_from(["", "", "A. ", "B. C. ", "Ph. ", "D.-E. "])
particles = st.sampled_from(["", "", "", "de ", "van der ", "von ", "v. "])
suffixes = st.sampled_from(["", "", "", " f.", " fil.", " Jr."])
persons = st.builds("{}{}{}{}".format, initials, particles, surnames, suffixes)
teams = st.builds(Team, st.lists(persons, min_size=1, max_size=4).map(tuple), st.booleans())
maybe_teams = st.one_of(st.just(Team()), st.just(Team()), teams)
credits_ = st.builds(Credit, teams, maybe_teams, maybe_teams)
authors = st.builds(Authors, st.one_of(st.just(Credit()), credits_), credits_)
maybe_authors = st.one_of(st.just(NO_AUTHORS), authors)


@st.composite
def names_at_species(draw: st.DrawFn) -> Name:
    """A species name, with a division in parentheses now and then."""
    divisions = draw(st.lists(st.builds(Ranked, st.sampled_from(DIVISIONS), genera, st.booleans()), max_size=2))
    return Name(
        draw(genera),
        draw(epithets),
        (),
        tuple(divisions),
        draw(st.booleans()),
        draw(st.booleans()),
        draw(maybe_authors),
    )


@st.composite
def names_below(draw: st.DrawFn) -> Name:
    """A name with one to three ranks below species, each with authors or without; an autonym now and then."""
    species = draw(names_at_species())
    lower = draw(
        st.lists(
            st.builds(Ranked, st.sampled_from([*BELOW, "unranked"]), epithets, st.booleans(), maybe_authors),
            min_size=1,
            max_size=3,
        )
    )
    autonym = draw(st.integers(0, 3)) == 0
    last = replace(lower[-1], authors=NO_AUTHORS)
    lower[-1] = replace(last, epithet=species.species) if autonym else last
    name = replace(species, lower=tuple(lower), species_authors=draw(maybe_authors))
    return replace(name, authors=NO_AUTHORS) if name.is_autonym else name


@st.composite
def names_of_divisions(draw: st.DrawFn) -> Name:
    """A genus, or a division of it, with authors at either place."""
    ranks = st.sampled_from([*DIVISIONS, "unranked"])
    divisions = draw(st.lists(st.builds(Ranked, ranks, genera, st.booleans(), maybe_authors), max_size=3))
    if not divisions:
        return Name(draw(genera), genus_hybrid=draw(st.booleans()), authors=draw(maybe_authors))
    divisions[-1] = replace(divisions[-1], authors=NO_AUTHORS)
    name = Name(draw(genera), divisions=tuple(divisions), species_authors=draw(maybe_authors))
    return replace(name, authors=NO_AUTHORS if name.is_autonym else draw(maybe_authors))


names = st.one_of(names_at_species(), names_below(), names_of_divisions())


@FEW
@given(names)
def test_a_name_written_is_read_as_it_was(name: Name) -> None:
    usage = parse(format_name(name))
    assert usage.name == name
    assert (usage.remainder, usage.qualifiers, usage.sense, usage.notes) == ("", (), "", "")


@FEW
@given(authors)
def test_authors_written_are_read_as_they_were(citation: Authors) -> None:
    assert parse_authors(format_authors(citation)) == citation


@FEW
@given(names)
def test_runs_make_the_text_and_alternate(name: Name) -> None:
    runs = parts(name)
    assert "".join(text for text, _ in runs) == format_name(name)
    assert all(one[1] != following[1] for one, following in pairwise(runs))


@FEW
@given(names)
def test_the_key_of_a_name_is_a_name_with_that_key(name: Name) -> None:
    again = parse_name(words(name))
    assert words(again) == words(name)
    assert slug(again) == slug(name)
    assert again.final_epithet == name.final_epithet


@FEW
@given(names)
def test_capitals_make_no_difference_to_the_words(name: Name) -> None:
    bare = replace(name.bare, genus_hybrid=False, species_hybrid=False, divisions=())
    # In capitals `F.` could be an initial.
    assert parse_name(format_name(bare).replace("f. ", "forma ").upper()) == bare


PIECES = (
    "Exemplum album longum Calcaria Orrin Veldt L. f. var. ssp. sect. ( ) [ ] [unranked] × x X & et ex in , ; : ' \" ? "
    "cf. aff. agg. auct. non sensu s. l. str. nom. nud. pro sp. spp. β proles de van 1911 12–34 'Snow' d'Orr al. "
    "EXEMPLUM Album Var. nov. hort. emend. p. p. from † * + ex. in. Ærøum no. § é."
)


@FEW
@given(st.lists(st.sampled_from(PIECES.split()), max_size=14).map(lambda pieces: " ".join(["Exemplum", *pieces])))
def test_no_word_is_lost_and_writing_settles(text: str) -> None:
    usage = parse(text)
    written = format_name(usage.name)
    kept = " ".join([written, usage.sense, usage.notes, usage.remainder, *(word for word, _ in usage.qualifiers)])
    assert _weighed(kept) == _weighed(text)
    assert format_name(parse(written).name) == written


def _weighed(text: str) -> list[str]:
    """The words and numbers of a text in small letters and in order of the alphabet, without connecting ones."""
    found = re.findall(r"[^\W_]+", text.replace("×", " x ").lower())
    return sorted(word for word in found if read_term(word) is None and word not in ("x", "et", "al", "f"))


@FEW
@given(st.one_of(st.text(max_size=60), st.text("aeELbX×xß . éÆ'()&,f?", max_size=30)))
def test_any_text_is_read_or_refused(text: str) -> None:
    try:
        usage = parse(text)
    except UnreadableName as error:
        assert error.text == text and error.why
        return
    written = format_name(usage.name)
    assert format_name(parse(written).name) == written
