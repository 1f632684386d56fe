"""Pages that compare the views of works: a chooser of two, and for each work what changes from it to each other."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from auctorum.nomenclature.compare import UNCHANGED, Absence, Change, Comparison, Kind, compare
from auctorum.nomenclature.compare_wording import called_works, how, pages, regrouping_sentence, sentence, summary
from auctorum.site.answers import Answers
from auctorum.site.citations import entry
from auctorum.site.code_parts import OtherWork, Start
from auctorum.site.group_page import group_entries
from auctorum.site.pages import ComparisonPage, ComparisonsPage
from auctorum.site.paths import slug
from auctorum.site.words import Rich, Run, capital, linked, plain


def comparisons_page(answers: Answers) -> ComparisonsPage:
    """The chooser: for each work the others, each with the address of what changes."""
    compared = answers.compared
    starts = (
        Start(
            slug(f"from {work}"), answers.bylines[work],
            tuple(
                (Run(answers.bylines[other], href=f"{compared.paths[work]}#{slug(other)}"),)
                for other in compared.works if other != work
            ),
        )
        for work in compared.works
    )  # fmt: skip
    beside = tuple((*answers.taxon(taxon, link=False),) for taxon in answers.apart_paths)
    return ComparisonsPage(
        tuple((Run(genus, italic=True),) for genus in compared.genera), tuple(starts), group_entries(answers),
        tuple(linked(rich, path) for rich, path in zip(beside, answers.apart_paths.values(), strict=True)),
    )  # fmt: skip


def comparison_page(answers: Answers, work: str) -> ComparisonPage:
    """What changes from one work to each other one, by date."""
    compared = answers.compared
    others = (_other(answers, compare(compared.corpus, work, other)) for other in compared.works if other != work)
    return ComparisonPage(answers.work(work), entry(answers.corpus.works[work], answers.text), tuple(others))


def _other(answers: Answers, found: Comparison) -> OtherWork:
    divided = tuple(
        (*answers.sentence(regrouping_sentence(answers.corpus, found, one)), Run(".")) for one in found.regroupings
    )
    groups = (
        ("Divided and united", divided),
        ("Type by type", tuple(_changes(answers, found))),
        ("Accepted names", tuple(_names(answers, found))),
        ("The rest", tuple(_the_rest(answers, found))),
    )
    return OtherWork(
        slug(found.b.id), answers.work(found.b.id), summary(found), tuple(group for group in groups if group[1])
    )


def _changes(answers: Answers, found: Comparison) -> Iterator[Rich]:
    """A sentence with its pages for each type about which the works differ and which both set out to treat."""
    for change in found.changes:
        if change.is_change and change.absence is not Absence.OUTSIDE:
            said = pages(found, change)
            told = answers.sentence(sentence(answers.corpus, found, change))
            yield (*told, Run(f" ({said})." if said else "."))


def _names(answers: Answers, found: Comparison) -> Iterator[Rich]:
    for label, names in (("Gained: ", found.gained), ("Lost: ", found.lost)):
        if names:
            yield (Run(label), *_joined([answers.name(name) for name in names]))
    if found.renamed:
        pairs = [(*answers.name(old), Run(" to "), *answers.name(new)) for old, new in found.renamed]
        yield (Run("Changed: "), *_joined(pairs))


def _the_rest(answers: Answers, found: Comparison) -> Iterator[Rich]:
    """In one line each, what stays, and what one of the works does not set out to treat."""
    for kind in UNCHANGED:
        yield from _in_one_line(answers, capital(str(kind)), [one for one in found.changes if one.kind is kind])
    a, b = called_works(found)
    for kind, here, other in ((Kind.ONLY_A, a, b), (Kind.ONLY_B, b, a)):
        aside = [one for one in found.changes if one.kind is kind and one.absence is Absence.OUTSIDE]
        yield from _in_one_line(answers, f"Only in {here}; {other} {Absence.OUTSIDE}", aside)


def _in_one_line(answers: Answers, label: str, changes: Iterable[Change]) -> Iterator[Rich]:
    """The types with how they stand where they are not plainly accepted; nothing if there are none."""
    items = []
    for change in changes:
        position = change.a or change.b
        if position is not None:
            told = () if position.status == "accepted" else answers.sentence(how(answers.corpus, position))
            items.append((*answers.name(position.name), *((Run(" ("), *told, Run(")")) if told else ())))
    if items:
        yield (Run(f"{label}: "), *_joined(items))


def _joined(items: list[Rich]) -> Rich:
    """`A; B; C.`"""
    found: list[Run] = []
    for number, item in enumerate(items):
        found += [*plain("; " if number else ""), *item]
    return (*found, Run("."))
