"""The garments of the list in hand, each with how it stands; the way to the comparison and to earlier lists."""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from fitdoctor.desk.look import Look
from fitdoctor.desk.parts.button import Button, Link
from fitdoctor.desk.parts.flow import FlowLayout
from fitdoctor.desk.parts.rows import Rows
from fitdoctor.desk.parts.tag import StateTag, TagState
from fitdoctor.desk.parts.text import Rule, SectionHead, Words
from fitdoctor.desk.rack.hand import RackHand
from fitdoctor.desk.rack.kept import OnRack
from fitdoctor.desk.rack.said import DECISIONS, balance_said
from fitdoctor.desk.words import count, tr
from fitdoctor.rack.decision import Decision

TAGS: dict[Decision, TagState] = {"BUY": "met", "BUY_IF": "not-known", "NOT_KNOWN": "not-known", "LEAVE_IT": "plain"}


class ListColumn(QWidget):
    """Emits that earlier lists are wanted."""

    listsWanted = Signal()

    def __init__(self, look: Look, hand: RackHand) -> None:
        super().__init__()
        self.look, self.hand = look, hand
        self._head = SectionHead(look, tr("On this list"), " ")
        self._rows = Rows("rack-list")
        self._empty = Words(look, tr("Nothing yet. What you look at is kept here, and can be compared."), "reading", name="rack-list-empty")
        self._compare = Button(look, tr("Compare side by side"), "rack-list-compare")
        self._compare.clicked.connect(lambda: hand.show("compare"))
        self._new = Link(look, tr("Begin a new list"), "rack-list-new", "body", big=True)
        self._new.clicked.connect(hand.new_list)
        self._earlier = Link(look, tr("Earlier lists"), "rack-lists", "body", big=True)
        self._earlier.clicked.connect(self.listsWanted.emit)
        links = QWidget()
        flow = FlowLayout(links, 20)
        flow.addWidget(self._new)
        flow.addWidget(self._earlier)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        for gap, part in ((0, self._head), (10, self._empty), (0, self._rows), (16, self._compare), (10, links)):
            column.addSpacing(gap)
            column.addWidget(part, 0, Qt.AlignmentFlag.AlignLeft if part is self._compare else Qt.AlignmentFlag(0))
        column.addStretch(1)

    def show_list(self) -> None:
        """Show the list in hand."""
        garments = self.hand.list.garments
        self._head.say(tr("On this list"), count(len(garments), "1 garment", "{number} garments") if garments else " ")
        self._empty.setVisible(not garments)
        self._rows.show_rows([self._row(one) for one in garments])
        self._compare.setVisible(len(garments) > 1)
        self._new.setVisible(bool(garments))
        others = (one for one in self.hand.lists.all()[0] if one.id != self.hand.list.id)
        self._earlier.setVisible(next(others, None) is not None)

    def _row(self, one: OnRack) -> QWidget:
        said = tr("{title}, {price}", title=self.hand.title_of(one), price=self.hand.money.say(one.price))
        link = Link(self.look, said, f"rack-list-{one.id}", "bold", big=True)
        link.clicked.connect(lambda: self.hand.open(one.id))
        row = QWidget()
        column = QVBoxLayout(row)
        column.setContentsMargins(0, 2, 0, 0)
        column.setSpacing(0)
        column.addWidget(link, 0, Qt.AlignmentFlag.AlignLeft)
        column.addLayout(self._below(one))
        column.addSpacing(8)
        column.addWidget(Rule(self.look))
        return row

    def _below(self, one: OnRack) -> QHBoxLayout:
        answer, line = self.hand.answer(one), QHBoxLayout()
        line.setSpacing(12)
        if answer is None:
            line.addWidget(Words(self.look, tr("Working it out."), "small", "ink-2"))
            return line
        line.addWidget(StateTag(self.look, TAGS[answer.decision], tr(DECISIONS[answer.decision]), f"rack-list-{one.id}-tag"))
        line.addWidget(Words(self.look, balance_said(self.hand.money, answer.sum.gain), "small", "ink-2"), 1)
        return line
