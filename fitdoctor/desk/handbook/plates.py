"""The pictures of an entry: its own drawing, the arrows that explain it, where a length is taken, the garment after the work."""

from __future__ import annotations

from fitdoctor.desk.handbook.kinds import garments_of
from fitdoctor.desk.words import tr
from fitdoctor.figure.after import after_diagram
from fitdoctor.figure.choose import figure_of, symptom_drawing, views_of
from fitdoctor.figure.compose import Scene
from fitdoctor.figure.diagrams import Diagram, check_diagram, measure_diagram, why_diagram
from fitdoctor.figure.reach import framed
from fitdoctor.knowledge.entries import Cause, Check, Entry, Garment, Measurement, Method, SolvedCase, Symptom
from fitdoctor.knowledge.knowledge import Knowledge

RATIO = 1.3
"Width of a plate by its height."
_MOST_SEEN = 2


def plate_of(knowledge: Knowledge, entry: Entry, garment: str) -> tuple[Diagram, str] | None:
    """A picture and the words below it, on the garment in hand where the entry holds for it; None where nothing is drawn."""
    for on in _worn(knowledge, entry, garment):
        found = _on(knowledge, entry, on)
        if found:
            return found
    return None


def plates_of(knowledge: Knowledge, entry: Entry, garment: str) -> list[tuple[Diagram, str]]:
    """All pictures of an entry: for a way to alter, why the cause shows and the garment after it; for a case, what was seen."""
    if isinstance(entry, SolvedCase):
        seen = (knowledge.symptoms[id_] for id_ in entry.seen if id_ in knowledge.symptoms)
        return [(diagram, sign.title) for sign in seen if (diagram := symptom_diagram(knowledge, sign, entry.garment))][:_MOST_SEEN]
    first = plate_of(knowledge, entry, garment)
    after = _after(knowledge, entry, garment) if isinstance(entry, Method) else None
    return [found for found in (first, after) if found]


def _after(knowledge: Knowledge, method: Method, garment: str) -> tuple[Diagram, str] | None:
    treated = [knowledge.causes[cause] for cause in method.treats if cause in knowledge.causes]
    for on in _worn(knowledge, method, garment) if method.kind == "alteration" else ():
        for cause in treated:
            if knowledge.suits(tuple(cause.how_common), on) and (diagram := after_diagram(knowledge, cause, method, on)):
                return diagram, tr("After it: the sign is gone; basted, the seams that were sewn anew.")
    return None


def _worn(knowledge: Knowledge, entry: Entry, garment: str) -> list[str]:
    """Garments to draw it on, the one in hand first."""
    named = garments_of(entry)
    suits = [garment] if garment in knowledge.garments and knowledge.suits(named, garment) else []
    return [*suits, *named] or list(knowledge.garments)


def _on(knowledge: Knowledge, entry: Entry, garment: str) -> tuple[Diagram, str] | None:
    if isinstance(entry, Symptom):
        return _said(symptom_diagram(knowledge, entry, garment), "")
    if isinstance(entry, Cause):
        return _said(why_diagram(knowledge, entry, garment), tr("Why it shows."))
    if isinstance(entry, Check):
        return _said(check_diagram(knowledge, entry, garment), tr("How it is done."))
    if isinstance(entry, Measurement):
        return _said(measure_diagram(knowledge, entry, garment), tr("From where to where it is taken."))
    if isinstance(entry, Method):
        treated = (knowledge.causes[c] for c in entry.treats if c in knowledge.causes)
        shown = ((_shown(knowledge, cause, garment), tr("What it puts right: {cause}.", cause=cause.title)) for cause in treated)
        return next((_said(diagram, words) for diagram, words in shown if diagram), None)
    if isinstance(entry, Garment):
        return _said(_whole(knowledge, entry.id), "")
    return None


def _said(diagram: Diagram | None, words: str) -> tuple[Diagram, str] | None:
    return (diagram, words) if diagram else None


def _shown(knowledge: Knowledge, cause: Cause, garment: str) -> Diagram | None:
    """Why a cause shows, or the sign it shows by."""
    signs = (knowledge.symptoms[link.symptom] for link in cause.shows_as if link.symptom in knowledge.symptoms)
    fitting = (sign for sign in signs if knowledge.suits(sign.garments, garment))
    return why_diagram(knowledge, cause, garment) or next((d for s in fitting if (d := symptom_diagram(knowledge, s, garment))), None)


def symptom_diagram(knowledge: Knowledge, symptom: Symptom, garment: str) -> Diagram | None:
    """A sign as it lies on a garment."""
    figure, drawing = figure_of(knowledge, garment, symptom.view), symptom_drawing(knowledge, symptom, garment)
    if figure is None or drawing is None:
        return None
    return Diagram(Scene(figure, (drawing,), facts={"garment": garment}), framed(drawing, RATIO))


def _whole(knowledge: Knowledge, garment: str) -> Diagram | None:
    view = next(iter(views_of(knowledge, garment)), None)
    figure = figure_of(knowledge, garment, view) if view else None
    return Diagram(Scene(figure, facts={"garment": garment}), figure.box) if figure else None
