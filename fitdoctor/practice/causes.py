"""Name the cause among real look-alikes; the answer is judged by the posterior."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Any

from fitdoctor.assess import Assessment
from fitdoctor.case import Case
from fitdoctor.diagnosis.ranking import RankedCause
from fitdoctor.diagnosis.treat import TIED_WITHIN
from fitdoctor.knowledge.entries import Check
from fitdoctor.practice.bench import Bench, DrawnGarment
from fitdoctor.practice.exercise import Choice, Exercise, Kind, Level, Mark, Option, Picture, Skill, Told, pair
from fitdoctor.practice.lots import Lots
from fitdoctor.practice.scope import Scope
from fitdoctor.practice.wording import given_lines, lower, reasons_against, reasons_for, without

_ANSWERS = 4
_LEADS_FROM = 0.4
PART_FROM = 1 / 3
"""Share of the likeliest cause's chance from which another is defensible."""
_SOLVED_SHARE = 0.4
_PARTS_FROM = 0.3
_FAULTS: dict[Level, int] = {"easy": 1, "moderate": 1, "hard": 2}


def cause_exercise(bench: Bench, lots: Lots, scope: Scope, garment: str, focus: Skill | None = None) -> Exercise | None:
    """A solved case or a drawn garment, and what its lines come from.

    Args:
        focus: a pair of causes of which one is to be found.
    """
    drawn = some_garment(bench, lots, scope, garment, focus)
    if drawn is None:
        return None
    assessment = bench.assess(drawn.case)
    question = cause_question(bench, lots, assessment, scope.level, focus)
    if question is None or not _agrees(drawn, question):
        return None
    return Exercise("", "cause", scope.level, drawn.case, (question,), drawn.causes, drawn.solved)


def some_garment(bench: Bench, lots: Lots, scope: Scope, garment: str, focus: Skill | None = None) -> DrawnGarment | None:
    """A garment for the lots: one of the solved cases at times, else drawn from the model."""
    pool = scope.causes(bench.knowledge, garment)
    if focus is not None:
        return bench.draw(lots, garment, [id_ for id_ in focus.ids if id_ in pool] or focus.ids)
    solved = [drawn for drawn in bench.solved_garments(scope) if drawn.case.garment == garment and drawn.case.seen]
    if solved and lots.happens(_SOLVED_SHARE):
        return lots.one(solved)
    return bench.draw(lots, garment, pool, 1 + lots.below(_FAULTS[scope.level]))


def cause_question(
    bench: Bench, lots: Lots, assessment: Assessment, level: Level, focus: Skill | None = None, kind: Kind = "cause"
) -> Choice | None:
    """Which cause is the likeliest; None where none leads or nothing looks alike.

    The right answer is the one with the highest posterior of all; one whose odds are nearly the same is right as well, and one that is
    at least a third as likely counts in part.
    """
    able = [c for c in assessment.diagnosis.causes if c.id in assessment.diagnosis.net.able and not c.ruled_out]
    if not able or able[0].probability < _LEADS_FROM:
        return None
    best = able[0]
    rivals = _rivals(lots, assessment, best, focus)
    if len(rivals) < 2 or (level == "easy" and rivals[0].probability > PART_FROM * best.probability):
        return None
    case, first = assessment.case, _first_sign(assessment, best)
    view = bench.knowledge.symptoms[first].view
    shown = tuple(id_ for id_ in case.seen if bench.knowledge.symptoms[id_].view == view)
    return Choice(
        kind=kind,
        ask="What is the likeliest cause?",
        given=(bench.knowledge.garment(case.garment).title, *given_lines(bench.knowledge, case, bench.shop)),
        skill=focus if focus and best.id in focus.ids else pair(best.id, rivals[0].id),
        right=bench.knowledge.causes[best.id].why,
        entry=("causes", best.id),
        picture=Picture(view, shown, first),
        shows=Picture(view, shown, mechanism=best.id),
        sources=bench.knowledge.causes[best.id].sources,
        options=tuple(lots.shuffled([_option(bench, assessment, best, cause) for cause in (best, *rivals)])),
    )


