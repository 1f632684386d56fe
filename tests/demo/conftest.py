"""The demo knowledge base, read and linked once."""

from __future__ import annotations

from pathlib import Path

import pytest

from auctorum.corpus.link import link
from auctorum.corpus.model import Corpus
from auctorum.nomenclature.code import Code, applied
from auctorum.records.read import pinpoint, read

KB = Path(__file__).parent.parent.parent / "kb"


@pytest.fixture(scope="session")
def linked() -> tuple[Corpus, list[str]]:
    """The corpus, and its problems as `check` prints them."""
    records, unread = read(KB, use_cache=False)
    corpus, unlinked = link(records)
    corpus = applied(corpus).corpus
    return corpus, [str(problem) for problem in pinpoint((*unread, *unlinked))]


@pytest.fixture(scope="session")
def corpus(linked: tuple[Corpus, list[str]]) -> Corpus:
    return linked[0]


@pytest.fixture(scope="session")
def code(corpus: Corpus) -> Code:
    """The corpus under the Code."""
    return applied(corpus)
