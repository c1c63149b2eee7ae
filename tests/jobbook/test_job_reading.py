"""An assessment as it goes into the book."""

from __future__ import annotations

from pathlib import Path

import pytest

from fitdoctor.assess import assess
from fitdoctor.case import Case
from fitdoctor.jobbook.reading import reading_of
from fitdoctor.knowledge.knowledge import Knowledge
from fitdoctor.knowledge.read import case_of
from tests.jobbook.jobs_at_hand import FIRST_DAY, a_book


def test_every_solved_case_goes_into_the_book_and_comes_out_as_it_was_thought(tmp_path: Path, knowledge: Knowledge) -> None:
    with a_book(tmp_path) as book:
        for solved in list(knowledge.cases.values())[::12]:
            assessment = assess(knowledge, case_of(solved))
            reading = reading_of(assessment, FIRST_DAY, "looked-at")
            job = book.add(assessment.case)
            book.history.note(job.id, reading)
            assert book.history.of(job.id) == (reading,)
            marks = [mark for worked in assessment.amounts if worked.calculation for mark in worked.calculation.marks]
            assert [mark.total_mm for mark in reading.marks] == [mark.total_mm for mark in marks]
            assert len({mark.id for mark in reading.marks}) == len(marks)
            assert reading.chances.keys() == assessment.diagnosis.net.able | set(assessment.treat)
            found = {cause.id: cause.probability for cause in assessment.diagnosis.causes if cause.id in reading.chances}
            assert reading.chances == pytest.approx(found, abs=1e-6)


def test_a_case_of_which_nothing_shows_has_no_chances_to_be_held_to(knowledge: Knowledge) -> None:
    reading = reading_of(assess(knowledge, Case(garment="trousers", looked=("back",))), FIRST_DAY, "looked-at")
    assert (reading.chances, reading.methods, reading.level) == ({}, (), "LEAVE_ALONE")
