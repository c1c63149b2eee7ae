"""A book in a folder of its own, and jobs to put into it."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import UTC, datetime, timedelta
from pathlib import Path

from fitdoctor.case import Case, Measured
from fitdoctor.jobbook.book import JobBook, open_book
from fitdoctor.jobbook.job import Job, State
from fitdoctor.jobbook.reading import MarkThen, Reading, Thought

FIRST_DAY = datetime(2024, 5, 31, 9, 0, tzinfo=UTC)
PHOTO = b"\xff\xd8\xff\xe0 not much of a picture"


class Clock:
    """Each look is a minute later."""

    def __init__(self, at: datetime = FIRST_DAY) -> None:
        self.at = at

    def __call__(self) -> datetime:
        self.at += timedelta(minutes=1)
        return self.at


def a_book(folder: Path) -> JobBook:
    return open_book(folder / "jobs.db", Clock())


def a_case(title: str = "Grey flannel trousers", wearer: str = "A. B.", garment: str = "trousers") -> Case:
    return Case(
        garment=garment,
        title=title,
        wearer=wearer,
        facts={"lining": "half"},
        seen=("folds",),
        looked=("back",),
        answers={"pin": "yes"},
        measured={"tuck-at-centre-back": Measured(19.05)},
    )


def a_reading(
    job: Job, at: datetime = FIRST_DAY, chances: dict[str, float] | None = None, note: str = "", state: State = "looked-at"
) -> Reading:
    chances = {"long": 0.75, "flat": 0.25} if chances is None else chances
    return Reading(
        at=at,
        note=note,
        state=state,
        case=job.case,
        chances=chances,
        thoughts=tuple(Thought(cause=cause, title=f"Cause {cause}", chance=chance) for cause, chance in chances.items()),
        treat=("long",),
        methods=("lower-waist",),
        marks=(
            MarkThen(
                id="lower-waist.back-waist-seam",
                where="at centre back",
                take="lower",
                layer="shell",
                each_mm=19.05,
                total_mm=19.05,
                convention="in all",
            ),
        ),
        level="CAN",
        verdict="Nothing stops the work.",
        minutes=(40.0, 60.0, 90.0),
    )


def a_photo(folder: Path, name: str = "back.jpg", content: bytes = PHOTO) -> Path:
    path = folder / name
    path.write_bytes(content)
    return path


def all_bytes(folder: Path) -> Iterator[tuple[Path, bytes]]:
    """Every file under a folder with its content."""
    for path in sorted(folder.rglob("*")):
        if path.is_file():
            yield path, path.read_bytes()
