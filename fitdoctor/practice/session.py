"""What a trainee is asked next: what is due first, then something new."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Sequence
from dataclasses import replace
from datetime import datetime

from fitdoctor.practice.bench import Bench
from fitdoctor.practice.exercise import Exercise, Skill, pair
from fitdoctor.practice.lots import Lots
from fitdoctor.practice.making import exercise_for, next_exercise
from fitdoctor.practice.progress import Answered
from fitdoctor.practice.schedule import Schedule
from fitdoctor.practice.scope import Scope

_DUE_TRIED = 3
"""Skills looked at before something new is asked: some cannot be had in every scope."""


def scheduled_exercise(
    bench: Bench, scope: Scope, answers: Sequence[Answered], now: datetime, done: Collection[Skill] = ()
) -> Exercise | None:
    """The next exercise for this trainee; None where none can be made in scope.

    Args:
        done: skills had in this sitting; they come again only when nothing else is left.
    """
    lots = Lots(len(answers), now.date())
    for skill in list(_due(bench, scope, answers, now, done))[:_DUE_TRIED]:
        exercise = exercise_for(bench, lots, scope, skill)
        if exercise is not None:
            return replace(exercise, id=f"due-{len(answers) + 1}")
    exercise = next_exercise(bench, lots, scope, done, len(answers))
    return replace(exercise, id=f"new-{len(answers) + 1}") if exercise else None


def pair_exercise(bench: Bench, scope: Scope, ids: tuple[str, str], turn: int) -> Exercise | None:
    """An exercise on two that are mixed up."""
    exercise = exercise_for(bench, Lots("pair", *sorted(ids), turn), scope, pair(*ids))
    return replace(exercise, id=f"pair-{turn}") if exercise else None


def _due(bench: Bench, scope: Scope, answers: Sequence[Answered], now: datetime, done: Collection[Skill]) -> Iterator[Skill]:
    for key in Schedule.of(answers).due(now):
        skill = Skill.of(key)
        symptoms = [bench.knowledge.symptoms[id_] for id_ in skill.ids if id_ in bench.knowledge.symptoms]
        if skill not in done and all(scope.covers(symptom) for symptom in symptoms):
            yield skill
