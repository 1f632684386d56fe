"""Ranks by name and term; the order is that of ICN Art. 3.1, 4.1, 4.2."""

from __future__ import annotations

import pytest

from auctorum.names.name import Name, Ranked
from auctorum.names.ranks import RANKS, UnknownRank, implied_rank, rank_named, rank_of_term, read_term

ART_4 = (
    "kingdom subkingdom phylum subphylum class subclass order suborder family subfamily tribe subtribe genus subgenus "
    "section subsection series subseries species subspecies variety subvariety form subform"
)


def test_order_of_the_code() -> None:
    assert [rank.name for rank in sorted(RANKS)][:-1] == ART_4.split()
    assert RANKS[-1].name == "unranked"


@pytest.mark.parametrize(
    ("said", "name"),
    [
        ("variety", "variety"), ("var.", "variety"), ("Varietas", "variety"), ("VAR", "variety"),
        ("ssp.", "subspecies"), ("subsp.", "subspecies"), ("sectio", "section"), ("f.", "form"), ("forma", "form"),
        ("subforma", "subform"), ("nothosubspecies", "subspecies"), ("familia", "family"), ("[unranked]", "unranked"),
    ],
)  # fmt: skip
def test_rank_named(said: str, name: str) -> None:
    assert rank_named(said).name == name


def test_unknown_rank_names_the_nearest() -> None:
    with pytest.raises(UnknownRank, match="no rank `varietty`") as caught:
        rank_named("varietty")
    assert caught.value.near[0] == "variety"
    assert caught.value.remedy.startswith("nearest: variety")


def test_every_term_leads_back_to_its_rank() -> None:
    assert [rank_of_term(rank.term) for rank in RANKS] == list(RANKS)
    assert [rank_named(rank.name) for rank in RANKS] == list(RANKS)


def test_terms_of_hybrids() -> None:
    assert read_term("nothovar.") == (rank_named("variety"), True)
    assert read_term("nothof.") == (rank_named("form"), True)
    assert read_term("longum") is None


@pytest.mark.parametrize(
    ("name", "rank"),
    [
        (Name("Exemplum"), "genus"),
        (Name("Exemplaceae"), "family"),
        (Name("Exemplum", "album"), "species"),
        (Name("Exemplum", "album", (Ranked("subspecies", "longum"), Ranked("form", "minus"))), "form"),
        (Name("Exemplum", divisions=(Ranked("section", "Calcaria"),)), "section"),
        (Name("Exemplum", "album", divisions=(Ranked("section", "Calcaria"),)), "species"),
    ],
)
def test_implied_rank(name: Name, rank: str) -> None:
    assert implied_rank(name) == rank
