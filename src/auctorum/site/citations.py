"""Bibliographic words: a work as an entry of a list, an act as a place of publication."""

from __future__ import annotations

from auctorum.corpus.model import Act, Work
from auctorum.records.schema import Person
from auctorum.site.paths import safe_link
from auctorum.site.words import Rich, Run, listed, plain, text_of


def person(who: Person) -> str:
    """A person as a list of literature prints one: `Vane, A.`"""
    return f"{who.family}, {who.given}" if who.given else who.family


def entry(work: Work) -> Rich:
    """The bibliographic entry of a work: authors, year, title, where it stands."""
    record = work.record
    authors = text_of(listed([plain(person(who)) for who in record.author], " & "))
    runs = [Run(f"{authors.rstrip('.')}. {record.issued}. ")]
    alone = not record.container_title
    runs += [Run(record.title.rstrip("."), italic=alone), Run(". ")]
    if not alone:
        editors = text_of(listed([plain(person(who)) for who in record.editor], " & "))
        runs.append(Run(f"In: {editors} (ed.), " if editors else ""))
        runs.append(Run(record.container_title, italic=True))
    runs.append(Run(_numbers(work, alone)))
    return tuple(run for run in runs if run.text)


def _numbers(work: Work, alone: bool) -> str:
    """Volume, issue and pages, then series, edition and publisher."""
    record = work.record
    issue = f"({record.issue})" if record.issue else ""
    volume = f"{record.volume}{issue}"
    pages = record.page.replace("-", "–")
    told = f"{volume}: {pages}" if volume and pages else volume or (f"pp. {pages}" if pages else "")
    first = f"{'' if alone else ' '}{told}. " if told else ("" if alone else ". ")
    edition = f"{record.edition} ed." if record.edition.isdigit() else record.edition
    rest = (record.collection_title, edition, ", ".join(filter(None, (record.publisher, record.publisher_place))))
    return (first + "".join(f"{part.rstrip('.')}. " for part in rest if part)).rstrip()


def addresses(work: Work) -> tuple[tuple[str, str], ...]:
    """DOI and address of a work that a page may link to, as pairs of words and address."""
    record = work.record
    given = ((f"doi:{record.DOI}" if record.DOI else "", record.DOI), (record.URL, record.URL))
    return tuple((words, safe_link(address)) for words, address in given if words and safe_link(address))


def protologue(act: Act) -> Rich:
    """The place of an act as names are cited with it: where, volume, page, year."""
    record = act.work.record
    where = record.container_title_short or record.container_title or record.title
    volume = f" {record.volume}" if record.volume else ""
    if record.volume and record.issue:
        volume += f"({record.issue})"
    page = f": {act.record.page}" if act.record.page else ""
    plate = f", {act.record.plate}" if act.record.plate else ""
    return (Run(where, italic=True), Run(f"{volume}{page}{plate}. {act.work.date.text}."))
