"""The plate at the left edge: the garment on its wearer, which side is shown, what is chosen, what was noted."""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QPainter, QPaintEvent, QPen, QResizeEvent
from PySide6.QtWidgets import QBoxLayout, QVBoxLayout, QWidget

from fitdoctor.desk.figure_view import FigureView, Noted
from fitdoctor.desk.job import Job
from fitdoctor.desk.look import Look
from fitdoctor.desk.pages.said import zones_of
from fitdoctor.desk.parts.text import Words
from fitdoctor.desk.parts.tick_box import TickBox
from fitdoctor.desk.parts.view_switch import VIEW_WORDS, ViewSwitch
from fitdoctor.desk.style import lay_on
from fitdoctor.desk.tokens import HAIR, MARGIN
from fitdoctor.desk.words import lower_first, tr
from fitdoctor.figure.choose import figure_of, symptom_drawing, views_of
from fitdoctor.figure.compose import outlines
from fitdoctor.knowledge.entries import Figure, View

WIDE, SHARE, NARROW_SHARE = 424, 0.335, 0.32
MUCH_LARGER = 1.15
EDGE = 24.0
"Mm beside the garment."


class FigurePlate(QWidget):
    """Emits the place chosen and the noted line that was pressed. Without places it only shows the garment."""

    zoneChosen = Signal(str)
    symptomClicked = Signal(str)
    viewChanged = Signal(str)

    def __init__(self, look: Look, job: Job, name: str, asks: bool = True) -> None:
        super().__init__()
        self.look, self.job, self.asks = look, job, asks
        self._narrow = self._level = False
        self.setObjectName(f"{name}-plate")
        lay_on(self, look, "paper-2")
        self.figure = FigureView(job.pictures, look.tones)
        self.figure.setObjectName(f"{name}-figure")
        self.figure.set_text_size(look.em)
        self.figure.zoneChosen.connect(self.zoneChosen.emit)
        self.figure.symptomClicked.connect(self.symptomClicked.emit)
        self.figure.viewWanted.connect(self.show_view)
        self._switch = ViewSwitch(look, ("front", "back", "side"))
        self._switch.viewWanted.connect(self.show_view)
        self._place_head = Words(look, tr("Chosen place"), "small", "ink-2")
        self._place = Words(look, "", "small-bold", name=f"{name}-place")
        self.over = self.make_over(f"{name}-over")
        self._nothing = Words(look, tr("Choose the kind of garment; its drawing comes here."), "reading", "ink-2")
        self._lay_out()

    def _lay_out(self) -> None:
        side = QVBoxLayout()
        side.setSpacing(2)
        side.addWidget(self._switch)
        side.addSpacing(28)
        side.addWidget(self._place_head)
        side.addWidget(self._place)
        side.addStretch(1)
        self._side = side
        self._middle = QBoxLayout(QBoxLayout.Direction.LeftToRight)
        self._middle.setSpacing(8)
        self._middle.addLayout(side)
        self._middle.addWidget(self.figure, 1)
        whole = QVBoxLayout(self)
        whole.setContentsMargins(MARGIN, 22, 8, 6)
        whole.setSpacing(6)
        whole.addWidget(self._nothing)
        whole.addLayout(self._middle, 1)
        whole.addWidget(self.over)

    def fold(self, width: int, columns: int) -> None:
        """Take its share of a page's width."""
        self._narrow = columns < 2
        self.over.setVisible(self.asks and not self._narrow and bool(self.job.case.garment))
        self.setFixedWidth(round(width * NARROW_SHARE) if self._narrow else min(WIDE, round(width * SHARE)))
        self._turn()

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._turn()

    def _turn(self) -> None:
        """Put the views beside the figure or above it, whichever leaves the figure larger."""
        box = self.figure.sceneRect()
        if box.isEmpty():
            return
        wide, high = self.width() - MARGIN - 8.0, self.height() - 90.0
        balls = self.figure.margins_px()
        side = self._switch.sizeHint().width() + 8.0
        beside = min((wide - side - balls) / box.width(), high / box.height())
        above = min((wide - balls) / box.width(), (high - self.look.grown(56)) / box.height())
        level = self._narrow or above > beside * MUCH_LARGER
        self._switch.turn(level)
        self._middle.setDirection(QBoxLayout.Direction.TopToBottom if level else QBoxLayout.Direction.LeftToRight)
        self._level = level
        self._show_place()

    def _show_place(self) -> None:
        shown = not self._level and bool(self.figure.chosen())
        self._place_head.setVisible(shown)
        self._place.setVisible(shown)

    def _frame(self, figure: Figure) -> None:
        """Leave out the empty cloth-less edges of the picture, so that the figure is as large as it can be."""
        know = self.job.knowledge
        bodies = [know.figures[name] for name in figure.wearer if name in know.figures]
        parts = [part for body in (figure, *bodies) for part in outlines(body, self.job.facts).values()]
        reach = max(abs(x) for part in parts for x, _ in part) + EDGE
        x, y, wide, high = figure.box
        left, right = max(x, -reach), min(x + wide, reach)
        self.figure.content.setSceneRect(left, y, right - left, high)
        self._turn()
        self.figure.fit()

    # ---- what is shown

    def view(self) -> View:
        """The side that is shown."""
        known = self.views()
        kept = self.job.kept.view
        return next((view for view in known if view == kept), known[0] if known else "back")

    def views(self) -> tuple[View, ...]:
        """The sides from which the garment is drawn."""
        return views_of(self.job.knowledge, self.job.case.garment)

    def show_view(self, view: str) -> None:
        """Show another side."""
        if view in self.views():
            self.job.look_at(view)
            self.show_garment()
            self.viewChanged.emit(view)

    def zones(self) -> dict[str, str]:
        """The places that can be chosen on the side shown: those at which some line can show."""
        know, garment, view = self.job.knowledge, self.job.case.garment, self.view()
        possible = {symptom.zone for symptom in know.symptoms_of(garment).values() if symptom.view == view}
        return {zone: title for zone, title in zones_of(know, garment, view).items() if zone in possible}

    def show_garment(self) -> None:
        """Show the garment as its facts say, with what was noted on this side."""
        know, case, view = self.job.knowledge, self.job.case, self.view()
        figure = figure_of(know, case.garment, view)
        for widget in (self.figure, self._switch):
            widget.setVisible(figure is not None)
        self._nothing.setVisible(figure is None)
        self.over.setVisible(self.asks and figure is not None and not self._narrow)
        if figure is None:
            return
        for button in self._switch.buttons:
            button.setVisible(button.view in self.views())
        self._switch.show_view(view, case.looked if self.asks else ())
        words = lower_first(tr(VIEW_WORDS[view]))
        said = tr("{garment}, seen from the {view}", garment=know.garments[case.garment].title, view=words)
        self.figure.show_figure(figure, self.job.facts, self.zones() if self.asks else {}, said)
        self.figure.show_noted(self._noted())
        self._frame(figure)
        self.show_over(self.over)

    def make_over(self, name: str) -> TickBox:
        """A box to tick: nothing else shows on this side."""
        over = TickBox(self.look, "", name)
        over.clicked.connect(lambda on=False: self.job.look_over(self.view(), on))
        return over

    def show_over(self, over: TickBox) -> None:
        """Show in such a box whether the side shown was looked over."""
        view = self.view()
        words = lower_first(tr(VIEW_WORDS[view]))
        seen = bool(self.job.case.seen)
        over.say(tr("Nothing else shows on the {view}", view=words) if seen else tr("Nothing shows on the {view}", view=words))
        over.setChecked(view in self.job.case.looked)

    def _noted(self) -> list[Noted]:
        know, case = self.job.knowledge, self.job.case
        found = []
        for number, id_ in enumerate(case.seen, 1):
            symptom = know.symptoms.get(id_)
            drawing = symptom_drawing(know, symptom, case.garment) if symptom and symptom.view == self.view() else None
            if symptom and drawing:
                found.append(Noted(id_, drawing, str(number) if self.asks else "", symptom.title))
        return found

    def choose(self, zone: str) -> None:
        """Show a place as chosen."""
        self.figure.choose(zone)
        self._place.say(self.zones().get(zone, ""))
        self._show_place()

    def paintEvent(self, event: QPaintEvent) -> None:
        super().paintEvent(event)
        painter = QPainter(self)
        painter.setPen(QPen(self.look.colour("rule"), HAIR))
        painter.drawLine(self.width() - 1, 0, self.width() - 1, self.height())
        painter.end()

    def focus_figure(self, reason: Qt.FocusReason) -> None:
        """Put the focus on the figure."""
        self.figure.setFocus(reason)
