"""Each rule of the Code on the smallest records that show it: both sides of every date, every exception, and silence.

Articles and dates are those of the Shenzhen Code (2018) as digested from its text, some from memory; 1 May 1753,
1 January 1935, 1953, 1958, 1973, 1990, 2007 and 2012 are the limits of Art. 13.1, 39.1, 36-37 and 41.5, 40.1, 33.1,
40.6-40.7, 40.4 and 39.2. The records are invented.
"""

from __future__ import annotations

import inspect
from typing import Any

import pytest

from auctorum.nomenclature.code import Code
from auctorum.nomenclature.judgement import Effect, Legitimacy, Validity
from auctorum.nomenclature.rules import legitimacy
from auctorum.nomenclature.rules.table import VALIDITY, VALIDITY_UNDER_A_NAME
from building import code_of

Expected = tuple[str, str, str] | None  # effect, key and article; None where the rule has nothing to say
BARS, OPEN, REMARK = "bars", "open", "remark"

LATIN = "description: {kind: description, language: latin}"
HOLOTYPE = "type: {kind: holotype, specimen: A, herbarium: TESN, word: holotypus}"
OTHER_TYPE = HOLOTYPE.replace("specimen: A", "specimen: B")
SPECIES = f"name: Exemplum album, act: new taxon, {HOLOTYPE}, {LATIN}"
LONGUM = f"name: Exemplum longum, act: new taxon, {OTHER_TYPE}, {LATIN}"
VARIETY = f"name: Exemplum album var. longum, act: new taxon, {OTHER_TYPE}, {LATIN}"
GENUS = f"name: Exemplum, act: new taxon, rank: genus, {LATIN}, type-indicated: true"
NUDE = "description: {kind: none}"
MOVED = "name: Novum album, act: new combination, basionym: Exemplum album"


def published(id_: str, author: str, date: str, *acts: str, head: str = "") -> str:
    more = f", {head}" if head else ""
    work = f"work: {{id: {id_}, type: book, author: [{{family: {author}}}], issued: '{date}', title: A book{more}}}"
    return "\n".join((work, "acts:", *(f"- {{{act}}}" for act in acts)))


def it(date: str, *acts: str, head: str = "") -> str:
    """The work of the act at issue, its first one."""
    return published("it", "Orrin", date, *acts, head=head)


def before(*acts: str, date: str = "1800") -> str:
    return published("before", "Vane", date, *acts)


def after(date: str, *acts: str, head: str = "") -> str:
    return published("after", "Tull", date, *acts, head=head)


ROWS: list[tuple[str, str, Expected, tuple[str, ...]]] = []


def row(rule: str, name: str, expected: Expected, *works: str) -> None:
    ROWS.append((rule, name, expected, works))


def described(language: str, more: str = "") -> str:
    words = f"description: {{kind: diagnosis, language: {language}}}"
    return f"name: Exemplum album, act: new taxon, {HOLOTYPE}, {words}{more}"


def typed(type_: str, more: str = "") -> str:
    return f"name: Exemplum album, act: new taxon, {LATIN}, type: {{{type_}}}{more}"


# Art. 32.1, 29.1, 13.1
GIVEN = (BARS, "given", "32.1")
row("standing_given_as_invalid", "given-as-not-valid", GIVEN, it("1900", f"{SPECIES}, standing: not valid"))
row("standing_given_as_invalid", "given-as-legitimate", None, it("1900", f"{SPECIES}, standing: legitimate"))
THESIS = it("1900", SPECIES, head="effectively-published: false")
row("effectively_published", "a-thesis", (BARS, "not-effectively-published", "29.1"), THESIS)
row("effectively_published", "a-book", None, it("1900", SPECIES, head="effectively-published: true"))
EARLY = (BARS, "before-starting-point", "13.1")
row("after_the_start", "last-day-before", EARLY, it("1753-04-30", SPECIES))
row("after_the_start", "first-day", None, it("1753-05-01", SPECIES))
row("after_the_start", "year-before", EARLY, it("1752", SPECIES))

# Art. 20.3, 20.2, 21.3, 23.4
TWO_WORDS = (BARS, "generic-name-of-two-words", "20.3")
row("one_word", "two-words", TWO_WORDS, it("1900", "name: Exemplum album, act: new taxon, rank: genus"))
row("one_word", "hyphened", None, it("1900", "name: Exemplum-album, act: new taxon, rank: genus"))
row("one_word", "a-species", None, it("1900", SPECIES))
TERM = (BARS, "technical-term", "20.2")
RADIX = f"name: Radicula, act: new taxon, rank: genus, technical-term: true, {LATIN}"
row("no_technical_term", "first-day-with-species", TERM, it("1912-01-01", f"{RADIX}, with-species: true"))
row("no_technical_term", "last-day-with-species", None, it("1911-12-31", f"{RADIX}, with-species: true"))
row("no_technical_term", "last-day-without-species", TERM, it("1911-12-31", f"{RADIX}, with-species: false"))
row("no_technical_term", "last-day-silent", (OPEN, "technical-term", "20.2"), it("1911-12-31", RADIX))
row("no_technical_term", "not-a-term", None, it("1950", GENUS))
EU = (BARS, "eu-prefix-on-generic-name", "21.3")
row("no_eu_before_the_genus", "section-eu", EU, it("1900", "name: Exemplum sect. Euexemplum, act: new taxon"))
row("no_eu_before_the_genus", "other-section", None, it("1900", "name: Exemplum sect. Eunovum, act: new taxon"))
TAUTONYM = (BARS, "tautonym", "23.4")
row("no_tautonym", "same-word", TAUTONYM, it("1900", "name: Exemplum exemplum, act: new taxon"))
row(
    "no_tautonym",
    "with-symbol",
    TAUTONYM,
    it("1900", "name: Exemplum exemplum-solis, act: new taxon, epithet: {symbol: solis}"),
)
row("no_tautonym", "longer-word", None, it("1900", "name: Exemplum exemplum-solis, act: new taxon"))
row("no_tautonym", "variety", None, it("1900", "name: Exemplum album var. exemplum, act: new taxon"))

