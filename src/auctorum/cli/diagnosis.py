"""`auctorum diagnosis`"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING, TypeVar

import click

from auctorum.cli.common import check_works, echo_json, find_name, json_option, kb_option, load_quietly, sec_option

if TYPE_CHECKING:
    from auctorum.cli.diagnosis_document import Detail
    from auctorum.cli.diagnosis_found import Asked, Found
    from auctorum.corpus.model import Corpus, Taxon

FORMATS = ("text", "markdown", "html", "csv", "latex")
DETAILS = ("description", "table", "full")
WIDE = ("markdown", "html")  # formats that have room for all that is told of a character in one table
Command = TypeVar("Command", bound=Callable[..., object])


def _options(command: Command) -> Command:
    """The options that say what is asked, and how it is shown."""
    for option in reversed(
        (
            sec_option,
            click.option("--character", "characters", multiple=True, help="Only this character; may be given again."),
            click.option("--unit", metavar="UNIT", help="Convert every length: mm, cm, in, ft, line, paris-line ..."),
            click.option(
                "--beside", multiple=True, metavar="TAXON",
                help="What each trait is worth against this taxon; may be given again. [default: the nearest sisters]",
            ),
            click.option("--observed", "with_plants", is_flag=True, help="Your own plants beside the authors."),
            click.option("--format", "format_", type=click.Choice(FORMATS), help="[default: text]"),
            click.option(
                "--detail", type=click.Choice(DETAILS),
                help="The merged text alone, with the tables, or with every author's words. "
                "[default: full for the text of one taxon and for --json, else table]",
            ),
        )
    ):  # fmt: skip
        command = option(command)
    return command


@click.command()
@click.argument("taxa", nargs=-1, required=True, metavar="TAXON...")
@_options
@kb_option
@json_option
def diagnosis(
    taxa: tuple[str, ...],
    sec: tuple[str, ...],
    characters: tuple[str, ...],
    unit: str | None,
    beside: tuple[str, ...],
    with_plants: bool,
    format_: str | None,
    detail: str | None,
    kb: Path,
    as_json: bool,
) -> None:
    """What authors say of TAXON, character by character: where they agree, drift, differ and are silent.

    First a description merged from all, with its sources, then the traits: consensus, range of opinions, how many
    authors stand behind each, and how well it tells the taxon from its sisters. Several taxa stand side by side.

    Every format is printed to standard output: `auctorum diagnosis TAXON --format html > taxon.html`.
    """
    if as_json and format_ is not None:
        raise click.UsageError("--json is a format of its own; leave --format out")
    format_ = format_ or "text"
    full = as_json or (format_ == "text" and len(taxa) == 1)
    detail = detail or ("full" if full else "table")
    _check(taxa, beside, with_plants, format_, detail)
    asked = _asked(load_quietly(kb).corpus, taxa, sec, characters, unit, beside, with_plants)
    if detail == "description":  # tells of no other taxon, so none is looked at
        asked = replace(asked, beside=())

    from auctorum.cli.diagnosis_document import Detail
    from auctorum.cli.diagnosis_found import found

    answer = found(asked)
    if as_json:
        from auctorum.cli.diagnosis_data import data

        echo_json(data(answer, Detail(detail)))
    else:
        _show(answer, Detail(detail), format_)


def _check(taxa: Sequence[str], beside: Sequence[str], with_plants: bool, format_: str, detail: str) -> None:
    """Refuse options that have nothing to act on, as misuse."""
    if beside and len(taxa) > 1:
        raise click.UsageError("--beside is for one taxon; several are compared with each other as they are")
    if detail != "description":
        return
    for option, given in (("--beside", bool(beside)), ("--observed", with_plants)):
        if given:
            raise click.UsageError(f"{option} adds to the table, which --detail description leaves out")
    if format_ == "csv":
        raise click.UsageError("CSV holds a table; give --detail table or full")


def _asked(
    corpus: Corpus,
    taxa: Sequence[str],
    works: tuple[str, ...],
    characters: Sequence[str],
    unit: str | None,
    beside: Sequence[str],
    with_plants: bool,
) -> Asked:
    """The question in terms of the knowledge base; what it does not hold is answered with the nearest."""
    from auctorum.cli.diagnosis_found import Asked
    from auctorum.corpus.readings import find_character

    several = _taxa(corpus, taxa)
    others = _taxa(corpus, beside, several, "--beside")
    chosen = tuple(dict.fromkeys(find_character(said, corpus.vocabulary).name for said in characters))
    check_works(corpus, works)
    if unit is not None:
        unit, corpus = _with_lengths_in(unit, corpus)
    of_sisters = tuple(one.id for one in others) if beside else None
    return Asked(corpus, several, unit, works, chosen, of_sisters, with_plants)


def _taxa(corpus: Corpus, said: Sequence[str], known: Sequence[Taxon] = (), hint: str = "TAXON") -> tuple[Taxon, ...]:
    """The taxa meant; one that two of the names mean is misuse."""
    from auctorum.corpus.resolve import find_taxon

    found: list[Taxon] = []
    for words in said:
        taxon = find_taxon(corpus, find_name(corpus, words).id)
        if taxon in (*known, *found):
            raise click.BadParameter(f"`{words}` is a taxon given already", param_hint=hint)
        found.append(taxon)
    return tuple(found)


def _with_lengths_in(unit: str, corpus: Corpus) -> tuple[str, Corpus]:
    """The unit by its name, and the corpus with a vocabulary in it; refuses what is no unit of length as misuse."""
    from dataclasses import replace

    from auctorum.characters.units import UnfitUnit, UnknownUnit, unit_named
    from auctorum.circumscription.converted import vocabulary_in

    try:
        return unit_named(unit).name, replace(corpus, vocabulary=vocabulary_in(corpus.vocabulary, unit))
    except UnknownUnit as error:
        raise click.BadParameter(f"{error} ({error.remedy})", param_hint="--unit") from None
    except UnfitUnit as error:
        raise click.BadParameter(f"{error} (give mm, cm, m, in, ft, line ...)", param_hint="--unit") from None


def _show(answer: Found, detail: Detail, format_: str) -> None:
    from auctorum.cli.diagnosis_document import document

    if format_ == "csv":
        from auctorum.cli.diagnosis_tables import csv_table
        from auctorum.exchange.as_csv import as_csv

        click.echo(as_csv(csv_table(answer, every_statement=detail == "full")), nl=False)
        return
    made = document(answer, detail, wide=format_ in WIDE, published=format_ != "text")
    if format_ == "text":
        from auctorum.cli.diagnosis_text import show

        show(made)
        return
    from auctorum.exchange.as_html import as_html
    from auctorum.exchange.as_latex import as_latex
    from auctorum.exchange.as_markdown import as_markdown

    render = {"markdown": as_markdown, "html": as_html, "latex": as_latex}[format_]
    click.echo(render(made), nl=False)
