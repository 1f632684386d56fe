"""The small words that tie a description together, in six languages (common practice, no source); folded."""

from __future__ import annotations

from collections.abc import Mapping

from auctorum.characters.prose.items import Is

_SIDES = {
    "lower": """below beneath underneath abaxially dorsally infra subtus inferne abaxialmente dessous unterseits unten
        sotto""",
    "upper": "above adaxially ventrally supra superne adaxialmente dessus oberseits oben sopra",
}
SIDE_OF: Mapping[str, str] = {word: side for side, words in _SIDES.items() for word in words.split()}
"""The side of a flat organ that an adverb names, upper or lower."""

BOTH = ("utrinque", "both")
_SORTS = {
    Is.AT: """at near towards toward in along around round throughout below above beneath within inside outside from
        on upon apud prope sub en na nas nos am auf vers sur dans au aux alla allo agli alle nella
        nel dalla""",
    Is.OF: "of de del da do du des von",
    Is.PER: "per por pro je",
    Is.WITH: "with bearing having including has have cum con com mit avec",
    Is.WITHOUT: "without absence lacking wanting destitute no sine sin sem ohne sans nullus nullis nulla",
    Is.ABSENT: """absent missing obsolete none nil deest desunt absens ausente ausentes nul nuls nulle nulles
        fehlend""",
    Is.EXCEPT: "except excepting save excepto praeter ausser sauf",
    Is.NOT: "not neither nor non nec neque haud nao nicht ne",
    Is.TO: "to through ad bis hasta",
    Is.OR: "or vel aut seu sive oder ou o u",
    Is.AND: "and but et atque ac sed y e und",
    Is.THEY: "they it these",
    Is.VERSUS: "versus vs contra",
    Is.UNCERTAIN: """probably perhaps possibly apparently presumably seemingly maybe fortasse forsan probabiliter
        probablement probablemente provavelmente wohl vermutlich""",
    Is.SMALL: """the a an its their each is are being be was were those this which that also measuring measures
        about nearly almost rather as ones one numerous many few several numerosi numerosae numerosa plures pauci paucae
        multi multae numerosos numerosas muitos muitas muchos muchas zahlreich nombreux nombreuses by eius ejus
        el la los las le les der die das il lo os um uma una un""",
}
SORT_OF: Mapping[str, Is] = {word: sort for sort, words in _SORTS.items() for word in words.split()}
"""What a small word does in a description."""

LACKING = frozenset({"wanting", "lacking", "destitute"})
"""Words that deny what stands before them at the end of a clause, and what follows them elsewhere."""

_FACING = "facing faces aspect aspects exposed exposure spectantes spectantibus"
FACING = frozenset(_FACING.split())
"""Words before the directions to which a place of growth looks."""

_REMARKS = """
    etymology discussion remark remarks note notes obs observation observations uses conservation affinities
    relationships similar lookalike lookalikes comparison confusion key etymologie etimologia etymologia typification
"""
REMARKS = frozenset(_REMARKS.split())
"""Words that open a paragraph which describes nothing, or another plant."""

_CITATIONS = """
    type types typus holotype holotypus specimens material illustration illustrations icon icones figure fig vernacular
    synonyms phenology distribution
"""
CITATIONS = frozenset(_CITATIONS.split())
"""Words that open a sentence which cites and describes nothing."""

DESCRIPTIONS = frozenset({"description", "descriptio", "descripcion", "descricao", "beschreibung", "descrizione"})
"""Words that open the description again."""