# Art. 24.3, 26.2, 22.2, 27.1, H.10.3
TYPICAL = "inadmissible-typical-epithet"


def typical(epithet: str, more: str = "") -> str:
    return it("1900", f"name: Exemplum album var. {epithet}, act: new taxon, {OTHER_TYPE}, {LATIN}{more}")


for word in ("typicum", "genuinum", "originale", "originarium", "verum", "veridicum", "eualbum"):
    row(
        "no_epithet_for_the_typical_part",
        word,
        (BARS, TYPICAL, "24.3"),
        before(SPECIES),
        typical(word, ", typical: true"),
    )
row("no_epithet_for_the_typical_part", "silent", (OPEN, TYPICAL, "24.3"), before(SPECIES), typical("typicum"))
row("no_epithet_for_the_typical_part", "untypical", None, before(SPECIES), typical("typicum", ", typical: false"))
INCLUDES = typical("typicum", ", cites: [Exemplum album]")
row("no_epithet_for_the_typical_part", "includes-it", (BARS, TYPICAL, "24.3"), before(SPECIES), INCLUDES)
row("no_epithet_for_the_typical_part", "other-word", None, before(SPECIES), typical("longum", ", typical: true"))
HOLDS = "includes-type-of-species-but-not-autonym"
TAKES_IN = f"{VARIETY}, cites: [Exemplum album]"
WITHOUT_TYPE = f"name: Exemplum album, act: new taxon, {LATIN}"
LECTOTYPE = "name: Exemplum album, act: type designation, type: {kind: lectotype, specimen: A, herbarium: TESN}"
row("not_the_type_without_autonym", "holotype", (BARS, HOLDS, "26.2"), before(SPECIES), it("1900", TAKES_IN))
row("not_the_type_without_autonym", "no-type-known", (OPEN, HOLDS, "26.2"), before(WITHOUT_TYPE), it("1900", TAKES_IN))
row(
    "not_the_type_without_autonym", "designated-before", (BARS, HOLDS, "26.2"),
    before(WITHOUT_TYPE), after("1850", LECTOTYPE), it("1900", TAKES_IN),
)  # fmt: skip
row(
    "not_the_type_without_autonym", "designated-later", None,
    before(WITHOUT_TYPE), it("1900", TAKES_IN), after("1950", LECTOTYPE),
)  # fmt: skip
row(
    "not_the_type_without_autonym",
    "typical-in-words",
    (BARS, HOLDS, "26.2"),
    before(WITHOUT_TYPE),
    it("1900", f"{TAKES_IN}, typical: true"),
)
row(
    "not_the_type_without_autonym",
    "shut-out",
    None,
    before(SPECIES),
    it("1900", f"{TAKES_IN}, excludes: [Exemplum album]"),
)
row("not_the_type_without_autonym", "not-taken-in", None, before(SPECIES), it("1900", VARIETY))
NAMED = f"{GENUS}, type: {{kind: name, specimen: Exemplum album}}"
SECTION = f"name: Exemplum sect. Alba, act: new taxon, {LATIN}, cites: [Exemplum]"
HOLDS_GENUS = (BARS, "includes-type-of-genus-but-not-autonym", "22.2")
row("not_the_type_without_autonym", "section", HOLDS_GENUS, before(NAMED), it("1900", SECTION))
REPEATS = (BARS, "repeats-species-epithet", "27.1")
AGAIN = f"name: Exemplum album var. album, act: new taxon, {LATIN}"
row("no_repeated_epithet", "other-type", REPEATS, before(SPECIES), it("1900", f"{AGAIN}, {OTHER_TYPE}"))
row("no_repeated_epithet", "same-type", None, before(SPECIES), it("1900", f"{AGAIN}, {HOLOTYPE}"))
row("no_repeated_epithet", "other-epithet", None, before(SPECIES), it("1900", VARIETY))
FORMULA = (BARS, "hybrid-formula-not-epithet", "H.10.3")
PARENTS = "parentage: Exemplum album × Exemplum longum"
row(
    "no_formula_for_an_epithet",
    "formula",
    FORMULA,
    it("1900", f"name: Exemplum ×album-longum, act: new taxon, {PARENTS}"),
)
row("no_formula_for_an_epithet", "epithet", None, it("1900", f"name: Exemplum ×album-novum, act: new taxon, {PARENTS}"))
row("no_formula_for_an_epithet", "no-hybrid", None, it("1900", "name: Exemplum album-longum, act: new taxon"))

HYBRID = "act: new taxon, rank: genus, parentage: Exemplum × Novum"
row(
    "condensed_from_its_parents", "other-parts", (BARS, "not-a-condensed-formula", "H.6.2"),
    it("1900", f"name: ×Alterella, {HYBRID}"),
)  # fmt: skip
row("condensed_from_its_parents", "their-parts", None, it("1900", f"name: ×Exemplovum, {HYBRID}"))
row("condensed_from_its_parents", "no-hybrid", None, it("1900", GENUS))

