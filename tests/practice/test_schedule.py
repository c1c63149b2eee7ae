"""When things come back, held against what the scheduler's makers publish."""

from __future__ import annotations

from collections.abc import Iterable
from datetime import UTC, datetime, timedelta

from hypothesis import given
from hypothesis import strategies as st

from fitdoctor.practice.exercise import Mark
from fitdoctor.practice.progress import Answered
from fitdoctor.practice.schedule import Schedule, in_words

START = datetime(2022, 11, 29, 12, 30, tzinfo=UTC)
EASY, HARD = "symptom:easy", "symptom:hard"


def an_answer(at: datetime, mark: Mark, skill: str = EASY, confused: tuple[str, ...] = ()) -> Answered:
    return Answered(at=at.isoformat(), kind="lines", garment="skirt", skill=skill, mark=mark, confused=confused)


def days_between(marks: Iterable[Mark]) -> list[int]:
    """The days after each answer until it comes back, each given just when it is due."""
    answers: list[Answered] = []
    days = []
    now = START
    for mark in marks:
        answers.append(an_answer(now, mark))
        due = Schedule.of(answers).comes_back(EASY)
        assert due is not None
        days.append((due - now).days)
        now = due
    return days


def test_the_days_are_those_the_makers_of_the_library_publish() -> None:
    """The series of test_review_card in the library's own tests (py-fsrs 6): default parameters, no fuzz."""
    right: list[Mark] = ["right"] * 6
    marks: list[Mark] = [*right, "wrong", "wrong", *right[:5]]
    assert days_between(marks) == [0, 2, 11, 46, 163, 498, 0, 0, 2, 4, 7, 12, 21]


def test_a_first_right_answer_comes_back_in_ten_minutes_and_a_wrong_one_in_one() -> None:
    """The learning steps the library documents as its defaults: 1 and 10 minutes."""
    assert Schedule.of([an_answer(START, "right")]).comes_back(EASY) == START + timedelta(minutes=10)
    assert Schedule.of([an_answer(START, "wrong")]).comes_back(EASY) == START + timedelta(minutes=1)


@given(st.lists(st.sampled_from(["right", "part", "wrong"]), min_size=1, max_size=8))
def test_a_skill_always_right_comes_back_later_than_one_that_failed_last(marks: list[Mark]) -> None:
    times = [START + timedelta(days=3 * at) for at in range(len(marks) + 1)]
    easy = [an_answer(at, "right") for at in times]
    hard = [an_answer(at, mark, HARD) for at, mark in zip(times, [*marks, "wrong"], strict=True)]
    schedule = Schedule.of([*easy, *hard])
    later, sooner = schedule.comes_back(EASY), schedule.comes_back(HARD)
    assert later is not None
    assert sooner is not None
    assert later > sooner
    assert schedule.due(sooner) == (HARD,)


@given(st.permutations(range(6)))
def test_the_schedule_does_not_depend_on_the_order_of_the_file(order: list[int]) -> None:
    marks: list[Mark] = ["right", "wrong", "part", "right", "right", "part"]
    answers = [an_answer(START + timedelta(days=at), mark) for at, mark in enumerate(marks)]
    assert Schedule.of(answers[at] for at in order).cards == Schedule.of(answers).cards


def test_a_mistake_brings_the_pair_up_as_a_skill_of_its_own() -> None:
    schedule = Schedule.of([an_answer(START, "wrong", confused=("easy", "alike"))])
    assert schedule.due(START + timedelta(hours=1)) == (EASY, "pair:alike|easy") or set(schedule.cards) == {EASY, "pair:alike|easy"}


def test_a_skill_never_met_does_not_come_back() -> None:
    assert Schedule.of([]).comes_back(EASY) is None
    assert Schedule.of([]).due(START) == ()


def test_a_skill_is_settled_after_two_right_answers_and_lost_by_a_wrong_one() -> None:
    later = [START, START + timedelta(minutes=10), START + timedelta(days=5)]
    twice = [an_answer(at, "right") for at in later[:2]]
    assert not Schedule.of(twice[:1]).settled[EASY]
    assert Schedule.of(twice).settled[EASY]
    assert not Schedule.of([*twice, an_answer(later[2], "wrong")]).settled[EASY]


def test_when_it_comes_back_is_said_in_plain_words() -> None:
    noon = datetime(2024, 5, 31, 12, tzinfo=UTC)
    assert in_words(noon + timedelta(minutes=1), noon) == "in a minute"
    assert in_words(noon + timedelta(minutes=10), noon) == "in 10 minutes"
    assert in_words(noon + timedelta(days=1), noon) == "tomorrow"
    assert in_words(noon + timedelta(days=11), noon) == "in 11 days"
