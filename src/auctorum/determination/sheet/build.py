"""A knowledge base and chosen taxa -> the field sheet for them."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Collection, Iterable, Sequence

from auctorum.circumscription.criterion_words import limit_words, who_set
from auctorum.circumscription.key.words import Runs, names_of
from auctorum.circumscription.phrases import at_stage, capital, listed
from auctorum.circumscription.separation import Separation, separation
from auctorum.circumscription.separation_names import epithets, full_name, short_names
from auctorum.circumscription.separation_table import pairs
from auctorum.corpus.cautions import OPINION, OUTDOORS, PERMITS, first_sentence
from auctorum.corpus.model import Corpus
from auctorum.corpus.resolve import lookup, taxa_of_criterion
from auctorum.determination.sheet.items import Decides, Wanted, items, part_nothing
from auctorum.determination.sheet.sheet import Item, Rule, Sheet
from auctorum.determination.sheet.units import stated_in_both_units
from auctorum.names.format import parts
from auctorum.problems import AuctorumError
from auctorum.records.schema import Criterion

_SEXES = ("female", "male", "hermaphrodite")
_STAGES = ("young", "mature")  # where no character on the sheet is split by stages


class NothingParts(AuctorumError, LookupError):
    """Taxa that no character parts, so that there is nothing to measure."""

    remedy = "name other taxa, or the characters to note (--character)"

    def __init__(self, names: tuple[str, ...]) -> None:
        super().__init__(names)
        self.names = names

    def __str__(self) -> str:
        return f"no character that is left on the sheet parts any two of {listed(self.names)}"


def field_sheet(
    corpus: Corpus,
    taxa: Sequence[str],
    *,
    characters: Collection[str] = (),
    without: Collection[str] = (),
    works: Collection[str] | None = None,
) -> Sheet:
    """The sheet for two taxa (ids) or more, by what all works, or `works` alone, state of them.

    On it stand the characters that part any two of them, those that a working criterion about any of them asks for,
    and `characters`; none of `without`. Raises NothingParts where that leaves none, and as `separation` does.
    """
    found = separation(corpus, taxa, works=works)
    rules = [one for one in corpus.criteria if set(taxa_of_criterion(corpus, one)) & set(found.taxa)]
    wanted = Wanted(tuple(characters), _asked_by(corpus, rules, found.taxa), frozenset(without))
    several = items(found, corpus.vocabulary, wanted, _decides(corpus, rules))
    if not several:
        raise NothingParts(tuple(full_name(corpus, taxon) for taxon in found.taxa))
    stages = _stages(corpus, several)
    return Sheet(
        taxa=found.taxa,
        names=names_of(corpus, found.taxa),
        short=_short(corpus, found.taxa),
        items=several,
        pairs=pairs(found),
        rules=tuple(_rule(corpus, one) for one in rules),
        mind=tuple(_in_italics(corpus, found.taxa, one) for one in _misleading_stages(found, several)),
        part_nothing=part_nothing(found, several, corpus.vocabulary),
        life_stages=tuple(one for one in stages if one not in _SEXES) or _STAGES,
        sexes=tuple(one for one in stages if one in _SEXES),
        sec="; ".join(corpus.works[one].byline for one in works or ()),
        cautions=(PERMITS, *(tuple(map(first_sentence, corpus.settings.cautions)) or OUTDOORS), OPINION),
        notice=corpus.settings.notice,
    )


def _short(corpus: Corpus, taxa: Sequence[str]) -> dict[str, Runs]:
    """The epithet in italics where it tells the taxon from the others, else the name in full."""
    full = names_of(corpus, taxa)
    final = {taxon: corpus.names[corpus.taxa[taxon].current].name.final_epithet for taxon in taxa}
    return {
        taxon: ((epithet, True),) if epithet == final[taxon] else full[taxon]
        for taxon, epithet in epithets(corpus, taxa).items()
    }


def _stages(corpus: Corpus, several: Iterable[Item]) -> tuple[str, ...]:
    """Every stage that splits a character of the sheet, in their order."""
    return tuple(dict.fromkeys(stage for item in several for stage in corpus.vocabulary[item.character].stages))


def _misleading_stages(found: Separation, several: Iterable[Item]) -> tuple[str, ...]:
    on_it = {(item.character, one.stage) for item in several for one in item.stages}
    told = (one for one in found.partings if (one.character, one.stage) in on_it)
    blurs = (blur for one in told for blur in one.blurs if not blur.startswith("both "))
    return tuple(f"{capital(blur)}." for blur in dict.fromkeys(blurs))


def _in_italics(corpus: Corpus, taxa: Sequence[str], sentence: str) -> Runs:
    """The sentence with the Latin words of the short names of the taxa in italics."""
    found: list[tuple[str, bool]] = [(sentence, False)]
    for taxon, short in sorted(short_names(corpus, taxa).items(), key=lambda one: -len(one[1])):
        name = corpus.names[corpus.taxa[taxon].current].name
        latin = {word for text, italic in parts(name) if italic for word in text.split()} | {f"{name.genus[0]}."}
        runs = [(f"{word} ", word in latin) for word in short.split()]
        runs[-1] = (short.split()[-1], runs[-1][1])
        cut: list[tuple[str, bool]] = []
        for text, italic in found:
            first, *rest = [text] if italic else text.split(short)
            cut += [(first, italic), *(run for one in rest for run in (*runs, (one, False)))]
        found = cut
    return tuple(run for run in found if run[0])


# --- working criteria


def _asked_by(corpus: Corpus, rules: Iterable[Criterion], taxa: Sequence[str]) -> tuple[tuple[str, str], ...]:
    """What decides; what supports, too, where all taxa of the criterion are on the sheet."""
    told: dict[tuple[str, str], None] = {}
    for rule in rules:
        told[rule.decisive.character, rule.decisive.stage] = None
        if set(taxa_of_criterion(corpus, rule)) <= set(taxa):
            told |= dict.fromkeys((one.character, one.stage) for one in rule.supporting)
    return tuple(one for one in told if one[0] in corpus.vocabulary)


def _decides(corpus: Corpus, rules: Iterable[Criterion]) -> Decides:
    found: dict[tuple[str, str], list[str]] = defaultdict(list)
    for rule in rules:
        if rule.decisive.character in corpus.vocabulary:
            found[rule.decisive.character, rule.decisive.stage].append(_threshold(corpus, rule))
    return {key: tuple(several) for key, several in found.items()}


def _threshold(corpus: Corpus, rule: Criterion) -> str:
    """`at least 25 mm (0.98 in.)`."""
    one = rule.decisive
    said = _stated(corpus, one.character, one.at_least or one.at_most)
    return limit_words(said, at_least=bool(one.at_least))


def _stated(corpus: Corpus, character: str, said: str) -> str:
    return stated_in_both_units(said, corpus.vocabulary[character]) if character in corpus.vocabulary else said


def _rule(corpus: Corpus, rule: Criterion) -> Rule:
    one = rule.decisive
    return Rule(
        id=rule.id,
        title=rule.title,
        by=who_set(rule),
        decisive=f"{at_stage(one.character, one.stage)} {_threshold(corpus, rule)}",
        name=_name(corpus, rule.taxon),
        otherwise=_name(corpus, rule.otherwise) if rule.otherwise else (),
        supporting=tuple(
            f"{at_stage(each.character, each.stage)} {_stated(corpus, each.character, each.value)}"
            for each in rule.supporting
        ),
    )


def _name(corpus: Corpus, said: str) -> Runs:
    """The name in runs; the words as they are where the knowledge base has no such name."""
    try:
        return parts(corpus.names[lookup(corpus, said)].name.bare)
    except AuctorumError:
        return ((said, False),)
