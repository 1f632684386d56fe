"""The state of opinion on one type, in sentences and in a table."""

from __future__ import annotations

from auctorum.nomenclature.history import Event, History, View
from auctorum.records.schema import ActKind
from auctorum.site.answers import Answers
from auctorum.site.drawings import without_standing
from auctorum.site.page_parts import ViewRow
from auctorum.site.ranks import by_rank, height
from auctorum.site.words import Rich, Run, article, capital, counted, listed, number_words, plain, years


def answer(answers: Answers, history: History) -> tuple[Rich, ...]:
    """The short answer at the top of a page, sentence by sentence: described, moved, kept, left out, now."""
    sentences = [*_acts(answers, history), _tally(answers, history), _silence(history), _latest(answers, history)]
    return tuple(sentence for sentence in sentences if sentence)


def _acts(answers: Answers, history: History) -> list[Rich]:
    acts = [event for event in history.events if event.is_act and _moves(event)]
    if not acts:
        return [plain("No work in this knowledge base publishes the name.")]
    first, *later = acts
    told: list[Rich] = [
        (Run(f"Described as {article(first.rank or 'a taxon of no stated rank')} by "), *answers.work(first.work),
         Run(", as "), *answers.name(first.used), *_doubt(first), Run(".")),
    ]  # fmt: skip
    rank = first.rank
    for event in later:
        told.append(
            (Run(f"{capital(_move(rank, event))} by "), *answers.work(event.work), Run(", as "),
             *answers.name(event.used), *_doubt(event), Run("."))
        )  # fmt: skip
        if not without_standing(event):
            rank = event.rank
    return told


def _moves(event: Event) -> bool:
    return event.what not in (ActKind.TYPE_DESIGNATION, ActKind.VARIANT_SPELLING)


def _move(rank: str, event: Event) -> str:
    if event.what == ActKind.NEW_TAXON:
        return f"published again as {article(event.rank)}"
    if event.what == ActKind.REPLACEMENT_NAME:
        return "renamed"
    if event.rank == rank:
        return "moved at the same rank"
    return f"{'raised' if height(event.rank) < height(rank) else 'lowered'} to {event.rank}"


def _doubt(event: Event) -> Rich:
    return plain(f" ({_unbracketed(event.notes)})" if event.notes else "")


def _unbracketed(notes: tuple[str, ...]) -> str:
    """Notes that end in their article in parentheses, to be put into parentheses themselves."""
    return "; ".join(note.replace(" (", ", ").removesuffix(")") for note in notes)


def _tally(answers: Answers, history: History) -> Rich:
    if not history.views:
        return ()
    everybody = len({author for view in history.views for author in view.authors})
    if len(history.views) == 1:
        return _one_view(answers, history.views[0], everybody)
    parts = [view_words(answers, view) for view in history.views]
    return (
        Run(f"Of {counted(everybody, 'author or team', 'authors or teams')} who place it, "),
        *listed(parts),
        Run("."),
    )


def _one_view(answers: Answers, view: View, everybody: int) -> Rich:
    """The tally where nobody disagrees."""
    label = plain(article(view.label)) if view.label == view.rank else (Run("a "), *answers.text(view.label))
    who = "The one author or team who places it keeps" if everybody == 1 else (
        f"All {number_words(everybody)} authors or teams who place it keep"
    )  # fmt: skip
    return (Run(f"{who} it as "), *label, Run(f" ({years(view.first, view.last)})."))


def view_words(answers: Answers, view: View) -> Rich:
    """A view with its count and years: `four keep it as a variety (1887–1930)`."""
    count = len(view.authors)
    several = "" if count > 1 else "s"
    if view.label == view.rank:
        does = f"keep{several} it as {article(view.label)}"
        return plain(f"{number_words(count)} {does} ({years(view.first, view.last)})")
    does = f"sink{several} it as a " if view.label.startswith("synonym") else f"give{several} it as "
    return (
        Run(f"{number_words(count)} {does}"), *answers.text(view.label), Run(f" ({years(view.first, view.last)})")
    )  # fmt: skip


def _silence(history: History) -> Rich:
    count = len(history.silent)
    if not count:
        return ()
    told = "work that covers the group leaves" if count == 1 else "works that cover the group leave"
    return plain(f"{capital(number_words(count))} {told} it out.")


def _latest(answers: Answers, history: History) -> Rich:
    placed = [event for event in history.events if event.status not in ("", "misapplied")]
    if not placed or len(history.views) < 2:
        return ()
    last = placed[-1]
    told: Rich
    if last.target:
        told = (Run("sinks it into "), *answers.name(last.target))
    else:
        keeps = "keeps" if last.status == "accepted" else "doubtfully keeps"
        told = (Run(f"{keeps} it as {article(last.rank)}, "), *answers.name(last.used))
    return (Run("The latest, "), *answers.work(last.work), Run(", "), *told, Run("."))


def view_rows(answers: Answers, history: History) -> tuple[ViewRow, ...]:
    """The tally as rows, in its own order; shares are of all authors who hold some view."""
    everybody = len({author for view in history.views for author in view.authors})
    return tuple(
        ViewRow(
            label=answers.text(view.label), authors=len(view.authors), works=answers.works(view.works),
            span=years(view.first, view.last), share=round(100 * len(view.authors) / everybody) if everybody else 0,
        )
        for view in history.views
    )  # fmt: skip


def opinion_line(answers: Answers, history: History) -> Rich:
    """The state of opinion in one line: `variety (4 authors), species (3), synonym of X (2)`."""
    if not history.views:
        return plain("published, and placed by nobody" if history.events else "known from lists of synonyms only")
    parts = [
        (*answers.text(view.label), Run(f" ({_authors(len(view.authors)) if not index else len(view.authors)})"))
        for index, view in enumerate(history.views)
    ]
    return listed(parts, ", ")


def _authors(count: int) -> str:
    return f"{count} author" + ("" if count == 1 else "s")


def ranks_held(history: History) -> tuple[str, ...]:
    """The ranks at which the type was published with some standing, or is kept, from the highest."""
    published = {
        event.rank for event in history.events if event.is_act and _moves(event) and not without_standing(event)
    }
    kept = {view.rank for view in history.views if not view.label.startswith("synonym")}
    return by_rank(rank for rank in published | kept if rank)
