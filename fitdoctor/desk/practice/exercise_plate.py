"""The plate at the left of an exercise: the garment with its lines, then how it comes about, or two side by side."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtGui import QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QVBoxLayout, QWidget

from fitdoctor.desk.figure_view import FigureView, Noted
from fitdoctor.desk.handbook.plates import plate_of
from fitdoctor.desk.look import Look
from fitdoctor.desk.parts.rows import Rows
from fitdoctor.desk.parts.text import Words
from fitdoctor.desk.parts.view_switch import VIEW_WORDS
from fitdoctor.desk.pictures import Pictures
from fitdoctor.desk.plate import Plate
from fitdoctor.desk.practice.sitting import Sitting
from fitdoctor.desk.style import lay_on
from fitdoctor.desk.tokens import HAIR, MARGIN
from fitdoctor.desk.words import lower_first, tr
from fitdoctor.figure.choose import figure_of, symptom_drawing, views_of
from fitdoctor.figure.compose import outlines
from fitdoctor.figure.diagrams import Diagram
from fitdoctor.knowledge.entries import Figure, View
from fitdoctor.practice.exercise import Picture

WIDE, SHARE, NARROW_SHARE = 424, 0.335, 0.32
EDGE = 24.0
"Mm beside the garment."
_ASKED = "?"
_LOW, _TALL = 0.68, 1.3
"Heights of an explaining picture as shares of its width."


class ExercisePlate(QWidget):
    """Shows what an exercise is about. Before the answer nothing on it tells the answer, not even to a screen reader."""

    def __init__(self, look: Look, sitting: Sitting, pictures: Pictures) -> None:
        super().__init__()
        self.look, self.sitting, self._pictures = look, sitting, pictures
        self.setObjectName("practise-plate")
        lay_on(self, look, "paper-2")
        self.figure = FigureView(pictures, look.tones)
        self.figure.setObjectName("practise-figure")
        self.figure.set_text_size(look.em)
        self._caption = Words(look, "", "small", "ink-2", "practise-caption")
        self._explaining = Rows("practise-explaining", 4)
        column = QVBoxLayout(self)
        column.setContentsMargins(MARGIN, 22, MARGIN // 2, 16)
        column.setSpacing(8)
        column.addWidget(self.figure, 1)
        column.addWidget(self._caption)
        column.addWidget(self._explaining)
        column.addStretch(0)
        self._column = column

    def fold(self, width: int, columns: int) -> None:
        """Take its share of a page's width."""
        self.setFixedWidth(round(width * NARROW_SHARE) if columns < 2 else min(WIDE, round(width * SHARE)))

    # ---- what is shown

    def show_picture(self, garment: str, picture: Picture, told: bool) -> None:
        """Show the picture of a question.

        Args:
            told: after the answer: the lines are named, and how it comes about is shown below.
        """
        know = self.sitting.knowledge
        why = self._why(garment, picture.mechanism) if picture.mechanism and (told or not picture.seen) else None
        views = views_of(know, garment)
        view: View = next((view for view in views if view == picture.view), views[0] if views else "back")
        figure = figure_of(know, garment, view)
        alone = why is not None and not picture.seen
        if figure is not None and not alone:
            self._show_garment(garment, view, figure, picture, told)
        self._stand(figure is not None and not alone)
        self._explaining.show_rows([] if why is None else self._plate(*why, "practise-why", alone))

    def show_both(self, garment: str, ids: Sequence[str]) -> bool:
        """Show two side by side, the right one first; whether both are drawn."""
        found = [(self._drawn(garment, id_), id_) for id_ in ids]
        if not can_show_both(self.sitting, garment, ids):
            return False
        self._stand(False)
        rows = [row for diagram, id_ in found if diagram for row in self._plate(diagram, self._title(id_), f"practise-both-{id_}", False)]
        self._explaining.show_rows(rows)
        return True

    def _stand(self, figure: bool) -> None:
        """With the figure, which takes the room there is; or without it, from the top down."""
        self.figure.setVisible(figure)
        self._caption.setVisible(figure)
        self._column.setStretch(self._column.count() - 1, 0 if figure else 1)

    def _show_garment(self, garment: str, view: View, figure: Figure, picture: Picture, told: bool) -> None:
        know = self.sitting.knowledge
        side = lower_first(tr(VIEW_WORDS[view]))
        said = tr("{garment}, from the {view}.", garment=know.garment(garment).title, view=side)
        self._caption.say(said)
        self.figure.show_figure(figure, {"garment": garment}, {}, said)
        self.figure.show_noted([noted for id_ in picture.seen if (noted := self._noted(garment, id_, picture, told))])
        looks = [know.symptoms[id_].look for id_ in picture.seen]
        self.figure.setAccessibleDescription(" ".join(looks) or tr("The cloth hangs smooth, without a line."))
        self._frame(figure, garment)

    def _noted(self, garment: str, id_: str, picture: Picture, told: bool) -> Noted | None:
        symptom = self.sitting.knowledge.symptoms[id_]
        drawing = symptom_drawing(self.sitting.knowledge, symptom, garment)
        asked = id_ == picture.asked
        return Noted(id_, drawing, _ASKED if asked and not told else "", symptom.title if told else "") if drawing else None

    def _frame(self, figure: Figure, garment: str) -> None:
        """Leave out the empty edges of the picture, so that the figure is as large as it can be."""
        know = self.sitting.knowledge
        bodies = [know.figures[name] for name in figure.wearer if name in know.figures]
        parts = [part for body in (figure, *bodies) for part in outlines(body, {"garment": garment}).values()]
        reach = max(abs(x) for part in parts for x, _ in part) + EDGE
        x, y, wide, high = figure.box
        left, right = max(x, -reach), min(x + wide, reach)
        self.figure.content.setSceneRect(left, y, right - left, high)
        self.figure.fit()

    def _why(self, garment: str, cause: str) -> tuple[Diagram, str] | None:
        know = self.sitting.knowledge
        found = plate_of(know, know.causes[cause], garment)
        return (found[0], tr("Why it shows: {cause}.", cause=lower_first(know.causes[cause].title))) if found else None

    def _drawn(self, garment: str, id_: str) -> Diagram | None:
        return diagram_of(self.sitting, garment, id_)

    def _title(self, id_: str) -> str:
        know = self.sitting.knowledge
        return (know.symptoms.get(id_) or know.causes[id_]).title

    def _plate(self, diagram: Diagram, words: str, name: str, alone: bool) -> list[QWidget]:
        plate = Plate(self._pictures, self.look.tones)
        plate.setObjectName(name)
        plate.set_text_size(self.look.em)
        _, _, wide, high = diagram.crop
        share = min(_TALL, max(_LOW, high / wide)) if alone else _LOW
        plate.setFixedHeight(round((self.width() - 1.5 * MARGIN) * share))
        plate.show_scene(diagram.scene, diagram.crop, diagram.overlay, says=words)
        return [plate, Words(self.look, words, "small", "ink-2", f"{name}-words")]

    def paintEvent(self, event: QPaintEvent) -> None:
        super().paintEvent(event)
        painter = QPainter(self)
        painter.setPen(QPen(self.look.colour("rule"), HAIR))
        painter.drawLine(self.width() - 1, 0, self.width() - 1, self.height())
        painter.end()


def diagram_of(sitting: Sitting, garment: str, id_: str) -> Diagram | None:
    """A symptom as it lies, or how a cause comes about; None where nothing is drawn."""
    know = sitting.knowledge
    entry = know.symptoms.get(id_) or know.causes.get(id_)
    found = plate_of(know, entry, garment) if entry else None
    return found[0] if found else None


def can_show_both(sitting: Sitting, garment: str, ids: Sequence[str]) -> bool:
    """Whether two that were mixed up are both drawn."""
    return len(ids) == 2 and all(diagram_of(sitting, garment, id_) for id_ in ids)
