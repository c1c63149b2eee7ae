"""What lies on the desk when the window opens: the case that was named, the last one, or the demo of the wardrobe room."""

from __future__ import annotations

from pathlib import Path

import msgspec

from fitdoctor.assess import assess
from fitdoctor.case import Case
from fitdoctor.desk.shelf import Kept, Shelf
from fitdoctor.desk.steps import first_open, step_states
from fitdoctor.errors import FitdoctorError
from fitdoctor.knowledge.knowledge import Knowledge
from fitdoctor.knowledge.read import demo_files, read_case_file


def first_kept(knowledge: Knowledge, shelf: Shelf, file: Path | None = None) -> Kept:
    """The case to open.

    Raises:
        FitdoctorError: the case file that was named cannot be read.
    """
    if file is not None:
        return kept_from_file(knowledge, file)
    if shelf.book is None or shelf.spare:
        return Kept(case=Case(garment=""))
    last = shelf.book.places.last()
    at_hand = shelf.at_hand()
    if not last and not at_hand:
        return demo(knowledge, shelf)
    wanted = last if last in at_hand else next(iter(at_hand), "")
    return shelf.take(wanted) if wanted else Kept(case=Case(garment=""))


def demo(knowledge: Knowledge, shelf: Shelf) -> Kept:
    """Three garments of the wardrobe room, each at another step, put into a book that was never used; the first of them."""
    made = [shelf.keep(kept_from_file(knowledge, file)) for file in reversed(demo_files())]
    return made[-1]


def kept_from_file(knowledge: Knowledge, file: Path) -> Kept:
    """A case file as a case to keep, open at the first step at which something is open.

    Raises:
        FitdoctorError: it cannot be read.
    """
    case, problems = read_case_file(file, knowledge)
    if not case.garment:
        text = str(problems[0]) if problems else f"{file} names no kind of garment."
        raise FitdoctorError(text, "Mend the file, or begin with a new garment.")
    return at_first_open(knowledge, Kept(case=case))


def at_first_open(knowledge: Knowledge, kept: Kept) -> Kept:
    """The case with the step open at which something is open, and the side of the figure at which something shows."""
    assessment = assess(knowledge, kept.case)
    step = first_open(step_states(knowledge, kept, assessment), bool(assessment.treat))
    views = [knowledge.symptoms[symptom].view for symptom in kept.case.seen if symptom in knowledge.symptoms]
    return msgspec.structs.replace(kept, step=step, view=views[0] if views else "back")
