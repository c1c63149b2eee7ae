"""Buy, buy only if, leave it, or not known yet."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass
from typing import Literal

from fitdoctor.rack.foresight import LEAST_GAIN, all_met, worth_of_telling
from fitdoctor.rack.outlook import Outlook
from fitdoctor.rack.question import Rack, RackQuestion
from fitdoctor.rack.questions import deciding_questions

Decision = Literal["BUY", "BUY_IF", "LEAVE_IT", "NOT_KNOWN"]
DECISION_WORDS: dict[Decision, str] = {
    "BUY": "Buy",
    "BUY_IF": "Buy only if",
    "LEAVE_IT": "Leave it",
    "NOT_KNOWN": "Not known yet",
}


@dataclass(frozen=True)
class Stand:
    """The decision as things stand, and the questions that could still change it, the most money a second first."""

    decision: Decision
    asks: tuple[RackQuestion, ...]


Pick = Callable[[Sequence[RackQuestion]], Sequence[RackQuestion]]


def _money_a_second(asks: Sequence[RackQuestion]) -> list[RackQuestion]:
    return sorted(asks, key=lambda ask: (-ask.gain / ask.seconds, ask.kind, ask.id))


def stand(rack: Rack, outlook: Outlook, pick: Pick = _money_a_second) -> Stand:
    """Decide as far as it can be decided, with what could still change it.

    Args:
        pick: which of the questions may be asked, in what order; by what they are worth a second.
    """
    asks = tuple(pick(tuple(deciding_questions(rack, outlook))))
    return Stand(_decision(outlook, asks), asks)


def decision(rack: Rack, outlook: Outlook) -> Decision:
    """The decision alone, without working out more questions than it takes."""
    return _decision(outlook, deciding_questions(rack, outlook))


def _decision(outlook: Outlook, asks: Iterable[RackQuestion]) -> Decision:
    """Not known while an answer about what is the matter could turn it; only-if while something the work needs could; else by the gain."""
    of_work = False
    for ask in asks:
        if ask.decides == "cause":
            return "NOT_KNOWN"
        of_work = True
    if of_work or hangs_on_work(outlook):
        return "BUY_IF"
    return "BUY" if outlook.now().gain >= 0 else "LEAVE_IT"


def hangs_on_work(outlook: Outlook) -> bool:
    """Whether it turns on what nobody knows yet of the work: worth it where all is met, not worth it where nothing is."""
    met = all_met(outlook)
    gains = [(met, outlook.now("best").gain), (1 - met, outlook.now("worst").gain)]
    return worth_of_telling(gains) >= LEAST_GAIN * outlook.stake.worth
