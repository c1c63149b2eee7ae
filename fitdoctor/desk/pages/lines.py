"""What can be noted: the lines at a place, the finds for words, the places themselves, or two lines side by side."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QGridLayout, QVBoxLayout, QWidget

from fitdoctor.desk.job import Job
from fitdoctor.desk.look import Look
from fitdoctor.desk.pages.said import how_it_lies, place_of
from fitdoctor.desk.parts.button import Button, Link
from fitdoctor.desk.parts.control import ControlGroup
from fitdoctor.desk.parts.flow import FlowLayout
from fitdoctor.desk.parts.line_choice import LineChoice, Picture
from fitdoctor.desk.parts.rows import Rows, left
from fitdoctor.desk.parts.text import SectionHead, Words
from fitdoctor.desk.words import count, lower_first, tr
from fitdoctor.knowledge.entries import Symptom
from fitdoctor.knowledge.knowledge import Knowledge

FEW = 6
PICTURE = (220, 88)
BESIDE = (220, 118)
GAP = 20


def by_frequency(knowledge: Knowledge, garment: str, symptoms: Sequence[Symptom]) -> list[Symptom]:
    """The lines in the order of how often they show on this garment: through its causes as common as they are."""
    often: dict[str, float] = dict.fromkeys((symptom.id for symptom in symptoms), 0.0)
    for cause in knowledge.causes_of(garment).values():
        prior = knowledge.prior(cause, garment)
        for link in cause.shows_as:
            if link.symptom in often:
                often[link.symptom] += prior * knowledge.strength(link.strength)
    return sorted(symptoms, key=lambda symptom: (-often[symptom.id], symptom.title))


class Lines(QWidget):
    """Emits a line pressed, a place chosen, and that the comparing is over."""

    linePressed = Signal(str)
    placeChosen = Signal(str)
    comparingEnded = Signal()

    def __init__(self, look: Look, job: Job) -> None:
        super().__init__()
        self.look, self.job = look, job
        self.setObjectName("shows-lines")
        self._all = False
        self._place = ""
        self.beside = False
        self._places_link = Link(look, tr("All places"), "shows-places")
        self._places_link.clicked.connect(lambda: self.placeChosen.emit(""))
        self._head = SectionHead(look, " ", self._places_link)
        self._body = Rows("", 12)
        self.choices: list[LineChoice] = []
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(12)
        column.addWidget(self._head)
        column.addWidget(self._body)

    # ---- the four things it can show

    def show_places(self, places: Mapping[str, str], view: str, nothing_noted: bool) -> None:
        """The places on one side, as words to press: the same as pointing at the figure."""
        self.choices = []
        self._places_link.hide()
        self._head.say(tr("Places on the {view}", view=lower_first(tr(view.capitalize()))))
        holder = QWidget()
        flow = FlowLayout(holder, 8)
        buttons = []
        for place, title in places.items():
            button = Button(self.look, title, f"shows-zone-{place}")
            button.clicked.connect(lambda _on=False, zone=place: self.placeChosen.emit(zone))
            flow.addWidget(button)
            buttons.append(button)
        self._group = ControlGroup(buttons)
        text = tr("Nothing noted yet. Point at the place on the figure where the cloth misbehaves, or type what you see.")
        rows: list[QWidget] = [Words(self.look, text, "reading", name="shows-nothing")] if nothing_noted else []
        self._body.show_rows([*rows, holder])

    def show_place(self, place: str, title: str, view: str, symptoms: Sequence[Symptom]) -> None:
        """The lines that can show at a place, the commonest first."""
        if place != self._place:
            self._place, self._all = place, False
        self._places_link.show()
        where = tr("Lines that show: {place}, at the {view}", place=lower_first(title), view=lower_first(tr(view.capitalize())))
        self._head.say(where)
        shown = symptoms if self._all else symptoms[:FEW]
        rows: list[QWidget] = [self._grid(shown, how_it_lies)]
        left_out = len(symptoms) - FEW
        if left_out > 0:
            more = Link(self.look, tr("Show fewer") if self._all else count(left_out, "Show 1 more", "Show {number} more"), "shows-more")
            more.clicked.connect(self._turn)
            rows.append(left(more))
        self._body.show_rows(rows)
        self._again = (place, title, view, symptoms)

    def _turn(self) -> None:
        self._all = not self._all
        self.show_place(*self._again)

    def show_finds(self, words: str, symptoms: Sequence[Symptom]) -> None:
        """What was found for words."""
        self._places_link.show()
        if not symptoms:
            self._head.say(tr("Nothing under ‘{words}’", words=words))
            self.choices = []
            self._body.show_rows([Words(self.look, tr("Try the place, or how the cloth lies: folds, pulls, gapes, droops."), "reading")])
            return
        self._head.say(tr("Finds for ‘{words}’", words=words))
        garment = self.job.case.garment
        self._body.show_rows([self._grid(symptoms, lambda symptom: place_of(self.job.knowledge, symptom, garment))])

    def compare(self, one: Symptom, other: Symptom, tell_apart: str) -> None:
        """Two lines that are easily mistaken, side by side."""
        self._places_link.hide()
        self._head.say(tr("Side by side"))
        back = Link(self.look, tr("Back to the lines"), "shows-compare-back", "body", big=True)
        back.clicked.connect(self.comparingEnded.emit)
        pair = self._grid((one, other), lambda symptom: symptom.look)
        for choice in self.choices:
            choice.set_picture((PICTURE[0], 190), beside=False)
        self._body.show_rows([pair, Words(self.look, tell_apart, "reading", name="shows-compare-how"), left(back)])

    # ---- pictures

    def _grid(self, symptoms: Sequence[Symptom], remark: Callable[[Symptom], str]) -> QWidget:
        holder = _Grid(self.look)
        self.choices = []
        for symptom in symptoms:
            choice = LineChoice(
                self.look, symptom.id, symptom.short or symptom.title, remark(symptom), self._picture(symptom), f"shows-line-{symptom.id}"
            )
            choice.show_noted(self._noted(symptom.id))
            choice.setAccessibleDescription(symptom.look)
            choice.setToolTip(symptom.look)
            choice.clicked.connect(lambda _on=False, who=choice: self._press(who))
            choice.set_picture(BESIDE if self.beside else PICTURE, self.beside)
            self.choices.append(choice)
        holder.hold(self.choices, self.beside)
        return holder

    def _press(self, choice: LineChoice) -> None:
        choice.setChecked(bool(choice.noted))
        self.linePressed.emit(choice.entry)

    def _noted(self, symptom: str) -> str:
        seen = self.job.case.seen
        return tr("noted as {number}", number=seen.index(symptom) + 1) if symptom in seen else ""

    def _picture(self, symptom: Symptom) -> Picture:
        job, tones = self.job, self.look.tones
        return lambda size, dpr: job.pictures.symptom(job.knowledge, symptom, job.case.garment, size, dpr, tones, job.case.facts)

    def focus_first(self, reason: Qt.FocusReason) -> None:
        """Put the focus on the first line."""
        if self.choices:
            self.choices[0].setFocus(reason)


class _Grid(QWidget):
    """Two in a row; one where each would be narrower than its picture wants, or where the words stand beside it."""

    def __init__(self, look: Look) -> None:
        super().__init__()
        self.look = look
        self._grid = QGridLayout(self)
        self._grid.setContentsMargins(0, 0, 0, 0)
        self._grid.setHorizontalSpacing(GAP)
        self._grid.setVerticalSpacing(12)
        self._choices: list[LineChoice] = []
        self._across = 0
        self._beside = False
        self.group = ControlGroup()

    def hold(self, choices: Sequence[LineChoice], beside: bool) -> None:
        """Hold these choices."""
        self._choices, self._beside = list(choices), beside
        self.group = ControlGroup(choices)
        self._place(1 if beside else 2)

    def _place(self, across: int) -> None:
        if across == self._across:
            return
        self._across = across
        for at, choice in enumerate(self._choices):
            self._grid.addWidget(choice, at // across, at % across, Qt.AlignmentFlag.AlignTop)
        for column in range(2):
            self._grid.setColumnStretch(column, 1 if column < across else 0)

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        narrow = event.size().width() < self.look.px(20)
        self._place(1 if narrow or self._beside else 2)
