"""What is told of a working criterion in the same words everywhere: its limit, and who set it."""

from __future__ import annotations

from auctorum.circumscription.phrases import listed
from auctorum.records.schema import Criterion


def limit_words(said: str, *, at_least: bool) -> str:
    """A limit in words.

    >>> limit_words("25 mm", at_least=True), limit_words("pubescent", at_least=False)
    ('at least 25 mm', 'at most pubescent')
    """
    return f"{'at least' if at_least else 'at most'} {said}"


def who_set(criterion: Criterion) -> str:
    """Who set it, and in which year: `M. Sallow 2024`; "" where neither is told."""
    people = [" ".join(filter(None, (one.given, one.family))) for one in criterion.author]
    return " ".join(filter(None, (listed(people) if people else "", (criterion.issued or "")[:4])))
