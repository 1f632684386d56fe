"""Names whose publication or type is not recorded, or known in part only."""

from __future__ import annotations

import re
from collections.abc import Iterator

from auctorum.circumscription.gaps.ground import Ground
from auctorum.circumscription.gaps.model import Gap, GapKind
from auctorum.circumscription.gaps.rank import NAME, PARTLY_KNOWN, rank
from auctorum.circumscription.gaps.words import pages
from auctorum.circumscription.phrases import counted
from auctorum.corpus.model import Act, Corpus
from auctorum.corpus.resolve import called
from auctorum.names.ranks import GENUS, rank_named
from auctorum.problems import NOWHERE
from auctorum.records.schema import ActKind, TypeKind, TypeRecord

_LOST = re.compile(r"\b(?:lost|destroyed|burnt|missing|untraced|not found|not traced|not located)\b", re.IGNORECASE)
_OF_TYPE = re.compile(r"type|specimen|sheet|herbarium", re.IGNORECASE)


def names(ground: Ground) -> Iterator[Gap]:
    """One gap for each name without protologue, and for each type that is not or only partly known.

    Whether a name is validly published is for the rules of the Code to ask, and asked elsewhere; a name that plainly
    is none needs no type. A type is asked for where the name that first had it was published.
    """
    for name, entry in ground.corpus.names.items():
        if entry.is_autonym or not ground.asks(name):
            continue
        act = ground.corpus.publishing_act(name)
        if act is None:
            yield _without_protologue(ground, name)
        elif entry.group == name and not act.is_plainly_no_name and rank_named(entry.rank) >= GENUS:
            yield from _of_type(ground, name, act)


def _without_protologue(ground: Ground, name: str) -> Gap:
    title = called(ground.corpus, name)
    works, use = ground.use_of_names((name,))
    using = ground.using(name)
    bylines = (
        f"{counted(works, 'work')} use{'s' if works == 1 else ''} the name" if works else "The name is referred to"
    )
    return Gap(
        GapKind.NAME,
        rank(NAME, use, focal=ground.focal(ground.corpus.names[name].group)),
        question=f"{title}: where was it published?",
        why=f"{bylines}, and no act recorded here publishes it.",
        todo="Look up its protologue, and record the act in a file of literature/ for the work that published it.",
        names=(name,),
        works=tuple(dict.fromkeys(one.work.id for one in using)),
        place=using[0].record.place if using else NOWHERE,
    )


def _of_type(ground: Ground, name: str, act: Act) -> Iterator[Gap]:
    corpus = ground.corpus
    chosen = _type(corpus, name)
    if chosen is None:
        lack, why, todo = "what is its type?", "No act recorded here names a type for it", "for a type"
    else:
        act, type_ = chosen
        found = _partly_known(act, type_)
        if found is None:
            return
        lack, why, todo = found
    group = corpus.groups.get(name, (name,))
    works, use = ground.use_of_names(group)
    where = pages(act.work, [act.record.page])
    yield Gap(
        GapKind.NAME,
        rank(NAME if chosen is None else PARTLY_KNOWN, use, focal=ground.focal(name)),
        question=f"{called(corpus, name)}: {lack}",
        why=f"{why}, and {counted(works, 'work')} use{'s' if works == 1 else ''} "
        f"{'this name' if len(group) == 1 else 'names on this type'}.",
        todo=f"Look up {where} {todo}, and complete `type:` there, or record a later designation.",
        names=(name,),
        works=(act.work.id,),
        place=act.record.place,
    )


def _type(corpus: Corpus, name: str) -> tuple[Act, TypeRecord] | None:
    """The type that holds for the group of a name: a conserved or designated one, else that of an act that publishes.

    None where no act of any name in the group gives one.
    """
    acts = [act for one in corpus.groups.get(name, (name,)) for act in corpus.acts_of(one)]
    given = [(act, act.record.type) for act in acts if act.record.type is not None]
    later = [(act, type_) for act, type_ in given if act.chooses_type or act.record.act is ActKind.CONSERVATION]
    settling = [(act, type_) for act, type_ in later if type_.kind is not TypeKind.EPITYPE]
    published = [(act, type_) for act, type_ in given if act.establishes]
    return next(iter(settling or published or given), None)


def _partly_known(act: Act, type_: TypeRecord) -> tuple[str, str, str] | None:
    """What is asked, why, and what to look for; None where the type is known in full."""
    specimen = type_.kind not in (TypeKind.NAME, TypeKind.ILLUSTRATION)
    if not type_.specimen:
        thing = "specimen" if specimen else "name" if type_.kind is TypeKind.NAME else "figure"
        return f"which {thing} is its {type_.kind}?", f"The {type_.kind} is given without {thing}", f"for the {thing}"
    if _said_to_be_lost(act, type_):
        return (
            "what stands for its lost type?",
            f"The {type_.kind} {type_.specimen} is said to be lost, and no later designation is recorded",
            "for duplicates, and later works for a neotype or lectotype",
        )
    if type_.kind is TypeKind.SYNTYPE:
        return "which syntype is its type?", "It rests on syntypes, and no lectotype is recorded", "for a lectotype"
    if specimen and not type_.herbarium:
        told = f"The {type_.kind} {type_.specimen} is given without herbarium"
        return f"which herbarium keeps its {type_.kind}?", told, "for the herbarium"
    return None


def _said_to_be_lost(act: Act, type_: TypeRecord) -> bool:
    notes = (part for part in re.split(r"[.;]", act.record.note) if _OF_TYPE.search(part))
    return any(_LOST.search(part) for part in (type_.verbatim, *notes))
