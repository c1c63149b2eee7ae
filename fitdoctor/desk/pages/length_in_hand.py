"""The length in hand: typed, stepped or pointed at on a tape; what it means; what can be doubted about it; how it is taken."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from fitdoctor.case import Measured
from fitdoctor.desk.job import Job, drawn
from fitdoctor.desk.look import Look
from fitdoctor.desk.pages.page import section
from fitdoctor.desk.pages.said import convention_of, who_says
from fitdoctor.desk.parts.button import Button, Link
from fitdoctor.desk.parts.depth_or_all import DepthOrAll
from fitdoctor.desk.parts.doubt import Doubt, doubt
from fitdoctor.desk.parts.length_field import LengthField
from fitdoctor.desk.parts.picture import SmallPicture
from fitdoctor.desk.parts.reason_note import ReasonNote, beside
from fitdoctor.desk.parts.round_choice import ChoiceRow
from fitdoctor.desk.parts.rows import Rows, left
from fitdoctor.desk.parts.tape_entry import TapeEntry
from fitdoctor.desk.parts.text import Words
from fitdoctor.desk.words import lower_first, tr
from fitdoctor.figure.diagrams import measure_diagram
from fitdoctor.knowledge.entries import Measurement
from fitdoctor.units import step_mm

GIVES = (1, 2, 4, 8)
"Give or take to choose from, in steps of the shop."


class LengthInHand(QWidget):
    """Built anew for each measurement; a length typed before its sense is chosen waits and changes nothing."""

    def __init__(self, look: Look, job: Job) -> None:
        super().__init__()
        self.look, self.job = look, job
        self.measurement = ""
        self._body = Rows("", 10)
        self._how_open = False
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 20, 0, 0)
        column.addWidget(self._body)

    @property
    def _draft(self) -> str:
        """The name under which what cannot be used yet is kept."""
        return f"measure-{self.measurement}"

    @property
    def entry(self) -> Measurement:
        """The measurement in hand."""
        return self.job.knowledge.measurements[self.measurement]

    def show_measurement(self, measurement: str) -> None:
        """Take a measurement in hand, or show the one in hand anew."""
        if measurement != self.measurement:
            self.measurement, self._how_open = measurement, False
            self._build()
        self._show_value()

    def _build(self) -> None:
        look, entry, name = self.look, self.entry, f"measure-{self.measurement}"
        self._how = Link(look, tr("How to measure it"), f"{name}-how")
        self._how.clicked.connect(self._turn_how)
        head = QWidget()
        line = QHBoxLayout(head)
        line.setContentsMargins(0, 0, 0, 0)
        line.addWidget(Words(look, entry.title, "section-title"), 1)
        line.addWidget(self._how, 0, Qt.AlignmentFlag.AlignBottom)
        self._field = LengthField(look, self.job.shop, f"{name}-field", entry.title)
        self._field.lengthTyped.connect(self._typed)
        self._field.cleared.connect(self._cleared)
        self._field.notRead.connect(self._not_read)
        self._give = Words(look, "", "small", "ink-2", f"{name}-give")
        self._change = Link(look, tr("Change"), f"{name}-give-change")
        self._change.setAccessibleName(tr("Change how exactly {what} was measured", what=lower_first(entry.title)))
        self._change.clicked.connect(self._turn_give)
        self._gives = Rows(f"{name}-gives")
        self._tape = TapeEntry(look, self.job.shop, f"{name}-tape", tr("{title}, on a tape", title=entry.title))
        self._tape.lengthPointed.connect(self._pointed)
        self._wrong = Words(look, "", "small", "stop", f"{name}-wrong")
        self._doubt = Rows("", 6)
        self._ask = Words(look, tr("What did you measure?"), "bold")
        self._sense = DepthOrAll(look, f"{name}-sense")
        self._sense.senseChosen.connect(self._choose_sense)
        self._meant = Words(look, "", "body", name=f"{name}-meant")
        self._note = Rows(f"{name}-note")
        two = entry.sense == "depth-or-all"
        exactly = section(self._give, left(self._change), gap=2)
        entry_row = beside(self._field, exactly)
        rows: list[QWidget] = [head, entry_row, self._gives, self._wrong, self._tape, self._doubt, self._note]
        rows += [self._ask, self._sense] if two else []
        self._body.show_rows([*rows, self._meant])

    # ---- showing

    def _as_depth(self) -> bool:
        return self.measurement in self.job.kept.depths

    def _sense_chosen(self) -> str:
        if self.entry.sense != "depth-or-all":
            return "all"
        if self.measurement in self.job.case.measured:
            return "depth" if self._as_depth() else "all"
        return ""

    def _show_value(self) -> None:
        reading = self.job.case.measured.get(self.measurement)
        sense = self._sense_chosen()
        draft = self.job.kept.drafts.get(self._draft, "")
        shown = None
        if draft:
            self._field.restore(draft)
            shown = self._field.mm
        elif reading is not None:
            shown = reading.mm / 2 if sense == "depth" else reading.mm
        if not draft and (shown is None or self._field.mm is None or abs(self._field.mm - shown) > 1e-9):
            self._field.show_length(shown)
        self._tape.show_length(shown)
        self._sense.show_sense(sense)
        self._give.say(tr("Give or take {length}.", length=self.job.shop.length(self._give_mm())))
        self._change.setVisible(reading is not None)
        self._meant.say(self._understood(reading, shown, sense))
        self._show_doubt(shown, sense)

    def _understood(self, reading: Measured | None, shown: float | None, sense: str) -> str:
        """What was understood, in words."""
        shop, kind = self.job.shop, self.entry.sense
        if shown is None:
            return ""
        if kind == "depth-or-all" and not sense:
            return tr("Choose which of the two it is; until then nothing is worked out.")
        if reading is None:
            return ""
        if sense == "depth" and kind == "depth-or-all":
            depth, all_ = shop.length(reading.mm / 2), shop.length(reading.mm)
            return tr("A fold takes up twice its depth: **{depth} deep takes up, in all, {all}.**", depth=depth, all=all_)
        return tr("Understood: **{length}.**", length=f"{convention_of(self.entry)} {shop.length(reading.mm)}".strip())

    def _show_doubt(self, shown: float | None, sense: str) -> None:
        entry = self.entry
        mm = None if shown is None else shown * (2 if sense == "depth" else 1)
        found = doubt(mm, entry.usual_mm, entry.possible_mm, self.job.shop) if mm is not None and sense else None
        self._doubt.show_rows(self._questions(found) if found else [])

    def _questions(self, found: Doubt) -> list[QWidget]:
        shop, title = self.job.shop, lower_first(self.entry.title)
        length = shop.length(found.mm)
        if not found.possible:
            text = tr("{length} cannot be right for {what}.", length=length, what=title)
        elif found.too_much:
            text = tr("{length} is a great deal for {what}.", length=length, what=title)
        else:
            text = tr("{length} is very little for {what}.", length=length, what=title)
        if found.meant_mm is None:
            return [Words(self.look, f"{text} {tr('Look again.')}", "small", "care", f"measure-{self.measurement}-doubt")]
        meant = shop.length(found.meant_mm)
        words = Words(self.look, f"{text} {tr('Did you mean {meant}?', meant=meant)}", "small", "care", f"measure-{self.measurement}-doubt")
        change = Button(self.look, tr("Change to {meant}", meant=meant), f"measure-{self.measurement}-change")
        change.clicked.connect(lambda: self._enter(found.meant_mm or 0.0, self._sense_chosen()))
        return [words, beside(change)]

    # ---- what the fitter does

    def _typed(self, mm: float) -> None:
        self._wrong.say("")
        self._take(mm)

    def _pointed(self, mm: float) -> None:
        self._field.show_length(mm)
        self._take(mm)

    def _take(self, mm: float) -> None:
        sense = self._sense_chosen()
        if sense:
            self.job.measure(self.measurement, mm * 2 if sense == "depth" else mm, sense == "depth")
        else:
            self.job.draft(self._draft, self._field.edit.text())
            self._show_value()

    def _enter(self, mm_in_all: float, sense: str) -> None:
        self._field.edit.clearFocus()
        self.job.measure(self.measurement, mm_in_all, sense == "depth")

    def _cleared(self) -> None:
        self._wrong.say("")
        self.job.draft(self._draft, "")
        self.job.measure(self.measurement, None)

    def _not_read(self, text: str) -> None:
        self.job.draft(self._draft, text)
        self._wrong.say(tr("‘{typed}’ is not a length yet. Write it as 1 1/2, 1.5 or 38 mm.", typed=text))

    def _choose_sense(self, sense: str) -> None:
        if self._field.mm is not None:
            mm = self._field.mm
            self.job.measure(self.measurement, mm * 2 if sense == "depth" else mm, sense == "depth")

    def _turn_give(self) -> None:
        if self._gives.rows():
            self._gives.show_rows([])
            return
        shop = self.job.shop
        step = step_mm(shop.unit, shop.finest)
        values = [(repr(step * steps), shop.length(step * steps)) for steps in GIVES]
        now = repr(self._give_mm())
        row = ChoiceRow(self.look, self.measurement, values, now, f"measure-{self.measurement}-gives-row", tr("Give or take"))
        row.chosen.connect(self._take_give)
        self._gives.show_rows([row])

    def _take_give(self, measurement: str, give: str) -> None:
        self.job.give_or_take(measurement, float(give))
        self._gives.show_rows([])

    def _give_mm(self) -> float:
        reading = self.job.case.measured.get(self.measurement)
        return reading.give_mm if reading and reading.give_mm is not None else self.entry.tolerance_mm

    def _turn_how(self) -> None:
        self._how_open = not self._how_open
        self._how.say(tr("Close") if self._how_open else tr("How to measure it"))
        self._note.show_rows([self._how_note()] if self._how_open else [])

    def _how_note(self) -> QWidget:
        job, entry, tones = self.job, self.entry, self.look.tones
        diagram = measure_diagram(job.knowledge, entry, job.case.garment)
        picture = None
        if diagram:
            size = (self.look.grown(220), self.look.grown(180))
            picture = left(SmallPicture(self.look, drawn(job, diagram, tones), size, tr("From where to where: {title}", title=entry.title)))
        who = who_says(job.knowledge, entry.sources)
        return ReasonNote(self.look, " ".join(entry.how), who, entry.repeat, picture=picture, heads=("How", "Twice"))

    def focus_first(self, reason: Qt.FocusReason) -> None:
        """Put the focus on the field."""
        self._field.edit.setFocus(reason)
