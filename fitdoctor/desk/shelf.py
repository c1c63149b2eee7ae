"""The garments at hand: cases of the job book, each with where its fitter left off."""

from __future__ import annotations

import msgspec

from fitdoctor.assess import Assessment
from fitdoctor.case import Case
from fitdoctor.diagnosis.learning import Learned
from fitdoctor.errors import FitdoctorError
from fitdoctor.jobbook.book import JobBook
from fitdoctor.jobbook.finding import Sought, find
from fitdoctor.jobbook.job import Job as BookJob
from fitdoctor.jobbook.left_off import LeftOff
from fitdoctor.jobbook.reading import reading_of, same_in_substance
from fitdoctor.knowledge.knowledge import Knowledge

SEEN = "Seen: "
"How a line of the notes begins that says what is seen in the fitter's own words."


class Kept(LeftOff, frozen=True, kw_only=True):
    """One garment as it is kept: the case, and where its fitter left off. One that is not in the book yet has no id."""

    id: str = ""
    case: Case


class Shelf:
    """The cases of a book. Without a book nothing is kept, and every try says why.

    Attributes:
        spare: whether the book stands in for one that could not be opened.
    """

    def __init__(self, book: JobBook | None, trouble: FitdoctorError | None = None, spare: bool = False) -> None:
        self.book, self.trouble, self.spare = book, trouble, spare
        self._read: dict[str, BookJob] = {}
        self._left: tuple[str, LeftOff] | None = None

    def keep(self, kept: Kept) -> Kept:
        """Write a case and where its fitter is; a garment of no kind is not kept yet.

        Returns:
            The case as it stands in the book now: what another window changed of it meanwhile is in it too.

        Raises:
            FitdoctorError: it could not be written.
        """
        if not kept.case.garment:
            return kept
        try:
            job = self._written(kept)
            self._leave_off(job.id, _place(kept))
        except FitdoctorError as error:
            raise type(error)(error.text, f"{error.hint} What you entered is still here.".strip()) from error
        return msgspec.structs.replace(kept, id=job.id, case=job.case)

    def opened(self) -> JobBook:
        """The open book.

        Raises:
            FitdoctorError: it could not be opened.
        """
        if self.book is None:
            raise self.trouble or FitdoctorError("There is no job book.")
        return self.book

    def _written(self, kept: Kept) -> BookJob:
        book = self.opened()
        if not kept.id:
            job = book.add(kept.case)
        else:
            before = self._read.get(kept.id) or book.job(kept.id)
            job = before if before.case == kept.case else book.change(before, msgspec.structs.replace(before, case=kept.case))
        self._read[job.id] = job
        return job

    def _leave_off(self, id_: str, place: LeftOff) -> None:
        if self._left != (id_, place):
            self.opened().places.keep(id_, place)
            self._left = (id_, place)

    def take(self, id_: str) -> Kept:
        """A garment from the book, where one left off.

        Raises:
            FitdoctorError: it is not in the book.
        """
        job, place = self.opened().job(id_), self.opened().places.of(id_)
        self._read[id_] = job
        return Kept(id=id_, case=job.case, **{name: getattr(place, name) for name in LeftOff.__struct_fields__})

    def fresh(self, kept: Kept) -> Kept:
        """The garment with what another window changed of it meanwhile.

        Raises:
            FitdoctorError: it was deleted there.
        """
        if not kept.id or self.book is None:
            return kept
        job, before = self.book.job(kept.id), self._read.get(kept.id)
        self._read[kept.id] = job
        return kept if before and before.revision == job.revision else msgspec.structs.replace(kept, case=job.case)

    def at_hand(self) -> tuple[str, ...]:
        """The garments whose jobs are open, the last changed first."""
        lines = find(self.opened().file, Sought(open=True, order="changed", backwards=True))
        return tuple(line.id for line in lines)

    def note(self, id_: str, assessment: Assessment, occasion: str = "") -> None:
        """Note what is thought of a garment now, for its history; another occasion alone is no news."""
        book = self.opened()
        reading = reading_of(assessment, book.clock(), book.job(id_).state, occasion)
        before = book.history.of(id_)[-1:]
        if not any(same_in_substance(msgspec.structs.replace(last, note=occasion), reading) for last in before):
            book.history.note(id_, reading)

    def learned(self, knowledge: Knowledge) -> Learned | None:
        """What closed jobs taught; None where that is nothing."""
        learned = self.book.learning.learned(knowledge) if self.book else Learned()
        return learned if learned.priors else None


def _place(kept: Kept) -> LeftOff:
    return LeftOff(**{name: getattr(kept, name) for name in LeftOff.__struct_fields__})


def own_words(notes: str) -> list[str]:
    """What is seen and no line of the knowledge fits."""
    return [line.removeprefix(SEEN) for line in notes.splitlines() if line.startswith(SEEN)]