# Art. 36.1, 36.3, 33.1, 35.1, 35.2
PROVISIONAL, AS_SYNONYM = (BARS, "provisional", "36.1"), (BARS, "cited-as-synonym", "36.1")
row("accepted_by_author", "provisional", PROVISIONAL, it("1900", f"{SPECIES}, offered-as: provisional"))
row("accepted_by_author", "synonym", AS_SYNONYM, it("1900", f"{SPECIES}, offered-as: synonym"))
row("accepted_by_author", "not-accepted", (BARS, "not-accepted", "36.1"), it("1900", f"{SPECIES}, accepted: false"))
ALTERNATIVE = f"{SPECIES}, offered-as: alternative"
row("accepted_by_author", "alternative-from-1953", (BARS, "alternative-names", "36.3"), it("1953-01-01", ALTERNATIVE))
row("accepted_by_author", "alternative-to-1952", None, it("1952-12-31", ALTERNATIVE))
row("accepted_by_author", "accepted", None, it("1900", SPECIES))
COMPLETED = (BARS, "not-accepted-where-last-condition-is-met", "33.1")
NUDE_SPECIES = f"name: Exemplum album, act: new taxon, {HOLOTYPE}, {NUDE}"
row(
    "accepted_where_completed",
    "sunk-there",
    COMPLETED,
    it("1900", NUDE_SPECIES),
    after("1910", f"{SPECIES}, accepted: false"),
)
row("accepted_where_completed", "accepted-there", None, it("1900", NUDE_SPECIES), after("1910", SPECIES))
row(
    "accepted_where_completed",
    "complete-before",
    None,
    it("1900", SPECIES),
    after("1910", f"{SPECIES}, accepted: false"),
)
NO_GENUS, NO_SPECIES = (BARS, "genus-name-not-valid", "35.1"), (BARS, "species-name-not-valid", "35.1")
NUDE_GENUS = f"name: Exemplum, act: new taxon, rank: genus, {NUDE}"
row("placed_in_a_valid_name", "nude-genus", NO_GENUS, before(NUDE_GENUS), it("1900", SPECIES))
row("placed_in_a_valid_name", "later-genus", NO_GENUS, it("1900", SPECIES), after("1901", GENUS))
row("placed_in_a_valid_name", "genus-in-the-same-work", None, it("1900", SPECIES, GENUS))
row("placed_in_a_valid_name", "earlier-genus", None, before(GENUS), it("1900", SPECIES))
row("placed_in_a_valid_name", "nude-species", NO_SPECIES, before(NUDE_SPECIES), it("1900", VARIETY))
row("placed_in_a_valid_name", "later-species", NO_SPECIES, it("1900", VARIETY), after("1901", SPECIES))
row("placed_in_a_valid_name", "earlier-species", None, before(SPECIES), it("1900", VARIETY))
NOT_LINKED = (BARS, "epithet-not-associated", "35.2")
row("epithet_linked", "not-linked", NOT_LINKED, it("1900", f"{SPECIES}, epithet-linked: false"))
row("epithet_linked", "linked", None, it("1900", f"{SPECIES}, epithet-linked: true"))
row("epithet_linked", "silent", None, it("1900", SPECIES))

# Art. 41.1-41.5
GROUP = (BARS, "basionym-of-wrong-rank-group", "41.2")
row(
    "of_the_same_rank_group",
    "section-of-a-species",
    GROUP,
    before(SPECIES),
    it("1900", "name: Exemplum sect. Album, act: change of rank, basionym: Exemplum album"),
)
row(
    "of_the_same_rank_group",
    "genus-of-a-tribe",
    GROUP,
    before("name: Exempleae, act: new taxon, rank: tribe"),
    it("1900", "name: Exemplea, act: change of rank, rank: genus, basionym: Exempleae"),
)
row(
    "of_the_same_rank_group",
    "genus-of-a-section",
    None,
    before("name: Exemplum sect. Alba, act: new taxon"),
    it("1900", "name: Alba, act: change of rank, rank: genus, basionym: Exemplum sect. Alba"),
)
row(
    "of_the_same_rank_group",
    "species-of-a-variety",
    None,
    before(SPECIES, VARIETY),
    it("1900", "name: Exemplum longum, act: change of rank, basionym: Exemplum album var. longum"),
)
NO_BASIONYM = "name: Novum album, act: new combination"
NOT_CITED = (BARS, "basionym-not-cited", "41.1")
row("rests_on_a_name", "silent", (OPEN, "basionym-not-cited", "41.1"), it("1900", NO_BASIONYM))
row("rests_on_a_name", "none-cited", NOT_CITED, it("1900", f"{NO_BASIONYM}, basionym-reference: none"))
row("rests_on_a_name", "told-by-the-citation", None, it("1900", f"{NO_BASIONYM}, authors: (Vane) Orrin"))
row("rests_on_a_name", "told-by-the-reference", None, it("1900", f"{NO_BASIONYM}, basionym-reference: full"))
UNKNOWN = "name: Exemplum album, act: new taxon"
UNDETERMINED = (OPEN, "basionym-undetermined", "41.1")
row("rests_on_a_name", "undetermined-basionym", UNDETERMINED, before(UNKNOWN), it("1900", MOVED))
row("rests_on_a_name", "valid-basionym", None, before(SPECIES), it("1900", MOVED))
INCOMPLETE = "basionym-reference-incomplete"
FULL = "reference_is_full_and_direct"
row(FULL, "before-1953-silent", None, before(SPECIES), it("1952-12-31", MOVED))
row(FULL, "before-1953-partial", None, before(SPECIES), it("1952-12-31", f"{MOVED}, basionym-reference: partial"))
row(FULL, "before-1953-none", NOT_CITED, before(SPECIES), it("1952-12-31", f"{MOVED}, basionym-reference: none"))
row(
    FULL,
    "before-1953-epithet-taken-up",
    None,
    before(SPECIES),
    it("1952-12-31", f"{MOVED}, basionym-reference: none, {LATIN}"),
)
row(FULL, "from-1953-silent", (OPEN, INCOMPLETE, "41.5"), before(SPECIES), it("1953-01-01", MOVED))
row(
    FULL,
    "from-1953-partial",
    (BARS, INCOMPLETE, "41.5"),
    before(SPECIES),
    it("1953-01-01", f"{MOVED}, basionym-reference: partial"),
)
row(
    FULL,
    "from-1953-none",
    (BARS, INCOMPLETE, "41.5"),
    before(SPECIES),
    it("1953-01-01", f"{MOVED}, basionym-reference: none"),
)
row(FULL, "from-1953-full", None, before(SPECIES), it("1953-01-01", f"{MOVED}, basionym-reference: full"))
row(
    FULL,
    "perhaps-1953",
    (OPEN, INCOMPLETE, "41.5"),
    before(SPECIES),
    it("1952/1953", f"{MOVED}, basionym-reference: partial"),
)
row(
    FULL,
    "replacement-from-1953",
    (BARS, INCOMPLETE, "41.5"),
    before(SPECIES),
    it(
        "1953-01-01",
        "name: Exemplum novum, act: replacement name, replaces: Exemplum album, basionym-reference: partial",
    ),
)
row(FULL, "new-taxon", None, it("1953-01-01", SPECIES))

