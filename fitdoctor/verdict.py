"""Can it be done: each condition with its state, each method with its verdict, and the whole."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from typing import Literal

from fitdoctor.amounts.marks import Length
from fitdoctor.case import Case
from fitdoctor.conditions import ConditionState, condition_states
from fitdoctor.knowledge.entries import Effect, Method
from fitdoctor.knowledge.knowledge import Knowledge
from fitdoctor.reason import Reason
from fitdoctor.shop import Shop

Level = Literal["CAN", "NEEDS_CARE", "CAN_WITHIN_LIMITS", "NOT_KNOWN", "CANNOT", "LEAVE_ALONE"]
LEVEL_WORDS: dict[Level, str] = {
    "CAN": "Can be done",
    "CAN_WITHIN_LIMITS": "Can be done, within limits",
    "NEEDS_CARE": "Can be done, with care",
    "CANNOT": "Cannot be done",
    "NOT_KNOWN": "Not known yet",
    "LEAVE_ALONE": "Leave it alone",
}
_SEVERITY: tuple[Level, ...] = ("LEAVE_ALONE", "CAN", "NEEDS_CARE", "CAN_WITHIN_LIMITS", "NOT_KNOWN", "CANNOT")


@dataclass(frozen=True)
class MethodVerdict:
    """One way to do it, with its verdict and the conditions behind it; the one that decides comes first."""

    method: str
    cause: str
    level: Level
    sentence: str
    conditions: tuple[ConditionState, ...]
    because: tuple[Reason, ...]


@dataclass(frozen=True)
class Verdict:
    """The verdict on the whole job."""

    level: Level
    sentence: str
    because: tuple[Reason, ...]

    @property
    def words(self) -> str:
        return LEVEL_WORDS[self.level]


def judge(
    knowledge: Knowledge,
    case: Case,
    cause: str,
    method: Method,
    amounts: Mapping[str, Length],
    unplaced_mm: float = 0.0,
    shop: Shop | None = None,
) -> MethodVerdict:
    """Judge one method for one cause on this garment.

    Args:
        amounts: the method's worked-out amounts by name (total, each, effects), mm with give or take.
        unplaced_mm: what the calculators could not place.
    """
    shop = shop or Shop()
    if method.kind != "alteration":
        return _without_work(method, cause)
    states = tuple(_sorted(condition_states(knowledge, case, method, amounts, unplaced_mm, shop)))
    level = _level(states)
    deciding = tuple(s for s in states if _bites(s) == level)
    sentence = _sentence(level, deciding, states)
    reasons = tuple(s.reason for s in (*deciding, *(s for s in states if s not in deciding and not s.always)))
    return MethodVerdict(method.id, cause, level, sentence, states, reasons)


def best_method(judged: Iterable[MethodVerdict], knowledge: Knowledge, shop: Shop | None = None) -> MethodVerdict | None:
    """The method to propose: possible before impossible, inside the limits before past them, then by rank and the shop's time."""
    own = (shop or Shop()).own_minutes

    def order(verdict: MethodVerdict) -> tuple[int, int, float, str]:
        method = knowledge.methods[verdict.method]
        minutes = sum(own(operation.minutes, operation.stage or method.stage)[1] for operation in method.operations)
        return _tier(method, verdict), method.rank, minutes, method.id

    return min(judged, key=order, default=None)


def overall(chosen: Iterable[MethodVerdict], untreated: str = "") -> Verdict:
    """The verdict on all chosen methods together: the gravest one, with what decides it first."""
    ranked = sorted(chosen, key=lambda verdict: -_SEVERITY.index(verdict.level))
    if not ranked:
        return Verdict("NOT_KNOWN", untreated or "No cause to treat yet.", ())
    reasons = tuple(dict.fromkeys(reason for verdict in ranked for reason in verdict.because))
    return Verdict(ranked[0].level, ranked[0].sentence, reasons)


def _without_work(method: Method, cause: str) -> MethodVerdict:
    level: Level = "LEAVE_ALONE" if method.kind == "leave" else "CANNOT"
    reason = Reason(method.because or method.title, method.id, method.sources)
    return MethodVerdict(method.id, cause, level, reason.text, (), (reason,))


def _tier(method: Method, verdict: MethodVerdict) -> int:
    if method.kind == "alteration":
        return {"CANNOT": 3, "CAN_WITHIN_LIMITS": 1}.get(verdict.level, 0)
    return 2 if method.kind == "leave" else 4


def _bites(state: ConditionState) -> Level:
    """The level this one condition would force."""
    if state.always or state.state == "met":
        return "CAN"
    if state.state in ("not-known", "borderline"):
        return "NOT_KNOWN" if state.effect == "forbids" and not state.everywhere else "CAN"
    levels: dict[Effect, Level] = {"forbids": "CANNOT", "limits": "CAN_WITHIN_LIMITS", "needs-care": "NEEDS_CARE", "adds-work": "CAN"}
    return levels[state.effect]


def _level(states: Iterable[ConditionState]) -> Level:
    return max((_bites(state) for state in states), key=_SEVERITY.index, default="CAN")


def _sorted(states: Iterable[ConditionState]) -> list[ConditionState]:
    """Stops first, then what is not known, then what is not met, then what is met."""
    order = {"borderline": 1, "not-known": 1, "not-met": 2, "met": 3}
    return sorted(states, key=lambda s: (0 if _bites(s) == "CANNOT" else order[s.state] + (2 if s.everywhere else 0), s.condition))


def _sentence(level: Level, deciding: tuple[ConditionState, ...], states: tuple[ConditionState, ...]) -> str:
    if level == "CANNOT":
        first = deciding[0]
        return f"What the work needs is not there: {first.needs[0].lower()}{first.needs[1:]}{f' ({first.found})' if first.found else ''}."
    if level == "NOT_KNOWN":
        close = [s for s in deciding if s.state == "borderline"]
        if close:
            return f"Too close to call: {close[0].found}. The limit lies inside the give or take; measure again."
        more = f", and {len(deciding) - 1} more" if len(deciding) > 1 else ""
        return f"Nothing stops the work so far. Still to make sure of: {_lower(deciding[0].needs)}{more}."
    open_ = sum(1 for s in states if s.state == "not-known" and not s.everywhere)
    tail = f" {_count(open_, 'thing is', 'things are')} not known." if open_ else ""
    if level == "CAN_WITHIN_LIMITS":
        return f"Nothing stops the work. {_count(len(deciding), 'limit is', 'limits are')} passed: {_lower(deciding[0].needs)}.{tail}"
    if level == "NEEDS_CARE":
        return f"Nothing stops the work. It needs care, for this does not hold: {_lower(deciding[0].needs)}.{tail}"
    return f"Nothing stops the work.{tail}"


def _lower(text: str) -> str:
    return text[:1].lower() + text[1:]


def _count(number: int, one: str, many: str) -> str:
    return f"{number} {one if number == 1 else many}"
