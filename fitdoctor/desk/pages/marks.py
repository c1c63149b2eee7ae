"""The marks on the cloth: a plate with lettered call-outs, and the table that says them."""

from __future__ import annotations

from PySide6.QtWidgets import QVBoxLayout, QWidget

from fitdoctor.amounts.marks import Mark
from fitdoctor.assess import Assessment
from fitdoctor.desk.call_out import CallOutText
from fitdoctor.desk.job import Job
from fitdoctor.desk.look import Look
from fitdoctor.desk.parts.mark_diagram import MarkDiagram
from fitdoctor.desk.parts.marks_table import MarksTable
from fitdoctor.desk.parts.message_bar import SignBox
from fitdoctor.desk.parts.reason_note import beside
from fitdoctor.desk.parts.text import SectionHead, Words
from fitdoctor.desk.plate import Plate
from fitdoctor.desk.words import tr
from fitdoctor.figure.after import after_scene, sewn_anew
from fitdoctor.figure.choose import figure_of, symptom_drawing, views_of
from fitdoctor.figure.compose import Scene
from fitdoctor.figure.marks import mark_place, mark_shapes
from fitdoctor.figure.reach import Box
from fitdoctor.figure.shapes import Point, Shape
from fitdoctor.knowledge.entries import Figure, View
from fitdoctor.knowledge.knowledge import Knowledge
from fitdoctor.sheet import SheetMark, letter_of, sheet_marks

PLATE = 264
ROOM = 110.0
LEAST_BOX = 420.0
MOST_HIGH = 460.0
"Mm: what a plate shows at least and at most."


def lettered(assessment: Assessment) -> list[tuple[str, str, Mark]]:
    """(letter, method, mark) of every mark, lettered as the table and the sheet do."""
    marks = [(worked.method, mark) for worked in assessment.amounts if worked.calculation for mark in worked.calculation.marks]
    return [(letter_of(number), method, mark) for number, (method, mark) in enumerate(marks)]


def open_amounts(knowledge: Knowledge, assessment: Assessment) -> list[str]:
    """What must be measured before the other amounts can be worked out."""
    missing = (m for worked in assessment.amounts for m in worked.missing)
    return [knowledge.measurements[m].title for m in dict.fromkeys(missing) if m in knowledge.measurements]


class MarksPlate(Plate):
    """Shows the side of the garment on which most of the marks lie."""

    def __init__(self, look: Look, job: Job) -> None:
        super().__init__(job.pictures, look.tones)
        self.look, self.job = look, job
        self.set_text_size(look.em)
        self.setFixedHeight(look.grown(PLATE))

    def show_marks(self, marks: list[tuple[str, str, Mark]], chosen: str = "") -> None:
        """Show marks with their letters; one chosen stands alone."""
        shown = [entry for entry in marks if chosen in ("", entry[0])]
        figure = self._figure(shown or marks)
        if figure is None:
            self.hide()
            return
        self.show()
        shapes: list[Shape] = []
        call_outs: list[CallOutText] = []
        for letter, _method, mark in shown:
            shapes += mark_shapes(figure, mark.at, mark.stations, mark.take)
            place = mark_place(figure, mark.at, mark.stations, mark.take)
            if place:
                call_outs.append(CallOutText(letter, place))
        scene = Scene(figure, facts=self.job.facts)
        letters = ", ".join(text.label for text in call_outs)
        self.show_scene(scene, _around(figure, shown), tuple(shapes), call_outs, tr("Where the marks lie: {letters}", letters=letters))

    def show_after(self, assessment: Assessment, marks: list[tuple[str, str, Mark]]) -> None:
        """Show how the garment is to hang now: the treated signs gone, what was moved basted."""
        know, case = self.job.knowledge, self.job.case
        seen = [know.symptoms[symptom] for symptom in case.seen if symptom in know.symptoms]
        views: list[View] = [symptom.view for symptom in seen]
        figure = figure_of(know, case.garment, max(views, key=views.count)) if views else self._figure(marks)
        scene = figure and after_scene(
            know, case.garment, figure.view, seen, [know.causes[cause] for cause in assessment.treat], case.facts
        )
        if figure is None or not scene:
            self.hide()
            return
        self.show()
        moved = [(mark.at, mark.stations, mark.take) for _, _, mark in marks if mark.layer == "shell"]
        seams = sewn_anew(figure, [know.methods[method] for method in assessment.methods], moved)
        signs = [symptom_drawing(know, symptom, case.garment) for symptom in seen if symptom.view == figure.view]
        crop = next((sign.crop for sign in signs if sign), None) or _around(figure, marks)
        self.show_scene(scene, crop, seams, (), tr("How it should hang now: what was treated is gone."))

    def _figure(self, marks: list[tuple[str, str, Mark]]) -> Figure | None:
        know, garment = self.job.knowledge, self.job.case.garment
        figures = [figure_of(know, garment, view) for view in views_of(know, garment)]
        drawn = [(sum(mark.at in figure.seams for _, _, mark in marks), figure) for figure in figures if figure]
        best = max(drawn, key=lambda pair: pair[0], default=None)
        return best[1] if best and best[0] else None


