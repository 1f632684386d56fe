"""Many taxa, many pairs and many states: what has to stay the same, and what has to stay cheap."""

from __future__ import annotations

from collections.abc import Mapping
from itertools import combinations
from typing import Any

import pytest

from accounts import OTHER, TAXON, Account, corpus_from
from auctorum.characters.vocabulary import Character, Kind
from auctorum.circumscription import traits_apart
from auctorum.circumscription.diagnosis import diagnosis
from auctorum.circumscription.key import trying
from auctorum.circumscription.key.told import Spread
from auctorum.circumscription.separation import Separation, knowledge_of, separation, separation_known
from auctorum.circumscription.separation_known import Knowledge, knowledge
from auctorum.corpus.model import Corpus

WORK = Account(
    1900,
    "Orrin",
    {TAXON: (("stem height", "10–20 mm", ""),), OTHER: (("stem height", "30–40 mm", ""), ("leaf length", "4 mm", ""))},
)


def test_a_pair_is_found_in_either_order_and_nothing_for_strangers() -> None:
    found = separation(corpus_from([WORK]), (TAXON, OTHER))
    assert len(found.of(TAXON, OTHER)) == 2
    assert found.of(OTHER, TAXON) == found.of(TAXON, OTHER)
    assert found.of(TAXON, "exemplum-nullum") == ()


def test_what_is_known_beforehand_gives_the_same_answer() -> None:
    corpus = corpus_from([WORK])
    known = {taxon: knowledge(diagnosis(corpus, taxon).findings, corpus.vocabulary) for taxon in (TAXON, OTHER)}
    for a, b in (*combinations((TAXON, OTHER), 2), (OTHER, TAXON)):
        assert separation_known(corpus, {one: known[one] for one in (a, b)}) == separation(corpus, (a, b))


def test_a_key_by_hundreds_of_states_tries_few_ways_for_each(monkeypatch: pytest.MonkeyPatch) -> None:
    """Of two taxa without a state in common the first group that holds all of one is perfect."""
    states = [f"state {number:03}" for number in range(120)]
    character = Character("leaf shape", "leaf", "shape", Kind.NOMINAL)
    halves = [dict.fromkeys(states[half::2], 1 / 60) for half in (0, 1)]
    told = [(name, 1.0, Spread(shares=shares)) for name, shares in zip("ab", halves, strict=True)]
    asked = 0
    tells = trying.tells

    def counted(*given: Any) -> float:
        nonlocal asked
        asked += 1
        return tells(*given)

    monkeypatch.setattr(trying, "tells", counted)
    rules = list(trying._groups_of_states(told, character, ""))
    assert asked <= len(states) ** 2
    assert {frozenset(rule.lower) for rule in rules} >= {frozenset(states[0::2])}
    assert {(state,) for state in states} <= {rule.lower for rule in rules}


def test_a_taxon_beside_others_is_compared_with_each_alone(monkeypatch: pytest.MonkeyPatch) -> None:
    corpus = corpus_from([WORK])
    pairs = []

    def noted(of: Corpus, known: Mapping[str, Knowledge]) -> Separation:
        pairs.append(tuple(known))
        return separation_known(of, known)

    monkeypatch.setattr(traits_apart, "separation_known", noted)
    (found,) = traits_apart.against(corpus, TAXON, knowledge_of(corpus, (TAXON, OTHER)))
    assert pairs == [(TAXON, OTHER)]
    assert set(found) == {("stem height", "")}  # the leaf is told of one alone
    assert traits_apart.against(corpus, TAXON, knowledge_of(corpus, (TAXON,))) == ()
