"""Can it be done: each condition with its state, each method with its verdict, and the whole."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from typing import Literal

from fitdoctor.amounts.marks import Length
from fitdoctor.case import Case
from fitdoctor.knowledge.entries import ClothNeeded, Condition, Effect, Method, Minutes, When
from fitdoctor.knowledge.knowledge import Knowledge
from fitdoctor.reason import Reason
from fitdoctor.shop import Shop
from fitdoctor.when import Truth, holds, missing

Level = Literal["CAN", "NEEDS_CARE", "CAN_WITHIN_LIMITS", "NOT_KNOWN", "CANNOT", "LEAVE_ALONE"]
State = Literal["met", "not-met", "not-known", "borderline"]

LEVEL_WORDS: dict[Level, str] = {
    "CAN": "Can be done",
    "CAN_WITHIN_LIMITS": "Can be done, within limits",
    "NEEDS_CARE": "Can be done, with care",
    "CANNOT": "Cannot be done",
    "NOT_KNOWN": "Not known yet",
    "LEAVE_ALONE": "Leave it alone",
}
_SEVERITY: tuple[Level, ...] = ("LEAVE_ALONE", "CAN", "NEEDS_CARE", "CAN_WITHIN_LIMITS", "NOT_KNOWN", "CANNOT")
_STATE_OF = {Truth.TRUE: "not-met", Truth.FALSE: "met", Truth.NOT_KNOWN: "not-known", Truth.BORDERLINE: "borderline"}


@dataclass(frozen=True)
class ConditionState:
    """One condition as it stands for one method on this garment.

    Attributes:
        condition: id; for cloth in a seam `cloth-in-` and the seam.
        needs: what the work needs, so that met is good.
        state: met, not-met, not-known, borderline (the limit lies inside the give or take).
        everywhere: holds for all work; not answering it does not hold the verdict up.
        found: what was found, with the figures.
        missing: features, checks and measurements that would settle it.
        passed: the fitter goes past this limit this once.
    """

    condition: str
    needs: str
    effect: Effect
    state: State
    everywhere: bool
    found: str
    because: str
    sources: tuple[str, ...]
    ask: str = ""
    at_the_rack: str = ""
    instead: str = ""
    missing: tuple[str, ...] = ()
    minutes: Minutes | None = None
    safety: bool = False
    always: bool = False
    passed: bool = False

    @property
    def reason(self) -> Reason:
        return Reason(f"{self.needs}: {self.found or self.state.replace('-', ' ')}.", self.condition, self.sources, self.state)


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
    knowledge: Knowledge, case: Case, cause: str, method: Method, amounts: Mapping[str, Length], unplaced_mm: float = 0.0, shop: Shop | None = None
) -> MethodVerdict:
    """Judge one method for one cause on this garment.

    Args:
        amounts: the method's worked-out amounts by name (total, each, effects), mm with give or take.
        unplaced_mm: what the calculators could not place.
    """
    shop = shop or Shop()
    if method.kind != "alteration":
        return _without_work(method, cause)
    states = tuple(_sorted(_states(knowledge, case, method, amounts, shop)))
    suited = _suited(knowledge, case, method, amounts)
    if suited is not None:
        states = (suited, *states)
    if unplaced_mm > 0:
        states = (*states, _unplaced(unplaced_mm, shop))
    level = _level(states)
    deciding = tuple(s for s in states if _bites(s) == level)
    sentence = _sentence(level, deciding, states)
    reasons = tuple(s.reason for s in (*deciding, *(s for s in states if s not in deciding and not s.always)))
    return MethodVerdict(method.id, cause, level, sentence, states, reasons)


def best_method(judged: Iterable[MethodVerdict], knowledge: Knowledge) -> MethodVerdict | None:
    """The method to propose: possible before impossible, inside the limits before past them, then by rank and time."""

    def order(verdict: MethodVerdict) -> tuple[int, int, float, str]:
        method = knowledge.methods[verdict.method]
        minutes = sum(operation.minutes[1] for operation in method.operations)
        return _tier(method, verdict), method.rank, minutes, method.id

    return min(judged, key=order, default=None)


def overall(chosen: Iterable[MethodVerdict], untreated: str = "") -> Verdict:
    """The verdict on all chosen methods together: the gravest one, with what decides it first."""
    ranked = sorted(chosen, key=lambda verdict: -_SEVERITY.index(verdict.level))
    if not ranked:
        return Verdict("NOT_KNOWN", untreated or "No cause to treat yet.", ())
    reasons = tuple(dict.fromkeys(reason for verdict in ranked for reason in verdict.because))
    return Verdict(ranked[0].level, ranked[0].sentence, reasons)


def applicable(knowledge: Knowledge, method: Method, garment: str) -> Iterator[Condition]:
    """The conditions that watch this method on this garment, each once."""
    touched = {seam for operation in method.operations for seam in (*operation.opens, *operation.closes)}
    for condition in knowledge.conditions.values():
        to = condition.applies_to
        named = condition.id in method.conditions or method.id in to.methods or not touched.isdisjoint(to.seams)
        if (named or to.all or (to.let_out and method.cloth_needed)) and knowledge.suits(condition.garments, garment):
            yield condition


def _without_work(method: Method, cause: str) -> MethodVerdict:
    level: Level = "LEAVE_ALONE" if method.kind == "leave" else "CANNOT"
    reason = Reason(method.because or method.title, method.id, method.sources)
    return MethodVerdict(method.id, cause, level, reason.text, (), (reason,))


def _tier(method: Method, verdict: MethodVerdict) -> int:
    if method.kind == "alteration":
        return {"CANNOT": 3, "CAN_WITHIN_LIMITS": 1}.get(verdict.level, 0)
    return 2 if method.kind == "leave" else 4


def _states(
    knowledge: Knowledge, case: Case, method: Method, amounts: Mapping[str, Length], shop: Shop
) -> Iterator[ConditionState]:
    for condition in applicable(knowledge, method, case.garment):
        yield _condition_state(knowledge, case, condition, amounts, shop)
    for need in method.cloth_needed:
        yield _cloth_state(knowledge, case, need, amounts, shop)


def _condition_state(
    knowledge: Knowledge, case: Case, condition: Condition, amounts: Mapping[str, Length], shop: Shop
) -> ConditionState:
    always = condition.when is None
    truth = Truth.TRUE if condition.when is None else holds(condition.when, case, amounts, knowledge)
    state: State = "met" if always else _STATE_OF[truth]  # type: ignore[assignment]
    return ConditionState(
        condition=condition.id,
        needs=condition.needs,
        effect=condition.effect,
        state=state,
        everywhere=condition.applies_to.all,
        found=_found(knowledge, case, condition, amounts, shop),
        because=condition.because,
        sources=condition.sources,
        ask=condition.ask,
        at_the_rack=condition.at_the_rack,
        instead=condition.instead,
        missing=missing(condition.when, case, amounts) if condition.when and state == "not-known" else (),
        minutes=condition.minutes,
        safety=condition.safety,
        always=always,
        passed=condition.id in case.past_limits,
    )


def _cloth_state(
    knowledge: Knowledge, case: Case, need: ClothNeeded, amounts: Mapping[str, Length], shop: Shop
) -> ConditionState:
    """Cloth in a seam: what the work draws on it and what must stay, against what is there."""
    seam = knowledge.seam_title(need.seam)
    wanted = amounts.get(need.amount)
    there = case.measured.get(need.measurement)
    keep = shop.length(need.keep_mm)
    state: State = "not-known"
    found = ""
    if wanted is not None and there is not None:
        give = (there.give_mm if there.give_mm is not None else knowledge.measurements[need.measurement].tolerance_mm) + wanted.give_mm
        spare = there.mm - wanted.mm - need.keep_mm
        state = "borderline" if 0 < abs(spare) < give else ("met" if spare >= 0 else "not-met")
        found = f"{shop.length(there.mm)} there, {shop.length(wanted.mm)} wanted, {keep} must stay"
    needs = f"The {seam} hold the cloth that is let out, and {keep} over" if need.keep_mm else f"The {seam} hold the cloth that is let out"
    lacking = tuple(m for m, there_is in ((need.measurement, there), (need.amount, wanted)) if there_is is None)
    return ConditionState(
        f"cloth-in-{need.seam}", needs, "forbids", state, False, found, "A seam can be moved outward only where there is cloth beyond it.",
        need.sources, missing=lacking if state == "not-known" else (),
    )


def _suited(knowledge: Knowledge, case: Case, method: Method, amounts: Mapping[str, Length]) -> ConditionState | None:
    if method.only_if is None:
        return None
    truth = holds(method.only_if, case, amounts, knowledge)
    state: State = {Truth.TRUE: "met", Truth.FALSE: "not-met"}.get(truth, "not-known")  # type: ignore[assignment]
    needs = f"The garment is made so that this way of working suits it ({describe_when(knowledge, method.only_if)})"
    lacking = missing(method.only_if, case, amounts) if state == "not-known" else ()
    return ConditionState(f"suits-{method.id}", needs, "forbids", state, False, "", method.preferred or method.title, method.sources, missing=lacking)


def _unplaced(mm: float, shop: Shop) -> ConditionState:
    return ConditionState(
        "all-placed", "Every amount finds a place", "limits", "not-met", False, f"{shop.length(mm)} has found no place",
        "The seams that may move reach their limits before the whole amount is shared out.", (),
    )


def _found(knowledge: Knowledge, case: Case, condition: Condition, amounts: Mapping[str, Length], shop: Shop) -> str:
    """The figures and facts the condition turned on, in words."""
    said: list[str] = []
    for test in _leaves(condition.when):
        if test.amount in amounts:
            said.append(f"{test.amount.replace('-', ' ')} {shop.length(amounts[test.amount].mm)}")
        elif test.measurement in case.measured:
            title = knowledge.measurements[test.measurement].title if test.measurement in knowledge.measurements else test.measurement
            said.append(f"{title.lower()} {shop.length(case.measured[test.measurement].mm)}")
        elif test.fact in case.facts:
            said.append(_fact_words(knowledge, test.fact, case.facts[test.fact]))
    limits = [f"limit {shop.length(bound)}" for test in _leaves(condition.when) for bound in (test.exceeds, test.below) if bound]
    return ", ".join(dict.fromkeys([*said, *(limits if said else [])]))


def describe_when(knowledge: Knowledge, when: object) -> str:
    """The facts a tree asks for, in words."""
    words = [_fact_words(knowledge, test.fact, value) for test in _leaves(when) if test.fact for value in test.is_]
    return ", or ".join(dict.fromkeys(words)) or "see the method"


def _fact_words(knowledge: Knowledge, feature: str, value: str) -> str:
    entry = knowledge.features.get(feature)
    titles = {v.id: v.title for v in entry.values} if entry else {}
    return f"{(entry.title if entry else feature).lower()}: {titles.get(value, value).lower()}"


def _leaves(when: object) -> Iterator[When]:
    if not isinstance(when, When):
        return
    inner = (*when.all, *when.any, *((when.not_,) if when.not_ else ()))
    if not inner:
        yield when
    for branch in inner:
        yield from _leaves(branch)


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
        return f"Nothing stops the work so far. {_count(len(deciding), 'thing is', 'things are')} not known: {_lower(deciding[0].needs)}."
    open_ = sum(1 for s in states if s.state == "not-known" and not s.everywhere)
    tail = f" {_count(open_, 'thing is', 'things are')} not known." if open_ else ""
    if level == "CAN_WITHIN_LIMITS":
        return f"Nothing stops the work. {_count(len(deciding), 'limit is', 'limits are')} passed: {_lower(deciding[0].needs)}.{tail}"
    if level == "NEEDS_CARE":
        return f"Nothing stops the work. It needs care: {_lower(deciding[0].needs)} cannot be counted on.{tail}"
    return f"Nothing stops the work.{tail}"


def _lower(text: str) -> str:
    return text[:1].lower() + text[1:]


def _count(number: int, one: str, many: str) -> str:
    return f"{number} {one if number == 1 else many}"
