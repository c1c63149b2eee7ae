"""Results as a table for a teacher."""

from __future__ import annotations

import csv
import io
from collections.abc import Iterable, Mapping
from pathlib import Path

from fitdoctor.errors import FitdoctorError
from fitdoctor.jobbook.photos import write_whole
from fitdoctor.practice.exercise import POINTS
from fitdoctor.practice.progress import Answered

_ABOUT = ("when", "set", "seed", "exercise", "kind", "garment", "skill")
COLUMNS = (*_ABOUT, "question", "answer", "right_answer", "mark", "points", "mistaken_for")
_FIRST_OF_A_FORMULA = ("=", "+", "-", "@", "\t", "\r")


def results_csv(answers: Iterable[Answered]) -> str:
    """One line an answer, in order of time."""
    text = io.StringIO()
    writer = csv.DictWriter(text, COLUMNS)
    writer.writeheader()
    writer.writerows({name: _inert(value) for name, value in _row(answer).items()} for answer in answers)
    return text.getvalue()


def write_results(answers: Iterable[Answered], path: Path) -> None:
    """Write the table: UTF-8 with a mark at the start, as spreadsheets want it.

    Raises:
        FitdoctorError: the file cannot be written.
    """
    try:
        write_whole(path, results_csv(answers).encode("utf-8-sig"))
    except OSError as error:
        raise FitdoctorError(f"{path} could not be written: {error.strerror}.", "Choose another folder.") from error


def _row(answer: Answered) -> Mapping[str, str]:
    values = (
        answer.at,
        answer.set,
        answer.seed,
        answer.exercise,
        answer.kind,
        answer.garment,
        answer.skill,
        answer.ask,
        answer.answer,
        answer.right,
        answer.mark,
        f"{POINTS[answer.mark]:g}",
        answer.confused[1] if len(answer.confused) == 2 else "",
    )
    return dict(zip(COLUMNS, values, strict=True))


def _inert(value: str) -> str:
    """A spreadsheet must not take what was typed for a formula."""
    return f"'{value}" if value.startswith(_FIRST_OF_A_FORMULA) else value
