"""Names of two to four words with one meaning (`flower stalk`, `laciniae calycinae`, `tubo de la corola`)."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from auctorum.characters.prose.declension import latin_forms
from auctorum.characters.prose.english_nouns import plurals
from auctorum.characters.prose.entries import entries
from auctorum.characters.prose.organ_forms import latin_noun, romance
from auctorum.characters.tokens import folded

# Phrases are parted by commas.
ENGLISH = {
    "petiole": "leaf stalk, leaf footstalk",
    "petiolule": "leaflet stalk",
    "pedicel": "flower stalk, fruit stalk, floral stalk, flower footstalk",
    "peduncle": "inflorescence stalk, common stalk, flowering stalk, raceme stalk, umbel stalk, common peduncle",
    "ray floret": "ray flower, ray floret, ligulate floret, ligulate flower, strap flower, tongue floret",
    "disc floret": "disk flower, disc flower, disk floret, disc floret, tubular floret, tube floret",
    "midrib": "mid rib, mid vein, mid nerve, middle nerve, middle vein, median vein, median nerve, central vein, "
    "central nerve",
    "lateral vein": "side vein, side nerve, lateral nerve",
    "seed coat": "seed coat",
    "head": "flowering head",
    "leaf blade": "leaf blade, leaf lamina, foliar blade",
    "leaf sheath": "leaf sheath, foliar sheath",
    "leaf scar": "leaf scar",
    "leaf margin": "leaf edge, leaf margin",
    "flower bud": "flower bud, floral bud",
    "leaf bud": "leaf bud, foliar bud",
    "winter bud": "winter bud",
    "bud scale": "bud scale",
    "calyx lobe": "calycine lobe, calycinal lobe",
    "calyx tooth": "calycine tooth",
    "calyx tube": "calycine tube",
    "calyx segment": "calycine segment",
    "corolla lobe": "corolline lobe",
    "corolla tube": "corolline tube",
    "perianth segment": "perianth segment, perianth leaf, perigonal segment",
    "perianth tube": "perianth tube, perigone tube",
    "involucral bract": "involucral bract, involucre bract, involucral leaf",
    "involucral scale": "involucral scale",
    "floral bract": "floral bract, flower bract",
    "floral tube": "floral tube, flower tube",
    "style branch": "style branch, style arm, stylar branch, stylar arm",
    "style crest": "style crest",
    "pappus bristle": "pappus bristle, pappus seta, pappus hair",
    "seed leaf": "seed leaf",
    "seed wing": "seed wing",
    "ovuliferous scale": "ovuliferous scale",
    "seed scale": "seed scale",
    "short shoot": "short shoot, spur shoot",
    "long shoot": "long shoot",
    "root tuber": "root tuber, tuberous root, root tubercle",
    "stem leaf": "stem leaf",
    "rosette leaf": "rosette leaf",
    "leaf axil": "leaf axil",
    "pollen grain": "pollen grain",
    "pollen sac": "pollen sac",
    "guard cell": "guard cell",
    "nectar guide": "nectar guide, honey guide",
    "anther cell": "anther cell, anther locule",
    "lower surface": "under surface, under side, lower side, lower face",
    "upper surface": "upper side, upper face",
}

# `+` joins an adjective, in any case, `=` a genitive that stays as it is.
LATIN = """
midrib: nervus+medius nervus+medianus nervus+centralis nervus+primarius costa+media vena+media
lateral vein: nervus+lateralis vena+lateralis nervus+secundarius
ray floret: flos/floris=radii flosculus=radii flos/floris+radialis flos/floris+ligulatus
ray floret: flosculus+ligulatus flos/floris+radians
disc floret: flos/floris=disci flosculus=disci flos/floris+tubulosus flosculus+tubulosus
leaf blade: lamina=folii lamina=foliorum lamina+foliaris
leaf sheath: vagina=folii vagina=foliorum vagina+foliaris
involucral bract: bractea=involucri folium=involucri phyllum=involucri bractea+involucralis
involucral scale: squama=involucri squama+involucralis
pappus bristle: seta=pappi pilus=pappi
style branch: ramus=styli crus/cruris=styli
"""

# What stands before and after in `corollae lobi`, `lobi corollini`, `tubo de la corola`, `dents du calice`.
LATIN_WHOLES = """
calyx: =calycis =calicis calycinus
corolla: =corollae corollinus
perianth: =perianthii =perigonii perigonialis
leaf: =folii =foliorum
sepal: =sepalorum
petal: =petalorum
"""
LATIN_PARTS = """
lobe: lobus lacinia
tube: tubus
tooth: dens/dentis
segment: segmentum
limb: limbus
throat: faux/faucis
apex: apex/apicis
base: basis
margin: margo/marginis
"""
ROMANCE_WHOLES = {
    "es": "calyx: del cáliz|corolla: de la corola|perianth: del perianto|leaf: de la hoja",
    "pt": "calyx: do cálice|corolla: da corola|perianth: do perianto|leaf: da folha",
    "fr": "calyx: du calice|corolla: de la corolle|perianth: du périanthe|leaf: de la feuille",
}
ROMANCE_PARTS = {
    "es": "lobe: lóbulo lobo|tube: tubo|tooth: diente|segment: segmento|throat: garganta|blade: lámina limbo",
    "pt": "lobe: lobo lacínia|tube: tubo|tooth: dente|segment: segmento|throat: fauce|blade: lâmina limbo",
    "fr": "lobe: lobe|tube: tube|tooth: dent|segment: segment|throat: gorge|blade: limbe",
}
ROMANCE = {
    "es": """
