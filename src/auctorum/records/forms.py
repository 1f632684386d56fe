"""Forms to fill in: a new knowledge base, a new literature file. Each is a good record once filled."""

from __future__ import annotations

from auctorum.records import schema
from auctorum.records.rows import FILLED_IN

_SETTINGS = """\
# What this knowledge base is about. Every key is explained in the JSON Schema: auctorum new schema kb
title: {title}
description:              # what it covers, in a paragraph
focal-taxa: []            # the names at issue, shown first: [Exemplum album var. longum]
code-edition: Shenzhen 2018
locality-precision: 0.1   # degrees; coordinates are cut to this before they leave your machine
editors: []
licence:                  # of the data, such as CC0-1.0
cautions:
- Many wild plants are protected. Ask for the permits that local law wants before you touch, pick or dig.
- Exact localities are withheld from everything that is published.
- Cliffs, tides and weather kill. Tell somebody where you go, and turn back early.
- Sap, spines and seeds may hurt. Never eat or use a plant on the strength of a determination.
"""

_CHARACTERS = """\
# The characters of your plants, in the order of a description. Kinds: measure, count, ratio, angle,
# ordered (states along a spectrum), nominal, presence. See also: auctorum new schema characters
characters:
- name: leaf length
  structure: leaf
  property: length
  kind: measure
  unit: mm
  how: Longest leaf of a flowering stem, from the base of the blade to its tip.
- name: petal number
  structure: petal
  property: count
  kind: count
- name: leaf hairiness
  structure: leaf
  property: surface
  kind: ordered
  states:
  - {name: glabrous, words: [hairless, glaber]}
  - {name: sparsely hairy, words: [sparsely pubescent]}
  - {name: densely hairy, words: [densely pubescent, tomentose]}
"""

_CRITERION = """\
# A working definition: one trait decides, others support it. Copy to a name without .example.
id: long-leaf
title: Long-leaved form
taxon: Exemplum album var. longum
otherwise: Exemplum album var. album
decisive: {character: leaf length, at-least: 25 mm}
supporting:
- {character: leaf hairiness, value: densely hairy}
"""

_LITERATURE = """\
# One publication, one file. Names of keys: auctorum new schema literature
work:
  id: {work}
  type: article-journal       # or book, chapter, thesis, report ...
  author: [{{family: , given: }}]
  issued:                     # date printed on it: 1904, 1904-06, 1904~
  effective:                  # date of effective publication, where it differs
  title:
  container-title:            # journal, or the book that a chapter stands in
  volume:
  page:
covers: []                    # taxa it sets out to treat in full: of these it can be silent
cites: []                     # ids of the works it cites: where most figures are theirs, they count as repeated
acts:
# - name: Exemplum album var. longum
#   rank: variety
#   act: new taxon            # or: new combination, change of rank, replacement name,
#                             # type designation, variant spelling ...
#   page: 107
#   printed:                  # the name with its authors as the work prints it
#   type: {{kind: holotype, specimen: Orrin 212, herbarium: XX, word: holotypus}}
#   description: {{language: latin, kind: diagnosis}}    # none, if nothing describes it
#   basionym:                 # for a new combination or change of rank; replaces: for a replacement name
#   basionym-reference: full  # partial | none: whether author, place, page and date are given
#   cites: []                 # older names whose types it takes in
#   accepted: true            # false, if the author does not accept the name
#   ascribed-to:              # to whom the work ascribes the name, if not to its authors
treatments:
# - taxon: Exemplum album var. longum
#   status: accepted          # synonym | misapplied | doubtful
#   under: Exemplum album
#   synonyms: []
#   basis: own material       # compiled | unstated
#   follows: []               # ids of works whose figures it repeats
#   page: 107
#   traits:
#   - {{character: leaf length, verbatim: "leaves 22-34(-41) mm long", page: 107}}
"""


def knowledge_base(title: str) -> dict[str, str]:
    """Relative path -> text of the files of a new knowledge base."""
    quoted = "'" + title.replace("'", "''") + "'"
    return {
        "kb.yaml": _SETTINGS.format(title=quoted),
        "characters.yaml": _CHARACTERS,
        "criteria/long-leaf.yaml.example": _CRITERION,
        "literature/README": "One YAML file for each publication read; start one with `auctorum new literature ID`.\n",
        "sites.csv": _header(schema.Site),
        "specimens.csv": _header(schema.Specimen, "leaf length [mm]", "petal number", "leaf hairiness"),
        "labels.csv": _header(schema.Label, "leaf length [mm]"),
    }


def literature(work: str) -> str:
    """Text of a new literature file."""
    return _LITERATURE.format(work=work)


# Columns that a table of plants may have and a new one is not given: what sites.csv tells better, and rare ones.
_NOT_OFFERED = (
    "verbatimEventDate", "establishmentMeans", "locality", "decimalLatitude", "decimalLongitude",
    "coordinateUncertaintyInMeters",
)  # fmt: skip


def _header(record: type, *measurements: str) -> str:
    without = FILLED_IN if record is schema.Site else (*FILLED_IN, *_NOT_OFFERED)
    fields = [name for name in record.__dataclass_fields__ if name not in without]  # type: ignore[attr-defined]
    return ",".join([*fields, *measurements]) + "\n"
