"""What became of texts, said to a person or to a machine, and what to do next."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Sequence
from pathlib import Path

import click

from auctorum.cli.common import counted, echo_json
from auctorum.cli.layout import console, heading
from auctorum.cli.transcribe_data import statement_data, transcript_data
from auctorum.cli.transcribe_kept import counts, statements
from auctorum.cli.transcribe_run import Asked, Done
from auctorum.cli.transcribe_show import show, show_lacking
from auctorum.cli.transcribe_table import print_batch
from auctorum.records.append import Appended, statement_line
from auctorum.records.schema import StatementRecord


def tell(done: Sequence[Done], asked: Asked, *, batch: bool) -> None:
    """Print the result: as JSON, as a table of files, or as one text with its readings."""
    if asked.as_json:
        echo_json([_data(one, asked) for one in done])
    elif batch:
        print_batch([_row(one, asked) for one in done], into=asked.into is not None)
        _tell_batch(done, asked)
    else:
        (one,) = done
        if one.transcript and not asked.review:
            show(one.transcript, asked.sure, everything=asked.everything, as_yaml=asked.as_yaml)
        _tell_next(one, asked)


def _data(one: Done, asked: Asked) -> dict[str, object]:
    if one.transcript is None:
        return {"file": one.name, "problem": one.fault}
    data = transcript_data(one.name, one.transcript, one.kept, asked.sure, asked.page)
    if one.fault:
        data["problem"] = one.fault
    if one.new:
        data["characters_added"] = list(one.new)
    if one.new_states:
        data["states_added"] = {name: list(states) for name, states in one.new_states.items()}
    if one.path is not None:
        written = one.written
        data["written"] = {
            "file": str(one.path),
            "taxon": written.taxon if written else asked.taxon,
            "added": [statement_data(said) for said in written.added] if written else [],
            "there_already": [statement_data(said) for said in written.there] if written else [],
            "of_unknown_characters": one.left_out,
        }
    return data


def _row(one: Done, asked: Asked) -> tuple[str, ...]:
    """A line of the closing table of a batch."""
    into = asked.into is not None
    if one.transcript is None:
        return (one.name, "", "", "", "", *(("",) if into else ()), one.fault)
    found = counts(one.transcript, asked.sure)
    remarks = [one.fault] if one.fault else []
    if one.written and one.written.there:
        remarks.append(f"{len(one.written.there)} there already")
    if one.left_out:
        remarks.append(f"{one.left_out} of unknown characters or states left out")
    remarks += [f"new: {said}" for said in _added(one)]
    figures = (found.read, found.likely, found.doubtful, found.lost)
    added = (str(len(one.written.added)) if one.written else "0",) if into else ()
    return (one.name, *map(str, figures), *added, "; ".join(remarks))


def _tell_batch(done: Sequence[Done], asked: Asked) -> None:
    written = [one.path for one in done if one.written and one.path]
    if written:
        click.echo(f"\nWritten: {', '.join(map(str, written))}")
        _tell_outside(asked, written)


def _added(one: Done) -> list[str]:
    """What was added to the vocabulary: characters, and states with their character."""
    return [*one.new, *(f"{name}: {', '.join(states)}" for name, states in one.new_states.items())]


def _tell_next(one: Done, asked: Asked) -> None:
    """What was written and left out, and what to do next."""
    assert one.transcript is not None
    click.echo()
    found = counts(one.transcript, asked.sure)
    if not found.read:
        click.echo("Nothing could be read.")
        return
    if one.fault:
        _tell_fault(one, asked)
    elif one.path is None:
        _tell_added(one, asked)
        _tell_unwritten(one, asked, found.unsure)
    else:
        _tell_written(one, asked, found.unsure)


def _tell_fault(one: Done, asked: Asked) -> None:
    """What could not be written, and what would be lost with it, ready to paste."""
    if one.written:
        _say(_written(one, one.written))
    if one.unwritten:
        _paste(one.unwritten)
    show_lacking([item.choice for item in one.kept if item.by_hand or asked.new_characters], as_yaml=True)
    click.echo(f"auctorum: {one.fault}", err=True)


def _tell_written(one: Done, asked: Asked, unsure: int) -> None:
    assert one.path is not None
    if one.written:
        _say(_written(one, one.written))
        if one.written.begun:
            _say("Its status was taken as accepted; change it there if the work keeps the name otherwise.")
        for said in _there(one.written, asked.page):
            _say(said)
    else:
        _say(f"{one.path}: nothing to add.")
    _tell_added(one, asked)
    if one.left_out:
        told = f"{counted(one.left_out, 'statement')} of characters or states that characters.yaml lacks left out"
        _say(f"{told}; --add-characters adds them, --yaml shows them ready to paste.")
    if unsure and not asked.review:
        _say(f"{counted(unsure, 'reading')} not sure left out; --review decides on each.")
    _tell_outside(asked, [one.path])
    _say(f"Next: auctorum check --kb {asked.kb}")


def _written(one: Done, written: Appended) -> str:
    begun = ", a new treatment" if written.begun else ""
    return f"{one.path}: {counted(len(written.added), 'statement')} added to {written.taxon}{begun}."


def _there(written: Appended, page: str) -> list[str]:
    """How many statements stood there already, with the page where that is another."""
    pages = Counter(one.page for one in written.there)
    return [
        f"{counted(number, 'statement')} stood there already{_with_page(there) if there != page else ''}."
        for there, number in pages.items()
    ]


def _with_page(page: str) -> str:
    return f" with page {page}" if page else " without a page"


def _tell_added(one: Done, asked: Asked) -> None:
    for name in one.new:
        _say(f"{asked.vocabulary_file}: added {name}; say there how it is measured or judged.")
    for name, states in one.new_states.items():
        noun = "state" if len(states) == 1 else "states"
        where = "at the end of its states; if these have an order, put it right"
        _say(f"{asked.vocabulary_file}: added the {noun} {', '.join(states)} to {name}, {where}.")


def _tell_outside(asked: Asked, written: Iterable[Path]) -> None:
    literature = asked.kb / "literature"
    if any(path.resolve().parent != literature.resolve() for path in written):
        _say(f"auctorum check reads {literature} only; what stands elsewhere counts once it is there.")


def _tell_unwritten(one: Done, asked: Asked, unsure: int) -> None:
    """After a review the statements to paste; else how to go on."""
    assert one.transcript is not None
    if asked.review:
        by_hand = [item.choice for item in one.kept if item.by_hand]
        show_lacking(by_hand, as_yaml=True)
        _paste(statements(one.transcript, one.kept, asked.page))
        return
    _say("Next: check each reading against its words.")
    _say(f"  --into {asked.kb / 'literature' / 'ID.yaml'} --taxon NAME --page PAGE puts the sure ones into a file")
    if unsure:
        _say(f"  --review decides on the {unsure} that {'is' if unsure == 1 else 'are'} not sure")
    if not asked.as_yaml and any(not draft.choice.known for draft in one.transcript.drafts):
        _say("  --add-characters adds what characters.yaml lacks, --yaml shows it ready to paste")


def _paste(said: Iterable[StatementRecord]) -> None:
    console().print(heading("Statements to paste under traits:"))
    for one in said:
        click.echo(f"      - {statement_line(one)}")


def _say(sentence: str) -> None:
    console().print(sentence)
