"""What auctorum answers to the questions of worked examples of the Code, in the form of their `expect`."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import replace
from typing import Any

import icn_records
from auctorum.corpus.link import link
from auctorum.corpus.spelling import recorded_genders, spelling
from auctorum.names.agreement import EpithetKind, agreeing
from auctorum.names.confusable import confusable
from auctorum.names.format import format_name
from auctorum.names.gender import Gender, gender_of
from auctorum.names.name import Name
from auctorum.names.orthography import Origin, corrected, refused
from auctorum.names.parse import parse_name
from auctorum.names.ranks import UNRANKED, implied_rank
from auctorum.nomenclature.autonyms import autonym_name
from auctorum.nomenclature.code import Code, applied
from auctorum.nomenclature.correct import Outcome, Taxon, correct_name
from auctorum.nomenclature.homonyms import homonym_note, homonymy
from auctorum.nomenclature.judgement import Judgement, Legitimacy, Validity
from auctorum.nomenclature.variants import variant_of
from auctorum.records import schema
from auctorum.records.faults import validate_and_salvage
from building import CHARACTERS, read_text

Answer = dict[str, Any]


class Case:
    """One worked example as a judged corpus; `entry` and `act` find a name of it by its label."""

    def __init__(self, case: dict[str, Any]) -> None:
        self.given, self.question = case["given"], case["question"]
        self.facts = {one["id"]: one for one in self.given.get("names", ())}
        works, self.acts = icn_records.literature(self.given)
        read = []
        for work in works:
            record, problems = validate_and_salvage(schema.Literature, work)
            assert not problems, problems[0]
            read.append(record)
        settings = read_text("title: Examples\n", schema.Settings, "kb.yaml")
        characters = read_text(CHARACTERS, schema.Characters, "characters.yaml")
        corpus, _ = link(schema.Records(settings=settings, characters=characters, literature=tuple(read)))
        self.code: Code = applied(corpus)
        self.labels = {self.code.corpus.acts[act].name: label for label, act in reversed(self.acts.items())}

    def judged(self, label: str) -> Judgement:
        """The judgement on an act; for the mere use of a name, that on the name."""
        found = self.code.acts.get(self.acts[label]) or self.code.of_name(self.entry(label))
        assert found is not None
        return found

    def entry(self, label: str) -> str:
        """Id of the name with that label; of the species or genus for an autonym, whose type it shares."""
        one = self.facts[label]
        if one["act"] == "autonym":
            made = self.code.corpus.acts[self.acts[one["established_by"]]]
            assert made.above is not None
            return made.above
        return self.code.corpus.acts[self.acts[label]].name

    def name(self, label: str) -> Name:
        return self.code.corpus.names[self.entry(label)].name

    def label(self, entry: str | None) -> str | None:
        """Label of a name: of the act that publishes it."""
        if entry is None:
            return None
        published = self.code.corpus.names[entry].published_by
        return next((label for label, act in self.acts.items() if act == published), self.labels.get(entry))

    def type_label(self, entry: str) -> str | None:
        """Label of the type of a name."""
        group = self.code.corpus.names[entry].group
        for label in self.acts:
            if self.facts[label].get("type") and self.code.corpus.names[self.entry(label)].group == group:
                return str(self.facts[label]["type"])
        return None

    def year(self, label: str) -> int:
        return self.code.corpus.acts[self.acts[label]].work.year

    @property
    def about(self) -> list[str]:
        asked = self.question["about"]
        return asked if isinstance(asked, list) else [asked]


def answer(case: dict[str, Any]) -> Answer:
    """Every field that the question can be answered with; several members give lists, as in `expect`."""
    ask = case["question"]["ask"]
    if ask in WITHOUT_NAMES:
        return WITHOUT_NAMES[ask](case)
    known = Case(case)
    if ask in ("correct-name", "autonym-established-by"):
        return ANSWERS[ask](known, known.question.get("about", ""))
    found = [ANSWERS[ask](known, label) for label in known.about]
    if not isinstance(known.question["about"], list):
        return found[0]
    return {key: [one.get(key) for one in found] for key in dict.fromkeys(key for one in found for key in one)}


def status(judged: Judgement) -> str:
    """Standing in the words of the examples."""
    if judged.validity is Validity.NOT_VALID:
        return "not-valid"
    if judged.isonym_of is not None:
        return "isonym"
    return str(judged.legitimacy)


def citation(known: Case, label: str) -> str | None:
    """The name as cited; None for what is not validly published."""
    one = known.facts[label]
    if one["act"] == "autonym":
        made = known.code.corpus.acts[known.acts[one["established_by"]]]
        return format_name(autonym_name(known.name(label), made.rank))
    return None if known.judged(label).validity is Validity.NOT_VALID else format_name(known.name(label))


def _validity(known: Case, label: str) -> Answer:
    if known.facts[label]["act"] == "autonym":
        made = known.code.corpus.acts[known.acts[known.facts[label]["established_by"]]]
        exists = (made.above, made.rank) in known.code.autonyms
        return {"status": "valid" if exists else "not-valid", "reason": None, "citation": citation(known, label)}
    judged = known.judged(label)
    if known.given.get("events"):  # the end state is asked: what the name comes to in whatever work
        published = known.code.of_name(known.entry(label))
        judged = published if published is not None and published.stands else judged
    valid = {Validity.VALID: "valid", Validity.NOT_VALID: "not-valid"}.get(judged.validity, "undetermined")
    bars = [one.key for one in judged.rulings if one.effect == "bars"]
    one = known.facts[label]
    several = one.get("type_herbaria_count", 1) > 1 or one.get("duplicates_in_herbarium", 1) > 1
    return {
        "status": valid,
        "reason": bars[0] if valid == "not-valid" else None,
        "all_reasons": bars,
        "citation": format_name(known.name(label)) if judged.stands else None,
        "date_from": known.code.corpus.acts[judged.act].work.year if judged.stands else None,
        "type_specimens": "syntypes" if several else "holotype",
        "formatted": citation(known, label),
    }


def _legitimacy(known: Case, label: str) -> Answer:
    judged = known.judged(label)
    bars = [one for one in judged.bars() if judged.validity is not Validity.NOT_VALID]
    other = bars[0].other if bars else None
    older = [one for one in known.acts if one != label and known.year(one) <= known.year(label)]
    return {
        "status": status(judged),
        "reason": bars[0].key if bars else None,
        "of": known.label(other),
        "date_from": known.year(label),
        "citation": citation(known, label),
        "superfluous_when_published": judged.superfluous,
        "orthographical_variant": any(variant_of(known.code, known.entry(label)) == known.entry(one) for one in older),
    }


def _citation(known: Case, label: str) -> Answer:
    text = citation(known, label)
    if known.facts[label]["act"] == "autonym":
        return {"citation": text, "status": "valid"}
    judged = known.judged(label)
    as_ = known.question.get("as")
    name = known.name(label)
    if as_ is not None:
        text = format_name(_with_sign(name, as_ == "nothospecies"))
    hybrid = name.species_hybrid or name.genus_hybrid
    changed = as_ is not None and hybrid is not (as_ == "nothospecies")
    may_add = ("(pro hybr.)" if hybrid else "(pro sp.)") if changed else None
    asked = known.facts[label]
    if asked.get("circumscription_changed"):
        may_add = f"emend. {icn_records.team(asked.get('authors', []))}"
    plain = status(judged)
    return {
        "citation": text,
        "basionym": known.label(judged.basionym),
        "type": known.type_label(known.entry(label)),
        "treated_as": str(judged.treated_as).replace(" ", "-"),
        "date_from": known.year(label),
        "status": "valid" if plain == "legitimate" and asked.get("act") == "usage" else plain,
        "status_word": plain,
        "may_add": may_add,
    }


def _with_sign(name: Name, hybrid: bool) -> Name:
    return replace(name, species_hybrid=hybrid)


def _correct(known: Case, _label: str) -> Answer:
    question = known.question
    position = question.get("position", {})
    included = {known.entry(label) for label in question["circumscription"]}
    species = species_type = None
    genus = position.get("genus", "")
    if "species" in position:
        entry = known.entry(position["species"])
        species, species_type = known.code.corpus.names[entry].name, known.code.corpus.names[entry].group
    elif "species_circumscription" in position:
        whole = frozenset(known.entry(label) for label in position["species_circumscription"])
        found = correct_name(known.code, Taxon(whole, "species", genus))
        assert found.name is not None
        species = found.name
        species_type = known.code.corpus.names[found.id].group if found.id else None
    genera = [known.code.corpus.names[known.entry(label)] for label in known.acts]
    genus_type = next((one.group for one in genera if one.rank == "genus" and one.name.genus == genus), None)
    rank = icn_records.RANKS.get(question["rank"], question["rank"])
    asked = Taxon(frozenset(included), rank, genus, species, species_type, genus_type)
    found = correct_name(known.code, asked)
    barred = found.barred[0] if found.barred else None
    listed = [label for label, one in known.facts.items() if one["act"] == "autonym"]
    correct = known.label(found.id)
    if found.outcome is Outcome.AUTONYM and found.name:
        words = _words(found.name)
        own = (label for label in listed if icn_records.bare(known.facts[label]["name"]) == words)
        correct = next(own, "autonym")
    needed = found.outcome in (Outcome.NAME, Outcome.AUTONYM)
    return {
        "correct": correct,
        "citation": format_name(found.name) if needed and found.name else None,
        "autonym": _words(found.name) if found.outcome is Outcome.AUTONYM and found.name else None,
        "blocked_epithet": barred.epithet if barred else None,
        "blocked_reason": barred.key if barred else None,
        "blocked_by": known.label(barred.by) if barred else None,
        "chain": [str(step) for step in found.steps],
    }


def _words(name: Name) -> str:
    return format_name(name, authors=False)


def _homonymy(known: Case, label: str) -> Answer:
    judged = known.judged(label)
    found = homonymy(known.code, known.entry(label))
    keys = [one.key for one in judged.rulings]
    return {
        "homonym": found is not None,
        "later": found is not None and found.later,
        "of": known.label(found.other) if found else None,
        "kind": found.kind if found else None,
        "status": status(judged),
        "citation": citation(known, label),
        "reason": next((key for key in ("conserved", "subdivision-of-family") if key in keys), None),
    }


def _isonym(known: Case, label: str) -> Answer:
    judged = known.judged(label)
    first = next((one for one, act in known.acts.items() if act == judged.isonym_of), None)
    return {"status": status(judged), "of": first, "citation": citation(known, label)}


def _establishes(known: Case, label: str) -> Answer:
    made = [one for one in known.code.autonyms.values() if one.act == known.acts[label]]
    if not made:
        above = known.code.corpus.acts[known.acts[label]].above
        illegitimate = above is not None and known.code.inquiry.legitimacy_of(above) is Legitimacy.ILLEGITIMATE
        return {"exists": False, "reason": "species-name-illegitimate" if illegitimate else None}
    one = made[0]
    return {
        "exists": True,
        "autonym": _words(one.name),
        "citation": format_name(one.name),
        "date_from": known.year(label),
        "type": known.type_label(one.above),
    }


def _autonym_for(known: Case, label: str) -> Answer:
    rank = known.question["rank"]
    made = autonym_name(known.name(label), icn_records.RANKS.get(rank, rank))
    return {"autonym": _words(made), "citation": format_name(made), "status": "valid"}


def _rank(known: Case, label: str) -> Answer:
    judged = known.judged(label)
    valid = judged.validity is not Validity.NOT_VALID
    return {
        "status": "valid" if valid else "not-valid",
        "rank": judged.rank,
        "counts_for_priority": valid and judged.rank != UNRANKED.name,
        "counts_for_homonymy": valid,
        "formatted": _words(known.name(label)),
    }


def _replacement(known: Case, label: str) -> Answer:
    judged = known.judged(label)
    return {
        "status": status(judged),
        "type": known.type_label(known.entry(label)),
        "citation": citation(known, label),
    }


def _formatted(known: Case, label: str) -> Answer:
    judged = known.judged(label)
    name = known.name(label)
    valid = judged.validity is not Validity.NOT_VALID
    shown = format_name(name) if known.question.get("with_authors") else _words(name)
    return {"status": "valid" if valid else "not-valid", "formatted": shown}


def _spelling(known: Case, label: str) -> Answer:
    act = known.code.corpus.acts[known.acts[label]]
    made = spelling(act, _genders(known, act.printed.genus, known.facts[label]))
    proposed, ground = known.given.get("proposed"), known.given.get("ground", "")
    word = made.word
    if proposed and word == _words(act.printed) and not refused(proposed, ground):
        word = proposed
    judged = known.judged(label)
    return {
        "spelling": word,
        "change_allowed": word != known.facts[label].get("as_published", _words(act.printed)),
        "status": "valid" if judged.stands else "not-valid",
        "citation": citation(known, label),
        "date_from": known.year(label),
    }


def _genders(known: Case, genus: str, one: dict[str, Any]) -> dict[str, Gender]:
    """Genders that the records hold; an example may give that of a genus which it does not list."""
    found = recorded_genders(known.code.corpus.acts.values())
    return found | {genus: Gender(one["genus_gender"])} if one.get("genus_gender") else found


def _gender(known: Case, label: str) -> Answer:
    one = known.facts[label]
    last = one.get("last_part_gender")
    by_author = one.get("gender_given_by_author")
    tradition = one.get("gender_by_tradition")
    found = gender_of(
        known.name(label).genus,
        tradition=Gender(tradition) if tradition else None,
        last_part=one.get("last_part", ""),
        last_part_gender=Gender(last) if last else None,
        by_author=Gender(by_author) if by_author else None,
    )
    return {"gender": str(found.gender) if found else None}


def _homonym_note(known: Case, label: str) -> Answer:
    return {"formatted": homonym_note(known.code, known.entry(label))}


def _variant(known: Case, label: str) -> Answer:
    act = known.code.corpus.acts[known.acts[label]]
    of = act.name if act.spells_otherwise else variant_of(known.code, known.entry(label))
    if of is None:
        return {"status": status(known.judged(label)), "of": None}
    kept = known.code.corpus.names[of].name
    return {
        "status": "orthographical-variant",
        "of": known.label(of),
        "spelling": _words(kept),
        "citation": format_name(kept),
    }


def _parse(case: dict[str, Any]) -> Answer:
    name = parse_name(case["given"]["string"])
    lower = name.lower[-1] if name.lower else None
    division = name.divisions[-1] if name.divisions else None
    rank = implied_rank(name)
    hybrid = bool(lower and lower.hybrid) or name.species_hybrid or name.genus_hybrid
    named = f"notho{rank}" if hybrid else rank
    is_ = "classification-string" if len(name.lower) > 1 else "autonym" if name.is_autonym else None
    return {
        "name": format_name(name.proper, authors=False),
        "genus": name.genus,
        "specific_epithet": name.species or None,
        "rank": {"subform": "subforma"}.get(named, named),
        "infraspecific_epithet": lower.epithet if lower else None,
        "authors": list(name.authors.own.team.members),
        "paren_authors": list(name.authors.basionym.team.members),
        "species_authors": list(name.species_authors.own.team.members),
        "subdivision_rank": division.rank if division else None,
        "subdivision_epithet": division.epithet if division else None,
        "hybrid": hybrid,
        "is": is_,
    }


def _agreement(case: dict[str, Any]) -> Answer:
    given = case["given"]
    kind = EpithetKind(given.get("epithet_kind", "adjective"))
    epithet, declension = given["epithet"], given.get("declension", "")
    return {
        "spelling": [
            f"{one['genus']} {agreeing(epithet, Gender(one['gender']), kind, declension=declension)}"
            for one in given["into"]
        ]
    }


def _formula(case: dict[str, Any]) -> Answer:
    parents = [parse_name(f"{one['name']} {icn_records.citation_of(one)}".strip()) for one in case["given"]["parents"]]
    from auctorum.names.hybrids import formula

    question = case["question"]
    made = formula(
        parents,
        authors=question.get("with_authors", True),
        alphabetical=question.get("order") == "alphabetical",
        abbreviate_genus=question.get("abbreviate_genus", False),
    )
    return {"formatted": made}


def _well_formed(case: dict[str, Any]) -> Answer:
    from auctorum.names.hybrids import formula_faults

    return {"well_formed": [not formula_faults(text) for text in case["given"]["strings"]]}


def _confusable(case: dict[str, Any]) -> Answer:
    rank = case["question"].get("rank", "species")
    return {"confusable": [confusable(first, second, rank=rank) for first, second in case["given"]["pairs"]]}


def _personal(case: dict[str, Any]) -> Answer:
    return {"spelling": [_of_person(one) for one in case["given"]["epithets"]]}


def _of_person(one: dict[str, Any]) -> str:
    source = one.get("from", {})
    origin = Origin(
        person=source.get("name", ""),
        sex=source.get("sex", ""),
        number=source.get("number", ""),
        form=source.get("form", ""),
        place=source.get("place", ""),
    )
    return corrected(one["as_published"], origin).word


WITHOUT_NAMES: dict[str, Callable[[dict[str, Any]], Answer]] = {
    "parse": _parse,
    "agreement": _agreement,
    "hybrid-formula": _formula,
    "formula-well-formed": _well_formed,
    "confusable-pairs": _confusable,
    "personal-epithet-spelling": _personal,
}
ANSWERS: dict[str, Callable[[Case, str], Answer]] = {
    "validity": _validity,
    "legitimacy": _legitimacy,
    "citation": _citation,
    "correct-name": _correct,
    "homonymy": _homonymy,
    "isonym": _isonym,
    "autonym-established-by": _establishes,
    "autonym-for": _autonym_for,
    "rank": _rank,
    "replacement-name": _replacement,
    "formatted-name": _formatted,
    "spelling": _spelling,
    "gender": _gender,
    "homonym-note": _homonym_note,
    "variant": _variant,
}


def differences(case: dict[str, Any], found: Answer) -> list[tuple[str, Any, Any]]:
    """Fields of `expect` that the answer misses: field, expected, found. Only the fields given are compared."""
    expect = case["expect"]
    allowed = expect.get("also_allowed") or []
    missed = []
    for key, wanted in expect.items():
        if key in ("also_allowed", "not"):
            continue
        got = found.get(key)
        if not _agrees(key, wanted, got, allowed):
            missed.append((key, wanted, got))
    if any(one in expect.get("not", ()) for one in (found.get("citation"), found.get("correct"))):
        missed.append(("not", expect["not"], found.get("citation") or found.get("correct")))
    return missed


def _agrees(key: str, wanted: Any, got: Any, allowed: Sequence[str]) -> bool:
    if isinstance(wanted, list) and isinstance(got, list) and not key.endswith("authors"):
        pairs = zip(wanted, got, strict=False)
        return len(wanted) == len(got) and all(_agrees(key, one, other, allowed) for one, other in pairs)
    if key == "treated_as" and wanted is None:
        return True
    if key == "status" and wanted == "valid":
        return got in ("valid", "legitimate", "illegitimate")
    return _spaced(got) == _spaced(wanted) or _spaced(got) in [_spaced(one) for one in allowed]


def _spaced(value: Any) -> Any:
    """`K.Koch` is `K. Koch`."""
    return value.replace(". ", ".") if isinstance(value, str) else value
