"""On whose authority: what each author, and a working criterion, would call one plant, and how far they agree."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Collection, Iterator, Mapping, Sequence
from dataclasses import dataclass

from auctorum.circumscription.phrases import capital, counted, listed
from auctorum.corpus.model import Corpus
from auctorum.corpus.resolve import sides_of_criterion
from auctorum.determination.criteria.criterion import Judgement, Verdict
from auctorum.determination.criteria.words import title_of
from auctorum.determination.model import Determination, Wording
from auctorum.determination.telling.words import Names, tied
from auctorum.determination.view import View
from auctorum.determination.wording import qualified
from auctorum.records.schema import Criterion

Priors = Callable[[View], Mapping[str, float] | None]  # what each candidate of a view is given beforehand


@dataclass(frozen=True, slots=True)
class Authority:
    """What one view makes of a plant: `name` as that view calls it, in open nomenclature; "" where it can't say.

    `taxon` is None where nothing that was observed is stated there. `used` counts the characters.
    """

    view: str
    works: tuple[str, ...]
    taxon: str | None
    name: str
    wording: Wording
    probability: float
    used: int
    candidates: int

    @property
    def alone(self) -> bool:
        """Only one candidate is described, so that its probability says nothing."""
        return self.candidates == 1


def authority(found: Determination, view: View, names: Names | None = None) -> Authority:
    """What was found under one view, its taxa called as the view calls them or by `names`."""
    name = ""
    if found.best is not None:
        called = (names or view.names)[found.best]
        name = qualified(called, found.wording)
        if found.wording is Wording.INDET:
            name = str(Wording.INDET) if tied(found) else f"{Wording.INDET} (likeliest {called})"
    probability, used = found.candidates[0].probability, len(found.contributions)
    return Authority(found.view, view.works, found.best, name, found.wording, probability, used, len(found.candidates))


def agreement(
    whole: Authority,
    single: Sequence[Authority],
    judged: Sequence[tuple[Criterion, Judgement]],
    corpus: Corpus,
    names: Names,
) -> tuple[str, ...]:
    """Sentences on how far all authors together, the single ones, and the criteria agree."""
    sentences = [_together(whole, single, names)]
    if apart := _apart(single):
        sentences.append(apart)
    decided = None if whole.wording is Wording.INDET else whole.taxon
    sentences += [_by_criterion(corpus, criterion, one, decided) for criterion, one in judged]
    return tuple(sentences)


def _together(whole: Authority, single: Sequence[Authority], names: Names) -> str:
    asked = [one for one in single if one.used and not one.alone]
    # As in a survey, a name with aff. is none: near it, and not quite it.
    said = Counter(one.taxon for one in asked if one.taxon is not None and one.wording in (Wording.PLAIN, Wording.CF))
    undecided = len(asked) - said.total()
    if not asked:
        return "No single author parts the candidates by what was observed."
    if whole.taxon is None or whole.wording is Wording.INDET:
        does = "does" if len(whole.works) == 1 else "do"
        votes = "; ".join(_votes(said, undecided, names))
        return f"{_by(whole)} {does} not decide; of {counted(len(asked), 'single author')} {votes}."
    same = said.pop(whole.taxon, 0)
    begun = f"{_by(whole)} {'says' if len(whole.works) == 1 else 'say'} {names[whole.taxon]}, "
    rest = list(_votes(said, undecided, names))
    end = f"; {'; '.join(rest)}." if rest else "."
    if len(asked) == 1:
        only = "the only author that can be asked"
        return begun + (f"and so does {only}" if same else f"and {only} does not") + end
    of_them = counted(len(asked), "single author")
    so = f"and so {'does' if same == 1 else 'do'} {same} of {of_them}" if same else f"and none of {of_them} does"
    return begun + so + end


def _votes(said: Mapping[str, int], undecided: int, names: Names) -> Iterator[str]:
    several = sorted(said.items(), key=lambda one: (-one[1], names[one[0]]))
    yield from (f"{number} say {names[taxon]}" for taxon, number in several if number > 1)
    if single := [names[taxon] for taxon, number in several if number == 1]:
        yield f"one {'each ' if len(single) > 1 else ''}says {listed(single)}"
    if undecided:
        yield f"{undecided} {'does' if undecided == 1 else 'do'} not decide"


def _apart(single: Sequence[Authority]) -> str:
    alone = sum(one.used > 0 and one.alone for one in single)
    nothing = sum(not one.used for one in single)
    said = []
    if alone:
        said.append(f"{alone} more {'describes' if alone == 1 else 'describe'} only one candidate")
    if nothing:
        said.append(f"{nothing} {'says' if nothing == 1 else 'say'} nothing of what was observed")
    return f"{capital(listed(said))}." if said else ""


def _by(whole: Authority) -> str:
    """Who speaks: `Orrin 1889`, `All authors together`."""
    said = capital(whole.view.removeprefix("sec. "))
    return said if len(whole.works) == 1 else f"{said} together"


def _by_criterion(corpus: Corpus, criterion: Criterion, judged: Judgement, taxon: str | None) -> str:
    title = title_of(criterion)
    if judged.verdict in (Verdict.BORDERLINE, Verdict.INSUFFICIENT) or not judged.name:
        return f"The criterion {title} does not decide."
    if taxon is None:
        return f"The criterion {title} says {judged.name}."
    same = sides_of_criterion(corpus, criterion)[0 if judged.verdict is Verdict.FITS else 1] == taxon
    return f"The criterion {title} says {judged.name}, {'too' if same else 'which differs'}."


def taxa_named(several: Collection[Authority]) -> tuple[str, ...]:
    """The taxa that any of them names, each once."""
    return tuple(dict.fromkeys(one.taxon for one in several if one.taxon is not None))
