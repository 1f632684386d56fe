"""How far the probabilities can be trusted, in sentences and rows for people."""

from __future__ import annotations

from collections.abc import Iterator

from auctorum.circumscription.intervals import wilson
from auctorum.circumscription.phrases import counted, interval_words, listed, share_words
from auctorum.determination.calibration import Calibration
from auctorum.determination.model import Wording
from auctorum.determination.telling.beforehand import Beforehand
from auctorum.determination.telling.words import Names

BANDS = ("stated", "plants", "stated on average", "as named", "share", "95 % interval")
TALLIES = ("wording", "plants", "as named", "otherwise")
MISTAKEN = ("named", "likeliest here", "plants")


def sentences(found: Calibration, beforehand: Beforehand) -> Iterator[str]:
    """What becomes of the named plants, how good the probabilities are, and what makes them look better."""
    yield (
        f"Of {counted(found.plants, 'named plant')} {found.right} "
        f"({_share(found.right, found.plants)}; 95 % interval {interval_words(wilson(found.right, found.plants))}) "
        f"{'is' if found.right == 1 else 'are'} likeliest what they were named."
    )
    yield (
        f"Brier score {found.brier:.2f}: 0 is perfect, 2 the worst; who knows nothing but what is likely beforehand "
        f"has {found.brier_unknown:.2f}."
    )
    yield from _errors(found)
    if found.left_one_out:
        yield "These plants count as an author here, so each was judged without what it says itself."
    if beforehand.counted is not None:
        yield "What was likely beforehand was counted on the plants of the knowledge base, these perhaps among them."
    yield from _missing(found)
    by = f" Here they were named by {listed(found.named_by)}." if found.named_by else ""
    yield (
        "Names that were given by the same characters, or by somebody who works from the same accounts, make all this "
        f"look better than it is.{by}"
    )


def _errors(found: Calibration) -> Iterator[str]:
    wrong = found.plants - found.right
    if not wrong:
        yield "None was named otherwise."
        return
    held = [one for one in found.tallies if one.wording is not Wording.PLAIN]
    doubted, of_these = sum(one.plants - one.right for one in held), sum(one.plants for one in held)
    yield (
        f"cf., aff. and indet. were said of {_share(of_these, found.plants)} of the plants, and hold {doubted} of the "
        f"{counted(wrong, 'error')}."
    )


def _missing(found: Calibration) -> Iterator[str]:
    if found.left_out:
        are = "is" if found.left_out == 1 else "are"
        yield f"{counted(found.left_out, 'plant')} named as a taxon that is no candidate {are} left out."
    if found.unseen:
        are = "is" if found.unseen == 1 else "are"
        yield f"{counted(found.unseen, 'plant')} on which nothing was observed that is stated {are} left out."


def _share(part: int, whole: int) -> str:
    return share_words(part / whole) if whole else "–"


def band_rows(found: Calibration) -> Iterator[tuple[str, ...]]:
    """The bands under `BANDS`: what was stated, and how often it was so."""
    for one in found.bands:
        high = f"{one.high * 100:.0f}"
        said = f"over {one.low * 100:.0f} %" if one.high == 1 else f"{one.low * 100:.0f}–{high} %"
        yield (
            said, str(one.plants), f"{one.stated * 100:.0f} %" if one.stated < 0.995 else "over 99 %",
            f"{one.right} of {one.plants}", _share(one.right, one.plants), interval_words(one.interval),
        )  # fmt: skip


def tally_rows(found: Calibration) -> Iterator[tuple[str, ...]]:
    """The wordings under `TALLIES`, the surest first."""
    for one in reversed(found.tallies):
        if one.plants:
            yield str(one.wording), str(one.plants), str(one.right), str(one.plants - one.right)


def mistaken_rows(found: Calibration, names: Names) -> Iterator[tuple[str, ...]]:
    """The pairs under `MISTAKEN`, those with most plants first."""
    for named, taken, many in found.mistaken:
        yield names[named], names[taken], str(many)
