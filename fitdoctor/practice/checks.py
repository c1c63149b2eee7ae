"""Choose the check that settles it, and read its answer."""

from __future__ import annotations

from dataclasses import replace as but

from fitdoctor.assess import Assessment
from fitdoctor.case import Case
from fitdoctor.diagnosis.next_checks import NextCheck, next_checks
from fitdoctor.practice.bench import Bench, DrawnGarment, replace
from fitdoctor.practice.causes import cause_question, some_garment
from fitdoctor.practice.exercise import Choice, Exercise, Mark, Option, Picture, Skill, Told, pair
from fitdoctor.practice.lots import Lots
from fitdoctor.practice.scope import Scope
from fitdoctor.practice.wording import given_lines, lower, without

_ANSWERS = 4
_LEAST_BITS = 0.08
_RIGHT_FROM, _PART_FROM = 0.8, 0.4
"""Shares of the best check's gain a minute."""
_ALL = 500


def check_exercise(bench: Bench, lots: Lots, scope: Scope, garment: str, focus: Skill | None = None) -> Exercise | None:
    """A garment whose cause is not clear yet: what to try, and then what the answer says.

    Args:
        focus: a pair of causes to be parted.
    """
    drawn = some_garment(bench, lots, scope, garment, focus)
    if drawn is None or not set(drawn.causes) <= set(bench.net(drawn.case.garment).causes):
        return None
    case = replace(drawn.case, answers={}, looked=bench.views(drawn.case.garment))
    choosing = check_question(bench, lots, bench.assess(case), focus)
    if choosing is None:
        return None
    answered = with_answer(bench, lots, drawn, case, choosing.entry[1])
    reading = reading_question(bench, lots, answered, choosing.entry[1], scope, focus)
    if reading is None:
        return None
    return Exercise("", "check", scope.level, answered, (choosing, reading), drawn.causes, drawn.solved)


def check_question(bench: Bench, lots: Lots, assessment: Assessment, focus: Skill | None = None) -> Choice | None:
    """Which check takes away most doubt a minute; None where none takes away enough, or nothing else could be tried."""
    case, diagnosis = assessment.case, assessment.diagnosis
    asks = [ask for ask in next_checks(bench.knowledge, case, diagnosis, most=_ALL) if ask.kind == "check"]
    able = [cause for cause in diagnosis.causes if cause.id in diagnosis.net.able and not cause.ruled_out]
    if not asks or asks[0].gain_bits < _LEAST_BITS or len(able) < 2:
        return None
    others = _others(bench, lots, case, asks)
    view = bench.knowledge.symptoms[case.seen[0]].view
    shown = tuple(id_ for id_ in case.seen if bench.knowledge.symptoms[id_].view == view)
    picture = Picture(view, shown, case.seen[0])
    return Choice(
        kind="check",
        ask="Which check settles most for the time it takes?",
        given=(bench.knowledge.garment(case.garment).title, *given_lines(bench.knowledge, case, bench.shop)),
        skill=focus or pair(able[0].id, able[1].id),
        right=asks[0].because.text,
        entry=("checks", asks[0].id),
        picture=picture,
        shows=picture,
        sources=asks[0].because.sources,
        options=tuple(lots.shuffled([_option(bench, asks, id_) for id_ in (asks[0].id, *others)])),
    )


def with_answer(bench: Bench, lots: Lots, drawn: DrawnGarment, case: Case, check: str) -> Case:
    """The case with the check made: as the solved case has it, else as its causes bring it about."""
    answer = drawn.case.answers.get(check) or bench.answer(lots, case.garment, drawn.causes, check)
    return replace(case, answers={**case.answers, check: answer})


def reading_question(bench: Bench, lots: Lots, case: Case, check: str, scope: Scope, focus: Skill | None = None) -> Choice | None:
    """What the answer says: the causes again, with the check made."""
    question = cause_question(bench, lots, bench.assess(case), "moderate" if scope.level == "easy" else scope.level, focus, "check")
    if question is None:
        return None
    entry = bench.knowledge.checks[check]
    said = {"yes": entry.yes, "no": entry.no}[case.answers[check]]
    return but(question, ask=f"The check is made: ‘{said}’. What is the likeliest cause now?")


def _others(bench: Bench, lots: Lots, case: Case, asks: list[NextCheck]) -> list[str]:
    """Other things to try: one of the better ones, then any that belong to this garment."""
    known = [id_ for kind, id_ in bench.net(case.garment).findings if kind == "check" and id_ not in case.answers]
    near = [ask.id for ask in asks[1:]]
    return without((*near[:1], *lots.shuffled(near[1:])[:1], *lots.shuffled(known)), asks[0].id)[: _ANSWERS - 1]


def _option(bench: Bench, asks: list[NextCheck], id_: str) -> Option:
    check, best = bench.knowledge.checks[id_], asks[0]
    ask = next((ask for ask in asks if ask.id == id_), None)
    share = ask.gain_bits / ask.minutes / (best.gain_bits / best.minutes) if ask else 0.0
    mark: Mark = "right" if share >= _RIGHT_FROM else "part" if share >= _PART_FROM else "wrong"
    said = ask.because.text if ask else "Whatever its answer, the causes stand as they stood."
    better = f"‘{bench.knowledge.checks[best.id].title}’ takes away more doubt a minute. {best.because.text}"
    text = (said,) if mark == "right" else (better, f"Yours: {lower(said)}.")
    confused = () if mark == "right" else (best.id, id_)
    reasons = (ask.because,) if ask else ()
    return Option(id_, f"{check.ask} ({check.minutes:g} min)", mark, Told(text, speaks_for=reasons, confused=confused))
