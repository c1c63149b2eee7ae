"""The conditions that watch a method on this garment, each with its state and what was found."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Literal

from fitdoctor.amounts.marks import Length
from fitdoctor.case import Case
from fitdoctor.knowledge.entries import ClothNeeded, Condition, Effect, Method, Minutes, When
from fitdoctor.knowledge.knowledge import Knowledge
from fitdoctor.reason import Reason
from fitdoctor.shop import Shop
from fitdoctor.when import Truth, holds, in_words, missing

State = Literal["met", "not-met", "not-known", "borderline"]

_STATE_OF: dict[Truth, State] = {Truth.TRUE: "not-met", Truth.FALSE: "met", Truth.NOT_KNOWN: "not-known", Truth.BORDERLINE: "borderline"}


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


def condition_states(
    knowledge: Knowledge, case: Case, method: Method, amounts: Mapping[str, Length], unplaced_mm: float, shop: Shop
) -> Iterator[ConditionState]:
    """Every condition on the method: whether it suits, the entries that watch it, cloth in its seams, what found no place."""
    if method.only_if is not None:
        yield _suited(knowledge, case, method, method.only_if, amounts)
    for condition in applicable(knowledge, method, case.garment):
        yield _condition_state(knowledge, case, condition, amounts, shop)
    for need in method.cloth_needed:
        yield _cloth_state(knowledge, case, need, amounts, shop)
    if unplaced_mm > 0:
        yield _unplaced(unplaced_mm, shop)


def applicable(knowledge: Knowledge, method: Method, garment: str) -> Iterator[Condition]:
    """The conditions that watch this method on this garment, each once."""
    touched = {seam for operation in method.operations for seam in (*operation.opens, *operation.closes)}
    for condition in knowledge.conditions.values():
        to = condition.applies_to
        named = condition.id in method.conditions or method.id in to.methods or not touched.isdisjoint(to.seams)
        if (named or to.all or (to.let_out and method.cloth_needed)) and knowledge.suits(condition.garments, garment):
            yield condition


def _condition_state(knowledge: Knowledge, case: Case, condition: Condition, amounts: Mapping[str, Length], shop: Shop) -> ConditionState:
    always = condition.when is None
    truth = Truth.TRUE if condition.when is None else holds(condition.when, case, amounts, knowledge)
    state: State = "met" if always else _STATE_OF[truth]
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
        missing=missing(condition.when, case, amounts, knowledge) if condition.when and state == "not-known" else (),
        minutes=shop.own_minutes(condition.minutes) if condition.minutes else None,
        safety=condition.safety,
        always=always,
        passed=condition.id in case.past_limits,
    )


def _no_cloth(knowledge: Knowledge, case: Case) -> str:
    """The fact that says that the seams hold nothing to let out, in words; empty where none says so."""
    for feature in knowledge.features.values():
        value = next((v for v in feature.values if v.no_cloth and case.facts.get(feature.id) == v.id), None)
        if value:
            return f"{feature.title}: {value.title}".lower()
    return ""


def _cloth_state(knowledge: Knowledge, case: Case, need: ClothNeeded, amounts: Mapping[str, Length], shop: Shop) -> ConditionState:
    """Cloth in a seam: what the work draws on it and what must stay, against what is there."""
    seam = knowledge.seam_title(need.seam)
    wanted = amounts.get(need.amount)
    there = case.measured.get(need.measurement)
    keep = shop.length(need.keep_mm)
    state: State = "not-known"
    found = _no_cloth(knowledge, case) if there is None and not need.seam.endswith("hem") else ""  # a hem holds its own cloth
    if found:
        state = "not-met"
    elif wanted is not None and there is not None:
        give = (there.give_mm if there.give_mm is not None else knowledge.measurements[need.measurement].tolerance_mm) + wanted.give_mm
        spare = there.mm - wanted.mm - need.keep_mm
        state = "borderline" if 0 < abs(spare) < give else ("met" if spare >= 0 else "not-met")
        found = f"{shop.length(there.mm)} there, {shop.length(wanted.mm)} wanted, {keep} must stay"
    needs = f"Cloth to let out lies in the {seam}" + (f", with {keep} to spare" if need.keep_mm else "")
    lacking = tuple(m for m, there_is in ((need.measurement, there), (need.amount, wanted)) if there_is is None) if not found else ()
    return ConditionState(
        f"cloth-in-{need.seam}",
        needs,
        "forbids",
        state,
        False,
        found,
        "A seam can be moved outward only where there is cloth beyond it.",
        need.sources,
        missing=lacking if state == "not-known" else (),
    )


def _suited(knowledge: Knowledge, case: Case, method: Method, only_if: When, amounts: Mapping[str, Length]) -> ConditionState:
    """Whether the garment is made so that this way of working suits it."""
    turned: dict[Truth, State] = {Truth.TRUE: "met", Truth.FALSE: "not-met"}
    state = turned.get(holds(only_if, case, amounts, knowledge), "not-known")
    needs = f"The garment is made as this way of working needs it ({in_words(only_if, knowledge)})"
    lacking = missing(only_if, case, amounts, knowledge) if state == "not-known" else ()
    because = method.preferred or f"Otherwise another way than ‘{method.title}’ is needed."
    return ConditionState(f"suits-{method.id}", needs, "forbids", state, False, "", because, method.sources, missing=lacking)


def _unplaced(mm: float, shop: Shop) -> ConditionState:
    return ConditionState(
        "all-placed",
        "Every amount finds a place",
        "limits",
        "not-met",
        False,
        f"{shop.length(mm)} has found no place",
        "The seams that may move reach their limits before the whole amount is shared out.",
        (),
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
