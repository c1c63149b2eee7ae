"""Work out the marks: lengths given, an amount typed."""

from __future__ import annotations

from collections.abc import Iterator

from fitdoctor.amounts.calculators import CALCULATORS
from fitdoctor.amounts.marks import Calculation, Mark
from fitdoctor.amounts.work_out import WorkedAmount
from fitdoctor.assess import Assessment
from fitdoctor.case import Case
from fitdoctor.knowledge.entries import Cause, Method
from fitdoctor.practice.bench import Bench, replace
from fitdoctor.practice.exercise import Amount, Exercise, Picture, Skill
from fitdoctor.practice.lots import Lots
from fitdoctor.practice.scope import Scope
from fitdoctor.practice.wording import lower
from fitdoctor.units import step_mm

TAKE_WORDS = {
    "in": "taken in",
    "out": "let out",
    "lower": "lowered",
    "raise": "raised",
    "mark": "marked",
    "add": "added",
    "cut": "cut away",
}
_SOLVED_SHARE = 0.3


def amount_exercise(bench: Bench, lots: Lots, scope: Scope, garment: str, focus: Skill | None = None) -> Exercise | None:
    """A method with the lengths it needs, and what is to be marked.

    Args:
        focus: a calculator.
    """
    solved = [s for s in bench.solved_garments(scope) if s.case.garment == garment and s.case.measured]
    if focus is None and solved and lots.happens(_SOLVED_SHARE):
        drawn = lots.one(solved)
        question = amount_question(bench, lots, bench.assess(replace(drawn.case, treat=drawn.causes)))
        return Exercise("", "amount", scope.level, drawn.case, (question,), drawn.causes, drawn.solved) if question else None
    ways = _ways(bench, scope, garment, focus)
    if not ways:
        return None
    calculator = lots.one(sorted({name for _, _, name in ways}))
    cause, method, _ = lots.one([way for way in ways if way[2] == calculator])
    case = measured_case(bench, lots, Case(garment=garment, treat=(cause.id,), methods={cause.id: method.id}), method)
    question = amount_question(bench, lots, bench.assess(case), calculator)
    return Exercise("", "amount", scope.level, case, (question,), (cause.id,)) if question else None


def amount_question(bench: Bench, lots: Lots, assessment: Assessment, calculator: str = "") -> Amount | None:
    """How much is marked at one place; None where nothing is worked out."""
    worked = [w for w in assessment.amounts if w.calculation and calculator in ("", w.calculator)]
    marks = [(w, mark) for w in worked if w.calculation for mark in w.calculation.marks if mark.each_mm > 0 and mark.layer == "shell"]
    if not marks:
        return None
    work, mark = lots.one(marks)
    assert work.calculation is not None
    method, step = bench.knowledge.methods[work.method], step_mm(bench.shop.unit, bench.shop.finest)
    cause = next((choice.cause for choice in assessment.choices if choice.chosen and choice.chosen.method == work.method), "")
    picture = Picture(mechanism=cause)
    return Amount(
        kind="amount",
        ask=f"How much is {TAKE_WORDS[mark.take]} there, {mark.convention}?",
        given=(
            bench.knowledge.garment(assessment.case.garment).title,
            method.title,
            f"Where: {_place(bench, mark)}",
            *_given(bench, assessment.case, method, work),
        ),
        skill=Skill("calculator", work.calculator),
        right=f"{_sentence(mark)} {bench.shop.length(mark.each_mm)}.",
        entry=("methods", method.id),
        picture=picture,
        shows=picture,
        sources=method.sources,
        right_mm=mark.each_mm,
        within_mm=step,
        slips=tuple(_slips(mark, work.calculation, step)),
        because=work.calculation.because,
    )


def measured_case(bench: Bench, lots: Lots, case: Case, method: Method) -> Case:
    """The case with every length measured that the method's amounts and seams ask for."""
    asked = [value for spec in method.amounts.values() for value in spec.inputs.values()]
    asked += [need.measurement for need in method.cloth_needed]
    wanted = [bench.knowledge.measurements[id_] for id_ in dict.fromkeys(asked) if id_ in bench.knowledge.measurements]
    drawn = {entry.id: bench.length(lots, entry) for entry in wanted if entry.id not in case.measured}
    return replace(case, measured={**case.measured, **drawn})


def _ways(bench: Bench, scope: Scope, garment: str, focus: Skill | None) -> list[tuple[Cause, Method, str]]:
    return [
        (cause, method, spec.calculator)
        for cause in scope.causes(bench.knowledge, garment).values()
        for method in bench.knowledge.methods_for(cause.id, garment)
        for spec in method.amounts.values()
        if spec.calculator in CALCULATORS and (focus is None or spec.calculator in focus.ids)
    ]


def _given(bench: Bench, case: Case, method: Method, work: WorkedAmount) -> Iterator[str]:
    """The lengths the calculator works from, and those that are written in the entry."""
    for name, value in method.amounts[work.name].inputs.items():
        if value in case.measured:
            yield f"{bench.knowledge.measurements[value].title}: {bench.shop.length(case.measured[value].mm)}"
        elif value not in bench.knowledge.measurements:
            yield f"{name.replace('-', ' ').capitalize()}: {value}"


def _place(bench: Bench, mark: Mark) -> str:
    seam = bench.knowledge.seam_title(mark.at)
    return f"{lower(seam)}, {lower(mark.where)}" if mark.where else lower(seam)


def _sentence(mark: Mark) -> str:
    return f"{mark.convention[:1].upper()}{mark.convention[1:]}"


def _slips(mark: Mark, calculation: Calculation, step: float) -> Iterator[tuple[float, str]]:
    """What comes out where the convention is mixed up: all of it on each, or half or double of it."""
    if mark.convention == "in all":
        known: tuple[tuple[float, str], ...] = ((mark.each_mm / 2, "That is half; asked is what it comes to in all."),)
    else:
        known = (
            (mark.total_mm, f"That is taken up in all; asked is what comes {mark.convention}."),
            (calculation.total.mm, f"That is the whole amount; asked is what comes {mark.convention}."),
            (mark.each_mm * 2, "That is double: it falls on both layers, or on both sides, together."),
            (mark.each_mm / 2, "That is half: it was shared out once too often."),
        )
    first = {round(mm, 3): said for mm, said in reversed(known)}
    yield from ((mm, said) for mm, said in first.items() if abs(mm - mark.each_mm) > 3 * step)