midrib: nervio+central nervio+medio nervio+principal nervadura+central nervadura+media nervadura+principal vena+media
lateral vein: nervio+lateral nervio+secundario nervadura+lateral nervadura+secundaria
leaf blade: lámina+foliar limbo+foliar
leaf sheath: vaina+foliar
floral bract: bráctea+floral
flower bud: botón+floral
ray floret: flor+ligulada flor+radial flósculo+radial
disc floret: flor+tubulosa flor+tubular
""",
    "pt": """
midrib: nervura+central nervura+principal nervura+mediana nervura+média
lateral vein: nervura+lateral nervura+secundária
leaf blade: lâmina+foliar limbo+foliar
leaf sheath: bainha+foliar
floral bract: bráctea+floral
flower bud: botão+floral
ray floret: flor+ligulada
disc floret: flor+tubulosa
""",
    "fr": """
midrib: nervure+médiane nervure+principale nervure+centrale nervure+primaire
lateral vein: nervure+latérale nervure+secondaire
leaf blade: limbe+foliaire
leaf sheath: gaine+foliaire
flower bud: bouton+floral
ray floret: fleur+ligulée
disc floret: fleur+tubuleuse fleuron+tubuleux
""",
}


def _english() -> Iterator[tuple[tuple[str, ...], str]]:
    for name, phrases in ENGLISH.items():
        for *firsts, last in (phrase.split() for phrase in phrases.split(", ")):
            yield from (((*firsts, form), name) for form in (last, *sorted(plurals(last))))


def _latin() -> Iterator[tuple[tuple[str, ...], str]]:
    """Both orders: `laciniae calycinae`, `calycinae laciniae`."""
    for name, words in entries(LATIN):
        for word in words:
            noun, sign, other = word.partition("+") if "+" in word else word.partition("=")
            yield from _both_orders(noun, other if sign == "+" else "=" + other, name)
    for whole, others in entries(LATIN_WHOLES):
        for part, nouns in entries(LATIN_PARTS):
            for noun in nouns:
                for other in others:
                    yield from _both_orders(noun, other, f"{whole} {part}")


def _both_orders(noun: str, other: str, name: str) -> Iterator[tuple[tuple[str, ...], str]]:
    others = {other[1:]} if other.startswith("=") else set(latin_forms(other))
    for one in sorted(latin_noun(noun)):
        for two in sorted(others):
            yield (one, two), name
            yield (two, one), name


def _romance() -> Iterator[tuple[tuple[str, ...], str]]:
    for language, text in ROMANCE.items():
        for name, phrases in entries(text):
            for noun, _, adjective in (phrase.partition("+") for phrase in phrases):
                pairs = ((one, two) for one in romance(language, noun) for two in romance(language, adjective))
                yield from ((pair, name) for pair in sorted(pairs))
    for language, wholes in ROMANCE_WHOLES.items():
        for whole, _, joined in (line.partition(": ") for line in wholes.split("|")):
            for part, _, nouns in (line.partition(": ") for line in ROMANCE_PARTS[language].split("|")):
                forms = sorted(form for noun in nouns.split() for form in romance(language, noun))
                yield from (((form, *folded(joined).split()), f"{whole} {part}") for form in forms)


def _compounds() -> dict[tuple[str, ...], str]:
    found: dict[tuple[str, ...], str] = {}
    for several in (_english(), _latin(), _romance()):
        for words, name in several:
            found.setdefault(words, name)
    return found


# The key is folded words in the order of the text, in any number and case.
COMPOUNDS: Mapping[tuple[str, ...], str] = _compounds()
LONGEST_COMPOUND = max(map(len, COMPOUNDS))
