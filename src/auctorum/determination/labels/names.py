"""Which name a label means, and what taxon that name stands for; the one place where labels meet the matcher."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from auctorum.circumscription.phrases import counted, listed
from auctorum.corpus.model import Corpus, NameEntry
from auctorum.corpus.resolve import NeverAccepted, called, find_taxon
from auctorum.determination.labels.model import How, Matched, Meaning
from auctorum.matching.compare import CAPITAL, FORMAL, HYBRID, MARK, NO_RANK, RANK, SPACE, Difference
from auctorum.matching.index import NameIndex
from auctorum.matching.match import Candidate, match
from auctorum.names.fold import fold
from auctorum.names.format import format_name, words
from auctorum.names.parse import parse
from auctorum.problems import AuctorumError
from auctorum.records.schema import Status

_AS_NEAR = 0.03  # of the score, by which a name may be behind the first of several and still be one of them
_LOOKED_AT = 8  # candidates of one label
_NAMED = 2  # works named behind `sec.`; the rest are counted
_OPEN, _CLOSE = "‘'“\"‚„", "’'”\"‘“"  # signs that a cultivar epithet stands between (ICNCP; from memory)
_CROSS = frozenset("×xX")
_FORMS = {
    CAPITAL: "capitals",
    SPACE: "spaces or hyphens",
    MARK: "accents",
    RANK: "the rank",
    NO_RANK: "the rank, which is left out",
    HYBRID: "the hybrid sign",
}


def matched(corpus: Corpus, index: NameIndex, label: str) -> Matched:
    """The name or names that the label means, and what differs; nothing is guessed where none is near enough."""
    found = match(label, index, limit=_LOOKED_AT)
    if found.verdict == "none" or not found.candidates:
        near = tuple(format_name(one.name) for one in found.candidates if one.score > 0)
        return Matched(How.NOT_FOUND, set_aside=found.set_aside, near=near, why=found.why)
    several = _as_near(found.candidates) if found.best is None else (found.best,)
    first = several[0]
    spelt = tuple(_in_words(one) for one in first.differences if one.kind not in FORMAL)
    form = tuple(dict.fromkeys(_FORMS.get(one.kind, one.kind) for one in first.differences if one.kind in FORMAL))
    if not spelt and found.best is not None and _is_variant(label, corpus.names[first.id]):
        spelt = (f"another spelling of {called(corpus, first.id)}",)
    how = How.SEVERAL if found.best is None else How.MISSPELT if spelt else How.RIGHT
    return Matched(how, tuple(one.id for one in several), spelt, form, found.set_aside)


def _as_near(candidates: Sequence[Candidate]) -> tuple[Candidate, ...]:
    """The candidates that are as near as the first; two at least."""
    near = tuple(one for one in candidates if candidates[0].score - one.score <= _AS_NEAR)
    return near if len(near) > 1 else tuple(candidates[:2])


def _in_words(one: Difference) -> str:
    """`um for on`, `n left out`, `m too many`: the letters of the label first."""
    if not one.label_part:
        return f"{one.name_part} left out"
    return f"{one.label_part} for {one.name_part}" if one.name_part else f"{one.label_part} too many"


def _is_variant(label: str, entry: NameEntry) -> bool:
    """Whether the label is one of the recorded other spellings of the name."""
    said = fold(label)
    return fold(words(entry.name)) not in said and any(fold(words(one)) in said for one in entry.variants)


def untestable(corpus: Corpus, label: str, found: Matched) -> str:
    """Why plants under such a label cannot be tested, whatever name is in it; "" where they can."""
    if _names_cultivar(label):
        return "the label names a cultivar: a selected plant may lie outside what is written of wild ones"
    if _names_hybrid(label) or any(map(_is_hybrid, (corpus.names[one] for one in found.names))):
        return "the label names a hybrid: what is stated of one parent does not bind it"
    return "" if found.names else _why_not_found(corpus, label, found)


def _names_cultivar(label: str) -> bool:
    opened = False
    for word in label.split():
        opened = opened or (len(word) > 1 and word[0] in _OPEN)
        if opened and word.rstrip(".,;")[-1:] in _CLOSE:
            return True
        if word in ("cv.", "cv"):
            return True
    return False


def _names_hybrid(label: str) -> bool:
    return "×" in label or not _CROSS.isdisjoint(label.split())


def _is_hybrid(entry: NameEntry) -> bool:
    name = entry.name
    return name.genus_hybrid or name.species_hybrid or any(one.hybrid for one in (*name.lower, *name.divisions))


def _why_not_found(corpus: Corpus, label: str, found: Matched) -> str:
    genus = _genus_of(label)
    if not genus:
        return f"no name was found on it ({found.why})" if found.why else "no name was found on it"
    known = {fold(entry.name.genus) for entry in corpus.names.values()}
    begins = fold(genus.rstrip("."))
    if begins not in known and not (genus.endswith(".") and any(one.startswith(begins) for one in known)):
        return f"{genus} is no genus of the knowledge base: it is another genus, or the name is a vernacular one"
    near = f"; nearest: {'; '.join(found.near[:2])}" if found.near else ""
    return f"{found.why or 'nothing is near enough'}{near}"


def _genus_of(label: str) -> str:
    """The first word, where the label can be read as a name at all."""
    try:
        return parse(label).name.genus
    except AuctorumError:
        return ""


def meaning(corpus: Corpus, found: Matched) -> Meaning:
    """The taxon that the name stands for; several names that stand for one taxon mean it."""
    each = [_meaning(corpus, name) for name in found.names]
    taxa = dict.fromkeys(one.taxon for one in each)
    if len(taxa) > 1:
        told = listed(format_name(corpus.names[name].name) for name in found.names)
        return Meaning(None, why=f"the label may mean {told}, which are not one taxon")
    if len(each) > 1 and each[0].taxon is not None:
        taxon = corpus.taxa[each[0].taxon]
        standing = f"The label fits {counted(len(each), 'name')} of one taxon, {called(corpus, taxon.current)}."
        return Meaning(taxon.id, standing)
    return each[0]


def _meaning(corpus: Corpus, name: str) -> Meaning:
    entry = corpus.names[name]
    if not entry.name.species:
        return Meaning(None, why="the label names no species")
    accepting, sinking = _views(corpus, entry.group)
    if len(sinking) > len(accepting):
        return _sunk(corpus, name, sinking, len(accepting) + len(sinking))
    try:
        taxon = find_taxon(corpus, name)
    except NeverAccepted as error:
        return Meaning(None, why=str(error))
    current = corpus.names[taxon.current]
    if taxon.current == name or current.autonym_of == name or entry.autonym_of == taxon.current:
        return Meaning(taxon.id)
    latest = corpus.treatments[taxon.treatments[-1]].work.byline
    return Meaning(taxon.id, f"{called(corpus, name)} is a synonym of {called(corpus, taxon.current)} (sec. {latest}).")


def _views(corpus: Corpus, group: str) -> tuple[frozenset[str], dict[str, str]]:
    """The works that accept the type, and of those that sink it, by date, the name into which each does."""
    accepting: set[str] = set()
    sinking: dict[str, str] = {}
    for one in corpus.by_group.get(group, ()):
        own = corpus.names[one.name].group == group
        if own and one.status is Status.ACCEPTED:
            accepting.add(one.work.id)
        elif own and one.status is Status.SYNONYM and one.accepted_as is not None:
            sinking[one.work.id] = one.accepted_as
        elif one.status is Status.ACCEPTED and any(corpus.names[each].group == group for each in one.synonyms):
            sinking[one.work.id] = one.name
    return frozenset(accepting), {work: into for work, into in sinking.items() if work not in accepting}


def _sunk(corpus: Corpus, name: str, sinking: dict[str, str], whole: int) -> Meaning:
    """The taxon that most of the works sink the name into; of as many the one of the latest."""
    into: dict[str, list[str]] = {}
    for work, target in sinking.items():
        try:
            into.setdefault(find_taxon(corpus, target).id, []).append(work)
        except NeverAccepted:
            continue
    if not into:
        return Meaning(None, why=f"{called(corpus, name)} is sunk, and no work describes what it is sunk into")
    order = {work: place for place, work in enumerate(corpus.works)}
    taxon = max(into, key=lambda one: (len(into[one]), max(order[work] for work in into[one])))
    works = into[taxon]
    told = f"{called(corpus, name)} is a synonym of {called(corpus, corpus.taxa[taxon].current)}"
    share = "" if len(works) == whole else f"; so {len(works)} of {counted(whole, 'work')}"
    return Meaning(taxon, f"{told} (sec. {_bylines(corpus, works)}{share}).")


def _bylines(corpus: Corpus, works: Iterable[str]) -> str:
    """The latest works first, two of them by name: `Yarrend 2022, Wethercote 1958 and 1 other`."""
    latest = [corpus.works[work].byline for work in works][::-1]
    rest = len(latest) - _NAMED
    named = latest[:_NAMED]
    return listed([*named, f"{rest} other{'' if rest == 1 else 's'}"] if rest > 0 else named)
