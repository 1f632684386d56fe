"""Epithets in agreement with their genus: ICN Art. 23.5, 24.2, 32.2; other forms from Latin grammar (memory)."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from auctorum.names.agreement import EpithetKind, agreeing, declined, singular, without_cola
from auctorum.names.fold import same_epithet
from auctorum.names.gender import Gender

M, F, N = Gender.MASCULINE, Gender.FEMININE, Gender.NEUTER
ADJECTIVE, NOUN, PLURAL = EpithetKind.ADJECTIVE, EpithetKind.NOUN, EpithetKind.PLURAL_NOUN

# Masculine, feminine and neuter.
DECLENSIONS = [
    pytest.param("niger nigra nigrum", id="23.5-ex-helleborus-brassica-verbascum"),
    pytest.param("cantabricus cantabrica cantabricum", id="23.5-ex-rumex-daboecia"),
    pytest.param("major major majus", id="23.5-ex-vinca-tropaeolum"),
    pytest.param("mollis mollis molle", id="23.5-ex-bromus-geranium"),
    pytest.param("trifoliatus trifoliata trifoliatum", id="23.5-ex-acanthopanax"),
    pytest.param("latisiliquus latisiliqua latisiliquum", id="23.5-ex-lysiloma"),
    pytest.param("salpoensis salpoensis salpoense", id="33.1-ex-3-passiflora"),
    pytest.param("ruber rubra rubrum", id="ruber"),
    pytest.param("atroruber atrorubra atrorubrum", id="compound-of-ruber"),
    pytest.param("pulcher pulchra pulchrum", id="pulcher"),
    pytest.param("integer integra integrum", id="integer-loses-its-e-though-it-ends-in-ger"),
    pytest.param("ater atra atrum", id="ater"),
    pytest.param("asper aspera asperum", id="asper"),
    pytest.param("tener tenera tenerum", id="tener"),
    pytest.param("florifer florifera floriferum", id="fer"),
    pytest.param("setiger setigera setigerum", id="ger"),
    pytest.param("durus dura durum", id="us-before-r"),
    pytest.param("clarus clara clarum", id="arum-is-no-genitive-here"),
    pytest.param("verus vera verum", id="era-of-us"),
    pytest.param("minor minor minus", id="minor"),
    pytest.param("elatior elatior elatius", id="comparative"),
    pytest.param("trinervius trinervia trinervium", id="ius-is-no-comparative-here"),
    pytest.param("crispus crispa crispum", id="latin-pus"),
    pytest.param("heteropus heteropus heteropus", id="greek-pus"),
    pytest.param("pteroides pteroides pteroides", id="oides"),
    pytest.param("repens repens repens", id="participle-ens"),
    pytest.param("fragrans fragrans fragrans", id="participle-ans"),
    pytest.param("simplex simplex simplex", id="x"),
    pytest.param("anceps anceps anceps", id="ceps"),
    pytest.param("bicolor bicolor bicolor", id="color"),
    pytest.param("polyanthemos polyanthemos polyanthemon", id="greek-os"),
]


@pytest.mark.parametrize("forms", DECLENSIONS)
def test_every_form_gives_every_other(forms: str) -> None:
    three = forms.split()
    for form in three:
        assert [declined(form, gender) for gender in (M, F, N)] == three


@pytest.mark.parametrize(
    ("printed", "forms"),
    [
        # The masculine of the third declension in -er has a form of its own; -estris stands for it, too.
        pytest.param("acer", "acer acris acre", id="acer"),
        pytest.param("campester", "campester campestris campestre", id="campester"),
        pytest.param("campestris", "campestris campestris campestre", id="campestris"),
        pytest.param("sylvestre", "sylvestris sylvestris sylvestre", id="sylvestre"),
    ],
)
def test_third_declension_in_er(printed: str, forms: str) -> None:
    assert [declined(printed, gender) for gender in (M, F, N)] == forms.split()


@pytest.mark.parametrize(
    ("epithet", "declension", "gender", "form"),
    [
        pytest.param("niger", "niger/nigra/nigrum", N, "nigrum", id="three-forms"),
        pytest.param("molle", "mollis/molle", M, "mollis", id="two-forms"),
        pytest.param("felix", "felix", N, "felix", id="one-form"),
        pytest.param("scaber", "scaber, scabra, scabrum", F, "scabra", id="commas"),
        pytest.param("celer", "celer/celeris/celere", N, "celere", id="not-by-its-ending"),
        pytest.param("alba", "niger/nigra/nigrum", N, "album", id="declension-of-another-word"),
    ],
)
def test_stated_declension(epithet: str, declension: str, gender: Gender, form: str) -> None:
    assert declined(epithet, gender, declension) == form


@pytest.mark.parametrize("epithet", ["smithii", "celer", "rosae", "us", "salicu", ""])
def test_no_adjective_by_its_look(epithet: str) -> None:
    assert declined(epithet, F) is None


@pytest.mark.parametrize(
    ("epithet", "gender", "kind", "noun", "form"),
    [
        pytest.param("amnicolus", M, NOUN, "amnicola", "amnicola", id="23.5-ex-rubus-amnicola"),
        pytest.param("amnicolum", N, NOUN, "", "amnicola", id="cola-without-its-noun-recorded"),
        pytest.param("amnicolum", N, ADJECTIVE, "", "amnicola", id="cola-is-no-adjective"),
        pytest.param("caricola", N, ADJECTIVE, "", "caricola", id="cola-stays"),
        pytest.param("cantabrica", M, NOUN, "", "cantabrica", id="23.5-ex-convolvulus-cantabrica"),
        pytest.param("pneumonanthe", F, NOUN, "", "pneumonanthe", id="23.5-ex-gentiana-pneumonanthe"),
        pytest.param("salicaria", N, NOUN, "", "salicaria", id="23.5-ex-lythrum-salicaria"),
        pytest.param("tulipifera", N, NOUN, "", "tulipifera", id="23.5-ex-liriodendron-tulipifera"),
        pytest.param("molle", M, NOUN, "", "molle", id="23.5-ex-schinus-molle"),
        pytest.param("segetum", F, NOUN, "", "segetum", id="genitive-plural"),
        pytest.param("Chamaecristae", F, PLURAL, "", "Chamaecrista", id="32.2-ex-1"),
        pytest.param("Fictones", F, PLURAL, "Ficto", "Ficto", id="third-declension-by-its-noun"),
        pytest.param("fictu", F, ADJECTIVE, "", "fictu", id="unknown-adjective-stays"),
    ],
)
def test_agreeing(epithet: str, gender: Gender, kind: EpithetKind, noun: str, form: str) -> None:
    assert agreeing(epithet, gender, kind, noun) == form


def test_only_a_linked_colus_is_cola() -> None:
    assert (without_cola("arboricolus"), without_cola("luteolus"), without_cola("caulocolus")) == ("arboricola", "", "")


def test_singular_keeps_what_is_none() -> None:
    assert [singular(noun) for noun in ("Ficti", "Fictus", "Ae", "Fictones")] == ["Fictus", "Fictus", "Ae", "Fictones"]


ENDINGS = "us a um is e er ra rum era erum ior ius os on ens x oides or ae"
WORDS = st.builds(
    str.__add__,
    st.text("abcdefilmnoprstu", min_size=1, max_size=7),
    st.sampled_from(ENDINGS.split()),
)


@given(WORDS, st.sampled_from(Gender), st.sampled_from(Gender))
@settings(deadline=None, max_examples=200)
def test_the_way_does_not_matter(epithet: str, first: Gender, second: Gender) -> None:
    """By way of the neuter to any gender and back: after one form of an adjective, its others follow."""
    through = declined(epithet, N)
    if through is None:
        return
    there = declined(through, first)
    assert there is not None
    assert declined(there, N) == through
    assert declined(declined(there, second) or "", first) == there or there.endswith("er")


@given(WORDS, st.sampled_from(Gender))
@settings(deadline=None, max_examples=200)
def test_declining_never_leaves_the_word(epithet: str, gender: Gender) -> None:
    form = declined(epithet, gender)
    assert form is None or form[0] == epithet[0]
    assert form is None or declined(form, gender) == form


@pytest.mark.parametrize("forms", DECLENSIONS)
def test_folding_takes_all_forms_for_one(forms: str) -> None:
    masculine, feminine, neuter = forms.split()
    assert same_epithet(masculine, feminine)
    assert same_epithet(feminine, neuter)