def mark_of(chance: float, best: float) -> Mark:
    """What a cause of this chance is worth beside the likeliest."""
    if _odds(best) <= TIED_WITHIN * _odds(chance):
        return "right"
    return "part" if chance >= PART_FROM * best else "wrong"


def _agrees(drawn: DrawnGarment, question: Choice) -> bool:
    """Whether a solved case's own answer is the program's; where they differ it is no exercise."""
    return not drawn.solved or any(option.id in drawn.causes and option.mark == "right" for option in question.options)


def _rivals(lots: Lots, assessment: Assessment, best: RankedCause, focus: Skill | None) -> list[RankedCause]:
    """Causes that share a symptom with the best: the two likeliest, then others; what is treated besides it is no rival."""
    net = assessment.diagnosis.net
    own = [row for row, (kind, _) in enumerate(net.findings) if kind == "symptom" and net.net.links[row, net.column[best.id]] > 0]
    sharing = [c for c in assessment.diagnosis.causes if (net.net.links[own, net.column[c.id]] > 0).any()]
    ranked = [c for c in sharing if c.id != best.id and c.id not in assessment.treat]
    wanted = [c for c in ranked if focus and c.id in focus.ids]
    able = [c for c in ranked if c.id in net.able][:2]
    ids = without(c.id for c in (*wanted, *able, *lots.shuffled(ranked)))[: _ANSWERS - 1]
    return [next(c for c in ranked if c.id == id_) for id_ in ids]


def _first_sign(assessment: Assessment, best: RankedCause) -> str:
    """The symptom that speaks most for the cause."""
    seen = (e.finding for e in best.speaks_for if e.kind == "symptom" and e.answer == "yes" and e.linked)
    return next(seen, assessment.case.seen[0])


def _option(bench: Bench, assessment: Assessment, best: RankedCause, cause: RankedCause) -> Option:
    diagnosis = assessment.diagnosis
    mark = "right" if cause.id == best.id else mark_of(cause.probability, best.probability)
    said = tuple(_said(bench, assessment, best, cause, mark))
    confused = () if mark == "right" else (best.id, cause.id)
    return Option(cause.id, cause.title, mark, Told(said, reasons_for(diagnosis, cause), reasons_against(diagnosis, cause), confused))


def _said(bench: Bench, assessment: Assessment, best: RankedCause, cause: RankedCause, mark: Mark) -> Iterator[str]:
    if cause.id == best.id:
        return
    if mark == "right":
        yield f"‘{best.title}’ is as likely; only a check parts the two."
    elif mark == "part":
        yield f"It may be so, but ‘{lower(best.title)}’ is likelier here. {bench.knowledge.causes[best.id].why}"
    else:
        yield f"Here it is ‘{lower(best.title)}’. {bench.knowledge.causes[best.id].why}"
    yield from _apart(bench, assessment.case, best.id, cause.id)


def _apart(bench: Bench, case: Case, one: str, other: str) -> Iterator[str]:
    """How two causes are told apart on a real garment: by the check that parts them most, or by what the entry says."""
    check, garment = parting_check(bench, case, one, other), case.garment
    if check is not None:
        clear = bench.chance(garment, (one,), ("check", check.id)) > bench.chance(garment, (other,), ("check", check.id))
        for_ = bench.knowledge.causes[one if clear else other]
        yield f"To be sure on a real one: {check.ask} ‘{check.yes}’ speaks for ‘{lower(for_.title)}’."
        return
    both: Sequence[Any] = [(bench.knowledge.causes[a], b) for a, b in ((one, other), (other, one))]
    yield from (told.by for cause, b in both for told in cause.told_apart if told.cause == b)


def parting_check(bench: Bench, case: Case, one: str, other: str) -> Check | None:
    """The check not made yet whose answer differs most between two causes; None where none differs by much."""
    garment = case.garment
    left = [id_ for kind, id_ in bench.net(garment).findings if kind == "check" and id_ not in case.answers]

    def gap(check: str) -> float:
        return abs(bench.chance(garment, (one,), ("check", check)) - bench.chance(garment, (other,), ("check", check)))

    best = max(left, key=gap, default="")
    return bench.knowledge.checks[best] if best and gap(best) >= _PARTS_FROM else None


def _odds(chance: float) -> float:
    return chance / max(1e-12, 1 - chance)
