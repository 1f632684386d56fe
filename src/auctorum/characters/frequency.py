"""Words of frequency, and how often what they cover is said to occur (common practice, no source)."""

from __future__ import annotations

from collections.abc import Mapping

from auctorum.characters.figures import Line
from auctorum.characters.values import Modality
from auctorum.characters.wording import phrases

_FREQUENCY = {
    Modality.USUALLY: "usually,mostly,generally,commonly,normally,typically,mainly,almost always,plerumque,vulgo,"
    "saepius,saepissime,most often,mostly always,chiefly,as a rule,in general,usu,usualmente,generalmente,"
    "comunmente,geralmente,normalmente,meist,meistens,gewohnlich,generalement,ordinairement,habituellement,"
    "le plus souvent,principally,predominantly,mostly commonly,most commonly,ut plurimum",
    Modality.OFTEN: "often,frequently,saepe,not rarely,haud raro,non raro,not uncommonly,not infrequently,"
    "a menudo,frecuentemente,frequentemente,muitas vezes,oft,haufig,souvent,frequemment,frequenter",
    Modality.SOMETIMES: "sometimes,at times,interdum,nonnunquam,quandoque,aliquando,less often,in some plants,"
    "a veces,algunas veces,as vezes,por vezes,manchmal,bisweilen,zuweilen,parfois,quelquefois,subinde",
    Modality.OCCASIONALLY: "occasionally,less commonly,now and then,here and there,hinc inde,less frequently,"
    "ocasionalmente,ocasional,gelegentlich,occasionnellement",
    Modality.RARELY: "rarely,very rarely,more rarely,seldom,exceptionally,raro,rarius,rarissime,scarcely ever,"
    "infrequently,uncommonly,rare,rarement,raramente,rara vez,selten,very seldom,extremely rarely,but rarely,"
    "imo,in extreme cases",
    Modality.ALWAYS: "always,constantly,invariably,semper,siempre,sempre,immer,toujours",
    Modality.NEVER: "never,nunquam,numquam,nunca,nie,niemals",
}
MODALITY: Mapping[tuple[str, ...], Modality] = {
    tuple(phrase.split()): modality for modality, several in _FREQUENCY.items() for phrase in several.split(",")
}
_TABLE = phrases(*(" ".join(words) for words in MODALITY))


def frequency(line: Line, at: int) -> tuple[Modality | None, int]:
    """How often the words that start here say (the longest: `less often`), and the place after them; None and `at`."""
    for words in _TABLE.get(line.text(at), ()):
        if all(line.text(at + step) == word for step, word in enumerate(words)):
            return MODALITY[words], at + len(words)
    return None, at
