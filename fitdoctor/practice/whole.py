"""A whole garment, from sight to sheet: with one fault, at times two, and sometimes with none."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from fitdoctor.assess import Assessment
from fitdoctor.case import Case
from fitdoctor.practice.amounts import amount_question, measured_case
from fitdoctor.practice.bench import Bench, DrawnGarment, replace
from fitdoctor.practice.causes import mark_of
from fitdoctor.practice.checks import check_question, with_answer
from fitdoctor.practice.exercise import (
    LEAVE_ALONE,
    Choice,
    Exercise,
    Mark,
    Option,
    Picture,
    Question,
    Skill,
    Told,
    pair,
)
from fitdoctor.practice.lines import clean_question, line_question
from fitdoctor.practice.lots import Lots
from fitdoctor.practice.orders import order_question
from fitdoctor.practice.scope import Scope
from fitdoctor.practice.verdicts import found_out, verdict_questions
from fitdoctor.practice.wording import given_lines, lower, reasons_against, reasons_for, without
from fitdoctor.reason import Reason

NOTHING = "Nothing is the matter: leave it alone"
_FAULTS = (0, 1, 1, 1, 2)
"""One of these by lot: a garment in five is clean, one in five has two faults."""
_ANSWERS = 4
_CHECKS = 2


def garment_exercise(bench: Bench, lots: Lots, scope: Scope, garment: str, focus: Skill | None = None) -> Exercise | None:
    """A garment to work through: the line, the check, the causes, the marks, the verdict, the order.

    Args:
        focus: a clean garment; None leaves it to the lots.
    """
    faults = 0 if focus and focus.kind == "clean" else lots.one(_FAULTS)
    if faults == 0:
        return _clean(bench, lots, scope, garment)
    drawn = bench.draw(lots, garment, scope.causes(bench.knowledge, garment), faults)
    if drawn is None:
        return None
    questions, case = _worked_through(bench, lots, drawn)
    return Exercise("", "garment", scope.level, case, questions, drawn.causes) if questions else None


def causes_question(bench: Bench, lots: Lots, assessment: Assessment, others: Sequence[str]) -> Choice | None:
    """What is the matter as a whole: one cause, two, or nothing; judged by how likely each whole explanation is.

    Args:
        others: causes to offer beside those that are treated.
    """
    right, case = assessment.treat, assessment.case
    if case.seen and not right:
        return None
    sets = _sets(right, others)
    if len(sets) < _ANSWERS:
        return None
    view = bench.knowledge.symptoms[case.seen[0]].view if case.seen else bench.views(case.garment)[0]
    shown = tuple(id_ for id_ in case.seen if bench.knowledge.symptoms[id_].view == view)
    return Choice(
        kind="garment",
        ask="What is the matter?",
        given=(bench.knowledge.garment(case.garment).title, *given_lines(bench.knowledge, case, bench.shop)),
        skill=pair(right[0], others[0]) if right else Skill("clean", case.garment),
        right=" ".join(bench.knowledge.causes[id_].why for id_ in right) or "Nothing shows, and nothing is to be done.",
        entry=("causes", right[0]) if right else ("garments", case.garment),
        picture=Picture(view, shown),
        shows=Picture(view, shown, mechanism=right[0] if right else ""),
        sources=tuple(dict.fromkeys(s for id_ in right for s in bench.knowledge.causes[id_].sources)),
        options=tuple(lots.shuffled([_option(bench, assessment, causes) for causes in sets])),
    )


def _clean(bench: Bench, lots: Lots, scope: Scope, garment: str) -> Exercise | None:
    drawn = bench.clean(garment)
    symptoms = sorted(scope.symptoms(bench.knowledge, garment))
    others = lots.shuffled([id_ for id_ in scope.causes(bench.knowledge, garment) if not bench.is_design(id_)])
    looking = clean_question(bench, lots, garment, symptoms)
    judging = causes_question(bench, lots, bench.assess(drawn.case), others)
    if looking is None or judging is None:
        return None
    return Exercise("", "garment", scope.level, drawn.case, (looking, judging))


def _worked_through(bench: Bench, lots: Lots, drawn: DrawnGarment) -> tuple[tuple[Question, ...], Case]:
    """The questions in the order of the work, and the case at its end; none where the cause cannot be told."""
    asked: list[Question] = []
    case = drawn.case
    line = line_question(bench, lots, case.garment, lots.one(case.seen), case.seen)
    asked += [line] if line else []
    for _ in range(_CHECKS):
        check = check_question(bench, lots, bench.assess(case))
        if check is None:
            break
        case = with_answer(bench, lots, drawn, case, check.entry[1])
        asked.append(check)
    assessment = bench.assess(case)
    causes = causes_question(bench, lots, assessment, _rivals(assessment))
    if causes is None:
        return (), case
    return (*asked, causes, *_work(bench, lots, assessment)), case


def _rivals(assessment: Assessment) -> list[str]:
    """Causes that could bring on something of what is seen, the likeliest first."""
    able = [c.id for c in assessment.diagnosis.causes if c.id in assessment.diagnosis.net.able and not c.ruled_out]
    return without(able, *assessment.treat)


def _work(bench: Bench, lots: Lots, assessment: Assessment) -> Iterator[Question]:
    """The marks, the verdict and the order, as far as the work has them."""
    case = assessment.case
    for id_ in assessment.methods:
        case = measured_case(bench, lots, case, bench.knowledge.methods[id_])
    case = replace(case, treat=assessment.treat)
    for cause in assessment.treat:
        case = found_out(bench, lots, case, cause)
    measured = bench.assess(case)
    amount = amount_question(bench, lots, measured)
    order = order_question(bench, lots, measured)
    yield from (amount,) if amount else ()
    yield from verdict_questions(bench, lots, measured, assessment.treat[0])
    yield from (order,) if order else ()


def _sets(right: tuple[str, ...], others: Sequence[str]) -> list[tuple[str, ...]]:
    """Whole explanations to choose from: the right one, part of it, more than it, another, and none."""
    one_less = [(cause,) for cause in right] if len(right) > 1 else []
    exchanged = [(*right[:-1], other) for other in others[:2]] if right else [(other,) for other in others[:2]]
    one_more = [(*right[:1], other) for other in others[:1]] if right else [tuple(others[:2])]
    sets = dict.fromkeys([right, *one_less[:1], exchanged[0], (), *one_more, *exchanged[1:], *one_less[1:]] if exchanged else [right])
    return list(sets)[:_ANSWERS]


def _option(bench: Bench, assessment: Assessment, causes: tuple[str, ...]) -> Option:
    right, titles = assessment.treat, [bench.knowledge.causes[id_].title for id_ in causes]
    text = " + ".join(titles) or NOTHING
    mark = _mark(assessment, causes)
    diagnosis = assessment.diagnosis
    ranked = [cause for cause in diagnosis.causes if cause.id in causes]
    speaks_for: tuple[Reason, ...] = tuple(reason for cause in ranked for reason in reasons_for(diagnosis, cause))
    against = tuple(reason for cause in ranked for reason in reasons_against(diagnosis, cause))
    wrong = [id_ for id_ in causes if id_ not in right]
    confused = (right[0] if right else LEAVE_ALONE, wrong[0]) if wrong and mark != "right" else ()
    told = Told(tuple(_said(bench, right, causes, mark)), speaks_for, against, confused)
    return Option(" ".join(causes) or LEAVE_ALONE, text, mark, told)


def _mark(assessment: Assessment, causes: tuple[str, ...]) -> Mark:
    """By how likely this whole explanation is beside the likeliest; one of two faults found counts in part."""
    right = assessment.treat
    if set(causes) == set(right):
        return "right"
    if not right or not causes:
        return "wrong"
    chances = {frozenset(e.causes): e.probability for e in assessment.diagnosis.explanations}
    mark = mark_of(chances.get(frozenset(causes), 0.0), chances.get(frozenset(right), 1.0))
    return "part" if mark == "wrong" and set(causes) < set(right) else mark


def _said(bench: Bench, right: tuple[str, ...], causes: tuple[str, ...], mark: Mark) -> Iterator[str]:
    titles = " and ".join(f"‘{lower(bench.knowledge.causes[id_].title)}’" for id_ in right)
    if mark == "right":
        return
    if not right:
        yield "Nothing shows. A garment that hangs clean is left alone; work on it can only spoil it."
    elif not causes:
        yield f"Something shows, and {titles} brings it on."
    elif set(causes) < set(right):
        yield f"That is one of them. The rest of what shows comes from another: it is {titles}."
    else:
        yield f"All that shows comes from {titles}."
    yield from (bench.knowledge.causes[id_].why for id_ in right)
