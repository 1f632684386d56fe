"""What tells two taxa apart in sentences: what does best, what helps, what is only said to, and what nobody knows."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from math import ceil

from auctorum.characters.show import format_span
from auctorum.characters.states import state_names
from auctorum.characters.vocabulary import Character, Kind
from auctorum.circumscription.phrases import capital, listed, share_words
from auctorum.circumscription.separation import Parting, Separation
from auctorum.circumscription.separation_names import short_names
from auctorum.circumscription.wording import of_habitat, stage_words
from auctorum.corpus.model import Corpus
from auctorum.corpus.readings import UNSTATED

# How well a character parts two taxa, by its error up to the figure: a judgement of ours, no standard.
SEPARATES, NEARLY, HELPS, HINTS, FAILS = "separates", "nearly separates", "helps", "hints", "does not tell them apart"
STRENGTHS = ((0.01, SEPARATES), (0.05, NEARLY), (0.15, HELPS), (0.30, HINTS))
USEFUL = (SEPARATES, NEARLY, HELPS)
_ROUNDING = 1e-9
_MOST_BYLINES = 3
_FEW_UNKNOWN = 3  # beyond so many unknown characters it is shorter to say which are known, if those are fewer


def strength(error: float) -> str:
    """How well a character of that error parts two taxa, in a word.

    >>> strength(0.01), strength(0.12), strength(0.4)
    ('separates', 'helps', 'does not tell them apart')
    """
    return next((word for most, word in STRENGTHS if error <= most + _ROUNDING), FAILS)


def percent(share: float) -> str:
    """A share in whole percent; `none` for nothing, and `under 1 %` for what would be rounded to it.

    >>> percent(0), percent(0.004), percent(0.174)
    ('none', 'under 1 %', '17 %')
    """
    return "none" if share < _ROUNDING else share_words(share)


def label(character: Character, stage: str) -> str:
    """A character in running text: `spur length at maturity`, `presence of bracteoles`, `spur to petal ratio`."""
    name = character.name
    if character.kind is Kind.PRESENCE and not name.startswith("presence"):
        name = f"presence of {name}"
    elif character.kind is Kind.RATIO and not name.endswith("ratio"):
        name = f"{name} ratio"
    return f"{name} {stage_words(stage)}" if stage else name


def threshold(parting: Parting, character: Character) -> str:
    """The cut in print: `from 25 mm on`, `with 4 or more`, `from pubescent on`; empty without one."""
    if parting.cut is None:
        return ""
    value = parting.cut.value
    if character.kind is Kind.ORDERED:
        names = state_names(character)
        state = names[ceil(value)]
        return f"if {state}" if state == names[-1] else f"from {state} on"
    if character.kind is Kind.COUNT:
        return f"with {format_span(value, value, '')} or more"
    return f"from {format_span(value, value, character.unit)} on"


def upper(one: Parting) -> str:
    """The taxon that lies above the cut of a parting that has one."""
    return one.a if one.lower == one.b else one.b


def pair_words(corpus: Corpus, found: Separation, a: str, b: str) -> str:
    """The sentences on two of the taxa; says so where nothing is stated of both. Names are short ones among all."""
    return " ".join(_Told(corpus, found.of(a, b), short_names(corpus, found.taxa)).sentences())


class _Told:
    """The partings of one pair on their way to sentences; where the two grow is told apart from how they look."""

    def __init__(self, corpus: Corpus, partings: Sequence[Parting], names: Mapping[str, str]) -> None:
        self._corpus, self._names, self._partings = corpus, names, partings
        known = [one for one in partings if one.error is not None]
        self._plants = [one for one in known if not of_habitat(self._character(one))]
        self._habitat = [one for one in known if of_habitat(self._character(one))]

    def sentences(self) -> Iterator[str]:
        if not self._plants and not self._habitat:
            yield "No character is stated of both."
        if self._plants:
            yield self._best(self._plants[0])
            verbs = {SEPARATES: "also separate them", NEARLY: "nearly separate them", HELPS: "help"}
            yield from self._by_strength(self._plants[1:], verbs, "")
            yield from self._stages()
        verbs = {SEPARATES: "separate them", NEARLY: "nearly separate them", HELPS: "help"}
        yield from self._by_strength(self._habitat, verbs, "Where they grow: ")
        yield from self._said_to_differ()
        yield from self._poor_ones()
        yield from self._unknown()

    def _character(self, parting: Parting) -> Character:
        return self._corpus.vocabulary[parting.character]

    def _label(self, parting: Parting) -> str:
        return label(self._character(parting), parting.stage)

    # --- what tells them apart

    def _best(self, best: Parting) -> str:
        word = strength(best.error or 0.0)
        name, told = self._label(best), f"{self._how(best)} ({self._works(best)})."
        if word not in USEFUL:
            which = "of the plants themselves" if any(map(self._useful, self._habitat)) else "in the records"
            none = f"No single character {which} tells them apart"
            if word == FAILS:
                return f"{none}: by the best, {name}, {percent(best.error or 0)} of the plants would be misjudged."
            return f"{none}. The best is {name}, no more than a hint: {told}"
        return f"{capital(name)} {'tells them best' if word == HELPS else f'{word} them'}: {told}"

    def _how(self, one: Parting) -> str:
        """How a plant is judged by the character, and how often that goes wrong."""
        if one.cut is not None:
            rule = threshold(one, self._character(one))
            return f"{rule} it is {self._names[upper(one)]}; {self._losses(one)}"
        each = zip(one.says, (one.a, one.b), strict=True)
        wrong = f", misleading for {percent(one.error or 0)} of the plants" if (one.error or 0) > _ROUNDING else ""
        return ", ".join(f"{said} in {self._names[taxon]}" for said, taxon in each) + wrong

    def _judged(self, one: Parting) -> str:
        """The character with its threshold, or with what is said of the first taxon and of the second."""
        rule = threshold(one, self._character(one))
        how = f"{self._names[upper(one)]} {rule}" if rule else " against ".join(one.says)
        return f"{self._label(one)} ({how})"

    def _losses(self, one: Parting) -> str:
        below, above = (one.cut.lost_below, one.cut.lost_above) if one.cut is not None else (0.0, 0.0)
        if max(below, above) < _ROUNDING and (free := _free(one, self._character(one))):
            return f"what is stated of the two leaves {free} free between them"
        if max(below, above) < _ROUNDING:
            return "what is stated of the two does not overlap"
        lower, higher = self._names[one.lower], self._names[upper(one)]
        reach, stay = ("s" if share < _ROUNDING else "" for share in (below, above))
        reach = "es" if reach else ""
        return f"{percent(below)} of {lower} reach{reach} that, and {percent(above)} of {higher} stay{stay} below it"

    def _works(self, one: Parting) -> str:
        agreeing, both = len(one.support), len(one.support) + len(one.against)
        ranges = self._character(one).kind.is_numeric
        if not both:
            return "no work gives both in full" if ranges else "no work gives both"
        which = {1: "the one work that gives", 2: "the two works that give"}.get(both, f"all {both} works that give")
        if agreeing == both:
            return f"so {which} both"
        if agreeing:
            return f"so {agreeing} of the {both} works that give both"
        return f"by {which} both, the {'ranges of the two meet there' if ranges else 'two can be alike'}"

    def _stages(self) -> Iterator[str]:
        """The stages that mislead, where the character is of use."""
        told = [blur for one in self._plants if self._useful(one) for blur in one.blurs if not _is_spectrum(blur)]
        if told:
            yield f"Mind the stage: {'; '.join(told)}."

    def _by_strength(self, partings: Sequence[Parting], verbs: Mapping[str, str], lead: str) -> Iterator[str]:
        """One sentence: the characters of each strength with its verb, and how to judge by them."""
        told = []
        for word, verb in verbs.items():
            some = [one for one in partings if strength(one.error or 0.0) == word]
            if some:
                told.append(
                    f"{listed([self._judged(one) for one in some])} {verb if len(some) > 1 else _singular(verb)}"
                )
        if told:
            yield f"{capital(lead + '; '.join(told))}."

    # --- what does not

    def _useful(self, one: Parting) -> bool:
        return strength(one.error or 0.0) in USEFUL

    def _said_to_differ(self) -> Iterator[str]:
        for one in (*self._plants, *self._habitat):
            if one.said_to_differ and not self._useful(one):
                but = _spectrum(one) or f"by all works together the two overlap by {percent(one.overlap or 0)}"
                name, who = capital(self._label(one)), self._bylines(one.said_to_differ)
                yield f"{name} is said to differ ({who}), but {but}."

    def _poor_ones(self) -> Iterator[str]:
        """The characters that give a hint, and those that tell nothing; those with no stage stated are left out."""
        poor = [
            one
            for one in (*self._plants[1:], *self._habitat)
            if not self._useful(one) and not one.said_to_differ and one.stage != UNSTATED
        ]
        hints = [self._label(one) for one in poor if strength(one.error or 0.0) == HINTS and not _spectrum(one)]
        fails = [self._label(one) for one in poor if strength(one.error or 0.0) == FAILS and not _spectrum(one)]
        shared = [f"{self._label(one)} ({_spectrum(one)})" for one in poor if _spectrum(one)]
        if hints:
            yield f"{capital(listed(hints))} {'give' if len(hints) > 1 else 'gives'} no more than a hint."
        if fails or shared:
            does = "do" if len(fails) + len(shared) > 1 else "does"
            yield f"{capital(listed([*fails, *shared]))} {does} not tell them apart."

    def _bylines(self, works: Sequence[str]) -> str:
        told = [self._corpus.works[work].byline for work in works[:_MOST_BYLINES]]
        more = len(works) - len(told)
        return "; ".join(told) + (f"; and {more} more" if more else "")

    # --- what nobody knows

    def _unknown(self) -> Iterator[str]:
        """By taxon the characters of which nothing is known at any stage, though something is for the other."""
        heard = dict.fromkeys(
            (taxon, one.character) for one in self._partings for taxon in (one.a, one.b) if taxon not in one.silent
        )
        missing: dict[str, dict[str, None]] = {}
        for one in self._partings:
            for taxon in one.silent:
                if (taxon, one.character) not in heard:
                    missing.setdefault(taxon, {})[label(self._character(one), "")] = None
        for taxon, names in missing.items():
            known = [label(self._corpus.vocabulary[name], "") for one, name in heard if one == taxon]
            if len(names) > max(len(known), _FEW_UNKNOWN):
                yield f"Of {self._names[taxon]} nothing is known{f' but {listed(known)}' if known else ' at all'}."
            else:
                of_what = f"of the {listed(list(names))} " if known else "at all "
                yield f"Nothing is known {of_what}of {self._names[taxon]}."


def _free(one: Parting, character: Character) -> str:
    """The gap in print; of counts the numbers that nobody gives, so that none lies between 4 and 5."""
    if one.gap is None or one.gap.low is None or one.gap.high is None:
        return ""
    low, high = one.gap.low, one.gap.high
    if character.kind is Kind.COUNT:
        low, high = low + 1, high - 1
    return format_span(low, high, character.unit) if low <= high else ""


def _is_spectrum(blur: str) -> bool:
    return blur.startswith("both ")


def _spectrum(one: Parting) -> str:
    return next(filter(_is_spectrum, one.blurs), "")


def _singular(verb: str) -> str:
    """`helps`, `also separates them`: the verb after one subject."""
    return " ".join(f"{word}s" if word in ("separate", "help") else word for word in verb.split())
