"""Exercises for the tests, made once."""

from __future__ import annotations

from collections.abc import Iterator
from functools import cache
from typing import Any

from fitdoctor.knowledge.read import read_knowledge, shipped_folder
from fitdoctor.practice.bench import Bench
from fitdoctor.practice.exercise import Choice, Exercise, Kind, Level, Question
from fitdoctor.practice.making import Set, make_set
from fitdoctor.practice.scope import Scope


@cache
def the_bench() -> Bench:
    return Bench(read_knowledge([shipped_folder()]))


@cache
def exercises(kind: Kind, count: int = 12, level: Level = "moderate", garment: str = "", seed: int = 5) -> tuple[Exercise, ...]:
    """Exercises of one kind."""
    return a_set(kind, count, level, garment, seed).exercises


@cache
def a_set(kind: Kind, count: int = 12, level: Level = "moderate", garment: str = "", seed: int = 5) -> Set:
    return make_set(the_bench(), Scope(garment, level=level, kinds=(kind,)), seed, count)


def questions(kind: Kind, **how: Any) -> Iterator[Question]:
    for exercise in exercises(kind, **how):
        yield from exercise.questions


def choices(kind: Kind, **how: Any) -> Iterator[Choice]:
    yield from (question for question in questions(kind, **how) if isinstance(question, Choice))
