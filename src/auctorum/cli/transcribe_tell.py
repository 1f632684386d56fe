"""What became of texts, said to a person or to a machine, and what to do next."""

from __future__ import annotations

from collections.abc import Sequence

from auctorum.cli.common import counted, echo_json
from auctorum.cli.layout import console, heading
from auctorum.cli.transcribe_data import statement_data, transcript_data
from auctorum.cli.transcribe_kept import counts, statements
from auctorum.cli.transcribe_run import Asked, Done
from auctorum.cli.transcribe_show import show, show_batch
from auctorum.records.append import statement_line


def tell(done: Sequence[Done], asked: Asked, *, batch: bool) -> None:
    """Print the result: as JSON, as a table of files, or as one text with its readings."""
    if asked.as_json:
        echo_json([_data(one, asked) for one in done])
    elif batch:
        show_batch([_row(one, asked) for one in done], into=asked.into is not None)
    else:
        (one,) = done
        if one.transcript and not asked.review:
            show(one.transcript, asked.sure, everything=asked.everything)
        _tell_next(one, asked)


def _data(one: Done, asked: Asked) -> dict[str, object]:
    if one.transcript is None:
        return {"file": one.name, "problem": one.fault}
    data = transcript_data(one.name, one.transcript, one.kept, asked.sure, asked.page)
    if one.new:
        data["characters_added"] = list(one.new)
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
        return (one.name, "", "", "", *(("", "") if into else ()), one.fault)
    found = tuple(map(str, counts(one.transcript, asked.sure)))
    remarks = []
    if one.written and one.written.there:
        remarks.append(f"{len(one.written.there)} there already")
    if one.left_out:
        remarks.append(f"{one.left_out} of unknown characters left out")
    if one.new:
        remarks.append(f"new: {', '.join(one.new)}")
    where = (str(one.path) if one.written else "", str(len(one.written.added)) if one.written else "0") if into else ()
    return (one.name, *found, *where, "; ".join(remarks))


def _tell_next(one: Done, asked: Asked) -> None:
    """What was written and left out, and what to do next."""
    out = console()
    assert one.transcript is not None
    out.print()
    total, doubtful, _ = counts(one.transcript, asked.sure)
    if not total:
        out.print("Nothing could be read.")
        return
    for name in one.new:
        out.print(f"{asked.kb / 'characters.yaml'}: added {name}; say there how it is measured or judged.")
    if one.path is None:
        _tell_unwritten(one, asked, doubtful)
        return
    if one.written:
        begun = ", a new treatment" if one.written.begun else ""
        out.print(f"{one.path}: {counted(len(one.written.added), 'statement')} added to {one.written.taxon}{begun}.")
        if one.written.there:
            out.print(f"{counted(len(one.written.there), 'statement')} stood there already.")
    else:
        out.print(f"{one.path}: nothing to add.")
    if one.left_out:
        told = f"{counted(one.left_out, 'statement')} of characters that characters.yaml lacks left out"
        out.print(f"{told}; --add-characters adds them, or paste them from above.")
    if doubtful and not asked.review:
        out.print(f"{counted(doubtful, 'reading')} not sure left out; --review decides on each.")
    out.print(f"Next: auctorum check --kb {asked.kb}")


def _tell_unwritten(one: Done, asked: Asked, doubtful: int) -> None:
    """After a review the statements to paste; else how to go on."""
    out = console()
    assert one.transcript is not None
    if asked.review:
        out.print(heading("Statements to paste under traits:"))
        for said in statements(one.transcript, one.kept, asked.page):
            out.print(f"      - {statement_line(said)}", soft_wrap=True)
        return
    out.print("Next: check each reading against its words.")
    out.print(f"  --into {asked.kb / 'literature' / 'ID.yaml'} --taxon NAME --page PAGE puts the sure ones into a file")
    if doubtful:
        out.print(f"  --review decides on the {doubtful} that {'is' if doubtful == 1 else 'are'} not sure")
