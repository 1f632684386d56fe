"""The answer of `auctorum diagnosis` as plain data for JSON."""

from __future__ import annotations

from dataclasses import asdict

from auctorum.circumscription.findings import Finding
from auctorum.circumscription.lineage_words import lineage_data
from auctorum.circumscription.observed import Observed
from auctorum.circumscription.observed_words import sentences
from auctorum.circumscription.separation import Parting
from auctorum.circumscription.separation_words import strength
from auctorum.circumscription.summary import finding_data
from auctorum.circumscription.traits import Trait
from auctorum.circumscription.traits_apart import side
from auctorum.cli.diagnosis_document import Detail
from auctorum.cli.diagnosis_found import Account, Found
from auctorum.cli.diagnosis_tables import taxon_text
from auctorum.corpus.model import Corpus
from auctorum.exchange.document import words


def data(found: Found, detail: Detail) -> object:
    """One object for one taxon, a list of them for several."""
    made = [_account(found, account, detail) for account in found.accounts]
    return made[0] if len(made) == 1 else made


def _account(found: Found, account: Account, detail: Detail) -> dict[str, object]:
    asked, told = found.asked, account.traits.diagnosis
    made: dict[str, object] = {
        "taxon": words(taxon_text(asked.corpus, account.taxon.id)),
        "text": told.text,
        "sources": [{"number": number, "work": work} for number, work in enumerate(told.sources, 1)],
        "works": list(told.works),
    }
    if asked.unit:
        made["converted_to"] = asked.unit
    if detail is not Detail.DESCRIPTION:
        made["beside"] = [words(taxon_text(asked.corpus, one)) for one in account.beside]
        made["characters"] = [_trait(found, account, trait, detail) for trait in account.traits.traits]
        made["repetitions"] = lineage_data(account.repetitions)
    return made


def _trait(found: Found, account: Account, trait: Trait, detail: Detail) -> dict[str, object]:
    corpus = found.asked.corpus
    made = finding_data(trait.finding, corpus.vocabulary)
    if detail is not Detail.FULL:
        del made["statements"]
    made |= {"consensus": trait.consensus, "opinions": trait.opinions}
    made["diagnostic_value"] = [
        _worth(corpus, account, trait, other, partings.get(trait.key))
        for other, partings in zip(account.beside, account.partings, strict=True)
    ]
    if found.asked.with_plants:
        seen = account.observed.get(trait.key)
        made["observed"] = None if seen is None else _observed(corpus, trait.finding, seen)
    return made


def _worth(corpus: Corpus, account: Account, trait: Trait, other: str, parting: Parting | None) -> dict[str, object]:
    """Against one taxon; figures are None where nobody states the character for one of the two."""
    name, character = words(taxon_text(corpus, other)), corpus.vocabulary[trait.finding.character]
    if parting is None or parting.error is None:
        return {"taxon": name, "strength": None, "overlap": None, "error": None}
    return {
        "taxon": name,
        "strength": strength(parting.error),
        "side": side(parting, character, account.taxon.id, trait.printed),
        "overlap": parting.overlap,
        "error": parting.error,
        "threshold": float(parting.cut.value) if parting.cut is not None else None,
        "support": list(parting.support),
        "against": list(parting.against),
    }


def _observed(corpus: Corpus, finding: Finding, seen: Observed) -> dict[str, object]:
    return {
        "plants": seen.n,
        "sites": seen.sites,
        "range": seen.text,
        "sentences": list(sentences(corpus, finding, seen)),
        "contradicted": [cover.work for cover in seen.contradicted],
        "covers": [asdict(cover) for cover in seen.covers],
    }
