"""What closed jobs teach: chances of links, how common causes are here, minutes an operation takes; beside the printed word."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

import msgspec

from fitdoctor.case import Case
from fitdoctor.diagnosis.closing import closed_job, printed_chances
from fitdoctor.diagnosis.learning import PRINTED_WEIGHT, Learned, Tally, learn_all
from fitdoctor.jobbook.job import Job
from fitdoctor.knowledge.entries import Minutes
from fitdoctor.knowledge.knowledge import Knowledge


@dataclass(frozen=True)
class BesideThePrinted:
    """A printed word and what this shop's jobs say of the same thing.

    Attributes:
        word: as the knowledge has it; printed: its chance.
        times: closed jobs that could tell; share: part of them in which it was so; None: no job could tell yet.
        now: the chance used, the printed one weighing as much as `PRINTED_WEIGHT` jobs.
    """

    word: str
    printed: float
    times: int
    share: float | None
    now: float

    @property
    def text(self) -> str:
        """As in: The book says usually; your last 23 jobs: 61 %."""
        says = f"The book says {self.word.replace('-', ' ')}"
        if self.share is None:
            return f"{says}; no job of yours tells yet."
        jobs = "your one job" if self.times == 1 else f"your last {self.times} jobs"
        return f"{says}; {jobs}: {100 * self.share:.0f} %."


@dataclass(frozen=True)
class OperationMinutes:
    """The time one operation takes in this shop.

    Attributes:
        times: jobs it was timed in; total: minutes of all of them.
    """

    times: int = 0
    total: float = 0.0

    @property
    def mean(self) -> float:
        """Minutes each time.

        Raises:
            ZeroDivisionError: it was never timed.
        """
        return self.total / self.times

    def beside(self, printed: Minutes) -> Minutes:
        """The printed low, likely and high brought towards what was timed; the printed ones weigh as much as `PRINTED_WEIGHT` jobs."""
        low, likely, high = printed
        mean = (low + 4 * likely + high) / 6
        factor = (mean * PRINTED_WEIGHT + self.total) / (mean * (PRINTED_WEIGHT + self.times)) if mean > 0 else 1.0
        return low * factor, likely * factor, high * factor


def learned_from(knowledge: Knowledge, jobs: Iterable[Job], before: Learned | None = None) -> Learned:
    """What these closed jobs taught, in their order, on top of what was learned before; jobs on garments no longer known teach nothing."""
    closed = [(present_names(knowledge, job.case), job.outcome) for job in jobs if job.outcome is not None]
    known = [(case, outcome) for case, outcome in closed if case.garment in knowledge.garments]
    printed = {garment: printed_chances(knowledge, garment) for garment in {case.garment for case, _ in known}}
    lessons = (closed_job(knowledge, case, _now(knowledge, "causes", outcome.right), printed[case.garment]) for case, outcome in known)
    return learn_all(before or Learned(), lessons, printed)


def present_names(knowledge: Knowledge, case: Case) -> Case:
    """The case with the ids its findings have now, where entries were renamed since; ids that are gone stay and change nothing."""
    return msgspec.structs.replace(
        case,
        garment=_now(knowledge, "garments", [case.garment])[0],
        seen=_now(knowledge, "symptoms", case.seen),
        not_seen=_now(knowledge, "symptoms", case.not_seen),
        answers=dict(zip(_now(knowledge, "checks", case.answers), case.answers.values(), strict=True)),
        facts=dict(zip(_now(knowledge, "features", case.facts), case.facts.values(), strict=True)),
    )


def link_beside(knowledge: Knowledge, learned: Learned, cause: str, finding: tuple[str, str]) -> BesideThePrinted | None:
    """How often the cause brings the finding on: as printed and in this shop; None where the two are not linked.

    Args:
        finding: ("symptom", id) or ("check", id).
    """
    entry = knowledge.causes[cause]
    words = {("symptom", shown.symptom): shown.strength for shown in entry.shows_as}
    words |= {("check", answer.check): answer.yes for answer in entry.answers}
    if finding not in words:
        return None
    printed = knowledge.strength(words[finding])
    now = learned.strength(cause, finding, printed)
    return _beside(words[finding], printed, learned.links.get((cause, finding), Tally()), now)


def common_beside(knowledge: Knowledge, learned: Learned, cause: str, garment: str) -> BesideThePrinted | None:
    """How common the cause is on this garment: as printed and in this shop; None where it does not occur there."""
    printed = knowledge.prior(knowledge.causes[cause], garment)
    if printed == 0:
        return None
    word = next(word for word, chance in knowledge.scale["how-common"].items() if chance == printed)
    return _beside(word, printed, learned.priors.get((cause, garment), Tally()), learned.prior(cause, garment, printed))


def minutes_by_operation(jobs: Iterable[Job]) -> Mapping[str, OperationMinutes]:
    """Operation of a plan (method and operation, joined by a dot) -> the minutes written down for it."""
    found: dict[str, OperationMinutes] = {}
    for job in jobs:
        for operation, minutes in job.minutes.items():
            before = found.get(operation, OperationMinutes())
            found[operation] = OperationMinutes(before.times + 1, before.total + minutes)
    return found


def _beside(word: str, printed: float, tally: Tally, now: float) -> BesideThePrinted:
    return BesideThePrinted(word, printed, round(tally.times), tally.yes / tally.times if tally.times else None, now)


def _now(knowledge: Knowledge, kind: str, ids: Iterable[str]) -> tuple[str, ...]:
    known = knowledge.kind(kind)
    return tuple(id_ if id_ in known else knowledge.renamed.get((kind, id_), id_) for id_ in ids)
