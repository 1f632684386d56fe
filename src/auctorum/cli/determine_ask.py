"""`auctorum determine --ask`: one character after another, the one that tells most first."""

from __future__ import annotations

import contextlib
import io
import sys
from dataclasses import dataclass
from typing import TYPE_CHECKING

from rich.console import Console
from rich.text import Text

from auctorum.characters.states import state_names
from auctorum.circumscription.wording import MATURE
from auctorum.cli.determine_setting import Setting
from auctorum.cli.layout import console
from auctorum.cli.names_in_text import Italic, italiciser
from auctorum.corpus.readings import find_character
from auctorum.determination.asking import Question, questions
from auctorum.determination.determine import determine
from auctorum.determination.model import Wording
from auctorum.determination.printed import printed
from auctorum.determination.said import SIGN, observed
from auctorum.determination.telling import words
from auctorum.determination.telling.answer import complete
from auctorum.determination.telling.outcome_words import changes, outcomes
from auctorum.determination.telling.session import Session, answered, not_known, not_to_ask, plant_of, undone
from auctorum.determination.wording import qualified
from auctorum.names.nearest import nearest
from auctorum.problems import AuctorumError

if TYPE_CHECKING:
    from auctorum.characters.vocabulary import Character
    from auctorum.circumscription.plants import Observation, Plant
    from auctorum.determination.model import Determination

HELP = (
    "Answer with a figure (any unit), a state or its number; ? or nothing for “don't know”. Also: back, why, list, "
    "other CHARACTER, CHARACTER=VALUE, quit."
)
_LIKE = 75  # percent of a state's spelling that is taken for it
_DONT_KNOW = ("", "?", "don't know", "dont know", "unknown")
_QUIT = ("q", "quit", "exit", "end")


@dataclass(slots=True)
class _Dialogue:
    """One run of asking: the state stands in `session`, which is frozen; `wanted` is a character asked for by name."""

    asked: Setting
    session: Session
    out: Console
    wanted: str = ""

    def determined(self) -> tuple[Plant, Determination]:
        plant = complete(self.asked.corpus, plant_of(self.session, self.asked.corpus.vocabulary))
        found = determine(self.asked.view, plant, priors=self.asked.priors, thresholds=self.asked.thresholds)
        return plant, found

    def questions(self, plant: Plant, found: Determination) -> tuple[Question, ...]:
        several = questions(
            self.asked.view, plant, stages=(self.asked.stage,), priors=self.asked.priors,
            thresholds=self.asked.thresholds, without=not_to_ask(self.session, self.asked.corpus.vocabulary),
        )  # fmt: skip
        return changes(several, found)

    def say(self, text: str | Text = "") -> None:
        self.out.print(text)


def asked_for(asked: Setting, plant: Plant, *, aside: bool) -> Plant:
    """The plant with all that was answered; the dialogue goes to standard error where the output is to be data."""
    if sys.stdin is None:  # nobody is there to be asked
        return plant
    if isinstance(sys.stdin, io.TextIOWrapper):  # what is no UTF-8 is no answer, and no fault of the program either
        sys.stdin.reconfigure(errors="replace")
    talk = _Dialogue(asked, Session(plant), Console(stderr=True, highlight=False, markup=False) if aside else console())
    names = asked.view.names.values()
    italic = italiciser({qualified(name, said) for name in names for said in Wording})
    talk.say(HELP)
    with contextlib.suppress(KeyboardInterrupt):  # whoever breaks off, at a question or between two, keeps the answers
        _go_through(talk, italic)
    talk.say()
    return plant_of(talk.session, asked.corpus.vocabulary)


def _go_through(talk: _Dialogue, italic: Italic) -> None:
    """One question after another, until nothing is worth asking or the person leaves."""
    while (one := _next(talk)) is not None:
        _, found = talk.determined()
        talk.say()
        talk.say(italic(f"Now: {words.candidates_line(found, talk.asked.view.names)}."))
        _ask(talk, one[0])
        if not _answer(talk, *one, italic):
            break


def _next(talk: _Dialogue) -> tuple[Character, Question | None] | None:
    """The character to ask for, with what its outcomes would do where that is known; None where nothing is worth it."""
    plant, found = talk.determined()
    several = talk.questions(plant, found)
    if talk.wanted:
        asked = next((one for one in several if one.character == talk.wanted), None)
        return talk.asked.corpus.vocabulary[talk.wanted], asked
    if several:
        return talk.asked.corpus.vocabulary[several[0].character], several[0]
    talk.say("\nNothing more is worth asking.")
    return None