# Art. 38.1, 38.5, 33.1
NUDUM = (BARS, "nomen-nudum", "38.1")
row("is_described", "nude", NUDUM, it("1900", NUDE_SPECIES))
row("is_described", "silent", (OPEN, "nomen-nudum", "38.1"), it("1900", UNKNOWN))
row("is_described", "description", None, it("1900", SPECIES))
row("is_described", "reference", None, it("1900", f"{UNKNOWN}, description: {{kind: reference}}"))
row("is_described", "hybrid-by-its-parents", None, it("1900", f"name: Exemplum ×novum, act: new taxon, {PARENTS}"))
ONLY_SPECIES = f"{NUDE_GENUS}, monotypic: true"
row("is_described", "with-its-only-species", None, it("1900", ONLY_SPECIES, SPECIES))
row("is_described", "with-one-of-its-species", NUDUM, it("1900", f"{NUDE_GENUS}, monotypic: false", SPECIES))
row("is_described", "with-its-nude-species", NUDUM, it("1900", ONLY_SPECIES, NUDE_SPECIES))
row("is_described", "combination", None, before(SPECIES), it("1900", f"{MOVED}, {NUDE}"))
row("is_described", "combination-on-no-name", NUDUM, before(NUDE_SPECIES), it("1900", f"{MOVED}, {NUDE}"))
REFERRED = "description-reference-incomplete"


def referred(date: str, more: str) -> str:
    return it(
        date,
        f"name: Exemplum album, act: new taxon, {HOLOTYPE}, description: {{kind: reference, language: latin{more}}}",
    )


row(
    "reference_is_full",
    "from-1973-incomplete",
    (BARS, REFERRED, "33.1"),
    referred("1973-01-01", ", reference-full: false"),
)
row("reference_is_full", "to-1972-incomplete", None, referred("1972-12-31", ", reference-full: false"))
row("reference_is_full", "from-1973-silent", (OPEN, REFERRED, "33.1"), referred("1973-01-01", ""))
row("reference_is_full", "from-1973-full", None, referred("1973-01-01", ", reference-full: true"))
row("reference_is_full", "own-description", None, it("1973-01-01", SPECIES))

# Art. 39.1, 39.2, 43.1, 44.1
NO_LATIN, NEITHER = (BARS, "no-latin", "39.1"), (BARS, "no-latin-or-english", "39.2")
row("in_latin", "english-to-1934", None, it("1934-12-31", described("english")))
row("in_latin", "english-from-1935", NO_LATIN, it("1935-01-01", described("english")))
row("in_latin", "latin-from-1935", None, it("1935-01-01", described("latin")))
row("in_latin", "both-from-1935", None, it("1935-01-01", described("english and latin")))
row("in_latin", "code-of-the-language", None, it("1935-01-01", described("la")))
row("in_latin", "silent-from-1935", (OPEN, "no-latin", "39.1"), it("1935-01-01", described("''")))
row("in_latin", "english-to-2011", NO_LATIN, it("2011-12-31", described("english")))
row("in_latin", "english-from-2012", None, it("2012-01-01", described("english")))
row("in_latin", "german-from-2012", NEITHER, it("2012-01-01", described("german")))
row("in_latin", "silent-from-2012", (OPEN, "no-latin-or-english", "39.2"), it("2012-01-01", described("''")))
row("in_latin", "alga-to-1957", None, it("1957-12-31", described("german", ", organism: alga")))
row("in_latin", "alga-from-1958", (BARS, "no-latin", "44.1"), it("1958-01-01", described("german", ", organism: alga")))
row("in_latin", "alga-from-2012", None, it("2012-01-01", described("english", ", organism: alga")))
row("in_latin", "fossil-to-1995", None, it("1995-12-31", described("german", ", fossil: true")))
row(
    "in_latin",
    "fossil-from-1996",
    (BARS, "no-latin-or-english", "43.1"),
    it("1996-01-01", described("german", ", fossil: true")),
)
row("in_latin", "fossil-in-english-from-1996", None, it("1996-01-01", described("english", ", fossil: true")))
row(
    "in_latin",
    "hybrid",
    None,
    it(
        "1950",
        f"name: Exemplum ×novum, act: new taxon, {PARENTS}, description: {{kind: description, language: english}}",
    ),
)
row("in_latin", "nude", None, it("1950", NUDE_SPECIES))

