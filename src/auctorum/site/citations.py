"""Bibliographic words: a work as an entry of a list, an act as a place of publication."""

from __future__ import annotations

import re
from collections.abc import Callable

from auctorum.corpus.model import Act, Work
from auctorum.records.schema import Person
from auctorum.site.paths import safe_link
from auctorum.site.words import Rich, Run, listed, plain, text_of

_DAY = re.compile(r"(\d{4})(?:-(\d{2}))?(?:-(\d{2}))?([~?%]?)")
_MONTHS = ("", "January", "February", "March", "April", "May", "June", "July",
           "August", "September", "October", "November", "December")  # fmt: skip


def date_words(date: str) -> str:
    """An EDTF date as text has it; forms that are not read here stay as they are.

    >>> date_words("1889-05"), date_words("2016-11-24"), date_words("1904-06/1904-07"), date_words("1904~")
    ('May 1889', '24 November 2016', 'June 1904 to July 1904', 'about 1904')
    """
    parts = [_DAY.fullmatch(part) for part in date.split("/")]
    told = []
    for part in parts:
        if part is None or not 0 <= int(part[2] or 0) <= 12:
            return date
        year, month, day, doubt = part.groups()
        words = " ".join(filter(None, (str(int(day)) if day else "", _MONTHS[int(month or 0)], year)))
        told.append({"~": f"about {words}", "?": f"{words}?", "%": f"about {words}?"}.get(doubt, words))
    return " to ".join(told)


def person(who: Person) -> str:
    """A person as a list of literature prints one: `Vane, A.`"""
    return f"{who.family}, {who.given}" if who.given else who.family


def entry(work: Work, names: Callable[[str], Rich] = plain) -> Rich:
    """The bibliographic entry of a work: authors, year, title, where it stands.

    `names` sets the names of plants in the title, which stand out from it by being italic or, in italics, upright.
    """
    record = work.record
    authors = text_of(listed([plain(person(who)) for who in record.author], " & "))
    runs = [Run(f"{authors.rstrip('.')}. {record.issued[:4]}. ")]
    alone = not record.container_title
    runs += [Run(run.text, run.italic != alone) for run in names(record.title.rstrip("."))]
    runs.append(Run(". "))
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
    if volume and not pages and alone:
        volume = f"Vol. {volume}"
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
    plate = act.record.plate
    plate = f", {'t. ' if plate[:1].isdigit() else ''}{plate}" if plate else ""
    return (Run(where, italic=True), Run(f"{volume}{page}{plate}. {date_words(act.work.date.text)}."))
