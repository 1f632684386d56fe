"""The lexicon of descriptive terms.

Latin forms: W. T. Stearn, Botanical Latin (declensions and the chapter on colour), from memory. Words of the modern
languages: usage of floras, from memory; common practice, no source.
"""

import pytest

from auctorum.characters.prose import foreign_terms, term_words
from auctorum.characters.prose.terms import TINTS, degree_of, formed_term, latin_first, term_of
from auctorum.characters.tokens import folded

# Names of states in the labelled phrases of the conventions of reading, a piece a word.
STATES = {
    "shape": "acuminate,acute,broadly ovate,caudate,circular,cordate,crenate,crenate-dentate,cuneate,elliptic,entire,"
    "filiform,hastate,hooked,lanceolate,linear-oblong,narrowly ovate,oblanceolate,oblong,oblong-obovate,obovate-oblong,"
    "obovate-lanceolate,obtuse,orbicular,ovate,ovate-oblong,pyriform,rounded,slender,slightly wavy,strongly toothed,"
    "subrounded",
    "surface": "almost glabrous,bearded,completely glabrous,densely pubescent,downy,eglandular,glabrate,glabrous,"
    "glandular,glaucous,pilose,pruinose,pubescent,shortly glandular-hairy,slightly cottony,softly downy,sulcate,"
    "tomentose,villous",
    "colour": "ashy,blackish brown,blue,blue-purple,bright red,bright sulphur-yellow,bright yellow,brown,brownish,"
    "chestnut-brown,cinnamon,cream,crimson,dark,dark brown,dark purple,deep pink,deep red,dull yellow,green,grey,"
    "greyish,lavender,lemon-yellow,lighter,orange,pale pink,pale violet,pale yellow,pale yellow-green,pale yellowish,"
    "pink,pinkish,pure white,purple,purple-black,purple-red,purplish black,purplish brown,purplish red,red,"
    "reddish brown,tinged rose,violet,white,white flushed pink,whitish,yellow,yellow-brown,yellowish",
    "other": "fertile",
}


@pytest.mark.parametrize(
    ("kind", "state"), [(kind, state) for kind, states in STATES.items() for state in states.split(",")]
)
def test_states_are_made_of_known_words(kind, state):
    *before, last = state.replace("-", " ").split()
    term = term_of(last) or formed_term(last)
    assert (term.name, term.property) == (last, kind)
    nouns = term_words.COLOUR_NOUNS if kind == "colour" else ()
    assert all(degree_of(word) or term_of(word) or word in nouns for word in before)


@pytest.mark.parametrize(
    ("stem", "ends", "name", "kind"),
    [
        pytest.param("ovat", "us a um i ae o am os as orum arum is", "ovate", "shape", id="first-and-second"),
        pytest.param(
            "glab", "er ra rum ri rae ro ram ros ras rorum rarum ris", "glabrous", "surface", id="er-losing-e"
        ),
        pytest.param("asper", " a um i ae o am os as orum arum is", "rough", "surface", id="er-keeping-e"),
        pytest.param("virid", "is e i em es ia ium ibus", "green", "colour", id="third-is"),
        pytest.param("linear", "is e i em es ia ium ibus", "linear", "shape", id="third-aris"),
        pytest.param("pubesce", "ns ntis nti ntem nte ntes ntia ntium ntibus", "pubescent", "surface", id="third-ns"),
        pytest.param("simpl", "ex icis ici icem ice ices icia icium icibus", "simple", "shape", id="third-ex"),
        pytest.param("ter", "es etis eti etem ete etes etia etium etibus", "terete", "shape", id="third-es"),
        pytest.param("fug", "ax acis aci acem ace aces acia acium acibus", "fugacious", "other", id="third-ax"),
        pytest.param("incol", "or oris ori orem ore ores oria orum oribus", "colourless", "colour", id="third-or"),
    ],
)
def test_latin_in_all_genders_and_cases(stem, ends, name, kind):
    found = [term_of(stem + end) for end in ([""] if ends[0] == " " else []) + ends.split()]
    assert {(term.name, term.property) for term in found} == {(name, kind)}


@pytest.mark.parametrize(
    ("language", "words"),
    [
        ("la", "violaceus:violet ellipticis:elliptic tomentosa:tomentose sericeum:silky acutis:acute roseae:pink"),
        (
            "la",
            "integerrimis:entire glaberrimis:glabrous obtusissima:very_obtuse atropurpurea:dark_purple nigris:black",
        ),
        ("la", "oblongis:oblong crispo:crisped uniflora:one-flowered laevibus:smooth"),
        ("la", "sessilibus:sessile dioici:dioecious coriacea:coriaceous pendulis:pendulous purpurascens:purplish"),
        ("es", "elípticas:elliptic aovadas:ovate enteras:entire lampiñas:glabrous blanquecinas:whitish azules:blue"),
        ("pt", "ovadas:ovate inteiras:entire amarelas:yellow azuis:blue esbranquiçadas:whitish sésseis:sessile"),
        ("it", "lanceolati:lanceolate glabri:glabrous bianchi:white ottuse:obtuse"),
        ("fr", "ovées:ovate lancéolées:lanceolate dentées:toothed velues:villous blanches:white tomenteuses:tomentose"),
        ("de", "eiförmig:ovate ganzrandig:entire kahl:glabrous behaarte:hairy rötlich:reddish weiß:white"),
    ],
)
def test_other_languages_are_translated(language, words):
    for pair in words.split():
        word, _, name = pair.partition(":")
        assert (word, term_of(folded(word)).name) == (word, name.replace("_", " ")), language