# Art. 40.1, 40.2, 40.4, 40.6, 40.7
NO_TYPE, UNTYPED = "type-not-indicated", f"name: Exemplum album, act: new taxon, {LATIN}"
row("type_indicated", "from-1958-none", (BARS, NO_TYPE, "40.1"), it("1958-01-01", f"{UNTYPED}, type-indicated: false"))
row("type_indicated", "from-1958-silent", (OPEN, NO_TYPE, "40.1"), it("1958-01-01", UNTYPED))
row("type_indicated", "to-1957-none", None, it("1957-12-31", f"{UNTYPED}, type-indicated: false"))
row("type_indicated", "from-1958-indicated", None, it("1958-01-01", f"{UNTYPED}, type-indicated: true"))
row("type_indicated", "from-1958-with-type", None, it("1958-01-01", SPECIES))
row(
    "type_indicated",
    "genus-from-1958",
    (BARS, NO_TYPE, "40.1"),
    it("1958-01-01", f"name: Exemplum, act: new taxon, rank: genus, {LATIN}, type-indicated: false"),
)
row(
    "type_indicated",
    "family-from-1958",
    None,
    it("1958-01-01", f"name: Exemplaceae, act: new taxon, rank: family, {LATIN}, type-indicated: false"),
)
row(
    "type_indicated",
    "hybrid-genus-from-1958",
    None,
    it(
        "1958-01-01",
        "name: ×Exemplovum, act: new taxon, rank: genus, parentage: Exemplum × Novum, type-indicated: false",
    ),
)
GATHERINGS = (BARS, "more-than-one-gathering-as-type", "40.2")
TWO = "kind: holotype, specimen: A, herbarium: TESN, gatherings: 2"
row("one_gathering", "two-from-1958", GATHERINGS, it("1958-01-01", typed(TWO)))
row("one_gathering", "two-to-1957", None, it("1957-12-31", typed(TWO)))
row("one_gathering", "one-from-1958", None, it("1958-01-01", typed(TWO.replace("2", "1"))))
row("one_gathering", "silent", None, it("1958-01-01", SPECIES))
PLATE = "kind: illustration, specimen: plate 3, word: typus"
row("specimen_for_type", "plate-from-2007", (BARS, "illustration-as-type", "40.4"), it("2007-01-01", typed(PLATE)))
row("specimen_for_type", "plate-to-2006", None, it("2006-12-31", typed(PLATE)))
row("specimen_for_type", "plate-of-an-alga", None, it("2007-01-01", typed(PLATE, ", organism: alga")))
row("specimen_for_type", "plate-of-a-fossil", None, it("2007-01-01", typed(PLATE, ", fossil: true")))
row("specimen_for_type", "specimen", None, it("2007-01-01", SPECIES))
WORD = "type-word-missing"
KEPT = "kind: holotype, specimen: A, herbarium: TESN"
row("type_named_as_such", "from-1990-silent", (OPEN, WORD, "40.6"), it("1990-01-01", typed(KEPT)))
row(
    "type_named_as_such",
    "from-1990-other-word",
    (BARS, WORD, "40.6"),
    it("1990-01-01", typed(f"{KEPT}, word: specimen visum")),
)
row("type_named_as_such", "from-1990-typus", None, it("1990-01-01", typed(f"{KEPT}, word: typus")))
row("type_named_as_such", "from-1990-in-spanish", None, it("1990-01-01", typed(f"{KEPT}, word: tipo")))
row(
    "type_named_as_such",
    "from-1990-in-the-words",
    None,
    it("1990-01-01", typed(f"{KEPT}, verbatim: 'Holotype: Orrin 7'")),
)
row("type_named_as_such", "to-1989", None, it("1989-12-31", typed(KEPT)))
HERBARIUM = "type-not-in-one-specified-herbarium"
row(
    "in_one_herbarium",
    "two-from-1990",
    (BARS, HERBARIUM, "40.7"),
    it("1990-01-01", typed("kind: holotype, specimen: A, herbaria: 2, word: typus")),
)
row(
    "in_one_herbarium",
    "none-from-1990",
    (BARS, HERBARIUM, "40.7"),
    it("1990-01-01", typed("kind: holotype, specimen: A, herbaria: 0, word: typus")),
)
row(
    "in_one_herbarium",
    "silent-from-1990",
    (OPEN, HERBARIUM, "40.7"),
    it("1990-01-01", typed("kind: holotype, specimen: A, word: typus")),
)
row("in_one_herbarium", "named-from-1990", None, it("1990-01-01", SPECIES))
row(
    "in_one_herbarium",
    "two-to-1989",
    None,
    it("1989-12-31", typed("kind: holotype, specimen: A, herbaria: 2, word: typus")),
)
row("in_one_herbarium", "illustration", None, it("1990-01-01", typed(PLATE)))
row(
    "in_one_herbarium",
    "genus",
    None,
    it(
        "1990-01-01",
        f"name: Exemplum, act: new taxon, rank: genus, {LATIN}, type: {{kind: name, specimen: Exemplum, word: typus}}",
    ),
)

