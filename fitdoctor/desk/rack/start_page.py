"""The start at the rack: what garment, what it costs, what it would be worth, whose time is counted."""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QVBoxLayout, QWidget

from fitdoctor.desk.look import Look
from fitdoctor.desk.pages.kinds import Kinds
from fitdoctor.desk.pages.page import Columns, Page, ScrollColumn, section
from fitdoctor.desk.parts.button import Button
from fitdoctor.desk.parts.field import Field
from fitdoctor.desk.parts.flow import FlowLayout
from fitdoctor.desk.parts.round_choice import ChoiceRow
from fitdoctor.desk.parts.rows import Rows
from fitdoctor.desk.parts.text import PageTitle, SectionHead, Words
from fitdoctor.desk.rack.amount_field import AmountField
from fitdoctor.desk.rack.hand import RackHand
from fitdoctor.desk.rack.list_column import ListColumn
from fitdoctor.desk.tokens import GUTTER
from fitdoctor.desk.words import tr

_OWN, _PAID = "own", "paid"


class StartPage(Page):
    """Typed text is kept as it is typed. Emits that earlier lists are wanted."""

    step = "rack-start"
    listsWanted = Signal()

    def __init__(self, look: Look, hand: RackHand) -> None:
        super().__init__(look, hand.job)
        self.hand = hand
        self._title = PageTitle(look, tr("At the rack"), "rack-title")
        self._kinds = Kinds(look, hand, "rack")
        self._kinds.chosen.connect(lambda _kind: self.focus_first(Qt.FocusReason.OtherFocusReason))
        self._name = Field(look, "rack-name", tr("The garment in a few words"), tr("Black dress trousers"))
        self._name.edit.textEdited.connect(lambda text: hand.draft(title=text))
        self._price = self._amount("price", tr("Price on the tag"))
        self._worth = self._amount("worth", tr("Worth to you if it fitted"))
        self._rate = self._amount("rate", tr("An hour of work costs"))
        self.amounts = {"price": self._price, "worth": self._worth, "rate": self._rate}
        self._named = section(Words(look, tr("What it is called"), "small", "ink-2"), self._name, gap=4)
        self._fields, self._work = Columns(20), Columns(20)
        self._wages = Rows("rack-wages")
        self._money_head = SectionHead(look, tr("Name and price"), tr("Worth: what you would pay for the like that fitted."))
        self._work_head = SectionHead(look, tr("The work"))
        self.list = ListColumn(look, hand)
        self.list.listsWanted.connect(self.listsWanted.emit)
        self._columns = Columns(GUTTER + 8)
        self._form = self._lay_form()
        scroll = ScrollColumn("rack-start-scroll")
        scroll.column.addWidget(self._title)
        scroll.column.addSpacing(12)
        scroll.column.addWidget(self._columns)
        scroll.column.addStretch(1)
        whole = QVBoxLayout(self)
        whole.setContentsMargins(0, 0, 0, 0)
        whole.addWidget(scroll)

    def _amount(self, name: str, title: str) -> AmountField:
        field = AmountField(self.look, name, title, self.hand.money, may_be_nothing=name != "worth")
        field.typed.connect(lambda text: self.hand.draft(**{name: text}))
        field.field.edit.returnPressed.connect(lambda: self._take(False))
        return field

    def _lay_form(self) -> QWidget:
        ways = QWidget()
        flow = FlowLayout(ways, 16)
        self._go = Button(self.look, tr("Ask one question at a time ›"), "rack-go", "go")
        self._hurry = Button(self.look, tr("In a hurry: only deal breakers, ten seconds"), "rack-hurry")
        self._go.clicked.connect(lambda: self._take(False))
        self._hurry.clicked.connect(lambda: self._take(True))
        flow.addWidget(self._go)
        flow.addWidget(self._hurry)
        self._after_kind = (self._money_head, self._fields, self._work_head, self._work, ways)
        form = QWidget()
        column = QVBoxLayout(form)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        parts = (
            (0, self._kinds),
            (20, self._money_head),
            (10, self._fields),
            (18, self._work_head),
            (10, self._work),
            (24, ways),
        )
        for gap, part in parts:
            column.addSpacing(gap)
            column.addWidget(part)
        column.addStretch(1)
        return form

    def arrange(self, columns: int) -> None:
        fields = [(self._named, 5), (self._price, 3), (self._worth, 4)]
        work = [(self._wages, 8), (self._rate, 4)]
        self._fields.lay([fields] if columns > 1 else [[(part, 1)] for part, _ in fields])
        self._work.lay([work] if columns > 1 else [[(part, 1)] for part, _ in work])
        self._columns.lay([[(self._form, 80), (self.list, 34)]] if columns > 2 else [[(self._form, 1)], [(self.list, 1)]])

    # ---- showing

    def show_job(self) -> None:
        draft = self.hand.list.draft
        again = bool(draft.of)
        self._title.remark(tr("Particulars of a garment on the list.") if again else tr("What hangs there, and what is it worth to you?"))
        self._kinds.show_job()
        for part in self._after_kind:
            part.setVisible(bool(draft.garment))
        if self._name.edit.text() != draft.title:
            self._name.edit.setText(draft.title)
        for name, field in self.amounts.items():
            field.show_text(getattr(draft, name))
        self._show_wages(draft.wages)
        self.list.show_list()

    def _show_wages(self, wages: bool) -> None:
        self._rate.setVisible(wages)
        now = self._wages.rows()
        if not now:
            values = [(_OWN, tr("My own time: count no wages")), (_PAID, tr("Count it by the hour"))]
            row = ChoiceRow(self.look, "wages", values, "", "rack-wages-of", tr("The work:"))
            row.chosen.connect(lambda _question, value: self.hand.draft(wages=value == _PAID))
            self._wages.show_rows([section(Words(self.look, tr("Whose time it is"), "small", "ink-2"), row, gap=4)])
        for choice in self._wages.findChildren(ChoiceRow)[0].choices:
            choice.setChecked((choice.value == _PAID) == wages)

    def _take(self, hurry: bool) -> None:
        refused = self.hand.take(hurry)
        for name, field in self.amounts.items():
            field.refuse(refused.get(name, ""))
        first = next(iter(refused), "")
        if first:
            self.amounts[first].field.edit.setFocus(Qt.FocusReason.OtherFocusReason)

    def focus_first(self, reason: Qt.FocusReason) -> None:
        if self.hand.list.draft.garment:
            self._price.field.edit.setFocus(reason)
        else:
            self._kinds.focus_first(reason)
