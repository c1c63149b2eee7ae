"""The list in hand: what the pages of the rack read and change. Every change is kept at once, and answers can be taken back."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import msgspec
from PySide6.QtCore import QLocale, QObject, Signal

from fitdoctor.case import Case
from fitdoctor.desk.job import Job
from fitdoctor.desk.pictures import Pictures
from fitdoctor.desk.rack.kept import Draft, Lists, OnRack, RackList, Sheet
from fitdoctor.desk.rack.money import Money
from fitdoctor.desk.rack.thinking import Thinker
from fitdoctor.errors import FitdoctorError
from fitdoctor.knowledge.knowledge import Knowledge
from fitdoctor.rack.answer import RackAnswer
from fitdoctor.rack.comparison import order
from fitdoctor.rack.question import RackQuestion
from fitdoctor.rack.told import Told, told_to, without

replace = msgspec.structs.replace
Refusals = dict[str, str]
"""Field -> why what was typed there cannot be used: `missing`, `not-read` or `nothing`."""


class RackHand(QObject):
    """A list of garments and the one in hand. `changed` after every change; `thought` when an answer is worked out."""

    changed = Signal()
    thought = Signal()
    failed = Signal(object)

    def __init__(self, job: Job, lists: Lists, locale: QLocale) -> None:
        super().__init__()
        self.job, self.lists, self._locale = job, lists, locale
        self.list, self.note = lists.last()
        if not self.list.garments and self.list.draft == Draft():
            self.list = replace(self.list, draft=self._draft())
        self._undone: list[tuple[str, Told]] = []
        self.thinker = Thinker(self.thought.emit, self.failed.emit)

    # ---- what stands

    @property
    def knowledge(self) -> Knowledge:
        """The knowledge that answers come from."""
        return self.job.knowledge

    @property
    def pictures(self) -> Pictures:
        """Pictures of its figures."""
        return self.job.pictures

    @property
    def money(self) -> Money:
        """How amounts are written: by the locale, with the shop's sign."""
        return Money(self._locale, self.job.shop.currency)

    @property
    def case(self) -> Case:
        """The garment that is described just now, as far as its kind is chosen."""
        return Case(garment=self.list.draft.garment)

    @property
    def garment(self) -> OnRack | None:
        """The garment in hand."""
        return self.list.garment(self.list.at)

    def answer(self, garment: OnRack | None = None) -> RackAnswer | None:
        """The answer for a garment, or for that in hand; None while it is worked out."""
        one = garment or self.garment
        return self.thinker.answer_of(one) if one else None

    def question(self) -> RackQuestion | None:
        """The question in hand: the best one that was not left for later, or else the best of those."""
        answer, garment = self.answer(), self.garment
        if answer is None or garment is None:
            return None
        return next((ask for ask in answer.asks if ask.mark not in garment.skipped), answer.question)

    def ready(self) -> list[tuple[OnRack, RackAnswer]]:
        """The garments of the list whose answers are worked out, what to buy first at the head."""
        answers = ((one, self.answer(one)) for one in self.list.garments)
        return sorted(((one, answer) for one, answer in answers if answer), key=lambda pair: order(pair[1]))

    def title_of(self, garment: OnRack) -> str:
        """What a garment is called."""
        return garment.title or self.knowledge.garment(garment.garment).title

    def think(self) -> None:
        """Work out what is not known yet: the garment in hand first."""
        known = [one for one in self.list.garments if one.garment in self.knowledge.garments]
        self.thinker.want(sorted(known, key=lambda one: one.id != self.list.at), self.knowledge, self.job.shop, self.money.say)

    # ---- changing

    def _become(self, one: RackList) -> None:
        if one == self.list:
            return
        self.list = one
        try:
            self.list = self.lists.keep(one)
        except FitdoctorError as error:
            self.failed.emit(error)
        self.think()
        self.changed.emit()

    def _change(self, **fields: Any) -> None:
        garment = self.garment
        if garment is not None:
            self._become(self.list.with_garment(replace(garment, **fields)))

    def show(self, sheet: Sheet) -> None:
        """Open a sheet."""
        self._become(replace(self.list, sheet=sheet))

    # ---- describing a garment

    def choose_garment(self, garment: str) -> None:
        """The kind of the garment that is described."""
        self.draft(garment=garment)

    def draft(self, **fields: Any) -> None:
        """Keep what is typed of a garment."""
        self._become(replace(self.list, draft=replace(self.list.draft, **fields)))

    def describe_new(self) -> None:
        """Begin with another garment; the rate stays."""
        self._become(replace(self.list, sheet="start", draft=self._draft(), at=""))

    def _draft(self) -> Draft:
        """Nothing typed yet; the rate is that of the last garment, or else the shop's."""
        draft, rate = self.list.draft, self.job.shop.rate_per_hour
        if draft.rate or draft.wages or rate is None:
            return Draft(rate=draft.rate, wages=draft.wages)
        return Draft(rate=self.money.typed(rate), wages=True)

    def describe_again(self) -> None:
        """Change the particulars of the garment in hand."""
        one, typed = self.garment, self.money.typed
        if one is not None:
            rate, wages = (typed(one.rate), True) if one.rate else (self.list.draft.rate, False)
            money = {"price": typed(one.price), "worth": typed(one.worth), "rate": rate}
            draft = Draft(garment=one.garment, title=one.title, wages=wages, of=one.id, **money)
            self._become(replace(self.list, sheet="start", draft=draft))

    def take(self, hurry: bool) -> Refusals:
        """Take the described garment in hand; or say which amounts cannot be used."""
        draft = self.list.draft
        wanted = ("price", "worth", "rate") if draft.wages else ("price", "worth")
        amounts = {name: self.money.read(getattr(draft, name)) for name in wanted}
        refused = {name: self._refusal(name, amount) for name, amount in amounts.items()}
        refused = {name: why for name, why in refused.items() if why}
        if refused:
            return refused
        price, worth, rate = (amounts.get(name) or 0.0 for name in ("price", "worth", "rate"))
        known, id_ = self.list.garment(draft.of), draft.of or self._new_id()
        told = known.told if known and known.garment == draft.garment else ()
        money = OnRack(id=id_, garment=draft.garment, title=draft.title.strip(), price=price, worth=worth, rate=rate)
        one = replace(money, hurry=hurry, told=told)
        self._undone.clear()
        self._become(replace(self.list.with_garment(one), at=one.id, sheet="garment", draft=self._draft()))
        return {}

    def _refusal(self, name: str, amount: float | None) -> str:
        if not getattr(self.list.draft, name).strip():
            return "missing"
        if amount is None:
            return "not-read"
        return "nothing" if name == "worth" and not amount else ""

    def _new_id(self) -> str:
        taken = {one.id for one in self.list.garments}
        return next(id_ for id_ in (f"garment-{number}" for number in range(1, 100_000)) if id_ not in taken)

    # ---- answering

    def tell(self, value: str, said: str) -> None:
        """Answer the question in hand."""
        question = self.question()
        if question is not None:
            self._told(told_to(question, value, said))

    def see(self, symptom: str, said: str) -> None:
        """Note something seen without being asked."""
        self._told(Told(kind="seen", id=symptom, said=said))

    def _told(self, one: Told) -> None:
        garment = self.garment
        if garment is not None:
            self._undone.clear()
            self._change(told=(*garment.told, one))

    def skip(self) -> None:
        """Leave the question in hand for later."""
        question, garment = self.question(), self.garment
        if question is not None and garment is not None:
            self._change(skipped=(*(mark for mark in garment.skipped if mark != question.mark), question.mark))

    def back(self) -> None:
        """Take the last answer back."""
        garment = self.garment
        if garment is not None and garment.told:
            self._undone.append((garment.id, garment.told[-1]))
            self._change(told=garment.told[:-1])

    def again(self) -> None:
        """Give the answer again that was taken back."""
        garment = self.garment
        if garment is not None and self._undone and self._undone[-1][0] == garment.id:
            self._change(told=(*garment.told, self._undone.pop()[1]))

    def take_back(self, place: int) -> None:
        """Take an earlier answer back; its question may be asked again."""
        garment = self.garment
        if garment is not None and place < len(garment.told):
            self._undone.clear()
            self._change(told=without(garment.told, place), skipped=())

    def ask_everything(self) -> None:
        """The hurry is over."""
        self._change(hurry=False)

    # ---- the list

    def open(self, id_: str) -> None:
        """Take a garment of the list in hand again."""
        self._undone.clear()
        self._become(replace(self.list, at=id_, sheet="garment"))

    def drop(self, id_: str) -> Callable[[], None]:
        """Take a garment off the list; returns the way back."""
        before = self.list
        left = tuple(one for one in before.garments if one.id != id_)
        at = before.at if before.at != id_ else ""
        self._become(replace(before, garments=left, at=at, sheet="compare" if left else "start"))
        return lambda: self._become(before)

    def open_list(self, one: RackList) -> None:
        """Take another list in hand."""
        self._undone.clear()
        self._become(one)

    def new_list(self) -> None:
        """Begin another list; this one stays kept."""
        self.open_list(replace(self.lists.new(), draft=self._draft()))