@pytest.mark.parametrize("word", sorted(term_words.english_terms()))
def test_english_words_stay_as_printed(word):
    assert term_of(word).name == word


@pytest.mark.parametrize(
    ("word", "part"),
    [
        *(
            (word, "margin")
            for word in [
                "entire",
                "toothed",
                "dentate",
                "serrate",
                "crenate",
                "wavy",
                "undulate",
                "repand",
                "serrulatis",
            ]
        ),
        *(
            (word, "apex")
            for word in ["acute", "obtuse", "acuminate", "mucronate", "apiculate", "emarginatis", "retuse"]
        ),
        *((word, "") for word in ["ovate", "revolute", "cordate", "glabrous", "rounded", "truncate"]),
    ],
)
def test_part_of_a_leaf(word, part):
    assert term_of(word).part == part


@pytest.mark.parametrize(
    ("word", "name"),
    [("tomentum", "tomentose"), ("pubescence", "pubescent"), ("down", "downy"), ("indumento", "hairy")],
)
def test_nouns_of_hairiness_give_their_adjective(word, name):
    assert (term_of(word).name, term_of(word).property, term_of(word).noun) == (name, "surface", True)


ORGANS = "leaf lobe tooth petal stem hair folia foliis petiole ligule dentes ramis radice apice pilis glandulis stipes"
STAGES_AND_FORMS = "dry fresh young old mature ripe tree shrub herb three long wide with and usually the"


@pytest.mark.parametrize("word", [*ORGANS.split(), *STAGES_AND_FORMS.split()])
def test_no_terms(word):
    assert term_of(word) is None
    assert formed_term(word) is None


@pytest.mark.parametrize(
    ("word", "degree"),
    [
        ("densely", "densely"),
        ("pale", "pale"),
        ("pallide", "pale"),
        ("dense", "densely"),
        ("anguste", "narrowly"),
        ("late", "broadly"),
        ("hell", "pale"),
        ("vollig", "completely"),
        ("claro", "pale"),
        ("escuro", "dark"),
        ("±", "±"),
        ("sub", "sub"),
        ("stellately", "stellately"),
        ("agudamente", "sharply"),
        ("woolly", None),
        ("usually", None),
        ("basally", None),
        ("ovate", None),
    ],
)
def test_degree(word, degree):
    assert degree_of(word) == degree


@pytest.mark.parametrize(
    ("word", "name", "kind"),
    [
        ("subglabrous", "subglabrous", "surface"),
        ("subglabra", "subglabrous", "surface"),
        ("subcordatis", "subcordate", "shape"),
        ("hellviolett", "pale violet", "colour"),
        ("dunkelrot", "dark red", "colour"),
        ("gelbgrun", "yellow-green", "colour"),
        ("eilanzettlich", "ovate-lanceolate", "shape"),
        ("dichtfilzig", "densely tomentose", "surface"),
        ("ovatolanceolatus", "ovate-lanceolate", "shape"),
        ("flavovirentibus", "yellow-green", "colour"),
        ("roseocoloured", "pink-coloured", "colour"),
        ("strawcoloured", "straw-coloured", "colour"),
        ("spoonshaped", "spoon-shaped", "shape"),
        ("thinnish", "thinnish", "other"),
        ("bidenticulatus", "bidenticulate", "shape"),
        ("bluegreen", "blue-green", "colour"),
        ("cochleariformibus", "cochleariform", "shape"),
    ],
)
def test_formed_words(word, name, kind):
    term = formed_term(word)
    assert (term.name, term.property) == (name, kind)


@pytest.mark.parametrize(
    ("first", "english"),
    [
        *(("ovato", "ovate"), ("lineari", "linear"), ("oblongo", "oblong"), ("viridi", "green"), ("atro", "dark")),
        *(
            ("luteo", "yellow"),
            ("lanceolato", "lanceolate"),
            ("flavo", "yellow"),
            ("albo", "white"),
            ("fusco", "brown"),
        ),
        *(("purpureo", "purple"), ("ovado", "ovate"), ("verde", "green"), ("ovate", None), ("folio", None)),
    ],
)
def test_first_half_of_a_compound(first, english):
    assert latin_first(first) == english


@pytest.mark.parametrize("word", ["tinged", "flushed", "suffusa", "tinctae", "striped", "maculatis"])
def test_words_that_lay_one_colour_over_another(word):
    assert word in TINTS
    assert term_of(word) is not None


@pytest.mark.parametrize("table", [foreign_terms.ROMANCE, foreign_terms.GERMAN], ids=["romance", "german"])
def test_each_name_of_the_modern_languages_has_a_property_of_its_own(table):
    known = set(term_words.english_terms()) | {term.name for term in term_words.latin_terms().values()}
    names = [name for name, _ in term_words.translations(table)]
    assert [name for name in names if not {name, name.replace("-", " ").split()[-1]} & known] == []
