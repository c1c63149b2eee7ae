"""A set on paper: the exercises as text or JSON, with the answers on their own sheet for the teacher."""

from __future__ import annotations

import textwrap
from collections.abc import Iterator, Sequence
from typing import Any

from fitdoctor.knowledge.knowledge import Knowledge
from fitdoctor.practice.exercise import KIND_WORDS, Amount, Choice, Exercise, Mark, Order, Question
from fitdoctor.practice.judging import judge, right_answer
from fitdoctor.practice.making import Set

_LETTERS = "ABCDEFGH"
_WIDTH = 96
_SIGNS: dict[Mark, str] = {"right": "right", "part": "in part", "wrong": ""}


def set_text(knowledge: Knowledge, made: Set, answers: bool = False) -> str:
    """The set as a page of text.

    Args:
        answers: with what is right and why, for the teacher.
    """
    head = f"Set ‘{made.scope.words}’, seed {made.seed}, {len(made.exercises)} exercises. Code {made.code}."
    numbered = enumerate(made.exercises, 1)
    return "\n".join([head, *(line for number, exercise in numbered for line in _lines(knowledge, number, exercise, answers))])


def set_json(made: Set, answers: bool = False) -> dict[str, Any]:
    """The set as plain values; kept stable."""
    return {
        "format": 1,
        "set": made.scope.words,
        "seed": made.seed,
        "code": made.code,
        "exercises": [_exercise_json(exercise, answers) for exercise in made.exercises],
    }


def _lines(knowledge: Knowledge, number: int, exercise: Exercise, answers: bool) -> Iterator[str]:
    yield ""
    yield f"{number}. {KIND_WORDS[exercise.kind]}"
    for question in exercise.questions:
        yield from _question_lines(knowledge, question)
        if answers:
            yield from _answer_lines(knowledge, question)
        yield ""


def _question_lines(knowledge: Knowledge, question: Question) -> Iterator[str]:
    for given in (*question.given, *_drawn(knowledge, question)):
        yield from _wrapped(given, "   ", "     ")
    yield from _wrapped(question.ask, " ? ", "   ")
    if isinstance(question, Amount):
        yield "   ______________"
        return
    for letter, (_, text) in zip(_LETTERS, _choices(question), strict=False):
        yield from _wrapped(text, f"   {letter}  ", "      ")


def _drawn(knowledge: Knowledge, question: Question) -> Iterator[str]:
    """What the picture would show, told without its name; a line that is not drawn is a clean garment."""
    if question.kind == "lines":
        looks = [knowledge.symptoms[id_].look for id_ in ((question.picture.asked,) if question.picture.asked else question.picture.seen)]
        yield f"Drawn: {' '.join(looks) or 'the cloth hangs smooth, without a line.'}"


def _answer_lines(knowledge: Knowledge, question: Question) -> Iterator[str]:
    feedback = judge(question, right_answer(question))
    yield from _wrapped(f"{_right_words(question)}. {feedback.right}", " = ", "   ")
    if isinstance(question, Choice):
        for letter, option in zip(_LETTERS, question.options, strict=False):
            if option.told.text:
                said = f"{f'({_SIGNS[option.mark]}) ' if option.mark == 'part' else ''}{' '.join(option.told.text)}"
                yield from _wrapped(said, f"   {letter}  ", "      ")
    for source in feedback.sources:
        yield from _wrapped(knowledge.source_line(source), "   – ", "     ")


def _right_words(question: Question) -> str:
    if isinstance(question, Choice):
        right = [f"{_LETTERS[at]}" for at, option in enumerate(question.options) if option.mark == "right"]
        return " or ".join(right)
    if isinstance(question, Order):
        ids = [id_ for id_, _ in question.steps]
        return ", ".join(_LETTERS[ids.index(id_)] for id_ in question.order)
    return "The amount"


def _choices(question: Question) -> Sequence[tuple[str, str]]:
    if isinstance(question, Order):
        return question.steps
    return [(option.id, option.text) for option in question.options] if isinstance(question, Choice) else []


def _wrapped(text: str, first: str, then: str) -> list[str]:
    return textwrap.wrap(text, _WIDTH, initial_indent=first, subsequent_indent=then)


def _exercise_json(exercise: Exercise, answers: bool) -> dict[str, Any]:
    plain: dict[str, Any] = {
        "id": exercise.id,
        "kind": exercise.kind,
        "level": exercise.level,
        "garment": exercise.case.garment,
        "questions": [_question_json(question, answers) for question in exercise.questions],
    }
    return {**plain, "causes": list(exercise.causes), "solved": exercise.solved} if answers else plain


def _question_json(question: Question, answers: bool) -> dict[str, Any]:
    shown = question.picture
    plain: dict[str, Any] = {
        "kind": question.kind,
        "ask": question.ask,
        "given": list(question.given),
        "picture": {"view": shown.view, "seen": list(shown.seen), "asked": shown.asked},
        "answers": [{"id": id_, "text": text} for id_, text in _choices(question)],
    }
    if not answers:
        return plain
    marks = {option.id: option.mark for option in question.options} if isinstance(question, Choice) else {}
    return {**plain, "skill": question.skill.key, "right": right_answer(question), "marks": marks, "because": question.right}