# Art. 37.1-37.3
UNRANKED = f"name: 'Exemplum album [unranked] longum', act: new taxon, rank: unranked, {OTHER_TYPE}, {LATIN}"
FAMILY = f"name: Exemplaceae, act: new taxon, rank: unranked, {LATIN}"
BY_ENDING = (REMARK, "rank-by-ending", "37.2")
row("rank_indicated", "from-1953-none", (BARS, "rank-not-indicated", "37.1"), it("1953-01-01", UNRANKED))
row("rank_indicated", "to-1952-none", (REMARK, "unranked", "37.3"), it("1952-12-31", UNRANKED))
row("rank_indicated", "perhaps-1953", (OPEN, "rank-not-indicated", "37.1"), it("1952/1953", UNRANKED))
row("rank_indicated", "ending-from-1887", BY_ENDING, it("1887-01-01", FAMILY))
row("rank_indicated", "ending-to-1886", (REMARK, "unranked", "37.3"), it("1886-12-31", FAMILY))
row("rank_indicated", "stated", None, it("1953-01-01", SPECIES))

# Legitimacy: Art. 6.4, 27.2, 53.1-53.3
row("standing_given", "given", (BARS, "given", "6.4"), it("1900", f"{SPECIES}, standing: illegitimate"))
row("standing_given", "not-given", None, it("1900", SPECIES))
HOMONYM = (BARS, "later-homonym", "53.1")
ALBUM_B = f"name: Exemplum album, act: new taxon, {OTHER_TYPE}, {LATIN}"
UNDER_B = f"name: Exemplum album var. album, act: new taxon, {OTHER_TYPE}, {LATIN}, under: Exemplum album Tull"
REPEATED = (BARS, "species-name-illegitimate", "27.2")
row(
    "no_epithet_of_an_illegitimate_species",
    "under-a-homonym",
    REPEATED,
    before(SPECIES),
    after("1850", ALBUM_B),
    it("1900", UNDER_B),
)
row(
    "no_epithet_of_an_illegitimate_species",
    "under-a-legitimate-name",
    None,
    after("1850", ALBUM_B),
    it("1900", UNDER_B),
)
LOWER = f"name: Exemplum album f. longum, act: new taxon, {HOLOTYPE.replace('A,', 'C,')}, {LATIN}"
row("no_earlier_homonym", "species", HOMONYM, before(SPECIES), it("1900", ALBUM_B))
row("no_earlier_homonym", "earlier-is-nude", None, before(NUDE_SPECIES), it("1900", ALBUM_B))
row(
    "no_earlier_homonym",
    "earlier-is-illegitimate",
    HOMONYM,
    before(f"{SPECIES}, standing: illegitimate"),
    it("1900", ALBUM_B),
)
row("no_earlier_homonym", "same-type", None, before(SPECIES), it("1900", SPECIES))
row("no_earlier_homonym", "later-one", None, it("1900", ALBUM_B), after("1901", SPECIES))
row("no_earlier_homonym", "of-one-year", (OPEN, "later-homonym", "53.1"), it("1900", ALBUM_B), after("1900", SPECIES))
row(
    "no_earlier_homonym",
    "other-rank-in-one-species",
    (BARS, "later-homonym", "53.3"),
    before(VARIETY),
    it("1900", LOWER),
)
row(
    "no_earlier_homonym",
    "in-another-species",
    None,
    before(f"name: Exemplum novum var. longum, act: new taxon, {HOLOTYPE}, {LATIN}"),
    it("1900", VARIETY),
)
row(
    "no_earlier_homonym",
    "species-in-another-genus",
    None,
    before(f"name: Novum album, act: new taxon, {HOLOTYPE}, {LATIN}"),
    it("1900", ALBUM_B),
)
row(
    "no_earlier_homonym",
    "sections-and-subgenera",
    (BARS, "later-homonym", "53.3"),
    before(f"name: Exemplum subg. Alba, act: new taxon, {LATIN}"),
    it("1900", f"name: Exemplum sect. Alba, act: new taxon, {LATIN}"),
)
row(
    "no_earlier_homonym",
    "genus",
    HOMONYM,
    before(GENUS),
    it("1900", GENUS.replace("type-indicated: true", "type: {kind: name, specimen: Exemplum novum}")),
)
row(
    "no_earlier_homonym",
    "hybrid-genus",
    HOMONYM,
    before(GENUS),
    it("1900", f"name: ×Exemplum, act: new taxon, rank: genus, {LATIN}"),
)
TRIBE = f"name: Exempleae, act: new taxon, rank: tribe, {LATIN}"
row(
    "no_earlier_homonym",
    "subdivision-of-a-family",
    (REMARK, "subdivision-of-family", "53.1"),
    before(TRIBE),
    it("1900", f"{TRIBE}, type: {{kind: name, specimen: Novum}}"),
)
CONFUSABLE = "name: Exemplum albidum, act: ruled confusable, against: [Exemplum album]"
ALBIDUM = f"name: Exemplum albidum, act: new taxon, {OTHER_TYPE}, {LATIN}"
row(
    "not_ruled_confusable",
    "ruled",
    (BARS, "later-homonym", "53.2"),
    before(SPECIES),
    it("1900", ALBIDUM),
    after("1950", CONFUSABLE),
)
row("not_ruled_confusable", "the-earlier", None, before(ALBIDUM), it("1900", SPECIES))
row("not_ruled_confusable", "not-ruled", None, before(SPECIES), it("1900", ALBIDUM))

