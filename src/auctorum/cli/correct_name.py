"""`auctorum correct-name`"""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

import click

from auctorum.cli.common import check_works, echo_json, find_name, json_option, kb_option, load_quietly

if TYPE_CHECKING:
    from rich.text import Text

    from auctorum.corpus.model import Treatment
    from auctorum.nomenclature.code import Code
    from auctorum.nomenclature.correct import CorrectName
    from auctorum.nomenclature.views import Change


@click.command()
@click.argument("taxon")
@click.option(
    "--sec", "work", metavar="WORK", help="The view of a publication, by id; default: the latest that keeps it."
)
@click.option("--rank", default="", help="At this rank, whatever the work says.")
@click.option("--under", metavar="NAME", help="Placed in this genus or species.")
@click.option("--include", multiple=True, metavar="NAME", help="With the type of this name; may be given again.")
@click.option("--exclude", multiple=True, metavar="NAME", help="Without the type of this name; may be given again.")
@kb_option
@json_option
@click.pass_context
def correct_name(
    ctx: click.Context,
    taxon: str,
    work: str | None,
    rank: str,
    under: str | None,
    include: tuple[str, ...],
    exclude: tuple[str, ...],
    kb: Path,
    as_json: bool,
) -> None:
    """What TAXON must be called under a view, with the reasons by article.

    The types it holds, its rank and its place are those of the work; the options change them in thought. Where no
    name is available, it says which new combination would be needed, and on what. Exit code 1 if the rules and
    records come to no name.
    """
    from auctorum.nomenclature.correct import Outcome
    from auctorum.nomenclature.views import Change, correct_in, correct_of

    code = load_quietly(kb)
    corpus = code.corpus
    check_works(corpus, (work,) if work else ())
    asked = find_name(corpus, taxon).id
    change = Change(
        rank=_rank(rank),
        under=find_name(corpus, under).id if under else None,
        include=tuple(find_name(corpus, one).id for one in include),
        exclude=tuple(find_name(corpus, one).id for one in exclude),
    )
    treatment = _treatment(code, asked, work)
    found = correct_of(code, asked, change) if treatment is None else correct_in(code, treatment, change)
    if as_json:
        echo_json(_data(code, found, asked, treatment, change))
    else:
        _show(code, found, asked, treatment, change)
    ctx.exit(0 if found.outcome in (Outcome.NAME, Outcome.AUTONYM) else 1)


def _rank(said: str) -> str:
    """The rank of an option; one that does not exist is misuse (exit code 2)."""
    from auctorum.names.ranks import UnknownRank, rank_named

    try:
        return rank_named(said).name if said else ""
    except UnknownRank as error:
        raise click.BadParameter(f"{error} ({error.remedy})", param_hint="--rank") from error


def _treatment(code: Code, name: str, work: str | None) -> Treatment | None:
    """The treatment meant: that of the work, else of the latest effectively published work that keeps the taxon."""
    from auctorum.nomenclature.views import accepting

    if work is not None:
        found = accepting(code, name, work)
        if found is None:
            raise click.BadParameter(f"{work} does not place {code.inquiry.called(name)}", param_hint="--sec")
        return found
    for one in reversed(tuple(code.corpus.works.values())):
        if one.record.effectively_published and (found := accepting(code, name, one.id)) is not None:
            return found
    return None


def _data(code: Code, found: CorrectName, asked: str, treatment: Treatment | None, change: Change) -> dict[str, object]:
    from auctorum.names.format import format_name

    called = code.inquiry.called
    question = {
        "taxon": called(asked),
        "name_used": called(treatment.name) if treatment is not None else None,
        "rank": change.rank or (treatment.rank if treatment is not None else code.corpus.names[asked].rank),
        "under": called(change.under) if change.under else None,
        "include": [called(name) for name in change.include],
        "exclude": [called(name) for name in change.exclude],
    }
    return {
        "asked": question,
        "outcome": str(found.outcome),
        "name": format_name(found.name) if found.name is not None else None,
        "based_on": code.inquiry.called(found.based_on) if found.based_on else None,
        "rivals": [code.inquiry.called(name) for name in found.rivals],
        "sec": treatment.work.id if treatment is not None else None,
        "edition": code.edition.name,
        "reasons": [
            {"text": step.text, "article": step.article, "name": code.inquiry.called(step.name) if step.name else None}
            for step in found.steps
        ],
        "barred_epithets": [
            {"epithet": one.epithet, "reason": one.reason, "article": code.edition.cite(one.article)}
            for one in found.barred
        ],
    }


def _show(code: Code, found: CorrectName, asked: str, treatment: Treatment | None, change: Change) -> None:
    from auctorum.cli.layout import console, numbered

    out = console()
    out.print(_headline(code, found))
    out.print(_question(code, asked, treatment, change))
    out.print(numbered(map(str, found.steps)))
    if code.edition.name != "Shenzhen 2018":
        out.print(f"Articles as numbered in the Code of {code.edition.name}.")


def _headline(code: Code, found: CorrectName) -> Text:
    """The answer in a line that stands out."""
    from rich.text import Text

    from auctorum.cli.layout import heading, italic

    if found.outcome == "undetermined" and not found.rivals:
        return heading("No correct name")
    if found.outcome == "undetermined":
        names = Text(" or ").join(italic(code.corpus.names[name].name) for name in found.rivals)
        return heading(Text.assemble("Undetermined: ", names))
    if found.name is None:
        return heading("No name is available: a new name would be needed")
    if found.outcome == "new combination needed":
        return heading(Text.assemble("No name is available: a new combination would be needed, ", italic(found.name)))
    return heading(italic(found.name))


def _question(code: Code, asked: str, treatment: Treatment | None, change: Change) -> str:
    """What was asked, in words."""
    told = f"{code.inquiry.called(asked)}, its type alone; no work here keeps it"
    if treatment is not None:
        kept = code.corpus.names[treatment.name]
        where = f" in {code.inquiry.called(treatment.parent)}" if treatment.parent else ""
        told = f"sec. {treatment.work.byline}, who has it as {code.inquiry.called(kept.id)}{where}"
    changes = [f"at the rank of {change.rank}"] if change.rank else []
    changes += [f"in {code.inquiry.called(change.under)}"] if change.under else []
    changes += [f"with {code.inquiry.called(one)}" for one in change.include]
    changes += [f"without {code.inquiry.called(one)}" for one in change.exclude]
    return f"{told}; asked {', '.join(changes)}." if changes else f"{told}."
