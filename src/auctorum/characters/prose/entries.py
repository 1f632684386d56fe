"""Tables of words as text: a name, a colon, and the words that are called so."""

from __future__ import annotations

from collections.abc import Iterator


def entries(text: str) -> Iterator[tuple[str, tuple[str, ...]]]:
    """Each line as its name and words, in order; a name may come more than once.

    >>> list(entries("leaf: folium phyllum"))
    [('leaf', ('folium', 'phyllum'))]
    """
    for line in text.splitlines():
        name, colon, words = line.partition(":")
        if colon:
            yield name.strip(), tuple(words.split())