# Art. 52.1, 52.4
SUPERFLUOUS = (BARS, "superfluous", "52.1")
CITING = f"{LONGUM}, cites: [Exemplum album]"
row("not_superfluous", "cited", SUPERFLUOUS, before(SPECIES), it("1900", CITING))
row("not_superfluous", "type-shut-out", None, before(SPECIES), it("1900", f"{CITING}, excludes: [Exemplum album]"))
row("not_superfluous", "not-cited", None, before(SPECIES), it("1900", LONGUM))
row("not_superfluous", "same-specimen", SUPERFLUOUS, before(SPECIES), it("1900", LONGUM.replace(OTHER_TYPE, HOLOTYPE)))
row("not_superfluous", "cited-is-nude", None, before(NUDE_SPECIES), it("1900", CITING))
row("not_superfluous", "cited-is-illegitimate", None, before(f"{SPECIES}, standing: illegitimate"), it("1900", CITING))
row(
    "not_superfluous",
    "cited-of-another-rank",
    None,
    before(f"name: Exemplum novum var. album, act: new taxon, {HOLOTYPE}, {LATIN}"),
    it("1900", f"{LONGUM}, cites: [Exemplum novum var. album]"),
)
row("not_superfluous", "cited-of-the-same-work", None, it("1900", CITING, SPECIES))
ELSEWHERE = f"name: Novum album, act: new taxon, {HOLOTYPE}, {LATIN}"
TAKEN = SPECIES.replace("specimen: A", "specimen: C")
CITES_NOVUM = f"{LONGUM}, cites: [Novum album]"
row("not_superfluous", "epithet-free-in-its-genus", SUPERFLUOUS, before(ELSEWHERE), it("1900", CITES_NOVUM))
row("not_superfluous", "epithet-taken-in-its-genus", None, before(ELSEWHERE, TAKEN), it("1900", CITES_NOVUM))
row(
    "not_superfluous",
    "epithet-would-be-a-tautonym",
    None,
    before(f"name: Novum exemplum, act: new taxon, {HOLOTYPE}, {LATIN}"),
    it("1900", f"{LONGUM}, cites: [Novum exemplum]"),
)
row(
    "not_superfluous",
    "replacement-without-need",
    SUPERFLUOUS,
    before(SPECIES),
    it("1900", "name: Exemplum longum, act: replacement name, replaces: Exemplum album"),
)
RESCUED = (REMARK, "superfluous-yet-legitimate", "52.4")
LONGUM_MOVED = "name: Novum longum, act: new combination, basionym: Exemplum longum, cites: [Exemplum album]"
row("rescued_by_its_basionym", "combination", RESCUED, before(SPECIES), after("1850", LONGUM), it("1900", LONGUM_MOVED))
row(
    "rescued_by_its_basionym",
    "illegitimate-basionym",
    None,
    before(SPECIES),
    after("1850", CITING),
    it("1900", LONGUM_MOVED),
)

# Art. 14.1, 56.1
CONSERVED = "name: Exemplum longum, act: conservation, against: [Exemplum album]"
row(
    "conserved",
    "superfluous-but-conserved",
    (REMARK, "conserved", "14.1"),
    before(SPECIES),
    it("1900", CITING),
    after("1990", CONSERVED),
)
row("conserved", "not-conserved", None, it("1900", LONGUM))
row(
    "conserved",
    "proposal-not-published",
    None,
    it("1900", LONGUM),
    after("1990", CONSERVED, head="effectively-published: false"),
)
REJECTED = "name: Exemplum longum, act: rejection"
row("rejected", "rejected", (REMARK, "rejected", "56.1"), it("1900", LONGUM), after("1990", REJECTED))
row("rejected", "not-rejected", None, it("1900", LONGUM))

# Art. 6.10, 35.1, 48.1, 58.1, 41.4
row(
    "reclassified",
    "type-shut-out",
    (REMARK, "excludes-its-type", "48.1"),
    before(SPECIES),
    it("1900", f"{MOVED}, excludes: [Exemplum album], {LATIN}"),
)
row(
    "reclassified",
    "basionym-no-name",
    (REMARK, "basionym-not-valid", "6.10, 35.1"),
    before(NUDE_SPECIES),
    it("1900", f"{MOVED}, {LATIN}"),
)
row(
    "reclassified",
    "illegitimate-basionym",
    (REMARK, "basionym-illegitimate", "6.10, 58.1"),
    before(f"{SPECIES}, standing: illegitimate"),
    it("1900", MOVED),
)
USAGE = f"name: Novum album, act: usage, same-taxon-as: Exemplum album, {LATIN}, {HOLOTYPE}"
row(
    "reclassified",
    "epithet-taken-up-to-1952",
    (REMARK, "epithet-taken-up", "41.4"),
    before(SPECIES),
    it("1952-12-31", USAGE),
)
row("reclassified", "combination", None, before(SPECIES), it("1900", MOVED))


def rulings(code: Code) -> set[tuple[str, str, str]]:
    return {(str(one.effect), one.key, one.article) for one in code.acts["it.1"].rulings}


def keys_of(rule: str) -> set[tuple[str, str]]:
    """What a rule may say, by its rows: key and article."""
    return {(expected[1], expected[2]) for name, _, expected, _ in ROWS if name == rule and expected is not None}


@pytest.mark.parametrize(
    ("rule", "expected", "works"),
    [pytest.param(rule, expected, works, id=f"{rule}-{name}") for rule, name, expected, works in ROWS],
)
def test_rule(rule: str, expected: Expected, works: tuple[str, ...]) -> None:
    found = rulings(code_of(*works))
    if expected is not None:
        assert expected in found
    else:
        assert not {(key, article) for _, key, article in found} & keys_of(rule)


def legitimacy_rules() -> set[str]:
    """The public functions of the module that give a ruling."""
    functions = inspect.getmembers(legitimacy, inspect.isfunction)
    own = [(name, one) for name, one in functions if one.__module__ == legitimacy.__name__ and not name.startswith("_")]
    return {name for name, one in own if inspect.signature(one).return_annotation == "Ruling | None"}


