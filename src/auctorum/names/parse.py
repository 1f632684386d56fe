"""A printed name read into its parts: one pass over the tokens, each step taking what it knows or leaving it.

name      = qualifier* [×] genus division* [species] lower* [authors] tail
division  = [authors] rank-term Word  |  "(" rank-term Word [authors] ")"   the latter before a species
species   = qualifier* [×] epithet
lower     = [authors] qualifier* (rank-term | Greek letter) [×] epithet     without either: unranked
tail      = sense | notes | remainder
"""

from __future__ import annotations

from dataclasses import replace

from auctorum.names.authors import parse_authors as parse_authors
from auctorum.names.authors import read_authors
from auctorum.names.connectives import Connective, take_connective
from auctorum.names.format import format_authors
from auctorum.names.lexicon import (
    AFTER,
    BEFORE,
    NEW,
    SHORT_SENSE,
    UNNAMED,
    in_title_case,
    is_epithet,
    is_hybrid_sign,
    joined_hybrid,
)
from auctorum.names.name import NO_AUTHORS, Authors, Name, Ranked, Usage
from auctorum.names.name import UnreadableName as UnreadableName
from auctorum.names.ranks import GENUS, SPECIES, UNRANKED
from auctorum.names.tail import split_tail
from auctorum.names.tokens import Cursor, Token, is_latin


def parse(text: str) -> Usage:
    """The name with which `text` begins, and what stands around it; every word ends up in one of the parts.

    Capitals are put right, rank terms and initials take one form; spelling stays. Raises UnreadableName if the
    text does not begin with a name.

    >>> parse("Exemplum album ssp. longum (Orrin) K.Veldt, 1911").remainder
    '1911'
    """
    return _Reader(text).read()


def parse_name(text: str) -> Name:
    """The name in `text`, without what surrounds it; raises UnreadableName, also for a hybrid formula (ICN H.2).

    >>> parse_name("EXEMPLUM ALBUM") == Name("Exemplum", "album")
    True
    """
    reader = _Reader(text)
    usage = reader.read()
    if reader.is_formula:
        raise UnreadableName(text, "a hybrid formula has two parents; it is no name")
    return usage.name


NO_CONNECTIVE = Connective(UNRANKED, False, ())


