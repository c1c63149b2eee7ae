"""As things stand: the decision so far, what it hangs on, the sum, and what was answered."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from fitdoctor.desk.look import Look
from fitdoctor.desk.pages.said import who_says
from fitdoctor.desk.parts.button import Link
from fitdoctor.desk.parts.reason_note import ReasonNote
from fitdoctor.desk.parts.rows import Rows
from fitdoctor.desk.parts.text import SectionHead, Words
from fitdoctor.desk.rack.basted import Basted
from fitdoctor.desk.rack.hand import RackHand
from fitdoctor.desk.rack.said import DECISIONS, balance_said, condition_said, risk_said, work_price, work_said
from fitdoctor.desk.rack.sum_sheet import SumLine, SumSheet
from fitdoctor.desk.words import tr
from fitdoctor.rack.answer import RackAnswer
from fitdoctor.rack.told import Told

FEW_DOUBTS = 2
LEAST_MINUTES = 3
"Less work than this is not worth a word."


class Standing(QWidget):
    """The right column. Emits that prices are to be changed, and the place of an answer to be taken back."""

    pricesWanted = Signal()
    takenBack = Signal(int)

    def __init__(self, look: Look, hand: RackHand) -> None:
        super().__init__()
        self.look, self.hand, self.knowledge = look, hand, hand.knowledge
        self._answer: RackAnswer | None = None
        self._of: tuple[str, ...] = ()
        self._why_open = False
        self._top = Rows("rack-standing", 6)
        self._top.setContentsMargins(0, 0, 0, 20)
        prices = Link(look, tr("Change prices"), "rack-prices")
        prices.clicked.connect(self.pricesWanted.emit)
        self._sum_head = SectionHead(look, tr("The sum"), prices)
        self.sum = SumSheet(look)
        self.sum.asked.connect(self._turn_why)
        self._why = Rows("rack-why")
        self._told_head = SectionHead(look, tr("Answered"))
        self._told = Rows("rack-told", 0)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        parts = ((0, self._top), (0, self._sum_head), (4, self.sum), (6, self._why), (20, self._told_head), (4, self._told))
        for gap, part in parts:
            column.addSpacing(gap)
            column.addWidget(part)
        column.addStretch(1)

    def show_answer(self, answer: RackAnswer, told: Sequence[Told], asking: bool) -> None:
        """Show how it stands; while nothing is asked the decision stands at the left already."""
        of = (answer.rack.case.garment, answer.title)
        fresh = self._answer is not None and of == self._of
        self._why_open = self._why_open and fresh
        self._answer, self._of = answer, of
        self._top.show_rows(self._decision(answer) if asking else [])
        self.sum.show_sum(list(self._lines(answer)), fresh)
        self._show_why()
        self._told_head.setVisible(bool(told))
        self._told.show_rows([self._told_row(at, one) for at, one in enumerate(told)])

    def _decision(self, answer: RackAnswer) -> list[QWidget]:
        said = Words(self.look, tr(DECISIONS[answer.decision]), "page-title", name="rack-decision")
        rows: list[QWidget] = [Words(self.look, tr("As things stand"), "small", "ink-2"), said]
        if answer.only_if:
            rows.append(Basted(self.look, [(condition_said(s) + ".", "") for s in answer.only_if[:FEW_DOUBTS]], "rack-if"))
        return rows

    def _lines(self, answer: RackAnswer) -> Iterator[SumLine]:
        money, total, rate = self.hand.money, answer.sum, answer.rack.rate_per_hour
        yield SumLine("worth", tr("Worth to you, altered"), money.say(total.worth))
        yield SumLine("price", tr("Price on the tag"), money.off(total.price))
        works = total.minutes[1] >= LEAST_MINUTES
        below = work_price(money, total, rate) if works else tr("Nothing likely to be done")
        yield SumLine("work", tr("Alteration, likely"), money.off(total.likely) if works else money.say(0.0), below)
        yield SumLine("left", tr("Left over, if it can be done"), money.say(total.left_over), adds_up=True)
        fails = tr("then {amount} is lost", amount=money.say(total.price)) if answer.may_fail else ""
        why = (tr("Close the reasons") if self._why_open else tr("Why it may fail")) if answer.may_fail else ""
        yield SumLine("risk", risk_said(total.fits), "", fails, why)
        yield SumLine("gain", tr("On balance"), balance_said(money, total.gain), adds_up=True)
        worst = tr("{amount} and {time} spent for nothing", amount=money.say(total.worst), time=work_said(total.minutes[1]))
        nothing_done = tr("{amount} spent for nothing", amount=money.say(total.worst))
        yield SumLine("worst", tr("At worst"), "", worst if works else nothing_done)

    def _turn_why(self, _line: str) -> None:
        self._why_open = not self._why_open
        if self._answer:
            self.sum.show_sum(list(self._lines(self._answer)), False)
        self._show_why()

    def _show_why(self) -> None:
        answer = self._answer
        if answer is None or not self._why_open or not answer.may_fail:
            self._why.show_rows([])
            return
        text = "\n\n".join(reason.text for reason in answer.may_fail)
        sources = [source for reason in answer.may_fail for source in reason.sources]
        self._why.show_rows([ReasonNote(self.look, text, who_says(self.knowledge, sources))])

    def _told_row(self, at: int, one: Told) -> QWidget:
        row = QWidget()
        line = QHBoxLayout(row)
        line.setContentsMargins(0, 3, 0, 3)
        line.setSpacing(10)
        number, said = Words(self.look, str(at + 1), "small"), Words(self.look, one.said, "small", name=f"rack-told-{at + 1}")
        number.in_middle = said.in_middle = True
        number.setFixedWidth(self.look.px(1.2))
        back = Link(self.look, tr("Change"), f"rack-told-{at + 1}-change")
        back.setAccessibleName(tr("Change this answer: {answer}", answer=one.said))
        back.clicked.connect(lambda: self.takenBack.emit(at))
        line.addWidget(number)
        line.addWidget(said, 1)
        line.addWidget(back, 0, Qt.AlignmentFlag.AlignVCenter)
        return row
