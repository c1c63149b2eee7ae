"""The answer to a buyer: what to do, what decided it, what must be so, what to check at home, what is never altered."""

from __future__ import annotations

from collections.abc import Iterator

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from fitdoctor.desk.look import Look
from fitdoctor.desk.pages.page import section
from fitdoctor.desk.pages.said import who_says
from fitdoctor.desk.parts.button import Button, Link
from fitdoctor.desk.parts.flow import FlowLayout
from fitdoctor.desk.parts.message_bar import SignBox
from fitdoctor.desk.parts.reason_note import ReasonNote
from fitdoctor.desk.parts.rows import Rows
from fitdoctor.desk.parts.signs import Sign
from fitdoctor.desk.parts.text import SectionHead, Words
from fitdoctor.desk.rack.basted import Basted
from fitdoctor.desk.rack.hand import RackHand
from fitdoctor.desk.rack.said import DECISIONS, SIDES, condition_said
from fitdoctor.desk.words import and_list, tr, upper_first
from fitdoctor.rack.answer import RackAnswer
from fitdoctor.rack.decision import Decision

SIGNS: dict[Decision, tuple[Sign, str]] = {
    "BUY": ("tick", "good"),
    "BUY_IF": ("query", "care"),
    "LEAVE_IT": ("leave", "ink"),
    "NOT_KNOWN": ("query", "care"),
}


class VerdictColumn(QWidget):
    """Emits what one wants to do next."""

    newWanted = Signal()
    fitWanted = Signal()
    backWanted = Signal()
    seeWanted = Signal()
    everythingWanted = Signal()

    def __init__(self, look: Look, hand: RackHand) -> None:
        super().__init__()
        self.look, self.hand = look, hand
        self._sources_open = False
        self._shown: tuple[RackAnswer, int] | None = None
        self._said = Rows("rack-verdict", 20)
        self._new = Button(look, tr("Another garment"), "rack-next-garment", "go")
        self._fit = Button(look, tr("Fit this garment"), "rack-fit")
        self._everything = Button(look, tr("Ask everything"), "rack-everything")
        self._back = Link(look, tr("Back one question"), "rack-back", "bold", big=True)
        self._see = Link(look, tr("Note what shows"), "rack-see", "bold", big=True)
        ways = QWidget()
        flow = FlowLayout(ways, 16)
        pairs = (
            (self._new, self.newWanted),
            (self._fit, self.fitWanted),
            (self._everything, self.everythingWanted),
            (self._back, self.backWanted),
            (self._see, self.seeWanted),
        )
        for control, signal in pairs:
            control.clicked.connect(signal.emit)
            flow.addWidget(control)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(24)
        column.addWidget(self._said)
        column.addWidget(ways)

    def show_answer(self, answer: RackAnswer, columns: int) -> None:
        """Show an answer that no question can change any more."""
        self._shown = answer, columns
        self._said.show_rows([self._head(answer, columns), *self._parts(answer)])
        self._everything.setVisible(answer.rack.hurry)
        self._fit.setVisible(answer.decision != "LEAVE_IT")

    def show_back(self, possible: bool) -> None:
        """Whether there is an answer to take back."""
        self._back.setVisible(possible)

    def _head(self, answer: RackAnswer, columns: int) -> QWidget:
        sign, tone = SIGNS[answer.decision]
        top = QWidget()
        row = QHBoxLayout(top)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(14)
        row.addWidget(SignBox(self.look, sign, tone, 1.9))
        role = "rack-question" if columns > 1 else "page-title"
        row.addWidget(Words(self.look, tr(DECISIONS[answer.decision]), role, name="rack-decision"), 1)
        in_a_hurry, done = tr("In a hurry: only what could break the deal was asked."), tr("No answer could change it any more.")
        remark = Words(self.look, in_a_hurry if answer.rack.hurry else done, "small", "ink-2", "rack-remark")
        return section(remark, top, Words(self.look, self._reason(answer), "lead", name="rack-reason"), gap=8)

    def _reason(self, answer: RackAnswer) -> str:
        """What decided it; where the frame below names what it hangs on, what hangs on it."""
        money, total = self.hand.money, answer.sum
        if not answer.only_if or total.left_over < 0:
            return answer.reason.text
        return tr("If so, {left} is left over; if not, {price} is lost.", left=money.say(total.left_over), price=money.say(total.price))

    def _parts(self, answer: RackAnswer) -> Iterator[QWidget]:
        if answer.only_if:
            lines = [(condition_said(state) + ".", state.at_the_rack or state.ask) for state in answer.only_if]
            yield Basted(self.look, lines, "rack-if")
        buys = answer.decision in ("BUY", "BUY_IF")
        if buys and answer.at_home:
            yield self._part(tr("At home, before cutting"), [answer.at_home], "rack-at-home")
        if answer.other_size:
            yield self._part(tr("Which size instead"), [reason.text for reason in answer.other_size], "rack-other-size")
        open_sides = [tr(SIDES[side]) for side in answer.rack.sides_not_looked_over]
        if buys and open_sides:
            text = tr("{sides}. What could show there is taken as not there.", sides=upper_first(and_list(open_sides)))
            yield self._part(tr("Not looked over"), [text], "rack-not-looked")
        if answer.cautions:
            said = [f"**{caution.title.rstrip('.')}.** {caution.how}".strip() for caution in answer.cautions]
            yield self._part(tr("Never altered, for safety"), said, "rack-cautions", self._sources_link())
        if answer.cautions and self._sources_open:
            yield self._note(answer)

    def _part(self, title: str, lines: list[str], name: str, remark: str | QWidget = "") -> QWidget:
        body = [Words(self.look, line, "body", name=f"{name}-{at}") for at, line in enumerate(lines, 1)]
        return section(SectionHead(self.look, title, remark), *body, gap=6)

    def _sources_link(self) -> Link:
        words = tr("Close the reasons") if self._sources_open else tr("Why, and who says so")
        link = Link(self.look, words, "rack-cautions-why")
        link.clicked.connect(self._turn_sources)
        return link

    def _turn_sources(self) -> None:
        self._sources_open = not self._sources_open
        if self._shown:
            self.show_answer(*self._shown)
            link = self.findChild(Link, "rack-cautions-why")
            if link:
                link.setFocus(Qt.FocusReason.OtherFocusReason)

    def _note(self, answer: RackAnswer) -> ReasonNote:
        why = " ".join(dict.fromkeys(caution.because for caution in answer.cautions))
        instead = " ".join(dict.fromkeys(caution.instead for caution in answer.cautions if caution.instead))
        sources = [source for caution in answer.cautions for source in caution.sources]
        return ReasonNote(self.look, why, who_says(self.hand.knowledge, sources), instead)

    def focus_first(self, reason: Qt.FocusReason) -> None:
        """Put the focus on the way on."""
        self._new.setFocus(reason)
