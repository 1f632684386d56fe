"""Words for plant structures: what they name, in any number and case.

Latin forms: the declensions of Stearn, Botanical Latin (from memory); words of the other languages: common practice.
"""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from auctorum.characters.prose import organ_words
from auctorum.characters.prose.english_nouns import plurals
from auctorum.characters.prose.entries import entries
from auctorum.characters.prose.organs import COMPOUNDS, LONGEST_COMPOUND, Organ, organ_of, place_of, singular
from auctorum.characters.tokens import folded

ENGLISH = [
    *organ_words.PLAIN.split(),
    *organ_words.PARTS.split(),
    *organ_words.PLANT.split(),
    *organ_words.HABITAT.split(),
    *(word for _, words in entries(organ_words.SYNONYMS) for word in words),
]

# language: the name, and words for it as printed
NAMED = {
    "English": "leaf: leaf leaves lvs foliage|tooth: teeth|phyllary: phyllaries|perigynium: perigynia|hair: tomentum "
    "indumentum hairs|vein: nerves|midrib: midvein midnerve costa|margin: edges|disc: disk|locule: cells locule "
    "loculi|"
    "flower: fls blossoms|achene: akenes|blade: laminae|fall: falls|awn: awns|pseudobulb: pseudobulbs",
    "Latin": "leaf: folia foliis|lobe: laciniae lobis|standard: vexillum|throat: fauce|carpel: carpidia|"
    "floret: flosculi|wing: alae|keel: carina|"
    "spur: calcar calcaria|peduncle: pedunculi|bract: bracteis|surface: pagina|seed: semina|"
    "margin: marginibus|fruit: fructibus|horn: cornua|awn: aristae|berry: baccae|beak: rostro|flower: florum",
    "Spanish": "leaf: hojas|stem: tallo|rib: costillas|blade: láminas|bud: botones|root: raíces|calyx: cáliz cálices|"
    "lower surface: envés|stamen: estambres|achene: aquenios|tooth: dientes|tendril: zarcillos|sheath: vainas",
    "Portuguese": "leaf: folhas|stamen: estames|margin: margens|bud: botões|berry: bagas|vein: nervuras|sheath: bainha|"
    "stolon: estolões|sepal: sépalas|style: estilete|inflorescence: inflorescências",
    "French": "leaf: feuilles|blade: limbe|branchlet: rameaux|fruit: fruits|ovary: ovaire|pod: gousses|node: nœuds|"
    "stem: tiges|achene: akènes|spike: épis|awn: arêtes|stamen: étamines|petiole: pétiole",
    "German": "leaf: Blatt Blätter Blättern Blaetter|corolla: Krone|corolla lobe: Kronzipfel|leaf margin: Blattrand|"
    "stamen: "
    "Staubblätter|branch: Ästen|stem: Stängel Stengel|leaf blade: Blattspreite|blade: Spreite|nutlet: Nüßchen Nüsschen|"
    "lower leaf surface: Blattunterseite|ray floret: Zungenblüten|calyx tooth: Kelchzähne|filament: Staubfäden",
    "Italian": "leaf: foglie|branch: rami|awn: reste|flower: fiori|leaf: foglia|achene: acheni",
    "growth form": "plant: trees shrub herba frutices arbor hierba árbol Baum Sträucher Kraut plante annuals suffrutex "
    "lianas mats erva arbuste",
    "place of growth": "habitat: woodland woods prairies cliffs rupibus silvis pratis bosques floresta forêts Wiesen "
    "bogs dunes páramo",
}
PARTS = "lobe tube tooth rib midrib spot margin apex claw limb blade axis keel series"
COUNTED = "leaf flower seed leaflet nutlet locule spine bract culm scale lip spur"
ROWS = [
    pytest.param(word, line.partition(":")[0].strip(), id=f"{language}-{word}")
    for language, text in NAMED.items()
    for line in text.split("|")
    for word in line.partition(":")[2].split()
]


@pytest.mark.parametrize(("word", "name"), ROWS)
def test_a_word_names_its_organ(word: str, name: str) -> None:
    organ = organ_of(folded(word))
    assert organ is not None
    assert organ.name == name


@pytest.mark.parametrize("word", PARTS.split())
def test_parts_take_the_name_of_their_whole(word: str) -> None:
    assert organ_of(word) == Organ(word, part=True)


@pytest.mark.parametrize("word", COUNTED.split())
def test_organs_that_are_counted_alone_are_no_parts(word: str) -> None:
    assert organ_of(word) == Organ(word)


def test_a_side_of_an_unnamed_organ_is_a_part_and_of_a_named_one_is_not() -> None:
    assert organ_of("unterseite") == Organ("lower surface", part=True)
    assert organ_of("blattunterseite") == Organ("lower leaf surface")


@pytest.mark.parametrize("word", ["tree", "woodland"])
def test_growth_forms_and_places_of_growth_are_subjects(word: str) -> None:
    organ = organ_of(word)
    assert organ is not None
    assert organ.subject
    assert not organ.part


OTHER_WORDS = """wide long tall mature young old second present stalked  green and the with when foot feet
line lines inch linea lineis uncia pes pede imo circiter una unas los las dos no
nos pelo con bajo der die das ein mit les des
pres cote width length angle may juli spring half third dry flowering fruiting broad latus lata longis solum via"""