def _around(figure: Figure, marks: list[tuple[str, str, Mark]]) -> Box:
    """The part of the figure round the marked seams."""
    points: list[Point] = []
    for _, _, mark in marks:
        seam = figure.seams.get(mark.at)
        if seam:
            for pair in seam.points.split():
                x, y = (float(number) for number in pair.removesuffix("c").split(","))
                points += [(x, y), (-x, y)] if seam.both else [(x, y)]
    if not points:
        return figure.box
    xs, ys = [x for x, _ in points], [y for _, y in points]
    left, right, top, bottom = min(xs) - ROOM, max(xs) + ROOM, min(ys) - ROOM, max(ys) + ROOM
    if bottom - top > MOST_HIGH:  # a whole leg would be too small to read: where the marks are widest is enough
        places = [place[1] for _, _, mark in marks if (place := mark_place(figure, mark.at, mark.stations, mark.take))]
        top = max(top, min(places, default=top) - MOST_HIGH * 0.4)
        bottom = min(bottom, top + MOST_HIGH)
    wide, high = max(LEAST_BOX, right - left), max(LEAST_BOX * 0.6, bottom - top)
    return (left + right - wide) / 2, (top + bottom - high) / 2, wide, high


class Marks(QWidget):
    """The plate and its table."""

    def __init__(self, look: Look, job: Job, name: str) -> None:
        super().__init__()
        self.look, self.job = look, job
        self.setObjectName(f"{name}-marks")
        self._marks: list[tuple[str, str, Mark]] = []
        self._head = SectionHead(look, tr("Marks on the cloth"), " ")
        self._plate = MarksPlate(look, job)
        self._table = MarksTable(look, f"{name}-mark")
        self._table.markChosen.connect(self._light)
        self._diagram = MarkDiagram(look, job.shop, f"{name}-diagram")
        self._sheet: dict[str, SheetMark] = {}
        self._none = Words(look, "", "reading", "ink-2", f"{name}-marks-none")
        self._placed = beside(SignBox(look, "tick", "good", 0.9), Words(look, tr("Every amount has found a place."), "small"))
        self._unplaced = Words(look, "", "small", "care", f"{name}-unplaced")
        self._assumed = Words(look, "", "small", "ink-2")
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        below = (self._table, self._diagram, self._placed, self._unplaced)
        for gap, widget in ((0, self._head), (12, self._none), (0, self._plate), *zip((6, 10, 10, 0), below, strict=True)):
            column.addSpacing(gap)
            column.addWidget(widget)
        column.addStretch(1)

    def number(self) -> int:
        """How many marks there are."""
        return len(self._marks)

    def show_marks(self, assessment: Assessment) -> None:
        """Show the marks that follow from what was measured."""
        self._marks = lettered(assessment)
        open_ = open_amounts(self.job.knowledge, assessment)
        layers = {mark.layer for _, _, mark in self._marks}
        self._head.say(tr("Marks on the cloth"), tr("shell and lining") if len(layers) > 1 else "")
        self._plate.show_marks(self._marks)
        self._plate.setVisible(bool(self._marks) and self._plate.isVisibleTo(self))
        shown = sheet_marks(self.job.knowledge, assessment.amounts, assessment.shop)
        self._sheet = {mark.letter: mark for mark in shown}
        self._table.show_marks(shown, open_)
        self._show_diagram()
        self._none.say("" if self._marks or open_ else self._why_none(assessment))
        unplaced = sum(worked.calculation.unplaced_mm for worked in assessment.amounts if worked.calculation)
        self._placed.setVisible(bool(self._marks) and unplaced <= 0 and not open_)
        text = tr("{length} has found no place. The mark is held at the limit; step 5 says why.", length=self.job.shop.length(unplaced))
        self._unplaced.say(text if unplaced > 0 else "")

    def _why_none(self, assessment: Assessment) -> str:
        if not assessment.methods:
            return tr("No way to do it is chosen, so nothing is marked.")
        return tr("This work is done without marks that depend on a length.")

    def _light(self, letter: str) -> None:
        self._plate.show_marks(self._marks, letter)
        self._show_diagram(letter)

    def _show_diagram(self, letter: str = "") -> None:
        """The diagram of a mark; of the first that has one, where none is chosen."""
        drawn = [(mark, self._sheet[own]) for own, _, mark in self._marks if letter in ("", own) and len(mark.old) > 1]
        if drawn:
            self._diagram.show_mark(*drawn[0])
        self._diagram.setVisible(bool(drawn))
