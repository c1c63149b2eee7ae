"""What one sees at the rack: pointed at on the figure, or found by a word."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from fitdoctor.desk.figure_view import FigureView
from fitdoctor.desk.look import Look
from fitdoctor.desk.pages.lines import by_frequency
from fitdoctor.desk.pages.page import Page, ScrollColumn
from fitdoctor.desk.pages.said import how_it_lies, place_of, zones_of
from fitdoctor.desk.parts.button import Button, Link
from fitdoctor.desk.parts.control import ControlGroup
from fitdoctor.desk.parts.field import Field
from fitdoctor.desk.parts.flow import FlowLayout
from fitdoctor.desk.parts.line_choice import LineChoice
from fitdoctor.desk.parts.rows import Rows, left
from fitdoctor.desk.parts.text import PageTitle, SectionHead, Words
from fitdoctor.desk.parts.view_switch import VIEW_WORDS, ViewSwitch
from fitdoctor.desk.rack.hand import RackHand
from fitdoctor.desk.rack.plates import symptom_picture
from fitdoctor.desk.style import lay_on
from fitdoctor.desk.words import count, lower_first, tr
from fitdoctor.figure.choose import figure_of, views_of
from fitdoctor.knowledge.entries import Symptom, View
from fitdoctor.knowledge.filters import Filter

PLATE = 424
SHARE = 0.4
LEAST_LETTERS, FEW = 3, 6
PICTURE = (220, 104)
LEAST = 9.0
"Em that a name needs below its picture."


class SeePage(Page):
    """Emits the symptom chosen, and that one wants to go back to the question."""

    step = "rack-see"
    chosen = Signal(str)
    left = Signal()

    def __init__(self, look: Look, hand: RackHand) -> None:
        super().__init__(look, hand.job)
        self.hand = hand
        self._view: View = "back"
        self._zone = ""
        self._all = False
        self._garment = ""
        self.figure = FigureView(hand.pictures, look.tones)
        self.figure.setObjectName("rack-see-figure")
        self.figure.set_text_size(look.em)
        self.figure.zoneChosen.connect(self.choose_zone)
        self.figure.viewWanted.connect(self.show_view)
        self._switch = ViewSwitch(look, ("front", "back", "side"))
        self._switch.viewWanted.connect(self.show_view)
        self._find = Field(look, "rack-see-find", tr("Type what you see"), tr("Point at the place, or type what you see"))
        self._find.edit.textEdited.connect(lambda _text: self._show_lines())
        self._find.edit.left.connect(self.left.emit)
        self._head = SectionHead(look, " ", " ")
        self._body = Rows("rack-see-lines", 14)
        self.choices: list[LineChoice] = []
        self._group = ControlGroup()
        self._lay_out()

    def _lay_out(self) -> None:
        self._plate = QWidget()
        self._plate.setObjectName("rack-see-plate")
        lay_on(self._plate, self.look, "paper-2")
        side = QVBoxLayout(self._plate)
        side.setContentsMargins(20, 18, 8, 8)
        self._switch.turn(True)
        side.addWidget(self._switch)
        side.addWidget(self.figure, 1)
        back = Link(self.look, tr("Back to the question"), "rack-see-back", "bold", big=True)
        back.clicked.connect(self.left.emit)
        scroll = ScrollColumn("rack-see-scroll")
        column = scroll.column
        column.addWidget(PageTitle(self.look, tr("What shows"), "rack-see-title"))
        for gap, widget in ((12, self._find), (16, self._head), (12, self._body), (20, left(back))):
            column.addSpacing(gap)
            column.addWidget(widget)
        column.addStretch(1)
        whole = QHBoxLayout(self)
        whole.setContentsMargins(0, 0, 0, 0)
        whole.setSpacing(0)
        whole.addWidget(self._plate)
        whole.addWidget(scroll, 1)

    def arrange(self, _columns: int) -> None:
        if self._garment:
            self._show_lines()

    def fold(self, width: int) -> None:
        super().fold(width)
        self._plate.setFixedWidth(min(PLATE, round(width * SHARE)))

    # ---- showing

    def begin(self, side: str) -> None:
        """Begin anew, at a side where something shows."""
        self._find.edit.clear()
        self._zone, self._all = "", False
        garment = self.hand.garment
        views = views_of(self.hand.knowledge, garment.garment) if garment else ()
        self._garment = garment.garment if garment else ""
        self._view = next((view for view in views if view == side), views[0] if views else "back")

    def show_job(self) -> None:
        garment, know = self.hand.garment, self.hand.knowledge
        if garment is None:
            return
        views = views_of(know, garment.garment)
        figure = figure_of(know, garment.garment, self._view)
        for button in self._switch.buttons:
            button.setVisible(button.view in views)
        self._switch.show_view(self._view, ())
        self._plate.setVisible(figure is not None)
        if figure is not None:
            side = lower_first(tr(VIEW_WORDS[self._view]))
            said = tr("{garment}, seen from the {view}", garment=know.garments[garment.garment].title, view=side)
            self.figure.show_figure(figure, {"garment": garment.garment}, self._zones(), said)
            self.figure.choose(self._zone)
        self._show_lines()

    def _symptoms(self) -> list[Symptom]:
        """What can show on the side shown and is not noted yet, the commonest first."""
        garment = self.hand.garment
        if garment is None:
            return []
        seen = garment.rack.case.seen
        at = [s for s in self.hand.knowledge.symptoms_of(garment.garment).values() if s.view == self._view and s.id not in seen]
        return by_frequency(self.hand.knowledge, garment.garment, at)

    def _zones(self) -> dict[str, str]:
        possible = {symptom.zone for symptom in self._symptoms()}
        zones = zones_of(self.hand.knowledge, self._garment, self._view)
        return {zone: title for zone, title in zones.items() if zone in possible}

    def _show_lines(self) -> None:
        words = self._find.edit.text().strip()
        if len(words) >= LEAST_LETTERS:
            self._show_finds(words)
        elif self._zone:
            at = [symptom for symptom in self._symptoms() if symptom.zone == self._zone]
            self._show(tr("What can show there: {place}", place=lower_first(self._zones().get(self._zone, ""))), at)
        else:
            self._show_places()

    def _show_finds(self, words: str) -> None:
        hits = self.hand.job.index.search(words, Filter("symptoms", self._garment), most=8)
        found = [self.hand.knowledge.symptoms[hit.id] for hit in hits]
        self._show(tr("Finds for ‘{words}’", words=words) if found else tr("Nothing under ‘{words}’", words=words), found)
        if not found:
            self._body.show_rows([Words(self.look, tr("Try the place, or how the cloth lies: folds, pulls, gapes, droops."), "reading")])

    def _show_places(self) -> None:
        self.choices = []
        self._head.say(tr("Where is it?"), tr("Or point at the figure."))
        holder = QWidget()
        flow = FlowLayout(holder, 12)
        buttons = [Button(self.look, title, f"rack-see-zone-{zone}") for zone, title in self._zones().items()]
        for button, zone in zip(buttons, self._zones(), strict=True):
            button.clicked.connect(lambda _on=False, at=zone: self.choose_zone(at))
            flow.addWidget(button)
        self._group = ControlGroup(buttons)
        self._body.show_rows([holder])

    def _show(self, title: str, symptoms: Sequence[Symptom]) -> None:
        places = count(len(symptoms), "1 line", "{number} lines") if symptoms else " "
        self._head.say(title, places)
        shown = symptoms if self._all else symptoms[:FEW]
        self.choices = [self._choice(symptom) for symptom in shown]
        self._group = ControlGroup(self.choices)
        holder = QWidget()
        flow = FlowLayout(holder, 20)
        for choice in self.choices:
            flow.addWidget(choice)
        rows: list[QWidget] = [holder]
        if len(symptoms) > len(shown):
            more = Link(self.look, count(len(symptoms) - FEW, "Show 1 more", "Show {number} more"), "rack-see-more", "bold", big=True)
            more.clicked.connect(self._show_all)
            rows.append(left(more))
        if self._zone:
            places_link = Link(self.look, tr("All places"), "rack-see-places", "bold", big=True)
            places_link.clicked.connect(lambda: self.choose_zone(""))
            rows.append(left(places_link))
        self._body.show_rows(rows)

    def _choice(self, symptom: Symptom) -> LineChoice:
        hand = self.hand
        where = how_it_lies(symptom) if self._zone else place_of(hand.knowledge, symptom, self._garment)
        picture = symptom_picture(hand.job, self.look, symptom, self._garment)
        choice = LineChoice(self.look, symptom.id, symptom.short or symptom.title, where, picture, f"rack-see-{symptom.id}")
        choice.setCheckable(False)
        choice.setAccessibleDescription(symptom.look)
        choice.setToolTip(symptom.look)
        choice.set_picture((max(PICTURE[0], self.look.px(LEAST)), PICTURE[1]), beside=False)
        choice.clicked.connect(lambda: self.chosen.emit(symptom.id))
        return choice

    # ---- what the buyer does

    def show_view(self, view: str) -> None:
        """Show another side."""
        garment = self.hand.garment
        known = views_of(self.hand.knowledge, garment.garment) if garment else ()
        self._view = next((one for one in known if one == view), self._view)
        self._zone, self._all = "", False
        self.show_job()

    def choose_zone(self, zone: str) -> None:
        """Show what can show at a place; no place shows the places."""
        self._zone, self._all = zone, False
        self._find.edit.clear()
        self.figure.choose(zone)
        self._show_lines()
        first = next(iter(self._group.controls), None)
        if first is not None:
            first.setFocus(Qt.FocusReason.OtherFocusReason)

    def _show_all(self) -> None:
        self._all = True
        self._show_lines()
        self.choices[FEW].setFocus(Qt.FocusReason.OtherFocusReason)

    def focus_first(self, reason: Qt.FocusReason) -> None:
        self._find.edit.setFocus(reason)
