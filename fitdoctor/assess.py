"""The chain on one screen: knowledge and a case in, an assessment out. Everything that asks, asks here."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from fitdoctor.amounts.calculators import CALCULATORS
from fitdoctor.amounts.work_out import WorkedAmount, fill, named_amounts, work_out_amounts
from fitdoctor.case import Case
from fitdoctor.conditions import ConditionState
from fitdoctor.diagnosis.diagnose import Diagnosis, diagnose, likely
from fitdoctor.diagnosis.learning import Learned
from fitdoctor.diagnosis.next_checks import NextCheck, next_checks, settled
from fitdoctor.diagnosis.treat import same_work
from fitdoctor.knowledge.entries import Method
from fitdoctor.knowledge.knowledge import Knowledge
from fitdoctor.plan import Plan, make_plan
from fitdoctor.reason import Reason
from fitdoctor.shop import Shop
from fitdoctor.verdict import MethodVerdict, Verdict, best_method, judge, overall


@dataclass(frozen=True)
class Wanted:
    """A measurement the chosen methods or the causes ask for."""

    measurement: str
    causes: tuple[str, ...]
    methods: tuple[str, ...]
    needed: bool
    "False where a standard block can stand in."
    taken: bool


@dataclass(frozen=True)
class Choice:
    """The ways to treat one cause, each judged, and the one chosen."""

    cause: str
    ways: tuple[MethodVerdict, ...]
    chosen: MethodVerdict | None
    why_none: str = ""


@dataclass(frozen=True)
class Assessment:
    """All that follows from a case; every part says why."""

    case: Case
    shop: Shop
    diagnosis: Diagnosis
    next: tuple[NextCheck, ...]
    settled: bool
    treat: tuple[str, ...]
    left_alone: tuple[str, ...]
    choices: tuple[Choice, ...]
    wanted: tuple[Wanted, ...]
    amounts: tuple[WorkedAmount, ...]
    verdict: Verdict
    plan: Plan
    cautions: tuple[ConditionState, ...]

    @property
    def methods(self) -> tuple[str, ...]:
        """The chosen methods, each once."""
        return tuple(dict.fromkeys(choice.chosen.method for choice in self.choices if choice.chosen))

    @property
    def planned(self) -> frozenset[str]:
        """Of the chosen methods those that are planned: what cannot be done is not."""
        return frozenset(c.chosen.method for c in self.choices if c.chosen and c.chosen.level != "CANNOT")


def assess(knowledge: Knowledge, case: Case, shop: Shop | None = None, where: str = "wearer", learned: Learned | None = None) -> Assessment:
    """Work a case through: causes, next checks, amounts, verdict, plan.

    Args:
        where: where the garment is: wearer, garment (in the hand) or rack.
        learned: what the shop's closed jobs taught; without it the printed chances hold.

    Raises:
        FitdoctorError: the case names a garment that is not known.
    """
    shop = shop or Shop()
    knowledge.garment(case.garment)
    diagnosis = diagnose(knowledge, case, learned)
    asks = next_checks(knowledge, case, diagnosis, where)
    wanted = tuple(cause for cause in (case.treat or likely(diagnosis, same_work(knowledge, case.garment))) if cause in knowledge.causes)
    treat = tuple(cause for cause in wanted if cause not in case.left_alone)
    left_alone = tuple(cause for cause in case.left_alone if cause in wanted)
    choices = tuple(choose(knowledge, case, cause, shop) for cause in treat)
    chosen = {choice.chosen.method: choice.chosen for choice in choices if choice.chosen}
    methods = [knowledge.methods[id_] for id_ in chosen]
    worked = work_out_amounts(knowledge, case, methods, shop.usual_lengths())
    return Assessment(
        case=case,
        shop=shop,
        diagnosis=diagnosis,
        next=asks,
        settled=settled(knowledge, case, diagnosis),
        treat=treat,
        left_alone=left_alone,
        choices=choices,
        wanted=_wanted(knowledge, choices, case),
        amounts=worked,
        verdict=_verdict(case, choices, chosen, asks, left_alone),
        plan=_plan(case, [method for method in methods if chosen[method.id].level != "CANNOT"], worked, shop),
        cautions=_cautions(chosen),
    )


def choose(knowledge: Knowledge, case: Case, cause: str, shop: Shop) -> Choice:
    """Every way to treat one cause on this garment, judged, and the one to propose."""
    methods = knowledge.methods_for(cause, case.garment)
    ways = tuple(_judged(knowledge, case, cause, method, shop) for method in methods)
    asked = next((way for way in ways if way.method == case.methods.get(cause)), None)
    return Choice(cause, ways, asked or best_method(ways, knowledge, shop), knowledge.causes[cause].no_method)


def _judged(knowledge: Knowledge, case: Case, cause: str, method: Method, shop: Shop) -> MethodVerdict:
    worked = work_out_amounts(knowledge, case, [method], shop.usual_lengths())
    unplaced = sum(w.calculation.unplaced_mm for w in worked if w.calculation)
    return judge(knowledge, case, cause, method, named_amounts(worked, method), unplaced, shop)


def _wanted(knowledge: Knowledge, choices: Sequence[Choice], case: Case) -> tuple[Wanted, ...]:
    """What to measure: the causes' own measurements first, then what the methods' calculators and conditions need."""
    asks = [ask for choice in choices for ask in _asked_for(knowledge, choice) if ask[0] in knowledge.measurements]
    return tuple(
        Wanted(
            measurement,
            tuple(dict.fromkeys(cause for m, cause, _, _ in asks if m == measurement)),
            tuple(dict.fromkeys(method for m, _, method, _ in asks if m == measurement and method)),
            any(needed for m, _, _, needed in asks if m == measurement),
            measurement in case.measured,
        )
        for measurement in dict.fromkeys(m for m, _, _, _ in asks)
    )


def _asked_for(knowledge: Knowledge, choice: Choice) -> Iterator[tuple[str, str, str, bool]]:
    """(measurement, cause, method, needed) for one choice."""
    for measurement in knowledge.causes[choice.cause].measure:
        yield measurement, choice.cause, "", False
    if choice.chosen is None:
        return
    method = knowledge.methods[choice.chosen.method]
    for spec in method.amounts.values():
        needs = CALCULATORS[spec.calculator].needs if spec.calculator in CALCULATORS else ()
        for name, value in spec.inputs.items():
            yield value, choice.cause, method.id, name in needs
    for need in method.cloth_needed:
        yield need.measurement, choice.cause, method.id, True
    for state in choice.chosen.conditions:
        for lacking in state.missing:
            yield lacking, choice.cause, method.id, True


def _verdict(
    case: Case, choices: Sequence[Choice], chosen: Mapping[str, MethodVerdict], asks: Sequence[NextCheck], left_alone: Sequence[str]
) -> Verdict:
    if chosen:
        return overall(chosen.values())
    without = [choice for choice in choices if choice.why_none]
    if without:
        return Verdict("CANNOT", without[0].why_none, (Reason(without[0].why_none, without[0].cause),))
    if left_alone and not choices:
        return Verdict("LEAVE_ALONE", "It is left alone by choice.", tuple(Reason("Left alone by choice.", cause) for cause in left_alone))
    if not case.seen and case.looked:
        return Verdict("LEAVE_ALONE", "Nothing shows that asks for work.", ())
    look = f" Next: {asks[0].ask}" if asks else ""
    return Verdict("NOT_KNOWN", f"No cause stands out yet.{look}", ())


def _plan(case: Case, methods: Sequence[Method], worked: Sequence[WorkedAmount], shop: Shop) -> Plan:
    unlined = case.facts.get("lining") == "none"
    work = [method for method in methods if method.kind == "alteration"]
    return make_plan(work, lambda method, text: fill(text, worked, method, shop.length), unlined, shop)


def _cautions(chosen: Mapping[str, MethodVerdict]) -> tuple[ConditionState, ...]:
    """What to mind at the table: what always holds, what strikes, and the no-goes for people's safety that nobody has ruled out."""
    states = {s.condition: s for verdict in chosen.values() for s in verdict.conditions}
    return tuple(sorted((s for s in states.values() if _is_minded(s)), key=lambda s: (not s.safety, s.condition)))


def _is_minded(state: ConditionState) -> bool:
    if state.always:
        return True
    if state.state == "not-known":
        return (state.safety and state.effect == "forbids") or (not state.everywhere and state.effect in ("needs-care", "adds-work"))
    return state.state != "met" and (state.safety or state.effect in ("needs-care", "adds-work"))
