"""A whole genus at a glance: which characters are told of which taxa, where authors agree, and where all are silent."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from auctorum.circumscription.findings import Finding, Verdict
from auctorum.corpus.model import Taxon
from auctorum.site.answers import Answers
from auctorum.site.findings import VERDICTS
from auctorum.site.pages import GroupPage
from auctorum.site.paths import root_of, slug
from auctorum.site.pictures.group_matrix import Cell, GroupMatrix, Row, group_matrix
from auctorum.site.words import Run

MOST_TAXA = 24  # columns that a table can have; the taxa that most works accept are shown


def group_page(answers: Answers, genus: str) -> GroupPage:
    """The taxa of the genus by characters; where there are more than a table holds, those that most works accept."""
    every = answers.taxa_of_genus[genus]
    most = sorted(every, key=lambda taxon: -len(taxon.treatments))[:MOST_TAXA]
    shown = [taxon for taxon in every if taxon in most]
    findings = {taxon.id: {(one.character, one.stage): one for one in _findings(answers, taxon)} for taxon in shown}
    rows = []
    for character in answers.corpus.vocabulary.values():
        told = {stage for of_taxon in findings.values() for name, stage in of_taxon if name == character.name}
        for stage in character.stages_in_order(told):
            cells = (_cell(answers, taxon, findings[taxon.id], (character.name, stage)) for taxon in shown)
            rows.append(Row(answers.character(character.name), stage, tuple(cells)))
    matrix = GroupMatrix(
        f"{genus}: characters down, taxa across",
        "In each cell the verdict, and how many works say something of their own.",
        tuple((*answers.taxon(taxon.id),) for taxon in shown),
        tuple(rows),
        tuple((str(verdict), sign, meaning) for verdict, (sign, meaning) in VERDICTS.items()),
    )
    path = answers.group_paths[genus]
    return GroupPage((Run(genus, italic=True),), group_matrix(matrix, "matrix", root_of(path)), len(every), len(shown))


def _findings(answers: Answers, taxon: Taxon) -> Iterable[Finding]:
    """Those on which anybody speaks."""
    return (one for one in answers.diagnosis(taxon.id).findings if one.agreement is not None)


def _cell(
    answers: Answers, taxon: Taxon, findings: Mapping[tuple[str, str], Finding], told: tuple[str, str]
) -> Cell | None:
    """None for a taxon of which no work says anything at all."""
    finding = findings.get(told)
    if finding is None:
        return Cell(Verdict.SILENT, 0) if findings else None
    href = f"{answers.taxon_paths[taxon.id]}#{slug(f'{finding.character} {finding.stage}')}"
    return Cell(finding.verdict, finding.count.independent, href)


def group_entries(answers: Answers) -> tuple[tuple[tuple[Run, ...], str], ...]:
    """Each genus with a page, and how many taxa it has."""
    return tuple(
        ((Run(genus, italic=True, href=path),), f"{len(answers.taxa_of_genus[genus])} taxa")
        for genus, path in answers.group_paths.items()
    )
