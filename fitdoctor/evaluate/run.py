"""Run the solved cases and say how good the answers are: in all, in sight and held back, and garment by garment."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any, cast

import msgspec

from fitdoctor.case import Answer, Case
from fitdoctor.diagnosis.diagnose import Diagnosis, diagnose
from fitdoctor.diagnosis.next_checks import NextCheck, next_checks
from fitdoctor.errors import FitdoctorError
from fitdoctor.evaluate.scores import MEASURES, CaseScore, accepted, score
from fitdoctor.knowledge.entries import SolvedCase
from fitdoctor.knowledge.knowledge import Knowledge
from fitdoctor.knowledge.read import case_of

if TYPE_CHECKING:
    from fitdoctor.assess import Assessment

FORMAT = 1
MOST_QUESTIONS = 12
_SHOWS_FROM = 0.5

Assess = Callable[[Knowledge, Case], "Assessment"]


@dataclass(frozen=True)
class Scores:
    """Means over the cases that expect that thing, by measure; None where no case does."""

    cases: int
    means: Mapping[str, float | None]


@dataclass(frozen=True)
class Evaluation:
    """How good the answers are.

    Attributes:
        all, in_sight, held_back: every case, those looked at while the knowledge was written, those kept out of sight.
        garments: the same for each garment.
        cases: case by case; misses: what was not met, as sentences.
    """

    all: Scores
    in_sight: Scores
    held_back: Scores
    garments: Mapping[str, Scores]
    cases: tuple[CaseScore, ...]
    misses: tuple[str, ...]


def evaluate(knowledge: Knowledge, assess: Assess) -> Evaluation:
    """Run every solved case of the knowledge through the chain."""
    found = tuple(_run(knowledge, solved, assess) for _, solved in sorted(knowledge.cases.items()))
    return Evaluation(
        all=_scores(found),
        in_sight=_scores(s for s in found if not s.held_back),
        held_back=_scores(s for s in found if s.held_back),
        garments={garment: _scores(s for s in found if s.garment == garment) for garment in sorted({s.garment for s in found})},
        cases=found,
        misses=tuple(miss for s in found for miss in s.misses),
    )


def _run(knowledge: Knowledge, solved: SolvedCase, assess: Assess) -> CaseScore:
    try:
        case = case_of(solved)
        assessment = assess(knowledge, case)
    except FitdoctorError as error:
        return CaseScore(solved.id, solved.garment, solved.held_back, misses=(f"{solved.id}: cannot be assessed. {error}",))
    needed = checks_needed(knowledge, solved, case) if solved.expect.causes else None
    return score(knowledge, solved, assessment, needed)


def checks_needed(knowledge: Knowledge, solved: SolvedCase, case: Case) -> int:
    """Questions until an expected cause leads, from the symptoms alone; `MOST_QUESTIONS` where it never does.

    Each question is answered as the case says, else as the expected causes would have it: yes from a chance of one half on.
    """
    asked = msgspec.structs.replace(case, answers={}, treat=())
    for number in range(MOST_QUESTIONS):
        diagnosis = diagnose(knowledge, asked)
        if any(cause.id in accepted(solved) for cause in diagnosis.causes[:1]):
            return number
        asks = next_checks(knowledge, asked, diagnosis, most=1)
        if not asks:
            break
        asked = _answered(asked, asks[0], _answer(diagnosis, solved, asks[0]))
    return MOST_QUESTIONS


def _answer(diagnosis: Diagnosis, solved: SolvedCase, ask: NextCheck) -> Answer:
    given = solved.answers.get(ask.id)
    if ask.kind == "check" and given in ("yes", "no", "not-known"):
        return cast(Answer, given)
    links = (diagnosis.net.links.get((cause, (ask.kind, ask.id))) for cause in solved.expect.causes)
    return "yes" if any(link.chance >= _SHOWS_FROM for link in links if link) else "no"


def _answered(case: Case, ask: NextCheck, answer: Answer) -> Case:
    if ask.kind == "check":
        return msgspec.structs.replace(case, answers={**case.answers, ask.id: answer})
    if answer == "yes":
        return msgspec.structs.replace(case, seen=(*case.seen, ask.id))
    return msgspec.structs.replace(case, not_seen=(*case.not_seen, ask.id))


def _scores(cases: Iterable[CaseScore]) -> Scores:
    some = list(cases)
    return Scores(len(some), {name: _mean([getattr(s, name) for s in some]) for name in MEASURES})


def _mean(values: Iterable[float | None]) -> float | None:
    known = [float(value) for value in values if value is not None]
    return sum(known) / len(known) if known else None


def evaluation_json(evaluation: Evaluation) -> dict[str, Any]:
    """The result as plain values for JSON; fractions from 0 to 1."""
    return {
        "format": FORMAT,
        **_plain(evaluation.all),
        "in_sight": _plain(evaluation.in_sight),
        "held_back": _plain(evaluation.held_back),
        "garments": {garment: _plain(scores) for garment, scores in evaluation.garments.items()},
        "by_case": {s.case: {name: getattr(s, name) for name in MEASURES if getattr(s, name) is not None} for s in evaluation.cases},
        "misses": list(evaluation.misses),
    }


def _plain(scores: Scores) -> dict[str, Any]:
    return {"cases": scores.cases, **{name: None if mean is None else round(mean, 4) for name, mean in scores.means.items()}}
