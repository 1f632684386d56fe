"""The lexicon of descriptive terms: what one word of a description says of an organ, in English words of the trade."""

from __future__ import annotations

from auctorum.characters.prose.formed_terms import latin_first, prefix_term
from auctorum.characters.prose.term_words import TINTS, Term, degree_of, term_of

__all__ = ["TINTS", "Term", "degree_of", "latin_first", "prefix_term", "term_of"]
