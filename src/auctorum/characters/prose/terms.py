"""The lexicon of descriptive terms: what one word of a description says of an organ, in English words of the trade."""

from __future__ import annotations

from auctorum.characters.prose.formed_terms import formed_term, latin_first
from auctorum.characters.prose.term_words import TINTS, Term, degree_of, term_of

__all__ = ["TINTS", "Term", "degree_of", "formed_term", "latin_first", "term_of"]
