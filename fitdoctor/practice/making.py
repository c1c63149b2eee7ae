"""Exercises of any kind, and sets that are the same for a whole class."""

from __future__ import annotations

import hashlib
from collections.abc import Callable, Collection, Mapping
from dataclasses import dataclass, replace

from fitdoctor.errors import FitdoctorError
from fitdoctor.practice.amounts import amount_exercise
from fitdoctor.practice.bench import Bench
from fitdoctor.practice.causes import cause_exercise
from fitdoctor.practice.checks import check_exercise
from fitdoctor.practice.exercise import Exercise, Kind, Skill, SkillKind
from fitdoctor.practice.judging import right_answer
from fitdoctor.practice.lines import lines_exercise
from fitdoctor.practice.lots import Lots
from fitdoctor.practice.orders import order_exercise
from fitdoctor.practice.scope import Scope
from fitdoctor.practice.verdicts import verdict_exercise
from fitdoctor.practice.whole import garment_exercise

Maker = Callable[[Bench, Lots, Scope, str, Skill | None], Exercise | None]
MAKERS: Mapping[Kind, Maker] = {
    "lines": lines_exercise,
    "cause": cause_exercise,
    "check": check_exercise,
    "amount": amount_exercise,
    "verdict": verdict_exercise,
    "order": order_exercise,
    "garment": garment_exercise,
}
_TRAINS: Mapping[SkillKind, tuple[Kind, ...]] = {
    "symptom": ("lines",),
    "condition": ("verdict",),
    "calculator": ("amount",),
    "method": ("order",),
    "clean": ("lines", "garment"),
}
_TRIES = 25
_TRIES_FOR_SKILL = 6


@dataclass(frozen=True)
class Set:
    """Exercises fixed by a scope and a seed.

    Attributes:
        code: four letters and figures that are the same wherever the exercises are, so that a class can compare.
    """

    scope: Scope
    seed: str
    exercises: tuple[Exercise, ...]
    code: str


def make_set(bench: Bench, scope: Scope, seed: object, count: int = 10) -> Set:
    """A set for a class: the same scope, seed, count and knowledge give the same exercises on any machine.

    Raises:
        FitdoctorError: no exercise can be made there.
    """
    made: list[Exercise] = []
    for number in range(count):
        exercise = next_exercise(bench, Lots(seed, scope.words, number), scope, {e.skill for e in made}, number)
        if exercise is not None:
            made.append(replace(exercise, id=f"{seed}-{number + 1}"))
    if not made:
        raise FitdoctorError("No exercise can be made there.", "Choose a wider place, or another kind.")
    return Set(scope, str(seed), tuple(made), _code(made))


def next_exercise(bench: Bench, lots: Lots, scope: Scope, done: Collection[Skill] = (), turn: int = 0) -> Exercise | None:
    """An exercise in scope; kinds take turns, and a skill that was had already is passed over while there are others."""
    kinds = scope.asked_kinds
    spare: Exercise | None = None
    for attempt in range(_TRIES * len(kinds)):
        kind = kinds[(turn + attempt // _TRIES) % len(kinds)]
        exercise = _made(bench, lots, scope, kind, lots.one(scope.garments(bench.knowledge)))
        if exercise is not None and exercise.skill not in done:
            return exercise
        spare = exercise or spare
    return spare


def exercise_for(bench: Bench, lots: Lots, scope: Scope, skill: Skill) -> Exercise | None:
    """An exercise that trains one skill; None where the garments in scope do not have it."""
    anywhere = Scope(scope.garment, level=scope.level)
    garments = lots.shuffled([g for g in anywhere.garments(bench.knowledge) if skill.kind != "clean" or g == skill.id])
    for kind in _kinds_for(bench, skill):
        for garment in garments:
            for _ in range(_TRIES_FOR_SKILL if _belongs(bench, skill, garment) else 0):
                exercise = _made(bench, lots, anywhere, kind, garment, skill)
                if exercise is not None and exercise.skill == skill:
                    return exercise
    return None


def _made(bench: Bench, lots: Lots, scope: Scope, kind: Kind, garment: str, skill: Skill | None = None) -> Exercise | None:
    """None where nothing came up, or where the lengths drawn do not go together."""
    try:
        return MAKERS[kind](bench, lots, scope, garment, skill)
    except FitdoctorError:
        return None


def _kinds_for(bench: Bench, skill: Skill) -> tuple[Kind, ...]:
    if skill.kind != "pair":
        return _TRAINS[skill.kind]
    return ("lines",) if set(skill.ids) <= bench.knowledge.symptoms.keys() else ("cause", "check")


def _belongs(bench: Bench, skill: Skill, garment: str) -> bool:
    """Whether a garment has what the skill is about; worked out before anything is drawn."""
    knowledge = bench.knowledge
    if skill.kind in ("symptom", "pair"):
        return set(skill.ids) <= {*knowledge.symptoms_of(garment), *knowledge.causes_of(garment)}
    return True


def _code(exercises: list[Exercise]) -> str:
    """Told from what is asked and what is right, not from the words, which follow the shop's units."""
    told = [f"{e.kind} {e.case.garment} {q.skill.key} {right_answer(q)}" for e in exercises for q in e.questions]
    return hashlib.sha256("\n".join(told).encode()).hexdigest()[:4].upper()
