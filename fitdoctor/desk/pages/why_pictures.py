"""Why a cause shows and what is seen once it is treated, side by side."""

from __future__ import annotations

from PySide6.QtWidgets import QWidget

from fitdoctor.desk.job import Job, drawn
from fitdoctor.desk.look import Look
from fitdoctor.desk.pages.page import section
from fitdoctor.desk.parts.flow import FlowLayout
from fitdoctor.desk.parts.picture import SmallPicture
from fitdoctor.desk.parts.text import Words
from fitdoctor.desk.words import lower_first, tr
from fitdoctor.figure.after import Moved, after_diagram
from fitdoctor.figure.diagrams import Diagram, why_diagram
from fitdoctor.knowledge.entries import Cause, Method

SIZE = (310, 268)


def why_pictures(look: Look, job: Job, cause: Cause) -> QWidget | None:
    """The arrows of the cause, and beside them the garment after the way that is chosen for it; nothing where neither is drawn."""
    why = why_diagram(job.knowledge, cause, job.case.garment, job.case.facts)
    method = remedy(job, cause)
    after = after_diagram(job.knowledge, cause, method, job.case.garment, moved(job, method), job.case.facts) if method else None
    pictures = []
    if why:
        says = tr("Where the cloth is short, where it stacks, what it hangs from: {cause}", cause=cause.title)
        pictures.append(_captioned(look, job, why, tr("Why it shows"), says))
    if after and method:
        caption = tr("After: {method}", method=lower_first(method.title))
        pictures.append(_captioned(look, job, after, caption, tr("The garment after it, the seams that were sewn anew basted.")))
    if not pictures:
        return None
    holder = QWidget()
    flow = FlowLayout(holder, 14)
    for picture in pictures:
        flow.addWidget(picture)
    return holder


def _captioned(look: Look, job: Job, diagram: Diagram, caption: str, says: str) -> QWidget:
    size = (look.grown(SIZE[0]), look.grown(SIZE[1]))
    both = section(SmallPicture(look, drawn(job, diagram, look.tones), size, says), Words(look, caption, "small"), gap=5)
    both.setFixedWidth(size[0])
    return both


def remedy(job: Job, cause: Cause) -> Method | None:
    """The way chosen for a cause; while it is not treated, the first of those that alter the garment."""
    choices = job.assessment.choices if job.assessment else ()
    chosen = next((choice.chosen.method for choice in choices if choice.cause == cause.id and choice.chosen), "")
    if chosen:
        return job.knowledge.methods[chosen]
    ways = job.knowledge.methods_for(cause.id, job.case.garment)
    return next((method for method in ways if method.kind == "alteration"), None)


def moved(job: Job, method: Method) -> tuple[Moved, ...]:
    """The marks worked out for a method."""
    amounts = job.assessment.amounts if job.assessment else ()
    own = (worked.calculation for worked in amounts if worked.method == method.id and worked.calculation)
    return tuple((mark.at, mark.stations, mark.take) for calculation in own for mark in calculation.marks if mark.layer == "shell")