@pytest.mark.parametrize("word", OTHER_WORDS.split())
def test_words_that_are_mostly_something_else_name_nothing(word: str) -> None:
    assert organ_of(word) is None


@pytest.mark.parametrize("word", ENGLISH)
def test_every_english_plural_names_what_its_singular_names(word: str) -> None:
    assert singular(word) == word
    for form in plurals(word):
        assert organ_of(form) == organ_of(singular(form))
    assert organ_of(word) is not None


SINGULARS = """
perigynia perigynium phyllaries phyllary teeth tooth leaves leaf bases base apices apex calyces calyx
stigmata stigma pinnae pinna nuclei nucleus falls fall glochids glochid axes axis branches branch pappus pappus
axis axis corpus corpus villous villous glumes glume cortices cortex spadices spadix appendices appendix stamina stamen
grasses grass series series
rachises rachis berries berry valves valve thyrses thyrse involucres involucre ovaries ovary
caudices caudex samaras samara septa septum indusia indusium corollas corolla lamina lamina laciniae lacinia
radii radius
quaxities quaxity blibules blibule zonellae zonella
"""


PAIRS = list(zip(SINGULARS.split()[::2], SINGULARS.split()[1::2], strict=True))


@pytest.mark.parametrize(("word", "one"), PAIRS)
def test_singular(word: str, one: str) -> None:
    assert singular(word) == one


@given(st.text(alphabet="abcdeimnorstuxyz", max_size=12))
@settings(deadline=None, max_examples=200)
def test_singular_takes_any_word(word: str) -> None:
    assert organ_of(word) is None or isinstance(organ_of(word), Organ)
    assert singular(singular(word)) is not None


# nominative singular to ablative plural, vocative left out
DECLENSIONS = {
    "corolla": "corolla corollae corollam corollarum corollis corollas",
    "petal": "petalum petali petalo petala petalorum petalis",
    "style": "stylus styli stylo stylum stylorum stylis stylos",
    "flower": "flos floris flori florem flore flores florum floribus",
    "stem": "caulis cauli caulem caule caules caulium caulibus",
    "tooth": "dens dentis denti dentem dente dentes dentium dentibus",
    "seed": "semen seminis semini semine semina seminum seminibus",
    "fruit": "fructus fructui fructum fructu fructuum fructibus",
    "apex": "apex apicis apici apicem apice apices apicum apicibus",
    "stigma": "stigma stigmatis stigmati stigmate stigmata stigmatum",
    "root": "radix radicis radici radicem radice radices radicum radicibus",
    "body": "corpus corporis corpori corpore corpora corporum corporibus",
    "surface": "facies faciei faciem facie facierum faciebus",
    "horn": "cornu cornus cornua cornuum cornibus",
}


@pytest.mark.parametrize(("name", "forms"), DECLENSIONS.items(), ids=list(DECLENSIONS))
def test_latin_nouns_in_all_cases(name: str, forms: str) -> None:
    assert {organ.name if (organ := organ_of(form)) else form for form in forms.split()} == {name}


PLACES = {
    "lower": "lower inferior inferiora inferioribus inferius inferiores inferieures untere unteren",
    "upper": "superiora superioribus superiores superieur obere",
    "basal": "basalia basilaribus radicalia radicalibus basales basais basaux grundstandige",
    "cauline": "cauline caulina caulinis caulinares caulinaires stangelstandigen",
    "outer": "outer exteriora externis externas externes ausseren aussere",
    "inner": "interiora internis interieurs inneren",
    "disc": "disc disk",
    "terminal": "terminalis terminales terminais terminaux endstandige",
    "male": "male masculi masculis mannlichen masculinas",
    "lateral": "lateral laterales laterais lateraux lateralibus",
    "fertile": "fertile fertilia fertilibus fertiles",
}


@pytest.mark.parametrize(("place", "words"), PLACES.items(), ids=list(PLACES))
def test_places(place: str, words: str) -> None:
    assert {place_of(word) for word in words.split()} == {place}


@pytest.mark.parametrize("word", ["wide", "leaf", "green", "flowering", "imo", "longis", "una"])
def test_other_words_are_no_place(word: str) -> None:
    assert place_of(word) is None


PHRASES = {
    "leaf stalk": "petiole",
    "flower stalks": "pedicel",
    "ray flowers": "ray floret",
    "disk flowers": "disc floret",
    "mid vein": "midrib",
    "seed coat": "seed coat",
    "laciniae calycinae": "calyx lobe",
    "laciniis calycinis": "calyx lobe",
    "calycis lobi": "calyx lobe",
    "tubo corollae": "corolla tube",
    "nervo medio": "midrib",
    "flores radii": "ray floret",
    "nervure mediane": "midrib",
    "nervio central": "midrib",
    "tubo da corola": "corolla tube",
    "tubo de la corola": "corolla tube",
    "dents du calice": "calyx tooth",
}


@pytest.mark.parametrize(("phrase", "name"), PHRASES.items(), ids=list(PHRASES))
def test_names_of_several_words(phrase: str, name: str) -> None:
    assert COMPOUNDS[tuple(phrase.split())] == name


def test_compounds_are_of_two_words_and_more() -> None:
    assert {len(words) for words in COMPOUNDS} == set(range(2, LONGEST_COMPOUND + 1))
    assert all(word == folded(word) for words in COMPOUNDS for word in words)