def _ask(talk: _Dialogue, character: Character) -> None:
    stage = f" ({talk.asked.stage})" if talk.asked.stage in character.stages else ""
    how = f": {character.how}" if character.how else ""
    talk.say(Text.assemble((f"{character.name}{stage}", "bold"), how))
    if states := state_names(character):
        talk.say("  ".join(f"{number} {state}" for number, state in enumerate(states, 1)))


def _answer(talk: _Dialogue, character: Character, question: Question | None, italic: Italic) -> bool:
    """Take answers until one leads on to another question; False where the person leaves."""
    while True:
        said = _read(talk, character)
        if said is None or said.casefold() in _QUIT:
            return False
        command, _, rest = said.partition(" ")
        if said.casefold() in _DONT_KNOW:
            talk.session, talk.wanted = not_known(talk.session, character.name), ""
            return True
        if said.casefold() in ("back", "undo"):
            if not talk.session.answers:
                talk.say("There is no answer to take back.")
                continue
            talk.session, talk.wanted = undone(talk.session), talk.session.answers[-1].character
            return True
        if said.casefold() == "why":
            _why(talk, character, question, italic)
        elif said.casefold() == "list":
            _list(talk)
        elif said.casefold() in ("help", "h"):
            talk.say(HELP)
        elif command.casefold() == "other":
            if _other(talk, rest.strip()):
                return True
        elif (one := _observed(talk, character, said)) is not None:
            talk.session, talk.wanted = answered(talk.session, one), ""
            return True


def _read(talk: _Dialogue, character: Character) -> str | None:
    """A line as typed; None at the end of input, or where the person breaks off."""
    unit = f" [{character.unit}]" if character.unit else ""
    talk.out.print(f"{character.name}{unit}? ", end="", soft_wrap=True)
    talk.out.file.flush()
    try:
        line = sys.stdin.readline()
    except KeyboardInterrupt:
        line = ""
    if not line or not sys.stdin.isatty():
        talk.say(line.strip())  # a pipe shows no typing: the answer stands behind its question
    return line.strip() if line else None


def _why(talk: _Dialogue, character: Character, question: Question | None, italic: Italic) -> None:
    _, found = talk.determined()
    if question is None:
        talk.say("No answer to this is likely to change the name.")
        return
    for line in outcomes(question, found, character, talk.asked.view.names):
        talk.say(italic(f"  {line}"))


def _list(talk: _Dialogue) -> None:
    plant, _ = talk.determined()
    vocabulary = talk.asked.corpus.vocabulary
    for one in plant.observations:
        stage = f" ({one.stage})" if one.stage in vocabulary[one.character].stages and one.stage != MATURE else ""
        talk.say(f"  {one.character}{stage} {printed(one, vocabulary[one.character])}")
    unknown = [answer.character for answer in talk.session.answers if answer.observation is None]
    if unknown:
        talk.say(f"  not known: {', '.join(dict.fromkeys(unknown))}")
    if not plant.observations and not unknown:
        talk.say("  Nothing stands yet.")


def _other(talk: _Dialogue, said: str) -> bool:
    if not said:
        talk.say("Name the character: other leaf apex")
        return False
    if SIGN in said:
        one = _observed(talk, None, said)
        if one is not None:
            talk.session, talk.wanted = answered(talk.session, one), ""
        return one is not None
    try:
        character = find_character(said, talk.asked.corpus.vocabulary)
    except AuctorumError as error:
        talk.say(f"{error} ({error.remedy})")
        return False
    if not any(name == character.name for name, _ in talk.asked.view.tables):
        talk.say(f"Nothing is stated of {character.name} for any candidate here.")
        return False
    talk.wanted = character.name
    return True


def _observed(talk: _Dialogue, character: Character | None, said: str) -> Observation | None:
    """What was answered; None, with the reason said, where it is not understood."""
    vocabulary = talk.asked.corpus.vocabulary
    if character is not None and SIGN not in said:
        said = f"{character.name}{SIGN}{_state(talk, character, said)}"
    try:
        return observed(vocabulary, said, talk.asked.stage)
    except AuctorumError as error:
        talk.say(f"{error} ({error.remedy})")
        return None


def _state(talk: _Dialogue, character: Character, said: str) -> str:
    """A number as the state that it stands for, a misspelt state as the one that is meant, which is said."""
    states = state_names(character)
    if said.isdecimal() and 0 < int(said[:6]) <= len(states):
        return states[int(said[:6]) - 1]
    known = {word for state in character.states for word in (state.name, *state.words)} | set(states)
    if states and said.casefold() not in {word.casefold() for word in known}:
        near = nearest(said, states, limit=1, cutoff=_LIKE)
        if near:
            talk.say(f"Taken for {near[0]}.")
            return near[0]
    return said
