"""The sum of a table of determined plants: how many of each taxon and wording, and where names given differ."""

from __future__ import annotations

from rich.console import Console
from rich.text import Text

from auctorum.cli.common import counted
from auctorum.cli.determine_setting import Setting
from auctorum.cli.determine_table import Teller
from auctorum.cli.layout import console, heading, table
from auctorum.cli.names_in_text import italiciser
from auctorum.corpus.cautions import OPINION
from auctorum.determination.telling.grounds import grounds
from auctorum.determination.telling.table_answers import Sum
from auctorum.determination.wording import IN_ORDER

_MOST_PAIRS = 12


def show_sum(asked: Setting, total: Sum, teller: Teller, *, aside: bool) -> None:
    """Print it, on standard error where the output is a table."""
    out = Console(stderr=True, highlight=False, markup=False) if aside else console()
    names = asked.view.names
    italic = italiciser(names.values())
    out.print(heading(f"\n{counted(total.plants, 'plant')}, {asked.view.title}"))
    rows: list[tuple[str | Text, ...]] = [
        (italic(names[taxon]), *(str(one or "") for one in counts), str(sum(counts)))
        for taxon, counts in total.by_taxon(asked.view.taxa)
    ]
    if rows:
        headings = ("likeliest", *(str(one) for one in reversed(IN_ORDER)), "in all")
        out.print(table(headings, rows, right=(1, 2, 3, 4, 5)))
    for sentence in _sentences(total, teller):
        out.print(sentence)
    if total.disagree:
        pairs = sorted(total.disagree.items(), key=lambda one: (-one[1], one[0]))
        shown = [(italic(names[given]), italic(names[found]), str(many)) for (given, found), many in pairs]
        out.print(table(("named", "determined as", "plants"), shown[:_MOST_PAIRS], right=(2,)))
        if len(pairs) > _MOST_PAIRS:
            out.print(f"{len(pairs) - _MOST_PAIRS} more such pairs.")
    rests = grounds(asked.corpus, asked.view, asked.beforehand, among=bool(asked.taxa), of_site=(), reckoned=())
    out.print(italic(" ".join([*rests, OPINION])))


def _sentences(total: Sum, teller: Teller) -> list[str]:
    said = []
    named = total.agree + sum(total.disagree.values())
    if named:
        said.append(f"Of {counted(named, 'named plant')} that were determined, {total.agree} as named.")
    if total.elsewhere:
        said.append(f"{counted(total.elsewhere, 'plant')} named as a taxon that is no candidate: not compared.")
    if total.undetermined:
        said.append(f"On {counted(total.undetermined, 'plant')} nothing was observed that could be used.")
    if total.strange:
        said.append(
            f"{counted(total.strange, 'plant')} outside what is stated of the likeliest taxon in some character."
        )
    if teller.errors:
        concern = "it concerns" if teller.errors == 1 else "they concern"
        said.append(f"{counted(teller.errors, 'fault')} in the table; what {concern} was not used.")
    return said


def sum_data(asked: Setting, total: Sum) -> dict[str, object]:
    """The sum as plain data."""
    return {
        "view": asked.view.title,
        "plants": total.plants,
        "undetermined": total.undetermined,
        "taxa": [
            {"taxon": taxon, "name": asked.view.names[taxon],
             **{str(word): many for word, many in zip(reversed(IN_ORDER), counts, strict=True)}}
            for taxon, counts in total.by_taxon(asked.view.taxa)
        ],
        "as_named": total.agree,
        "named_as_no_candidate": total.elsewhere,
        "otherwise_named": [
            {"named": given, "determined": found, "plants": many}
            for (given, found), many in sorted(total.disagree.items(), key=lambda one: (-one[1], one[0]))
        ],
        "outside_what_is_stated": total.strange,
    }  # fmt: skip
