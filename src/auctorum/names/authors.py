"""Author citations: persons, teams, `ex`, `in` and parentheses (ICN Art. 46, 49, 50; Rec. 46A-46C)."""

from __future__ import annotations

from auctorum.names.format import format_team
from auctorum.names.lexicon import (
    AND,
    EX,
    GROUPS,
    IN,
    OTHERS,
    PARTICLES,
    SUFFIXES,
    UNPUBLISHED_IN,
    is_author_word,
    is_epithet,
    is_hybrid_sign,
    starts_tail,
)
from auctorum.names.name import Authors, Credit, Team, UnreadableName
from auctorum.names.ranks import read_term
from auctorum.names.tokens import Cursor, Token


def parse_authors(text: str) -> Authors:
    """The author citation that is the whole of `text`; raises UnreadableName if any of it is none.

    Initials stand apart, as the Code prints them; `et` and `and` become `&`.

    >>> parse_authors("(Orrin ex K.Veldt) Marsh et Wynd f.").own.team.members
    ('Marsh', 'Wynd f.')
    """
    cursor = Cursor(text)
    authors = read_authors(cursor)
    if cursor.rest:
        raise UnreadableName(text, f"`{cursor.text[cursor.peek().start :]}` is no author")
    if not authors:
        raise UnreadableName(text, "no author in it")
    return authors


def read_authors(cursor: Cursor) -> Authors:
    """The citation at the cursor, which moves behind it; no authors, and no move, if there is none."""
    basionym = Credit()
    if cursor.peek().text == "(":
        start = cursor.pos
        cursor.take()
        basionym = _credit(cursor)
        if not basionym or cursor.peek().text != ")":
            cursor.pos = start
            return Authors()
        cursor.take()
    return Authors(basionym, _credit(cursor))


def _credit(cursor: Cursor) -> Credit:
    before, team = Team(), _team(cursor)
    while team and cursor.peek().key in EX and not starts_tail(cursor.peek(), cursor.peek(1)):
        start = cursor.pos
        cursor.take()
        following = _team(cursor)
        if not following:
            cursor.pos = start
            break
        before, team = _joined(before, team), following
    return Credit(team, before, _within(cursor) if team else Team())


def _joined(before: Team, team: Team) -> Team:
    """`A ex B` as one side, where a third `ex` follows."""
    if not before:
        return team
    first, *more = team.members
    return Team((f"{format_team(before)} ex {first}", *more), team.and_others)


def _within(cursor: Cursor) -> Team:
    if cursor.peek().key not in IN or (cursor.peek(1).key in UNPUBLISHED_IN and cursor.peek(1).is_lower):
        return Team()
    start = cursor.pos
    cursor.take()
    team = _team(cursor)
    if not team:
        cursor.pos = start
    return team


def _team(cursor: Cursor) -> Team:
    """Persons at the cursor, joined by commas and `&`.

    Persons after a comma count only if an `&` or the end of the citation follows: `L., Sp. Pl. 1` is one author.
    """
    first = _member(cursor)
    if not first:
        return Team()
    members = [first]
    sure = (1, cursor.pos)
    while True:
        joined = _joint(cursor)
        if joined == "others":
            return Team(tuple(members), True)
        member = _member(cursor) if joined else ""
        if not member:
            break
        members.append(member)
        if joined == "and":
            sure = (len(members), cursor.pos)
            continue
        end = cursor.pos
        if _ends_citation(cursor):
            sure = (len(members), end)
    cursor.pos = sure[1]
    return Team(tuple(members[: sure[0]]))


def _joint(cursor: Cursor) -> str:
    """Which joint was taken: `and` (with or without a comma before it), `comma`, `others`; empty if none."""
    comma = cursor.peek().text == ","
    joint = cursor.peek(1 if comma else 0)
    if joint.key in AND:
        others = cursor.peek(2 if comma else 1).key in OTHERS
        cursor.take(comma + 1 + others)
        return "others" if others else "and"
    if comma:
        cursor.take()
    return "comma" if comma else ""


def _ends_citation(cursor: Cursor) -> bool:
    token = cursor.peek()
    if token.kind == "end" or token.text == ")" or token.key in EX or token.key in IN:
        return True
    return bool(starts_tail(token, cursor.peek(1))) or _opens_rank(token, cursor.peek(1))


def _member(cursor: Cursor) -> str:
    """One person, initials spaced; empty if the cursor stands at none."""
    start, words = cursor.pos, list[str]()
    named = False
    while True:
        token = cursor.peek()
        if named and _is_suffix(cursor):
            if token.text == ",":
                cursor.take()
        elif is_author_word(token) and not _opens_rank(token, cursor.peek(1)) and not _opens_formula(cursor):
            named = True
        elif not _is_particle(cursor):
            break
        words.append(cursor.take().text)
    if named and cursor.peek().text in GROUPS:
        named = False
    if not named:
        cursor.pos = start
        return ""
    return " ".join(words)


def _is_particle(cursor: Cursor) -> bool:
    """Whether a lower-case part of a surname stands here, with the capital to follow within three words."""
    for ahead in range(4):
        token = cursor.peek(ahead)
        if ahead and is_author_word(token):
            return not _opens_rank(token, cursor.peek(ahead + 1))
        if token.kind != "word" or token.key not in PARTICLES or token.text[0].isupper():
            return False
    return False


def _is_suffix(cursor: Cursor) -> bool:
    """Whether `f.`, `Jr.` and the like follow a surname; `f.` before an epithet is the rank form."""
    comma = cursor.peek().text == ","
    token, following = cursor.peek(int(comma)), cursor.peek(comma + 1)
    if token.kind != "word" or token.key not in SUFFIXES or (comma and token.key in ("f", "fil")):
        return False
    return token.key != "f" or (token.text[0].islower() and not is_epithet(following))


_PRINTED_LARGE = frozenset(
    {"subsp", "ssp", "var", "varietas", "subvar", "forma", "subforma", "sect", "subg", "subgen", "subsect"}
)


def _opens_rank(token: Token, following: Token) -> bool:
    """Whether a rank term follows the authors; a capitalised one (`Var. Longum`) only if no author is called so."""
    if token.kind != "word" or following.kind not in ("word", "sign"):
        return False
    if token.text.isupper() and len(token.bare) > 1:
        return read_term(token.key) is not None
    if token.text[0].isupper():
        return token.key in _PRINTED_LARGE
    return read_term(token.key) is not None


def _opens_formula(cursor: Cursor) -> bool:
    """Whether a capital X stands for the sign of a hybrid formula: `Exemplum album X E. nigrum`."""
    if not (is_hybrid_sign(cursor.peek()) and cursor.peek(1).kind == "word"):
        return False
    following = cursor.peek(1)
    return is_epithet(following) or (following.text[0].isupper() and is_epithet(cursor.peek(2)))
