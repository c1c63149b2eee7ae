"""Which drawing of an entry fits a garment, and on which figure it stands."""

from __future__ import annotations

from collections.abc import Sequence

from fitdoctor.figure.transfer import carry
from fitdoctor.knowledge.entries import Drawing, Figure, Symptom, View
from fitdoctor.knowledge.knowledge import Knowledge


def figure_of(knowledge: Knowledge, garment: str, view: View) -> Figure | None:
    """The garment's figure from one side; a view it lacks is None."""
    entry = knowledge.garments.get(garment)
    while entry is not None:
        if view in entry.figures:
            return knowledge.figures.get(entry.figures[view])
        entry = knowledge.garments.get(entry.kind_of)
    return None


def views_of(knowledge: Knowledge, garment: str) -> tuple[View, ...]:
    """The sides from which the garment is drawn: front, back, side."""
    views: tuple[View, ...] = ("front", "back", "side")
    return tuple(view for view in views if figure_of(knowledge, garment, view) is not None)


def drawing_on(knowledge: Knowledge, drawings: Sequence[Drawing], made_for: Sequence[str], garment: str, view: View) -> Drawing | None:
    """The best of some drawings for this garment, carried over from the garment it was made for where that is another."""
    target = figure_of(knowledge, garment, view)
    if target is None:
        return None
    for drawing in _by_fitness(knowledge, drawings, garment):
        owners = drawing.garments or tuple(made_for) or (garment,)
        home = figure_of(knowledge, owners[0], view)
        carried = carry(drawing, home, target) if home else None
        if carried is not None:
            return carried
    return None


def _by_fitness(knowledge: Knowledge, drawings: Sequence[Drawing], garment: str) -> list[Drawing]:
    """Those that name the garment or its wider kind first, then those for all, then the rest."""

    def rank(drawing: Drawing) -> int:
        if garment in drawing.garments:
            return 0
        if drawing.garments and knowledge.suits(drawing.garments, garment):
            return 1
        return 2 if not drawing.garments else 3

    return sorted(drawings, key=rank)


def symptom_drawing(knowledge: Knowledge, symptom: Symptom, garment: str) -> Drawing | None:
    """How a symptom looks on a garment; None where it has no drawing or the garment no such view."""
    return drawing_on(knowledge, symptom.draw, symptom.garments, garment, symptom.view)