class _Reader:
    """The parts found so far in one text."""

    def __init__(self, text: str) -> None:
        self.text = text
        self.cursor = Cursor(text)
        self.name = Name("")
        self.qualifiers: list[tuple[str, str]] = []
        self.senses: list[str] = []
        self.notes: list[str] = []
        self.left: list[str] = []
        self.shouting = False
        self.is_formula = False

    def read(self) -> Usage:
        """Everything in the text; to be called once."""
        self._genus()
        while self._division() or self._bracketed_divisions():
            pass
        self._species()
        if not self.name.species:
            # Without an epithet the full stop ends a sentence; `E. album` is abbreviated.
            self.name = replace(self.name, genus=self.name.genus.removesuffix("."))
            if len(self.name.genus) < 2:
                raise UnreadableName(self.text, f"`{self.name.genus}` is no genus")
        while self._lower():
            pass
        part = self._last_part()
        self.name = replace(self.name, authors=self._between(part, part))
        self._settle_autonym()
        self.is_formula = is_hybrid_sign(self.cursor.peek())
        tail = split_tail(self.cursor.text, self.cursor.rest)
        return Usage(
            self.name,
            tuple(self.qualifiers),
            "; ".join(self.senses + tail["sense"]),
            "; ".join(self.left + tail["remainder"]),
            "; ".join(self.notes + tail["notes"]),
        )

    def _last_part(self) -> str:
        if self.name.lower:
            return "lower"
        return "species" if self.name.species else "division" if self.name.divisions else "genus"

    # Genus

    def _genus(self) -> None:
        hybrid = self._before_genus()
        token = self.cursor.peek()
        word = token.text
        if token.kind != "word":
            raise UnreadableName(self.text, "no word to begin with" if token.kind == "end" else f"begins with `{word}`")
        if len(word) > 3 and word[0] == "x" and word[1].isupper() and not hybrid:
            hybrid, word = True, word[1:]
        self._check_genus(token)
        if len(token.bare) > 5:
            word = word.removesuffix(".")
        self.shouting = len(word) > 2 and word.isupper()
        self.cursor.take()
        self.name = Name(_capitalised(word), genus_hybrid=hybrid)

    def _check_genus(self, token: Token) -> None:
        if not is_latin(token.bare):
            raise UnreadableName(self.text, f"`{token.text}` is not in Latin letters")
        if len(token.text) < 2 or (token.is_lower and not is_epithet(token)):
            raise UnreadableName(self.text, f"`{token.text}` is no genus")

    def _before_genus(self) -> bool:
        """Qualifiers, signs and opening marks before the genus; whether one is the hybrid sign."""
        hybrid = False
        while (token := self.cursor.peek()).kind != "end":
            following = self.cursor.peek(1)
            if token.kind == "sign" or (token.text in ("x", "X") and following.kind == "word"):
                hybrid = True
            elif token.text in ("?", "+") or token.key in BEFORE:
                self.qualifiers.append((token.text, "genus"))
            elif token.kind == "mark":
                self.left.append(token.text)
            else:
                break
            self.cursor.take()
        return hybrid

    # Divisions of the genus

    def _division(self) -> bool:
        ahead = self.cursor.peek()
        if ahead.kind == "end" or (ahead.text[0].isupper() and self._is_species(ahead)):
            return False
        state = self._state()
        given = read_authors(self.cursor)
        ranked = self._ranked_word(bare=False)
        if ranked is None:
            self._return_to(state)
            return False
        self._add_division(ranked, given)
        return True

    def _add_division(self, ranked: Ranked, given: Authors) -> None:
        before = self.name.divisions
        if given and not before:
            self.name = replace(self.name, species_authors=given)
        self.name = replace(self.name, divisions=(*_signed(before, given), ranked))

    def _ranked_word(self, bare: bool) -> Ranked | None:
        """A rank term of a division with its word; if `bare`, also the word alone, as unranked."""
        found = take_connective(self.cursor)
        if found is None and not bare:
            return None
        rank, hybrid, notes = found or NO_CONNECTIVE
        token = self.cursor.peek()
        signed = is_hybrid_sign(token)
        if signed:
            token = self.cursor.peek(1)
        capital = token.kind == "word" and token.text[0].isupper() and not token.text.endswith(".")
        if not (GENUS < rank < SPECIES or (rank is UNRANKED and capital)) or not is_epithet(token, True, True):
            return None
        self.cursor.take(2 if signed else 1)
        self.notes += notes
        return Ranked(rank.name, _capitalised(token.bare), hybrid or signed)

    def _bracketed_divisions(self) -> bool:
        """`(sect. Word)` before a species epithet; in parentheses before none stand authors."""
        if self.cursor.peek().text != "(":
            return False
        state = self._state()
        self.cursor.take()
        ranked = self._ranked_word(bare=True)
        while ranked is not None:
            self._add_division(ranked, NO_AUTHORS)
            given = read_authors(self.cursor)
            ranked = self._ranked_word(bare=False)
            self.name = replace(self.name, divisions=_signed(self.name.divisions, given))
        closed = self.cursor.take().text == ")"
        if closed and self.name.divisions and self._at_species():
            return True
        self._return_to(state)
        return False

    # Species and below

    def _at_species(self) -> bool:
        token = self.cursor.peek()
        if is_hybrid_sign(token) or token.text == "?" or token.key in BEFORE:
            token = self.cursor.peek(1)
        return is_epithet(token, self.shouting)

    def _is_species(self, token: Token, hybrid: bool = False) -> bool:
        return is_epithet(token, self.shouting, not hybrid and (in_title_case(token) or joined_hybrid(token)))

    def _species(self) -> None:
        state = self._state()
        if self.cursor.peek().key in UNNAMED and self.cursor.peek(1).key not in NEW:
            self.notes.append(self.cursor.take().text)
            state = self._state()
        self._marks("species", self._last_part())
        hybrid = is_hybrid_sign(self.cursor.peek())
        token = self.cursor.peek(int(hybrid))
        if not self._is_species(token, hybrid):
            self._return_to(state)
            return
        self.cursor.take(2 if hybrid else 1)
        if self.name.species_authors:
            self.left.append(format_authors(self.name.species_authors))
        joined = not hybrid and joined_hybrid(token)
        epithet = token.key[1:] if joined else token.key
        self.name = replace(self.name, species=epithet, species_hybrid=hybrid or joined, species_authors=NO_AUTHORS)

    def _lower(self) -> bool:
        if self.cursor.at_end:
            return False
        state = self._state()
        given = self._between("lower", self._last_part())
        # A third Latin word counts as an epithet only right after the second.
        adjoins = self.cursor.pos == state[0] and bool(self.name.species)
        ranked = self._ranked_epithet(adjoins)
        if ranked is None:
            self._return_to(state)
            return False
        before = self.name.lower
        if given and not before:
            self._sign_upper(given)
        self.name = replace(self.name, lower=(*_signed(before, given), ranked))
        return True

    def _sign_upper(self, given: Authors) -> None:
        """Authors before the first epithet below the species are the species', or of what stands in its place."""
        if self.name.species or not self.name.divisions:
            self.name = replace(self.name, species_authors=given)
        else:
            self.name = replace(self.name, divisions=_signed(self.name.divisions, given))

    def _ranked_epithet(self, bare: bool) -> Ranked | None:
        """A rank term below species, or a Greek letter, with its epithet; if `bare`, an epithet alone, unranked."""
        found = take_connective(self.cursor)
        marked = found is not None
        rank, hybrid, notes = found or NO_CONNECTIVE
        if not (marked or bare) or rank <= SPECIES:
            return None
        if marked:
            self._marks("lower", "lower")
        signed = marked and is_hybrid_sign(self.cursor.peek())
        token = self.cursor.peek(int(signed))
        titled = marked and rank.term != "f."
        if not is_epithet(token, self.shouting and marked, titled) or (not marked and len(token.bare) < 4):
            return None
        self.cursor.take(2 if signed else 1)
        self.notes += notes
        return Ranked(rank.name, token.key, hybrid or signed)

    # What stands between the parts

    def _between(self, following: str, last: str) -> Authors:
        """Authors after a part, with the qualifiers and short remarks on its sense before and behind them."""
        self._marks(following, last)
        authors = read_authors(self.cursor)
        self._marks(following, last)
        return authors

    def _marks(self, following: str, last: str) -> None:
        while True:
            token, second = self.cursor.peek(), self.cursor.peek(1)
            if token.text == "?" or (token.key in BEFORE and token.is_lower):
                self.qualifiers.append((self.cursor.take().text, following))
            elif token.key in AFTER and token.is_lower:
                self.qualifiers.append((self.cursor.take().text, last))
            elif token.is_lower and second.key in SHORT_SENSE.get(token.key, ()):
                self.senses.append(self.cursor.text[token.start : second.end])
                self.cursor.take(2)
            else:
                return

    def _settle_autonym(self) -> None:
        """An autonym has no authors of its own (ICN Art. 22.1, 26.1): those at its end are the species' (genus')."""
        if not self.name.is_autonym or not self.name.authors:
            return
        if self.name.species_authors:
            self.left.append(format_authors(self.name.authors))
            self.name = replace(self.name, authors=NO_AUTHORS)
        else:
            self.name = replace(self.name, authors=NO_AUTHORS, species_authors=self.name.authors)

    def _state(self) -> tuple[int, int, int, int, Name]:
        return self.cursor.pos, len(self.qualifiers), len(self.senses), len(self.notes), self.name

    def _return_to(self, state: tuple[int, int, int, int, Name]) -> None:
        self.cursor.pos, qualifiers, senses, notes, self.name = state
        del self.qualifiers[qualifiers:], self.senses[senses:], self.notes[notes:]


def _signed(epithets: tuple[Ranked, ...], given: Authors) -> tuple[Ranked, ...]:
    """The epithets, the last with the authors given after it."""
    return (*epithets[:-1], replace(epithets[-1], authors=given)) if given and epithets else epithets


def _capitalised(word: str) -> str:
    """The word with a capital first letter; if all are capitals, the others in small letters."""
    first = word[0].upper()
    word = (first if len(first) == 1 else word[0]) + word[1:]
    return word[0] + word[1:].lower() if word.isupper() else word
