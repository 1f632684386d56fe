"""The gender of a generic name and what it rests on (ICN Art. 62, Shenzhen 2018).

In this order: names in -oides, -odes, -anthes and -ites, whose gender the Code fixes (Art. 62.4); tradition, recorded
or known (62.1); the last element of a compound (62.2); the use of its author (62.3); the common ending of such words.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum


class Gender(StrEnum):
    """The three genders of Latin."""

    MASCULINE = "masculine"
    FEMININE = "feminine"
    NEUTER = "neuter"


M, F, N = Gender.MASCULINE, Gender.FEMININE, Gender.NEUTER


@dataclass(frozen=True, slots=True)
class GenusGender:
    """The gender of a generic name, why it has it, and the article (`62.1`) that says so."""

    gender: Gender
    why: str
    article: str


# Genera whose traditional gender their ending does not tell, or tells wrongly. The first line of each gender holds the
# examples of Art. 62.1 Ex. 1 and 62.3; the others are the use of floras: common practice, from memory.
_TRADITION = {
    F: """
    adonis atriplex diospyros eucalyptus hemerocallis orchis stachys strychnos cedrus fagus rhamnus taonabo agati
    manihot cordyceps
    abies aesculus ailanthus alnus amelanchier arbutus austrocedrus buxus calocedrus carpinus celtis cephalotaxus
    cerasus citrus cornus corylus crataegus cupressus elaeagnus ficus fraxinus ginkgo ilex juglans
    juniperus larix laurus libocedrus liquidambar malus mespilus metrosideros morus myrtus nothofagus parasitaxus
    pinus platanus populus prunus pseudolarix pyrus quercus rhus salix sambucus sorbus taxus torminalis ulmus vitex
    ziziphus zizyphus
    parthenocissus vitis smilax hippophae leucothoe calypso cocos phoenix elaeis
    aegilops bidens carex impatiens lens nuphar tagetes triglochin isoetes phlox
    """,
    M: """
    lotus melilotus erigeron sicyos
    andropogon oplopanax
    acorus amaranthus asparagus aster bromus butomus convolvulus cotinus cotoneaster crocus cucumis cyperus cytisus
    daucus echinops euonymus gladiolus helleborus hibiscus humulus hyacinthus juncus lathyrus leontodon loranthus
    lupinus lycopus narcissus opopanax orobus panax phaseolus phragmites potamogeton ranunculus raphanus rubus rumex
    ruscus schoenus scirpus senecio sonchus styrax thymus tragopogon ulex
    """,
    N: """
    phyteuma
    acer alisma arum bombax cicer cyclamen laser muscari papaver piper ribes siler siser thlaspi tuber
    zingiber
    """,
}
_BY_TRADITION = {genus: gender for gender, genera in _TRADITION.items() for genus in genera.split()}

_FIXED = (("oides", F), ("odes", F), ("anthes", F), ("ites", M))

# Last elements of compounds: first line those of Art. 62.2 and its Ex. 3, then other Greek and Latin nouns (their
# gender from dictionaries of the languages, from memory).
_BY_GENDER = {
    M: """
    codon myces odon panax pogon stemon gaster anthos anthus chilos chilus cheilos phykos phycos phycus carpos carpus
    geron geton botrys thamnos thamnus cephalus lobus pappus stephanus pus aster
    """,
    F: """
    achne chlamys daphne glochin mecon osma carpa carpaea
    chloa poa coma theca glossa rhiza rrhiza thrix lepis glottis stachys stylis pteris charis meris orchis iris aria
    chaete phyllis themis opsis taxus fagus cedrus larix quercus rhamnus cupressus juniperus sorbus
    """,
    N: """
    ceras dendron dendrum nema stigma stoma carpon carpum carpium
    sperma derma soma chroma phragma stemma loma gramma lemma trema plegma calymma phyma xylon xylum phyton phytum
    phyllon phyllum petalum sepalum spermum anthemum glossum stachyum sciadium
    """,
}
ELEMENTS = {element: gender for gender, elements in _BY_GENDER.items() for element in elements.split()}
_LONGEST = max(map(len, ELEMENTS))
_BOTANICAL_CUSTOM = {"gaster", "anthos", "anthus", "chilos", "chilus", "cheilos", "phykos", "phycos", "phycus"}

# Endings of Latin and transcribed Greek nouns, longest first; those that tell nothing (-ax, -er, -i, -u) are left out.
_ENDINGS = (
    ("emma", N), ("omma", N), ("amma", N), ("euma", N), ("igma", N), ("asma", N), ("isma", N), ("oma", N), ("ema", N),
    ("ago", F), ("igo", F), ("ugo", F), ("edo", F), ("men", N),
    ("us", M), ("os", M), ("um", N), ("on", N), ("is", F), ("ys", F), ("as", F), ("ix", F), ("a", F), ("e", F),
)  # fmt: skip


def gender_of(
    genus: str,
    *,
    tradition: Gender | None = None,
    last_part: str = "",
    last_part_gender: Gender | None = None,
    by_author: Gender | None = None,
) -> GenusGender | None:
    """The gender of a generic name; None where nothing tells it (ICN Art. 62).

    Recorded facts: `tradition`; `last_part`, the last word of a compound in the nominative of its language, with its
    gender; `by_author`, the gender its author gave it or, where that author gave none, the next who chose one.

    >>> gender_of("Rhamnus").gender, gender_of("Callicarpa").article, gender_of("Agpti")
    (<Gender.FEMININE: 'feminine'>, '62.2', None)
    """
    word = genus.strip("×").strip().casefold()
    if tradition is not None:
        return GenusGender(tradition, "by recorded tradition", "62.1")
    return (
        _fixed(word)
        or _known(word)
        or _recorded_part(word, last_part.casefold(), last_part_gender)
        or _compound(word)
        or _by_author(by_author)
        or _common(word)
    )


def _fixed(word: str) -> GenusGender | None:
    for ending, gender in _FIXED:
        if word.endswith(ending):
            return GenusGender(gender, f"names in -{ending} are {gender}, whatever their author gave", "62.4")
    return None


def _known(word: str) -> GenusGender | None:
    gender = _BY_TRADITION.get(word)
    return GenusGender(gender, f"botanical tradition treats it as {gender}", "62.1") if gender else None


def _recorded_part(word: str, part: str, gender: Gender | None) -> GenusGender | None:
    """By the recorded last word; where its termination was altered, by the new one."""
    if not part or _custom(word):
        return None
    whole = _latinised(word).endswith(_latinised(part))
    found = gender or _gender_of_noun(part) if whole else (_gender_of_noun(word) or gender)
    if found is None:
        return None
    why = f"a compound, {found} as its last word {part}" if whole else f"its last word {part} was altered, now {found}"
    return GenusGender(found, why, "62.2")


def _custom(word: str) -> str:
    """The last element whose gender botanical custom has changed, such as -anthus."""
    element = _element(word)
    return element if element in _BOTANICAL_CUSTOM else ""


def _latinised(word: str) -> str:
    for greek, latin in (("os", "us"), ("on", "um")):
        if word.endswith(greek):
            return word.removesuffix(greek) + latin
    return word


def _gender_of_noun(word: str) -> Gender | None:
    found = _known(word) or _compound(word) or _common(word)
    return found.gender if found else None


def _compound(word: str) -> GenusGender | None:
    element = _element(word)
    if not element:
        return None
    gender = ELEMENTS[element]
    custom = " by botanical custom" if element in _BOTANICAL_CUSTOM else ""
    return GenusGender(gender, f"compounds in -{element} are {gender}{custom}", "62.2")


def _element(word: str) -> str:
    """The longest known last element; something must stand before it."""
    longest = min(len(word) - 1, _LONGEST)
    return next((word[-length:] for length in range(longest, 2, -1) if word[-length:] in ELEMENTS), "")


def _by_author(gender: Gender | None) -> GenusGender | None:
    return GenusGender(gender, f"its author treated it as {gender}", "62.3") if gender else None


def _common(word: str) -> GenusGender | None:
    for ending, gender in _ENDINGS:
        if word.endswith(ending) and word != ending:
            return GenusGender(gender, f"nothing is recorded; words in -{ending} are mostly {gender}", "62.1")
    return None
