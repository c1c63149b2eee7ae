"""A set for a class: garment, place, level, kind, and the seed that fixes it."""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QWidget

from fitdoctor.desk.job import Job
from fitdoctor.desk.look import Look
from fitdoctor.desk.pages.page import Page, section
from fitdoctor.desk.parts.button import Button, Link
from fitdoctor.desk.parts.field import Field
from fitdoctor.desk.parts.flow import FlowLayout
from fitdoctor.desk.parts.round_choice import ChoiceRow
from fitdoctor.desk.parts.rows import Rows
from fitdoctor.desk.parts.text import PageTitle, Words
from fitdoctor.desk.parts.view_switch import VIEW_WORDS
from fitdoctor.desk.words import lower_first, tr
from fitdoctor.figure.choose import views_of
from fitdoctor.practice.exercise import KIND_WORDS, KINDS, LEVELS, Kind, Level
from fitdoctor.practice.scope import Scope

ANY = "any"
COUNTS = (5, 10, 20)
LEVEL_WORDS: dict[Level, str] = {"easy": "Easy", "moderate": "Moderate", "hard": "Hard"}
_SEED_WIDE = 12
"In em."


class SetPage(Page):
    """Emits the scope, the seed and the number; and that one wants back."""

    step = "practise-set"
    started = Signal(object, str, int)
    left = Signal()

    def __init__(self, look: Look, job: Job) -> None:
        super().__init__(look, job)
        self.picked = {"garment": ANY, "region": ANY, "level": "moderate", "kind": ANY, "count": "10"}
        self._title = PageTitle(look, tr("A set for a class"), "practise-set-title")
        self._title.remark(tr("The same choices and the same seed give the same exercises on every machine."))
        self._choices = Rows("practise-set-choices", 14)
        self.seed = Field(look, "practise-seed", tr("Seed: a word or a number"), tr("A word or a number"))
        self.seed.setFixedWidth(look.px(_SEED_WIDE))
        self.seed.edit.setText("1")
        self.seed.edit.returnPressed.connect(self._start)
        start = Button(look, tr("Start the set ›"), "practise-start-set", "go")
        start.clicked.connect(self._start)
        back = Link(look, tr("Back to the exercises"), "practise-set-back", "bold", big=True)
        back.clicked.connect(self.left.emit)
        ways = QWidget()
        flow = FlowLayout(ways, 20)
        flow.addWidget(start)
        flow.addWidget(back)
        ways.setContentsMargins(0, 20, 0, 0)
        many = self._row("count", tr("How many"), [(str(number), str(number)) for number in COUNTS])
        last = QWidget()
        last.setContentsMargins(0, 14, 0, 0)
        beside = FlowLayout(last, 40)
        beside.addWidget(many)
        beside.addWidget(section(Words(look, tr("Seed"), "bold"), self.seed, gap=6))
        self.stand(self._title, self._choices, last, ways, gap=16)

    def arrange(self, _columns: int) -> None:
        self._show_choices()

    def show_job(self) -> None:
        self._show_choices()

    def _show_choices(self) -> None:
        with self.focus_kept():
            self._choices.show_rows([self._row(name, head, values) for name, head, values in self._asked()])

    def _asked(self) -> list[tuple[str, str, list[tuple[str, str]]]]:
        know = self.job.knowledge
        garments = [(id_, know.garments[id_].title) for id_ in Scope().garments(know)]
        return [
            ("garment", tr("Garment"), [(ANY, tr("Any")), *garments]),
            ("region", tr("Place"), [(ANY, tr("Anywhere")), *self._regions()]),
            ("level", tr("Level"), [(level, tr(LEVEL_WORDS[level])) for level in LEVELS]),
            ("kind", tr("Kind of exercise"), [(ANY, tr("All of the level")), *((kind, tr(KIND_WORDS[kind])) for kind in KINDS)]),
        ]

    def _regions(self) -> list[tuple[str, str]]:
        """The sides of the garment, and its places where at least two lines can be told apart."""
        know, garment = self.job.knowledge, self.picked["garment"]
        if garment == ANY:
            return [(view, tr(word)) for view, word in VIEW_WORDS.items()]
        sides = [(view, tr(VIEW_WORDS[view])) for view in views_of(know, garment)]
        symptoms = Scope(garment).symptoms(know, garment).values()
        at = [(symptom.view, symptom.zone) for symptom in symptoms]
        zones = {(zone.view, zone.id): zone.title for kind in know.kinds_of(garment) for zone in know.garments[kind].zones}
        busy = [place for place in dict.fromkeys(at) if at.count(place) > 2 and place in zones]
        places = [
            (f"{view} {zone}", tr("{place}, {view}", place=zones[(view, zone)], view=lower_first(tr(VIEW_WORDS[view]))))
            for view, zone in busy
        ]
        return [*sides, *places]

    def _row(self, name: str, head: str, values: list[tuple[str, str]]) -> QWidget:
        if self.picked[name] not in dict(values):
            self.picked[name] = ANY
        row = ChoiceRow(self.look, name, values, self.picked[name], f"practise-set-{name}", asked=head)
        row.chosen.connect(self._pick)
        return section(Words(self.look, head, "bold"), row, gap=6)

    def _pick(self, name: str, value: str) -> None:
        self.picked[name] = value
        if name == "garment":
            self._show_choices()

    def scope(self) -> Scope:
        """What was chosen."""
        picked = self.picked
        region = picked["region"]
        words = tuple(word for part in region.split() for word in part.split("-")) if region != ANY else ()
        kinds: tuple[Kind, ...] = tuple(kind for kind in KINDS if kind == picked["kind"])
        level: Level = next(level for level in LEVELS if level == picked["level"])
        return Scope("" if picked["garment"] == ANY else picked["garment"], words, level, kinds)

    def _start(self) -> None:
        self.started.emit(self.scope(), self.seed.edit.text().strip() or "1", int(self.picked["count"]))

    def focus_first(self, reason: Qt.FocusReason) -> None:
        row = self.findChild(ChoiceRow, "practise-set-garment")
        if row is not None:
            row.focus_first(reason)
