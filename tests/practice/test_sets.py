"""Sets are what was asked for, and the same for a whole class."""

from __future__ import annotations

import os
import subprocess
import sys

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from fitdoctor.errors import FitdoctorError
from fitdoctor.practice.bench import Bench
from fitdoctor.practice.exercise import KINDS, LEVELS, Choice, Skill
from fitdoctor.practice.judging import right_answer
from fitdoctor.practice.lots import Lots
from fitdoctor.practice.making import exercise_for, make_set
from fitdoctor.practice.scope import KIND_OF_WORD, Scope, read_scope, regions
from fitdoctor.practice.text import set_json, set_text
from fitdoctor.shop import Shop
from tests.practice.practice_bench import the_bench

BENCH = the_bench()
KNOWLEDGE = BENCH.knowledge
TROUSERS = make_set(BENCH, read_scope(KNOWLEDGE, "trousers back"), 7, 7)


def test_the_same_seed_gives_the_same_set() -> None:
    again = make_set(Bench(KNOWLEDGE), read_scope(KNOWLEDGE, "trousers back"), 7, 7)
    assert again == TROUSERS


def test_the_same_seed_gives_the_same_set_in_another_process() -> None:
    program = (
        "from fitdoctor.knowledge.read import read_knowledge, shipped_folder\n"
        "from fitdoctor.practice.bench import Bench\n"
        "from fitdoctor.practice.making import make_set\n"
        "from fitdoctor.practice.scope import read_scope\n"
        "knowledge = read_knowledge([shipped_folder()])\n"
        "print(make_set(Bench(knowledge), read_scope(knowledge, 'trousers back'), '7', 7).code)"
    )
    out = subprocess.run(
        [sys.executable, "-c", program], env={**os.environ, "PYTHONHASHSEED": "99"}, capture_output=True, text=True, check=True
    )
    assert out.stdout.strip() == TROUSERS.code


def test_another_seed_gives_another_set() -> None:
    other = make_set(BENCH, read_scope(KNOWLEDGE, "trousers back"), 8, 7)
    assert other.code != TROUSERS.code
    assert [e.case for e in other.exercises] != [e.case for e in TROUSERS.exercises]


def test_a_longer_set_begins_like_the_shorter_one() -> None:
    shorter = make_set(BENCH, read_scope(KNOWLEDGE, "trousers back"), 7, 3)
    assert shorter.exercises == TROUSERS.exercises[:3]


def test_the_units_of_the_shop_change_the_words_but_not_the_exercises() -> None:
    metric = make_set(Bench(KNOWLEDGE, Shop(unit="cm")), read_scope(KNOWLEDGE, "trousers back"), 7, 7)
    assert metric.code == TROUSERS.code


def test_a_set_keeps_to_its_garment_and_place_and_goes_through_the_kinds() -> None:
    assert {e.case.garment for e in TROUSERS.exercises} == {"trousers"}
    assert [e.kind for e in TROUSERS.exercises] == list(KINDS)
    for exercise in TROUSERS.exercises:
        if exercise.kind == "lines":
            assert all(KNOWLEDGE.symptoms[id_].view == "back" for id_ in exercise.case.seen)


def test_no_skill_comes_twice_while_there_are_others() -> None:
    skills = [exercise.skill for exercise in TROUSERS.exercises]
    assert len(set(skills)) == len(skills)


def test_an_easy_question_of_cause_has_a_clear_leader() -> None:
    for exercise in make_set(BENCH, Scope("jacket", level="easy", kinds=("cause",)), 3, 6).exercises:
        (question,) = exercise.questions
        assert isinstance(question, Choice)
        assert [option.mark for option in question.options].count("part") == 0


def test_solved_cases_held_back_are_not_shown() -> None:
    held = {id_ for id_, case in KNOWLEDGE.cases.items() if case.held_back}
    assert held
    assert held.isdisjoint(case.id for case in BENCH.solved)


WORDS = st.sampled_from([*KNOWLEDGE.garments, *LEVELS, *KIND_OF_WORD, *regions(KNOWLEDGE, "")])


def a_scope(words: str) -> Scope | None:
    """None where nothing is described there; any other refusal is an error."""
    try:
        return read_scope(KNOWLEDGE, words)
    except FitdoctorError as error:
        if error.text.startswith("Nothing is described for"):
            return None
        raise


@settings(max_examples=60)
@given(st.lists(WORDS, max_size=4))
def test_any_words_give_a_scope_or_one_clear_refusal(words: list[str]) -> None:
    scope = a_scope(" ".join(words))
    if scope is None:
        return
    again = read_scope(KNOWLEDGE, scope.words)
    assert again == scope
    assert any(scope.symptoms(KNOWLEDGE, garment) for garment in scope.garments(KNOWLEDGE))


def test_a_word_that_is_not_known_is_refused_with_what_was_perhaps_meant() -> None:
    with pytest.raises(FitdoctorError, match="did you mean ‘trousers’"):
        read_scope(KNOWLEDGE, "trouserz back")


def test_an_exercise_can_be_had_for_every_skill_of_a_set() -> None:
    for skill in {question.skill for exercise in TROUSERS.exercises for question in exercise.questions}:
        exercise = exercise_for(BENCH, Lots("again", skill.key), Scope(), skill)
        assert exercise is not None, skill.key
        assert exercise.skill == skill


def test_a_skill_is_read_back_from_its_key() -> None:
    for exercise in TROUSERS.exercises:
        assert Skill.of(exercise.skill.key) == exercise.skill


def test_the_page_for_the_class_does_not_tell_the_answers_and_the_teachers_does() -> None:
    page, teachers = set_text(KNOWLEDGE, TROUSERS), set_text(KNOWLEDGE, TROUSERS, answers=True)
    assert f"Code {TROUSERS.code}." in page
    first = TROUSERS.exercises[0].questions[0]
    assert isinstance(first, Choice)
    letter = "ABCD"[[option.id for option in first.options].index(right_answer(first))]
    assert f" = {letter}. " not in page
    assert f" = {letter}. " in teachers
    assert len(teachers) > len(page)


def test_the_json_for_the_class_does_not_tell_the_answers_either() -> None:
    plain = set_json(TROUSERS)
    assert plain["code"] == TROUSERS.code
    told = {key for exercise in plain["exercises"] for key in (*exercise, *(k for q in exercise["questions"] for k in q))}
    assert told.isdisjoint({"right", "marks", "because", "skill", "causes", "solved"})
    teachers = set_json(TROUSERS, answers=True)
    assert teachers["exercises"][0]["questions"][0]["right"] == right_answer(TROUSERS.exercises[0].questions[0])
