"""Findings of a diagnosis as blocks of a page: verdict, remarks, picture, and the words they rest on."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from auctorum.circumscription.findings import Finding, Verdict
from auctorum.circumscription.lineage_words import count_words
from auctorum.circumscription.observed import Observed
from auctorum.circumscription.observed_words import cover_words, sentences
from auctorum.circumscription.summary import summary
from auctorum.corpus.model import Taxon
from auctorum.site.answers import Answers
from auctorum.site.drawings import ladder_figure
from auctorum.site.more_drawings import profile_figure
from auctorum.site.page_parts import FindingBlock, SideRow, VerdictGroup, WordsRow
from auctorum.site.paths import slug
from auctorum.site.rows import words_row
from auctorum.site.words import Rich, sentence

# In the order in which pages show them: where authors differ comes first.
VERDICTS: Mapping[Verdict, tuple[str, str]] = {
    Verdict.CONFLICTING: ("≠", "Some authors cannot both be right: what they state lies apart."),
    Verdict.DRIFTING: ("↗", "The figures moved with the years, in one direction."),
    Verdict.CONSISTENT: ("≈", "Authors differ in figures, yet all leave room for the same plants."),
    Verdict.UNANIMOUS: ("=", "All who say anything say the same."),
    Verdict.SINGLE: ("1", "Only one author says anything; there is nothing to compare."),
    Verdict.SILENT: ("–", "Nobody says anything."),
}


def verdict_groups(answers: Answers, taxon: Taxon) -> tuple[VerdictGroup, ...]:
    """The findings of a taxon, by verdict; within each those first that decide or that most works speak of."""
    findings = answers.diagnosis(taxon.id).findings
    groups = []
    for verdict, (sign, meaning) in VERDICTS.items():
        mine = [finding for finding in findings if finding.verdict is verdict]
        mine.sort(key=lambda finding: _weight(answers, finding))
        blocks = tuple(block(answers, finding, answers.character(finding.character), taxon.id) for finding in mine)
        if blocks:
            groups.append(VerdictGroup(verdict, sign, meaning, blocks))
    return tuple(groups)


def _weight(answers: Answers, finding: Finding) -> tuple[bool, bool, int]:
    """Sorts what a working criterion decides by before all, then measurements, then by how many works speak."""
    decisive = any(criterion.decisive.character == finding.character for criterion in answers.corpus.criteria)
    measured = answers.corpus.vocabulary[finding.character].kind.is_numeric
    return not decisive, not measured, -len({evidence.work for evidence in finding.evidence})


def block(answers: Answers, finding: Finding, subject: Rich, taxon: str, prefix: str = "") -> FindingBlock:
    """One finding on the taxon. `subject` heads it, `prefix` keeps its anchor apart."""
    anchor = f"{prefix}{slug(f'{finding.character} {finding.stage}')}"
    works = {evidence.work for evidence in finding.evidence}
    compared = len(works) > 1
    seen = answers.observed(taxon).get((finding.character, finding.stage))
    return FindingBlock(
        anchor=anchor, subject=subject, stage=finding.stage, verdict=finding.verdict, sign=VERDICTS[finding.verdict][0],
        most=_most(answers, finding), count=count_words(finding.count),
        remarks=tuple(answers.text(sentence(remark)) for remark in finding.remarks),
        seen=tuple(map(answers.text, sentences(answers.corpus, finding, seen))) if seen else (),
        figure=ladder_figure(answers, finding, taxon, f"p-{anchor}") if compared else None,
        profile=profile_figure(answers, finding, answers.taxon(taxon, link=False), f"c-{anchor}")
        if finding.verdict in (Verdict.CONFLICTING, Verdict.DRIFTING) else None,
        open=finding.verdict in (Verdict.CONFLICTING, Verdict.DRIFTING, Verdict.CONSISTENT),
        sides=tuple(SideRow(side.says, answers.works(side.works)) for side in finding.sides)
        if len(finding.sides) > 1 else (),
        silent=answers.works(finding.silent), rows=tuple(_rows(answers, finding, seen)),
    )  # fmt: skip


def _most(answers: Answers, finding: Finding) -> str:
    """What at least half of the authors say, in a few words; nothing where there is no such thing."""
    said = summary(finding, answers.corpus.vocabulary[finding.character]).majority
    if not said.strip("–- "):
        return ""
    who = {Verdict.SINGLE: "one says", Verdict.UNANIMOUS: "all say"}.get(finding.verdict, "most say")
    return f"{who} {said}"


def _rows(answers: Answers, finding: Finding, seen: Observed | None) -> Iterable[WordsRow]:
    """Each statement once, however many readings of it entered the finding."""
    repeats = {evidence.statement: evidence.repeats for evidence in finding.evidence}
    holds = {cover.work: cover_words(cover) for cover in seen.covers} if seen else {}
    for id_, source in repeats.items():
        statement = answers.corpus.statements[id_]
        yield words_row(answers, statement, repeats=source, holds=holds.get(statement.work.id, ""))


def unread_rows(answers: Answers, taxon: Taxon) -> tuple[WordsRow, ...]:
    """Statements about a taxon from which nothing could be read: they count for nothing, and are shown."""
    statements = [each for treatment in taxon.treatments for each in answers.corpus.statements_of(treatment)]
    return tuple(
        words_row(answers, each, answers.character(each.character)) for each in statements if not each.readings
    )
