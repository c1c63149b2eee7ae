"""What lies on the desk when the window opens: the case that was named, the last one, or the demo of the wardrobe room."""

from __future__ import annotations

from pathlib import Path

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
        return kept_from_file(knowledge, shelf, file)
    known, _ = shelf.all()
    if not known:
        known = demo(knowledge, shelf)
    last = shelf.last()
    return next((kept for kept in known if kept.id == last), known[0])


def demo(knowledge: Knowledge, shelf: Shelf) -> tuple[Kept, ...]:
    """Three garments of the wardrobe room, each at another step, put on the shelf; the first is opened."""
    made = [kept_from_file(knowledge, shelf, file, keep=True) for file in reversed(demo_files())]
    return tuple(reversed(made))


def kept_from_file(knowledge: Knowledge, shelf: Shelf, file: Path, keep: bool = False) -> Kept:
    """A case file as a kept case, open at the first step at which something is open.

    Raises:
        FitdoctorError: it cannot be read.
    """
    case, problems = read_case_file(file, knowledge)
    if not case.garment:
        text = str(problems[0]) if problems else f"{file} names no kind of garment."
        raise FitdoctorError(text, "Mend the file, or begin with a new garment.")
    kept = at_first_open(knowledge, Kept(id=shelf.new_id(case.garment), case=case))
    return shelf.keep(kept) if keep else kept


def at_first_open(knowledge: Knowledge, kept: Kept) -> Kept:
    """The case with the step open at which something is open, and the side of the figure at which something shows."""
    case: Case = kept.case
    assessment = assess(knowledge, case)
    step = first_open(step_states(knowledge, kept, assessment), bool(assessment.treat))
    views = [knowledge.symptoms[symptom].view for symptom in case.seen if symptom in knowledge.symptoms]
    return Kept(id=kept.id, case=case, step=step, view=views[0] if views else "back")
