"""What follows a name and its authors, sorted into sense, notes and remainder; nothing is dropped but brackets."""

from __future__ import annotations

from collections.abc import Sequence

from auctorum.names.lexicon import starts_tail
from auctorum.names.tokens import END, Token

Pieces = dict[str, list[str]]


def split_tail(text: str, tokens: Sequence[Token]) -> Pieces:
    """Pieces of `text` under `sense`, `notes` and `remainder`, each in order, as written.

    A remark on the sense runs to a semicolon, a note to a comma, either to the next remark.
    """
    pieces: Pieces = {"sense": [], "notes": [], "remainder": []}
    mode, run, bracketed = "remainder", list[Token](), False

    def close() -> None:
        if run:
            piece = text[run[0].start : run[-1].end].strip(" ,;")
            if piece:
                pieces[mode].append(piece)
            run.clear()

    for number, token in enumerate(tokens):
        following = tokens[number + 1] if number + 1 < len(tokens) else END
        opens = token.text in ("(", "[")
        after = tokens[number + 2] if opens and number + 2 < len(tokens) else END
        remark = starts_tail(following, after) if opens else starts_tail(token, following)
        if bracketed and token.text in (")", "]"):
            close()
            mode, bracketed = "remainder", False
            continue
        if remark and remark != mode and not bracketed:
            close()
            mode, bracketed = remark, opens
            if opens:
                continue
        elif _ends(token, mode) and not bracketed:
            close()
            mode = "remainder"
        run.append(token)
    close()
    return pieces


def _ends(token: Token, mode: str) -> bool:
    if mode == "remainder":
        return False
    return token.text in (";", '"', "'", "[") or (token.text == "," and mode == "notes")
