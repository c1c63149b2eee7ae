"""The chain on one screen: knowledge and a case in, an assessment out. Everything that asks, asks here."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from fitdoctor.amounts.marks import Length
from fitdoctor.amounts.work_out import WorkedAmount, fill, named_amounts, work_out_amounts
from fitdoctor.case import Case
from fitdoctor.diagnosis.diagnose import Diagnosis, diagnose, likely
from fitdoctor.diagnosis.next_checks import NextCheck, next_checks, settled
from fitdoctor.knowledge.entries import Method
from fitdoctor.knowledge.knowledge import Knowledge
from fitdoctor.plan import Plan, make_plan
from fitdoctor.reason import Reason
from fitdoctor.shop import Shop
from fitdoctor.verdict import ConditionState, MethodVerdict, Verdict, best_method, judge, overall


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


def assess(knowledge: Knowledge, case: Case, shop: Shop | None = None, where: str = "wearer") -> Assessment:
    """Work a case through: causes, next checks, amounts, verdict, plan.

    Args:
        where: where the garment is: wearer, garment (in the hand) or rack.

    Raises:
        FitdoctorError: the case names a garment that is not known.
    """
    shop = shop or Shop()
    knowledge.garment(case.garment)
    diagnosis = diagnose(knowledge, case)
    asks = next_checks(knowledge, case, diagnosis, where)
    treat = tuple(cause for cause in (case.treat or likely(diagnosis)) if cause in knowledge.causes)
    choices = tuple(_choose(knowledge, case, cause, shop) for cause in treat)
    chosen = {choice.chosen.method: choice.chosen for choice in choices if choice.chosen}
    methods = [knowledge.methods[id_] for id_ in chosen]
    worked = work_out_amounts(knowledge, case, methods)
    return Assessment(
        case=case,
        shop=shop,
        diagnosis=diagnosis,
        next=asks,
        settled=settled(knowledge, case, diagnosis),
        treat=treat,
        choices=choices,
        wanted=_wanted(knowledge, case, choices),
        amounts=worked,
        verdict=_verdict(case, choices, chosen, asks),
        plan=_plan(case, methods, worked, shop),
        cautions=_cautions(chosen),
    )


def _choose(knowledge: Knowledge, case: Case, cause: str, shop: Shop) -> Choice:
    methods = knowledge.methods_for(cause, case.garment)
    ways = tuple(_judged(knowledge, case, cause, method, shop) for method in methods)
    asked = next((way for way in ways if way.method == case.methods.get(cause)), None)
    return Choice(cause, ways, asked or best_method(ways, knowledge), knowledge.causes[cause].no_method)


def _judged(knowledge: Knowledge, case: Case, cause: str, method: Method, shop: Shop) -> MethodVerdict:
    worked = work_out_amounts(knowledge, case, [method])
    unplaced = sum(w.calculation.unplaced_mm for w in worked if w.calculation)
    return judge(knowledge, case, cause, method, _named(worked, method), unplaced, shop)


def _named(worked: Sequence[WorkedAmount], method: Method) -> Mapping[str, Length]:
    return named_amounts(worked, method)


def _wanted(knowledge: Knowledge, case: Case, choices: Sequence[Choice]) -> tuple[Wanted, ...]:
    """What to measure: the causes' own measurements first, then what the methods' calculators and conditions need."""
    by: dict[str, tuple[list[str], list[str], bool]] = {}

    def want(measurement: str, cause: str, method: str, needed: bool) -> None:
        if measurement in knowledge.measurements:
            causes, methods, was = by.get(measurement, ([], [], False))
            by[measurement] = ([*causes, cause], [*methods, method] if method else methods, was or needed)

    for choice in choices:
        for measurement in knowledge.causes[choice.cause].measure:
            want(measurement, choice.cause, "", needed=False)
        if choice.chosen is None:
            continue
        method = knowledge.methods[choice.chosen.method]
        for spec in method.amounts.values():
            for name, value in spec.inputs.items():
                want(value, choice.cause, method.id, needed=name == "total" or name.startswith("finished"))
        for need in method.cloth_needed:
            want(need.measurement, choice.cause, method.id, needed=True)
        for state in choice.chosen.conditions:
            for lacking in state.missing:
                want(lacking, choice.cause, method.id, needed=True)
    return tuple(
        Wanted(id_, tuple(dict.fromkeys(causes)), tuple(dict.fromkeys(methods)), needed, id_ in case.measured)
        for id_, (causes, methods, needed) in by.items()
    )


def _verdict(case: Case, choices: Sequence[Choice], chosen: Mapping[str, MethodVerdict], asks: Sequence[NextCheck]) -> Verdict:
    if chosen:
        return overall(chosen.values())
    without = [choice for choice in choices if choice.why_none]
    if without:
        return Verdict("CANNOT", without[0].why_none, (Reason(without[0].why_none, without[0].cause),))
    if not case.seen and case.looked:
        return Verdict("LEAVE_ALONE", "Nothing shows that asks for work.", ())
    look = f" Next: {asks[0].ask}" if asks else ""
    return Verdict("NOT_KNOWN", f"No cause stands out yet.{look}", ())


def _plan(case: Case, methods: Sequence[Method], worked: Sequence[WorkedAmount], shop: Shop) -> Plan:
    unlined = case.facts.get("lining") == "none"
    return make_plan([m for m in methods if m.kind == "alteration"], lambda method, text: fill(text, worked, method, shop.length), unlined)


def _cautions(chosen: Mapping[str, MethodVerdict]) -> tuple[ConditionState, ...]:
    """What to mind at the table: cares that always hold, cares that strike, and what protects people."""
    states = {s.condition: s for verdict in chosen.values() for s in verdict.conditions}
    minded = (s for s in states.values() if s.safety or s.always or (s.effect in ("needs-care", "adds-work") and s.state != "met"))
    return tuple(sorted(minded, key=lambda s: (not s.safety, s.condition)))
