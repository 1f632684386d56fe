"""`auctorum diagnosis`"""

from __future__ import annotations

from fractions import Fraction
from pathlib import Path
from typing import TYPE_CHECKING

import click

from auctorum.cli.common import check_works, counted, echo_json, find_name, json_option, kb_option, load_quietly

if TYPE_CHECKING:
    from auctorum.circumscription.findings import Diagnosis, Evidence, Finding
    from auctorum.corpus.model import Corpus, Taxon


@click.command()
@click.argument("taxon")
@click.option("--sec", "sec", multiple=True, metavar="WORK", help="Only this work (its id); may be given again.")
@click.option("--character", "characters", multiple=True, help="Only this character; may be given again.")
@click.option("--unit", metavar="UNIT", help="Convert every length: mm, cm, m, in, ft, line, paris-line ...")
@click.option("--brief", is_flag=True, help="Leave out what each author says.")
@kb_option
@json_option
def diagnosis(
    taxon: str,
    sec: tuple[str, ...],
    characters: tuple[str, ...],
    unit: str | None,
    brief: bool,
    kb: Path,
    as_json: bool,
) -> None:
    """What authors say of TAXON, character by character: where they agree, drift, differ and are silent.

    The merged description follows, unless characters were chosen.
    """
    from auctorum.circumscription.converted import diagnosis_in
    from auctorum.circumscription.diagnosis import diagnosis as diagnosis_of
    from auctorum.corpus.readings import find_character
    from auctorum.corpus.resolve import find_taxon

    corpus = load_quietly(kb).corpus
    entry = find_name(corpus, taxon)
    asked = find_taxon(corpus, entry.id)
    chosen = {find_character(said, corpus.vocabulary).name for said in characters}
    check_works(corpus, sec)
    if unit is None:
        found = diagnosis_of(corpus, asked.id, works=sec or None)
    else:
        unit, corpus = _with_lengths_in(unit, corpus)
        found = diagnosis_in(corpus, asked.id, unit, works=sec or None)
    findings = [one for one in found.findings if not chosen or one.character in chosen]
    if as_json:
        echo_json(_data(corpus, asked, found, findings, unit))
    else:
        _show(corpus, asked, found, findings, unit, brief)


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


def _title(corpus: Corpus, taxon: Taxon) -> str:
    from auctorum.names.format import format_name

    return format_name(corpus.names[taxon.current].name) + taxon.sense.suffix


def _data(
    corpus: Corpus, taxon: Taxon, found: Diagnosis, findings: list[Finding], unit: str | None
) -> dict[str, object]:
    from auctorum.circumscription.summary import finding_data

    return {
        "taxon": _title(corpus, taxon),
        "text": found.text,
        "sources": [{"number": number, "work": work} for number, work in enumerate(found.sources, 1)],
        "works": list(found.works),
        **({"converted_to": unit} if unit else {}),
        "characters": [finding_data(one, corpus.vocabulary) for one in findings],
    }


def _show(
    corpus: Corpus, taxon: Taxon, found: Diagnosis, findings: list[Finding], unit: str | None, brief: bool
) -> None:
    from rich.text import Text

    from auctorum.circumscription.summary import summary
    from auctorum.cli.layout import console, heading, italic, table

    out = console()
    out.print(heading(Text.assemble(italic(corpus.names[taxon.current].name), taxon.sense.suffix)))
    treated = len(found.works)
    out.print(f"From {counted(treated, 'treatment')}, {len(corpus.vocabulary)} characters.")
    if taxon.sense.meaning:
        out.print(taxon.sense.meaning)
    if unit:
        out.print(_note(corpus, unit))
    out.print()
    rows = []
    for one in findings:
        line = summary(one, corpus.vocabulary[one.character])
        works = f"{len({item.work for item in one.evidence})}/{treated}"
        rows.append((_label(one), line.core, line.majority, line.envelope, works, str(one.verdict)))
    out.print(table(("character", "core", "majority", "envelope", "works", "verdict"), rows))
    if not brief:
        _show_evidence(corpus, findings, unit)
    if len({one.character for one in findings}) < len(corpus.vocabulary):
        return
    out.print()
    out.print(heading("Merged description"))
    out.print(found.text)
    for number, work in enumerate(found.sources, 1):
        out.print(f"  [{number}] {corpus.works[work].byline}")


def _label(finding: Finding) -> str:
    return finding.character + (f" ({finding.stage})" if finding.stage else "")


def _note(corpus: Corpus, unit: str) -> str:
    """That lengths are converted, and which are not."""
    from auctorum.characters.show import format_span
    from auctorum.circumscription.converted import left_out

    said = format_span(Fraction(0), Fraction(0), unit).removeprefix("0 ")
    note = f"Lengths are converted from the units that the works print to {said}, and rounded."
    kept = ", ".join(left_out(corpus.vocabulary, unit))
    return f"{note} Left in its own unit: {kept}." if kept else note


def _show_evidence(corpus: Corpus, findings: list[Finding], unit: str | None) -> None:
    from auctorum.cli.layout import console, heading, table

    out = console()
    for one in findings:
        if not one.evidence:
            continue
        out.print()
        out.print(heading(f"{_label(one)}: {one.verdict}"))
        for remark in one.remarks:
            out.print(remark)
        rows = [_evidence_row(corpus, one, item, unit) for item in one.evidence]
        out.print(table(("year", "author", "page", "words", "read as"), rows))
        if one.silent:
            silent = "; ".join(corpus.works[work].byline for work in one.silent)
            out.print(f"Silent: {silent}")


def _evidence_row(corpus: Corpus, finding: Finding, item: Evidence, unit: str | None) -> tuple[str, ...]:
    from auctorum.characters.show import format_value
    from auctorum.circumscription.converted import converted

    character = corpus.vocabulary[finding.character]
    read = format_value(item.value, character)
    other = converted(item.value, character, unit) if unit else ""
    read = f"{read} = {other}" if other else read
    return (str(item.year), " & ".join(corpus.works[item.work].authors), item.page, item.verbatim, read)
