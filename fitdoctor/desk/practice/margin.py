"""The margin of an exercise: lines known, pairs mixed up, today."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import UTC, datetime

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QHBoxLayout, QWidget

from fitdoctor.desk.look import Look
from fitdoctor.desk.parts.button import Link
from fitdoctor.desk.parts.progress_cells import ProgressCells
from fitdoctor.desk.parts.rows import Rows, left
from fitdoctor.desk.parts.text import OneLine, Rule, SectionHead, Words
from fitdoctor.desk.parts.view_switch import VIEW_WORDS
from fitdoctor.desk.practice.sitting import Sitting
from fitdoctor.desk.words import count, lower_first, tr
from fitdoctor.practice.progress import Known, confusions, lines_known, title_of

_MOST_SIDES, _MOST_PAIRS = 6, 2


class Margin(Rows):
    """Emits the pair to practise, and that one wants the set or the results."""

    pairWanted = Signal(object)
    setWanted = Signal()
    resultsWanted = Signal()

    def __init__(self, look: Look, sitting: Sitting) -> None:
        super().__init__("practise-margin", 4)
        self.look, self.sitting = look, sitting

    def show_progress(self) -> None:
        """Show it as it is now."""
        self.show_rows([*self._set(), *self._lines(), *self._pairs(), *self._today()])

    def _head(self, title: str, remark: str = "", first: bool = False) -> SectionHead:
        head = SectionHead(self.look, title, remark)
        head.setContentsMargins(0, 0 if first else 20, 0, 4)
        return head

    def _set(self) -> Iterator[QWidget]:
        made = self.sitting.set
        if made is not None:
            yield self._head(tr("The set"), first=True)
            yield Words(self.look, made.scope.words, "row")
            yield Words(
                self.look,
                tr("Seed {seed}, code {code}. Who has the same code has the same set.", seed=made.seed, code=made.code),
                "small",
                "ink-2",
                "practise-code",
            )

    # ---- lines known

    def _lines(self) -> Iterator[QWidget]:
        yield self._head(tr("Lines you know"), tr("of those met"), first=self.sitting.set is None)
        answers = self.sitting.record.answers
        last = {(answer.garment, answer.view): at for at, answer in enumerate(answers)}
        sides = sorted(lines_known(answers, self.sitting.schedule.settled), key=lambda side: -last[(side.garment, side.view)])
        for side in sides[:_MOST_SIDES]:
            yield from self._side(side)
        if not sides:
            yield Words(self.look, tr("None met yet. A line is known once it was named right twice."), "small", "ink-2")

    def _side(self, side: Known) -> Iterator[QWidget]:
        garments = self.sitting.knowledge.garments
        garment = garments[side.garment].title if side.garment in garments else side.garment
        view = lower_first(tr(VIEW_WORDS[side.view])) if side.view in VIEW_WORDS else side.view
        title, share = tr("{garment}, {side}", garment=garment, side=view), tr("{known} of {met}", known=side.known, met=side.met)
        row = QWidget()
        line = QHBoxLayout(row)
        line.setContentsMargins(0, 4, 0, 2)
        line.addWidget(Words(self.look, title, "row"), 1)
        line.addWidget(OneLine(self.look, share, "row", "ink-2"), 0, Qt.AlignmentFlag.AlignBottom)
        yield row
        yield ProgressCells(self.look, side.known, side.met, f"{title}: {share}")
        yield Rule(self.look)

    # ---- pairs

    def _pairs(self) -> Iterator[QWidget]:
        know = self.sitting.knowledge
        mixed: dict[tuple[str, ...], None] = {}
        for one in confusions(self.sitting.record.answers, ("lines", "cause")):
            both = (one.right, one.given)
            if all(id_ in know.symptoms or id_ in know.causes for id_ in both):
                mixed.setdefault(tuple(sorted(both)))
        if not mixed:
            return
        yield self._head(tr("You mix these up"))
        for number, (one_id, other) in enumerate(list(mixed)[:_MOST_PAIRS], 1):
            yield Words(self.look, f"{title_of(know, one_id)} / {lower_first(title_of(know, other))}", "small")
            link = Link(self.look, tr("Practise the pair"), f"practise-pair-{number}")
            link.clicked.connect(lambda _on=False, ids=(one_id, other): self.pairWanted.emit(ids))
            yield left(link)

    # ---- today

    def _today(self) -> Iterator[QWidget]:
        yield self._head(tr("Today"))
        today = self.sitting.today()
        right = sum(answer.mark == "right" for answer in today)
        answers = count(len(today), "1 question answered, {right} right.", "{number} questions answered, {right} right.", right=right)
        yield Words(self.look, answers if today else tr("Nothing answered yet."), "small", name="practise-today")
        due = len(self.sitting.schedule.due(datetime.now(UTC)))
        if due:
            yield Words(self.look, count(due, "1 thing is due to come back.", "{number} things are due to come back."), "small")
        for name, text, signal in (("set", tr("A set for a class"), self.setWanted), ("results", tr("How it goes"), self.resultsWanted)):
            link = Link(self.look, text, f"practise-{name}")
            link.clicked.connect(signal.emit)
            yield left(link)
