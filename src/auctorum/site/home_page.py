"""The first page: what the knowledge base covers, the names in dispute, and how to read the site."""

from __future__ import annotations

from auctorum.corpus.cautions import cautions_of
from auctorum.corpus.model import Taxon
from auctorum.site.answers import Answers
from auctorum.site.drawings import path_figure
from auctorum.site.opinion import opinion_line, ranks_held
from auctorum.site.page_parts import DecadeRow, TaxonRow
from auctorum.site.pages import HomePage
from auctorum.site.words import linked, years


def home_page(answers: Answers) -> HomePage:
    """The whole first page."""
    corpus = answers.corpus
    rows = {taxon.id: taxon_row(answers, taxon) for taxon in corpus.taxa.values()}
    contested = contested_taxa(answers)
    first = contested[0] if contested else None
    dates = [work.year for work in corpus.works.values()]
    return HomePage(
        description=answers.text(corpus.settings.description),
        counts=_counts(answers),
        years=years(min(dates), max(dates)) if dates else "",
        contested=tuple(rows[taxon.id] for taxon in contested),
        taxa=tuple(
            rows[taxon.id] for taxon in sorted(corpus.taxa.values(), key=lambda taxon: (taxon.current, taxon.id))
        ),
        decades=decades(answers),
        figure=path_figure(answers, first.group, answers.taxon(first.id, link=False), "rank-path") if first else None,
        figure_of=answers.taxon(first.id) if first else (),
        surveys=tuple(linked(answers.taxon(taxon, link=False), path) for taxon, path in answers.surveys.paths.items()),
        cautions=cautions_of(corpus),
    )


def contested_taxa(answers: Answers) -> list[Taxon]:
    """Taxa of the names at issue first, in their order, then any other that was held at more than one rank."""
    corpus = answers.corpus
    focal = [corpus.names[name].group for name in corpus.focal]
    order = {group: index for index, group in reversed(list(enumerate(focal)))}
    found = [
        taxon for taxon in corpus.taxa.values()
        if taxon.group in order or len(ranks_held(answers.history(taxon.group))) > 1
    ]  # fmt: skip
    return sorted(found, key=lambda taxon: (order.get(taxon.group, len(order)), taxon.sense != "", taxon.id))


def taxon_row(answers: Answers, taxon: Taxon) -> TaxonRow:
    """A taxon as a list has it."""
    history = answers.history(taxon.group)
    return TaxonRow(
        taxon=answers.taxon(taxon.id),
        rank=answers.corpus.names[taxon.current].rank,
        opinion=opinion_line(answers, history),
        works=len({event.work for event in history.events}),
    )


def _counts(answers: Answers) -> tuple[tuple[str, str], ...]:
    corpus = answers.corpus
    counts = (
        ("publications read", len(corpus.works)),
        ("authors", len(answers.authors)),
        ("names", len(corpus.names)),
        ("taxa", len(corpus.taxa)),
        ("acts", len(corpus.acts)),
        ("statements, word for word", len(corpus.statements)),
    )
    return tuple((what, f"{count:,}".replace(",", "\u202f")) for what, count in counts)


def decades(answers: Answers) -> tuple[DecadeRow, ...]:
    """Works by decade, every decade from the first to the last, so that gaps show."""
    found: dict[int, list[str]] = {}
    for work in answers.corpus.works.values():
        found.setdefault(work.year // 10 * 10, []).append(work.id)
    if not found:
        return ()
    whole = range(min(found), max(found) + 10, 10)
    return tuple(DecadeRow(f"{decade}s", answers.works(found.get(decade, ()))) for decade in whole)
