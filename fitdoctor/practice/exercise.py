"""What an exercise is made of: the garment, the questions, what each answer is worth, and what is said afterwards."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import Literal, get_args

from fitdoctor.case import Case
from fitdoctor.reason import Reason

Kind = Literal["lines", "cause", "check", "amount", "verdict", "order", "garment"]
Level = Literal["easy", "moderate", "hard"]
Mark = Literal["right", "part", "wrong"]
SkillKind = Literal["symptom", "pair", "condition", "calculator", "method", "clean"]

KINDS: tuple[Kind, ...] = get_args(Kind)
LEVELS: tuple[Level, ...] = get_args(Level)
KIND_WORDS: dict[Kind, str] = {
    "lines": "Name the lines",
    "cause": "Name the cause",
    "check": "Choose the check",
    "amount": "Work out the marks",
    "verdict": "Can it be done",
    "order": "Put the work in order",
    "garment": "A whole garment",
}
MARK_WORDS: dict[Mark, str] = {"right": "right", "part": "in part", "wrong": "not this time"}
POINTS: dict[Mark, float] = {"right": 1.0, "part": 0.5, "wrong": 0.0}
LEAVE_ALONE = "leave-alone"
"""The answer that nothing is the matter."""


@dataclass(frozen=True, order=True)
class Skill:
    """What an answer shows to be known or not.

    Attributes:
        id: of the entry; of a pair both ids, the earlier in the alphabet first, joined by `|`; of a clean garment the garment.
    """

    kind: SkillKind
    id: str

    @property
    def key(self) -> str:
        return f"{self.kind}:{self.id}"

    @property
    def ids(self) -> tuple[str, ...]:
        return tuple(self.id.split("|"))

    @classmethod
    def of(cls, key: str) -> Skill:
        """The skill behind a key."""
        kind, _, id_ = key.partition(":")
        return next(cls(known, id_) for known in get_args(SkillKind) if known == kind)


def pair(one: str, other: str) -> Skill:
    """The skill of telling two look-alikes apart."""
    return Skill("pair", "|".join(sorted((one, other))))


@dataclass(frozen=True)
class Told:
    """What is said after an answer, besides whether it was right.

    Attributes:
        text: paragraphs.
        speaks_for, speaks_against: of the answer given.
        confused: the two that were taken for one another, the right one first; empty where none were.
    """

    text: tuple[str, ...] = ()
    speaks_for: tuple[Reason, ...] = ()
    speaks_against: tuple[Reason, ...] = ()
    confused: tuple[str, ...] = ()


@dataclass(frozen=True)
class Option:
    """One answer to choose."""

    id: str
    text: str
    mark: Mark
    told: Told = Told()


@dataclass(frozen=True)
class Picture:
    """What is drawn: symptoms on the garment, and of one cause how it comes about.

    Attributes:
        asked: the symptom the question is about, marked with a question mark.
    """

    view: str = "back"
    seen: tuple[str, ...] = ()
    asked: str = ""
    mechanism: str = ""


@dataclass(frozen=True, kw_only=True)
class Question:
    """One question.

    Attributes:
        given: what is known, a line each.
        right: the right answer in words.
        entry: (kind, id) of the handbook page to read afterwards.
        shows: the picture to show afterwards.
    """

    kind: Kind
    ask: str
    skill: Skill
    right: str
    entry: tuple[str, str]
    given: tuple[str, ...] = ()
    picture: Picture = Picture()
    shows: Picture = Picture()
    sources: tuple[str, ...] = ()


@dataclass(frozen=True, kw_only=True)
class Choice(Question):
    """A question answered by one of its options."""

    options: tuple[Option, ...]

    def option(self, id_: str) -> Option:
        """The option of this id.

        Raises:
            KeyError: there is none.
        """
        return {option.id: option for option in self.options}[id_]


@dataclass(frozen=True, kw_only=True)
class Amount(Question):
    """A question answered by a length.

    Attributes:
        right_mm: the amount worked out; within_mm: how far an answer may be off.
        slips: other lengths one comes to by a known slip, with what it was.
    """

    right_mm: float
    within_mm: float
    slips: tuple[tuple[float, str], ...] = ()
    because: tuple[Reason, ...] = ()


@dataclass(frozen=True, kw_only=True)
class Order(Question):
    """A question answered by putting operations in order.

    Attributes:
        steps: (id, text) as they are shown; order: the ids in working order.
    """

    steps: tuple[tuple[str, str], ...]
    order: tuple[str, ...]


@dataclass(frozen=True)
class Exercise:
    """One exercise: a garment and one or more questions on it.

    Attributes:
        case: what is known of it at the end.
        causes: those it was drawn with; none: a clean garment, or one where that is not the question.
        solved: id of the solved case it comes from; empty: drawn from the model.
    """

    id: str
    kind: Kind
    level: Level
    case: Case
    questions: tuple[Question, ...]
    causes: tuple[str, ...] = ()
    solved: str = ""

    @property
    def skill(self) -> Skill:
        """What it trains first."""
        return self.questions[0].skill


@dataclass(frozen=True)
class Feedback:
    """What an answer is worth and what is said to it.

    Attributes:
        headline: one sentence; right: the right answer in words.
        sources: ids, each once.
    """

    mark: Mark
    headline: str
    right: str
    told: Told
    shows: Picture
    entry: tuple[str, str]
    sources: tuple[str, ...] = field(default=())
