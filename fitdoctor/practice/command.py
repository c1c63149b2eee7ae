"""What the command line says of exercises."""

from __future__ import annotations

import json
from pathlib import Path

from fitdoctor.errors import FitdoctorError
from fitdoctor.knowledge.knowledge import Knowledge
from fitdoctor.practice.bench import Bench
from fitdoctor.practice.keeping import open_record
from fitdoctor.practice.making import make_set
from fitdoctor.practice.results import write_results
from fitdoctor.practice.scope import read_scope
from fitdoctor.practice.text import set_json, set_text
from fitdoctor.shop import Shop

MOST = 200


def set_said(knowledge: Knowledge, shop: Shop, words: str, seed: str, count: int, answers: bool, as_json: bool) -> str:
    """A set of exercises.

    Raises:
        FitdoctorError: the words name nothing known, or the count is out of bounds.
    """
    if not 1 <= count <= MOST:
        raise FitdoctorError(f"{count} exercises cannot be made at once.", f"Ask for 1 to {MOST}.")
    made = make_set(Bench(knowledge, shop), read_scope(knowledge, words), seed, count)
    if as_json:
        return json.dumps(set_json(made, answers), indent=1, ensure_ascii=False)
    return set_text(knowledge, made, answers)


def results_said(path: Path) -> str:
    """Write the answers given in the window; say how many.

    Raises:
        FitdoctorError: there are none, or the file cannot be written.
    """
    record = open_record()
    if not record.answers:
        raise FitdoctorError(record.note or "No exercise was answered yet.", "Answer some under Practise in the window.")
    write_results(record.answers, path)
    return f"{len(record.answers)} answers written to {path}."
