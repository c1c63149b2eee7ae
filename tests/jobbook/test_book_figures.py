"""The page of figures: how well the jobs were foreseen."""

from __future__ import annotations

import math
from datetime import UTC, date, datetime, timedelta
from pathlib import Path

import msgspec
import pytest
from hypothesis import given
from hypothesis import strategies as st

from fitdoctor.jobbook.figures import Bin, Closed, calibration, figures, scores
from fitdoctor.jobbook.job import Job, Outcome
from tests.jobbook.jobs_at_hand import FIRST_DAY, a_book, a_case, a_reading

replace = msgspec.structs.replace


def closed(chances: dict[str, float], *right: str) -> Closed:
    job = Job(case=a_case(), outcome=Outcome(closed=FIRST_DAY, right=right))
    return Closed(job, a_reading(job, FIRST_DAY, chances))


def test_the_scores_are_those_worked_out_by_hand() -> None:
    scored = scores(closed({"long": 0.8, "flat": 0.3}, "long"))
    assert scored is not None
    assert scored.brier == pytest.approx((0.2**2 + 0.3**2) / 2)
    assert scored.log_score == pytest.approx((math.log(0.8) + math.log(0.7)) / 2)


def test_a_cause_nobody_thought_of_costs_much_and_not_endlessly() -> None:
    scored = scores(closed({"flat": 0.5}, "long"))
    assert scored is not None
    assert scored.brier == pytest.approx((1 + 0.25) / 2)
    assert scored.log_score == pytest.approx((math.log(1e-6) + math.log(0.5)) / 2)
    assert scores(closed({})) is None


def test_calibration_holds_what_was_said_against_what_came_true() -> None:
    bins = calibration([(0.72, True), (0.78, False), (0.71, True), (1.0, True), (0.0, False)])
    assert bins == (
        Bin(0.0, 0.1, 1, 0.0, 0.0),
        Bin(0.7, 0.8, 3, pytest.approx(0.736667, abs=1e-6), pytest.approx(2 / 3)),  # type: ignore[arg-type]
        Bin(0.9, 1.0, 1, 1.0, 1.0),
    )


@given(st.lists(st.tuples(st.floats(0, 1), st.booleans()), max_size=60))
def test_every_judged_cause_lies_in_one_step(judged: list[tuple[float, bool]]) -> None:
    bins = calibration(judged)
    assert sum(bin_.causes for bin_ in bins) == len(judged)
    assert sum(bin_.causes * bin_.came_true for bin_ in bins) == pytest.approx(sum(true for _, true in judged))
    assert all(bin_.low - 1e-9 <= bin_.said <= bin_.high + 1e-9 for bin_ in bins)


def test_the_page_of_a_book(tmp_path: Path) -> None:
    with a_book(tmp_path) as book:
        for month, spent, chances in ((5, 50.0, {"long": 0.9}), (5, 100.0, {"long": 0.6}), (6, None, {"long": 0.5, "flat": 0.5})):
            job = book.add(Job(case=a_case()))
            at = datetime(2024, month, 10, tzinfo=UTC)
            book.history.note(job.id, a_reading(job, at, chances))
            book.history.note(job.id, a_reading(job, at + timedelta(days=2), {"flat": 1.0}, "written after it was closed"))
            used = {"lower-waist.back-waist-seam": 16.0, "no-such-mark": 3.0}
            book.close_job(job, Outcome(closed=at + timedelta(days=1), right=("long",), minutes=spent, used_mm=used))
        book.close_job(book.add(a_case()), Outcome(right=("long",)))
        book.add(a_case())
        page = figures(book)
    assert (page.jobs, page.unread) == (3, 1)
    assert [(month.from_day, month.jobs) for month in page.by_month] == [(date(2024, 5, 1), 2), (date(2024, 6, 1), 1)]
    assert page.by_month[0].brier == pytest.approx((0.1**2 + 0.4**2) / 2)
    assert page.by_month[1].log_score == pytest.approx(math.log(0.5))
    assert sum(step.causes for step in page.calibration) == 4
    assert [(each.method, each.jobs, each.minutes) for each in page.alterations] == [("lower-waist", 3, 75.0)]
    assert [(each.likely, each.spent, each.within) for each in page.estimates] == [(60.0, 50.0, True), (60.0, 100.0, False)]
    assert [(each.mark, each.planned_mm, each.used_mm) for each in page.amounts] == [("lower-waist.back-waist-seam", 19.05, 16.0)] * 3


def test_an_empty_book_has_an_empty_page(tmp_path: Path) -> None:
    with a_book(tmp_path) as book:
        page = figures(book)
    assert (page.jobs, page.unread, page.calibration, page.by_month, page.estimates) == (0, 0, (), (), ())