def test_every_rule_has_a_row_and_speaks_in_it() -> None:
    spoken = {rule for rule, _, expected, _ in ROWS if expected is not None}
    silent = {rule for rule, _, expected, _ in ROWS if expected is None}
    rules = {one.__name__ for one in (*VALIDITY, *VALIDITY_UNDER_A_NAME)} | legitimacy_rules()
    assert len(rules) >= 37
    assert spoken == silent == rules


@pytest.mark.parametrize("rule", VALIDITY, ids=lambda one: one.__name__)
def test_the_row_is_that_of_the_function(rule: Any) -> None:
    """What stands in the judgement is what the function of that name says."""
    for name, _, expected, works in ROWS:
        if name == rule.__name__ and expected is not None:
            code = code_of(*works)
            said = rule(code.inquiry, code.corpus.acts["it.1"])
            assert said is not None and (str(said.effect), said.key, said.article) == expected


def test_effects_make_the_verdict() -> None:
    """Any bar is not valid or not legitimate, else any open question leaves it undetermined (all rows)."""
    for rule, name, _, works in ROWS:
        one = code_of(*works).acts["it.1"]
        told = (rule, name)
        effects = {ruling.effect for ruling in one.rulings}
        if one.validity is Validity.NOT_VALID:
            assert Effect.BARS in effects and one.legitimacy is None, told
        elif one.legitimacy is Legitimacy.ILLEGITIMATE:
            assert Effect.BARS in effects, told
        else:
            assert Effect.BARS not in effects, told
        if one.validity is Validity.UNDETERMINED or one.legitimacy is Legitimacy.UNDETERMINED:
            assert Effect.OPEN in effects, told
            assert all(ruling.look_up for ruling in one.open()), told


ACROSS = [
    pytest.param("1952/1953", f"{MOVED}, basionym-reference: partial", "41.5", id="reference-to-the-basionym"),
    pytest.param("1952/1953", UNRANKED, "37.1", id="rank"),
    pytest.param("1911/1912", f"{RADIX}, with-species: true", "20.2", id="technical-term"),
    pytest.param("1952/1953", ALTERNATIVE, "36.3", id="alternative-names"),
    pytest.param("1934/1935", described("english"), "39.1", id="latin"),
    pytest.param("2011/2012", described("english"), "39.1", id="latin-or-english"),
    pytest.param("1957/1958", f"{UNTYPED}, type-indicated: false", "40.1", id="type"),
    pytest.param("1957/1958", typed(TWO), "40.2", id="gatherings"),
    pytest.param("1989/1990", typed(f"{KEPT}, word: specimen visum"), "40.6", id="word-for-the-type"),
    pytest.param("1989/1990", typed("kind: holotype, specimen: A, herbaria: 2, word: typus"), "40.7", id="herbarium"),
    pytest.param("2006/2007", typed(PLATE), "40.4", id="plate"),
]


@pytest.mark.parametrize(("date", "act", "article"), ACROSS)
def test_a_date_across_the_limit_leaves_the_verdict_open(date: str, act: str, article: str) -> None:
    """The condition is not met, and whether it was asked for then depends on a date that is not known to the year."""
    older = (before(SPECIES),) if "basionym" in act else ()
    one = code_of(*older, it(date, act)).acts["it.1"]
    assert (OPEN, article) in {(str(ruling.effect), ruling.article) for ruling in one.rulings}
    assert one.validity is Validity.UNDETERMINED


def test_nothing_is_said_twice() -> None:
    one = code_of(it("1900", f"{NO_BASIONYM}, basionym-reference: none")).acts["it.1"]
    assert len({ruling.key for ruling in one.rulings}) == len(one.rulings)


def test_an_epithet_taken_up_from_1953_on_is_a_new_taxon_for_the_right_reason() -> None:
    """ICN Art. 41.4: only before 1953; Exemplum album is a valid name all the same."""
    one = code_of(before(SPECIES), it("1953-01-01", USAGE)).acts["it.1"]
    assert str(one.treated_as) == "new taxon"
    assert not any("is not validly published" in ruling.reason for ruling in one.rulings)


def test_a_combination_on_a_name_that_27_2_bars_needs_a_description() -> None:
    """ICN Art. 27.2, 6.10, 38.1: var. album is no name, so Novum album, undescribed, is a nomen nudum."""
    raised = f"name: Novum album, act: change of rank, basionym: Exemplum album var. album, {NUDE}"
    works = (before(SPECIES), after("1850", ALBUM_B), published("made", "Zell", "1900", UNDER_B), it("1910", raised))
    assert code_of(*works).acts["it.1"].validity is Validity.NOT_VALID


def test_a_later_rejection_makes_no_superfluous_name_legitimate() -> None:
    """ICN Art. 6.4, 52.1: illegitimate when published; only conservation, protection or sanction could help."""
    gone = after("1990", "name: Exemplum album, act: rejection")
    assert code_of(before(SPECIES), it("1900", CITING)).acts["it.1"].legitimacy is Legitimacy.ILLEGITIMATE
    assert code_of(before(SPECIES), it("1900", CITING), gone).acts["it.1"].legitimacy is Legitimacy.ILLEGITIMATE


def test_a_variety_stands_in_the_species_that_is_a_name() -> None:
    """ICN Art. 35.1: Exemplum album Vane was a nomen nudum; Tull published the name before the variety was named."""
    nude = before(f"name: Exemplum album, act: new taxon, {NUDE}")
    one = code_of(nude, after("1850", SPECIES), it("1900", VARIETY)).acts["it.1"]
    assert one.validity is Validity.VALID
