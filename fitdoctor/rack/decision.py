"""Buy, buy only if, leave it, or not known yet."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from fitdoctor.rack.foresight import all_met, worth_of_telling
from fitdoctor.rack.outlook import Outlook
from fitdoctor.rack.question import Rack, RackQuestion
from fitdoctor.rack.questions import LEAST_GAIN, deciding_questions

Decision = Literal["BUY", "BUY_IF", "LEAVE_IT", "NOT_KNOWN"]
DECISION_WORDS: dict[Decision, str] = {
    "BUY": "Buy",
    "BUY_IF": "Buy only if",
    "LEAVE_IT": "Leave it",
    "NOT_KNOWN": "Not known yet",
}


@dataclass(frozen=True)
class Stand:
    """The decision as things stand, and the questions that could still change it, the best first."""

    decision: Decision
    asks: tuple[RackQuestion, ...]


def stand(rack: Rack, outlook: Outlook) -> Stand:
    """Decide as far as it can be decided.

    Not known while an answer about what is the matter could turn it; only-if while something the work needs could; else by the gain.
    """
    asks = tuple(deciding_questions(rack, outlook))
    if any(ask.decides == "cause" for ask in asks):
        return Stand("NOT_KNOWN", asks)
    if asks or hangs_on_work(outlook):
        return Stand("BUY_IF", asks)
    return Stand("BUY" if outlook.now().gain >= 0 else "LEAVE_IT", asks)


def hangs_on_work(outlook: Outlook) -> bool:
    """Whether it turns on what nobody knows yet of the work: worth it where all is met, not worth it where nothing is."""
    met = all_met(outlook)
    gains = [(met, outlook.now("best").gain), (1 - met, outlook.now("worst").gain)]
    return worth_of_telling(gains) >= LEAST_GAIN * outlook.stake.worth
