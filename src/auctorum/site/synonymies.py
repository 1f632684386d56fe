"""The synonymy of a taxon for its page: over all works, and as each work has it that places the type.

The words are those of `nomenclature.synonymy_text`; here names, places and works in them become links.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from functools import partial

from auctorum.corpus.model import Taxon
from auctorum.names.format import format_name
from auctorum.nomenclature.cited import Cited, Source
from auctorum.nomenclature.history import Event
from auctorum.nomenclature.standing import abbreviations
from auctorum.nomenclature.synonymy import Misapplication, Synonymy, synonymy
from auctorum.nomenclature.synonymy_text import Line, lines
from auctorum.records.schema import Status
from auctorum.site.answers import Answers
from auctorum.site.code_parts import SynonymyLine, SynonymyView
from auctorum.site.paths import slug
from auctorum.site.words import Rich, Run

OVER_ALL = "over all works"


def synonymy_views(answers: Answers, taxon: Taxon) -> tuple[SynonymyView, ...]:
    """The views to choose from: over all works first, then one for each work that keeps or sinks the type, by date."""
    over_all = _view(answers, _asked(answers, taxon.current, ""), "")
    return (over_all, *_of_works(answers, taxon))


def _of_works(answers: Answers, taxon: Taxon) -> Iterator[SynonymyView]:
    """One view a work: of what it accepts, or of the taxon that it sinks the type into."""
    kept = {answers.corpus.treatments[one].work.id: answers.corpus.treatments[one] for one in taxon.treatments[::-1]}
    sunk: dict[str, Event] = {}
    for event in answers.history(taxon.group).events:
        if event.status == Status.SYNONYM and event.target is not None and event.work not in kept:
            sunk.setdefault(event.work, event)
    for work in sorted({*kept, *sunk}, key=lambda work: (answers.corpus.works[work].date, work)):
        if work in kept:
            yield _view(answers, _asked(answers, kept[work].name, work), work)
        else:
            target = sunk[work].target or ""
            remark = (*answers.work(work), Run(" sinks it into "), *answers.name(target), Run(", of which it has:"))
            yield _view(answers, _asked(answers, target, work), work, remark)


def _asked(answers: Answers, name: str, work: str) -> Synonymy:
    part = answers.extracts.of(answers.corpus.names[name].group, work)
    return synonymy(part, name, [work] if work else None, partial(abbreviations, answers.code))


def _view(answers: Answers, found: Synonymy, work: str, remark: Rich = ()) -> SynonymyView:
    told = tuple(_linked_lines(answers, found))
    label = answers.bylines[work] if work else OVER_ALL
    return SynonymyView(slug(f"sec {work or 'all works'}"), label, remark, told[:-1], told[-1].text)


def _linked_lines(answers: Answers, found: Synonymy) -> Iterator[SynonymyLine]:
    """The lines of a synonymy in the order of print; what each is about comes in the same order."""
    names = iter((found.accepted, *found.homotypic, *(one for block in found.heterotypic for one in block.names)))
    wrong, blocks = iter(found.misapplied), iter(found.heterotypic)
    for line in lines(found):
        rich = tuple(Run(text, latin) for text, latin in line.runs)
        if line.what in ("accepted", "homotypic", "heterotypic"):
            rich = _cited(answers, line, rich, next(names))
        elif line.what == "misapplied":
            rich = _misapplied(answers, line, rich, next(wrong))
        elif line.what == "according-to":
            rich = _sources(answers, line, rich, next(blocks).according_to)
        elif line.what == "sec":
            rich = _sources(answers, line, rich, found.sec)
        yield SynonymyLine(line.what, line.depth, rich)


def _cited(answers: Answers, line: Line, rich: Rich, one: Cited) -> Rich:
    """The name as a link to its page, its place of publication as one to the work."""
    words = format_name(one.name.bare if one.is_designation else one.name)
    rich = _link(rich, line.text, words, answers.name_paths[one.id])
    return _link(rich, line.text, one.place, answers.work_paths[one.work]) if one.place else rich


def _misapplied(answers: Answers, line: Line, rich: Rich, wrong: Misapplication) -> Rich:
    rich = _link(rich, line.text, format_name(wrong.name), answers.name_paths[wrong.id])
    return _sources(answers, line, rich, wrong.according_to)


def _sources(answers: Answers, line: Line, rich: Rich, sources: Iterable[Source]) -> Rich:
    """The works behind `sec.` as links; they stand there in the order of `sources`."""
    place = max(line.text.rfind("[sec. "), 0)
    for source in sources:
        rich = _link(rich, line.text, str(source), answers.work_paths[source.work], place)
        place = line.text.find(str(source), place) + len(str(source))
    return rich


def _link(rich: Rich, text: str, words: str, href: str, after: int = 0) -> Rich:
    """`rich`, whose words are `text`, with the first stretch from `after` on that reads `words` as a link."""
    start = text.find(words, after)
    end = start + len(words)
    if start < 0:
        return rich
    found: list[Run] = []
    place = 0
    for run in rich:
        for low, high, link in ((0, start, run.href), (start, end, href), (end, len(text), run.href)):
            part = run.text[max(low - place, 0) : max(high - place, 0)]
            found.append(Run(part, run.italic, link))
        place += len(run.text)
    return tuple(run for run in found if run.text)
