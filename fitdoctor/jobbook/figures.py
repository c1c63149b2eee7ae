"""How well the program and the shop foresaw their jobs, as plain values: calibration, scores over time, kinds of work, estimates."""

from __future__ import annotations

import math
from collections import Counter
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from datetime import date

from fitdoctor.jobbook.book import JobBook
from fitdoctor.jobbook.finding import Sought, find
from fitdoctor.jobbook.job import Job, minutes_spent
from fitdoctor.jobbook.reading import Reading

BINS = 10
LEAST_CHANCE = 1e-6
"""No chance counts as less: one surprise must not make a mean endless."""


@dataclass(frozen=True)
class Closed:
    """A closed job and the last reading before it was closed."""

    job: Job
    reading: Reading

    @property
    def day(self) -> date:
        """The day it was closed."""
        at = self.job.outcome.closed if self.job.outcome else None
        return (at or self.reading.at).date()

    @property
    def judged(self) -> tuple[tuple[float, bool], ...]:
        """For each cause that could bring on what was seen, and each that was right: its chance, and whether it was right."""
        right = self.job.outcome.right if self.job.outcome else ()
        chances = {**dict.fromkeys(right, 0.0), **self.reading.chances}
        return tuple((chance, cause in right) for cause, chance in chances.items())


@dataclass(frozen=True)
class Bin:
    """Causes whose chance lay between two bounds: the mean of what was said, and the share that came true."""

    low: float
    high: float
    causes: int
    said: float
    came_true: float


@dataclass(frozen=True)
class Scores:
    """One job, or the mean of several.

    Attributes:
        brier: mean squared error of the chances; 0 is best.
        log_score: mean natural logarithm of the chance given to what was so; 0 is best.
    """

    from_day: date
    jobs: int
    brier: float
    log_score: float


@dataclass(frozen=True)
class Alteration:
    """A method and how often it was planned in closed jobs; minutes are the mean of the jobs that had it alone, None without such."""

    method: str
    jobs: int
    minutes: float | None


@dataclass(frozen=True)
class Estimate:
    """One job: minutes planned at best, likely, at worst, and minutes spent."""

    job: str
    title: str
    low: float
    likely: float
    high: float
    spent: float

    @property
    def within(self) -> bool:
        """Whether what was spent lies between best and worst."""
        return self.low <= self.spent <= self.high


@dataclass(frozen=True)
class AmountUsed:
    """One mark of one job: mm worked out and mm used, in all."""

    job: str
    mark: str
    planned_mm: float
    used_mm: float


@dataclass(frozen=True)
class Figures:
    """The page of figures.

    Attributes:
        unread: closed jobs that have no reading, and so nothing to be held against.
    """

    jobs: int
    unread: int
    calibration: tuple[Bin, ...]
    by_month: tuple[Scores, ...]
    alterations: tuple[Alteration, ...]
    estimates: tuple[Estimate, ...]
    amounts: tuple[AmountUsed, ...]


def figures(book: JobBook) -> Figures:
    """All figures of the closed jobs of a book."""
    lines = find(book.file, Sought(open=False, order="closed"))
    closed = [c for line in lines if (c := closed_with_reading(book.job(line.id), book.history.of(line.id)))]
    return Figures(
        jobs=len(closed),
        unread=len(lines) - len(closed),
        calibration=calibration([pair for job in closed for pair in job.judged]),
        by_month=by_month(closed),
        alterations=alterations(closed),
        estimates=tuple(_estimates(closed)),
        amounts=tuple(_amounts(closed)),
    )


def closed_with_reading(job: Job, readings: Sequence[Reading]) -> Closed | None:
    """The job with the last reading that was taken before it was closed; None where there is none."""
    at = job.outcome.closed if job.outcome else None
    before = [reading for reading in readings if at is not None and reading.at <= at]
    return Closed(job, before[-1]) if before else None


def calibration(judged: Iterable[tuple[float, bool]], bins: int = BINS) -> tuple[Bin, ...]:
    """Chances in equal steps from 0 to 1, and how many came true; empty steps are left out."""
    sorted_in: dict[int, list[tuple[float, bool]]] = {}
    for chance, true in judged:
        sorted_in.setdefault(min(int(chance * bins), bins - 1), []).append((chance, true))
    return tuple(
        Bin(at / bins, (at + 1) / bins, len(pairs), sum(c for c, _ in pairs) / len(pairs), sum(t for _, t in pairs) / len(pairs))
        for at, pairs in sorted(sorted_in.items())
    )


def scores(closed: Closed) -> Scores | None:
    """Brier and log score of one job, as solved cases are scored; None where no cause was weighed."""
    pairs = closed.judged
    if not pairs:
        return None
    logs = [math.log(max(LEAST_CHANCE, chance if true else 1 - chance)) for chance, true in pairs]
    return Scores(closed.day, 1, sum((chance - true) ** 2 for chance, true in pairs) / len(pairs), sum(logs) / len(logs))


def by_month(closed: Iterable[Closed]) -> tuple[Scores, ...]:
    """Mean scores of the jobs of each month, the first month first; each job counts the same."""
    months: dict[date, list[Scores]] = {}
    for job in closed:
        if scored := scores(job):
            months.setdefault(job.day.replace(day=1), []).append(scored)
    return tuple(
        Scores(month, len(each), sum(s.brier for s in each) / len(each), sum(s.log_score for s in each) / len(each))
        for month, each in sorted(months.items())
    )


def alterations(closed: Iterable[Closed]) -> tuple[Alteration, ...]:
    """The methods by how often they were planned, the commonest first."""
    jobs = list(closed)
    times = Counter(method for job in jobs for method in job.reading.methods)
    alone: dict[str, list[float]] = {}
    for job in jobs:
        spent = minutes_spent(job.job)
        if len(job.reading.methods) == 1 and spent is not None:
            alone.setdefault(job.reading.methods[0], []).append(spent)
    means = {method: sum(minutes) / len(minutes) for method, minutes in alone.items()}
    ordered = sorted(times, key=lambda method: (-times[method], method))
    return tuple(Alteration(method, times[method], means.get(method)) for method in ordered)


def _estimates(closed: Iterable[Closed]) -> Iterator[Estimate]:
    for each in closed:
        spent = minutes_spent(each.job)
        if spent is not None and each.reading.methods:
            yield Estimate(each.job.id, each.job.case.title, *each.reading.minutes, spent)


def _amounts(closed: Iterable[Closed]) -> Iterator[AmountUsed]:
    for each in closed:
        planned = {mark.id: mark.total_mm for mark in each.reading.marks}
        used = each.job.outcome.used_mm if each.job.outcome else {}
        yield from (AmountUsed(each.job.id, mark, planned[mark], mm) for mark, mm in used.items() if mark in planned)
