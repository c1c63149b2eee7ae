"""At the rack: keeps the window and the list in hand in step."""

from __future__ import annotations

from PySide6.QtCore import QDateTime, QLocale, QObject, Qt, QTimer
from PySide6.QtGui import QAccessible, QAccessibleAnnouncementEvent, QKeyEvent
from PySide6.QtWidgets import QMenu, QStackedWidget

from fitdoctor.desk.job import Job
from fitdoctor.desk.pages.page import Page
from fitdoctor.desk.parts.control import Control
from fitdoctor.desk.rack.ask_page import AskPage
from fitdoctor.desk.rack.compare_page import ComparePage
from fitdoctor.desk.rack.hand import RackHand
from fitdoctor.desk.rack.kept import Lists, RackList, lists_folder
from fitdoctor.desk.rack.print_comparison import ask_and_print, ask_and_save
from fitdoctor.desk.rack.said import aloud
from fitdoctor.desk.rack.see_page import SeePage
from fitdoctor.desk.rack.start_page import StartPage
from fitdoctor.desk.shelf import Kept
from fitdoctor.desk.style import lay_on
from fitdoctor.desk.window import Window
from fitdoctor.desk.words import tr
from fitdoctor.errors import FitdoctorError

PLACE = "rack"
WORKING_MS = 300
"After so long a sentence says that it takes a moment."


class AtTheRack(QObject):
    """The place in the window."""

    def __init__(self, window: Window, job: Job, locale: QLocale | None = None, lists: Lists | None = None) -> None:
        super().__init__(window)
        self.window, self.job = window, job
        self.hand = RackHand(job, lists or Lists(lists_folder()), locale or QLocale())
        self._seeing = False
        self._decided = ""
        self._shown: tuple[object, ...] = ()
        self._patience = QTimer(self)
        self._patience.setSingleShot(True)
        self._patience.setInterval(WORKING_MS)
        self._patience.timeout.connect(lambda: self.ask.say_working())
        self.hand.changed.connect(self.show)
        self.hand.thought.connect(self.show)
        self.hand.failed.connect(window.say)
        window.placeWanted.connect(lambda place: self.open() if place == PLACE else None)
        window.keyTyped.connect(lambda text: self._open() and self.page().take_key(text))
        window.undoWanted.connect(lambda: self.hand.back() if self._open() else None)
        window.redoWanted.connect(lambda: self.hand.again() if self._open() else None)
        window.printWanted.connect(lambda: self._print() if self._open() else None)
        window.closed.connect(self.hand.thinker.stop)
        window.fills.append(self.fill)
        self.fill()

    def fill(self) -> None:
        """Put the pages into the window, in its look."""
        look, hand = self.window.look, self.hand
        self.start, self.ask = StartPage(look, hand), AskPage(look, hand)
        self.see, self.compare = SeePage(look, hand), ComparePage(look, hand)
        self.stack = _Stack(self)
        lay_on(self.stack, look, "paper")
        for page in (self.start, self.ask, self.see, self.compare):
            self.stack.addWidget(page)
        self.window.pages.addWidget(self.stack)
        self.start.listsWanted.connect(self.show_lists)
        self.ask.fitWanted.connect(lambda: self.fit(hand.list.at))
        self.ask.keepWanted.connect(self.keep_in_book)
        self.ask.seeWanted.connect(self.look_closer)
        self.see.left.connect(self.stop_looking)
        self.see.chosen.connect(self._see)
        self.compare.fitWanted.connect(self.fit)
        self.compare.dropWanted.connect(self._drop)
        self.compare.printWanted.connect(self._print)
        self.compare.pdfWanted.connect(self._save)
        self._shown = ()
        self._show_page()

    # ---- what is shown

    def page(self) -> Page:
        """The page that is open."""
        sheet = self.hand.list.sheet
        if sheet == "garment" and self.hand.garment is not None:
            return self.see if self._seeing else self.ask
        return self.compare if sheet == "compare" else self.start

    def open(self) -> None:
        """Come here, with the focus on the first question."""
        self.window.show_place(PLACE, self.stack)
        if self.hand.note:
            self.window.message.say(self.hand.note, error=False)
            self.hand.note = ""
        self.hand.think()
        self.show()
        self.page().focus_first(Qt.FocusReason.OtherFocusReason)

    def show(self) -> None:
        """Show the list as it is now; the focus goes to what is asked now."""
        if not self._open():
            return
        focus = self.window.focusWidget()
        keyed = isinstance(focus, Control) and focus.ringed
        before = self._shown
        self._show_page()
        if self._shown[:3] != before[:3]:
            self.page().focus_first(Qt.FocusReason.TabFocusReason if keyed else Qt.FocusReason.OtherFocusReason)
        self._say_decision()

    def _show_page(self) -> None:
        page, garment = self.page(), self.hand.garment
        if garment is None or self._shown[1:2] != (garment.id,):
            self.ask.forget()
            self._decided = ""
        if self.hand.answer() is None and garment is not None:
            self._patience.start()
        else:
            self._patience.stop()
        question = self.hand.question()
        with page.focus_kept():
            page.show_job()
        self.stack.setCurrentWidget(page)
        settled = garment is None or self.hand.answer() is not None
        mark = (question.mark if question else "", len(garment.told)) if garment and settled else self._shown[2:3]
        self._shown = (page, garment.id if garment else "", mark if page is self.ask else ())

    def _say_decision(self) -> None:
        """Say a change of the decision aloud to those who do not see it."""
        answer = self.hand.answer()
        if answer is None or self.page() is not self.ask:
            return
        if self._decided and self._decided != answer.decision:
            said = aloud(self.hand.money, answer)
            QAccessible.updateAccessibility(QAccessibleAnnouncementEvent(self.stack, said))
        self._decided = answer.decision

    def _open(self) -> bool:
        return self.window.place == PLACE

    def escape(self) -> None:
        """One step back: from looking to the question, from the question to the garments."""
        if self._seeing:
            self.stop_looking()
        elif self.page() is not self.start:
            self.hand.describe_new()

    # ---- looking closer

    def look_closer(self) -> None:
        """Note something that shows: on the figure, or by a word."""
        garment = self.hand.garment
        if garment is not None:
            self._seeing = True
            self.see.begin(garment.rack.to_be_named or "back")
            self.show()

    def stop_looking(self) -> None:
        """Back to the question."""
        self._seeing = False
        self.show()

    def _see(self, symptom: str) -> None:
        self._seeing = False
        self.hand.see(symptom, self.job.knowledge.symptoms[symptom].title)

    # ---- going on

    def fit(self, id_: str) -> None:
        """Take a garment of the list to the table."""
        from fitdoctor.desk.first import at_first_open

        one = self.hand.list.garment(id_)
        if one is not None:
            self.job.open(at_first_open(self.job.knowledge, Kept(case=one.rack.case)))
            self.window.placeWanted.emit("fit")

    def keep_in_book(self) -> None:
        """Put the garment in hand into the job book and stay here."""
        one = self.hand.garment
        if one is None:
            return
        try:
            self.job.shelf.keep(Kept(case=one.rack.case))
        except FitdoctorError as error:
            self.window.say(error)
        else:
            self.window.message.say(tr("{title} is in the job book.", title=self.hand.title_of(one)), error=False)

    def _drop(self, id_: str) -> None:
        one = self.hand.list.garment(id_)
        if one is not None:
            put_back = self.hand.drop(id_)
            said = tr("{title} is off the list.", title=self.hand.title_of(one))
            self.window.message.say(said, error=False, button=tr("Put it back"), act=put_back)

    # ---- lists and paper

    def show_lists(self) -> None:
        """Earlier lists as a menu."""
        kept, notes = self.hand.lists.all()
        menu = QMenu(self.window)
        menu.setObjectName("rack-lists-menu")
        for one in kept:
            action = menu.addAction(self._line(one))
            action.setObjectName(f"rack-lists-{one.id}")
            action.setCheckable(True)
            action.setChecked(one.id == self.hand.list.id)
            action.triggered.connect(lambda _on=False, who=one: self.hand.open_list(who))
        anchor = self.start.list
        menu.popup(anchor.mapToGlobal(anchor.rect().topLeft()))
        for note in notes:
            self.window.message.say(note, error=False)

    def _line(self, one: RackList) -> str:
        titles = ", ".join(self.hand.title_of(garment) for garment in one.garments[:3])
        day = QLocale().toString(QDateTime.fromString(one.changed, Qt.DateFormat.ISODate).toLocalTime(), QLocale.FormatType.ShortFormat)
        return f"{day}: {titles}" + (" …" if len(one.garments) > 3 else "")

    def _print(self) -> None:
        answers = [answer for _, answer in self.hand.ready()]
        if answers:
            ask_and_print(self.window, answers, self.hand.money)

    def _save(self) -> None:
        answers = [answer for _, answer in self.hand.ready()]
        if answers:
            ask_and_save(self.window, answers, self.hand.money, self.window.say)


class _Stack(QStackedWidget):
    """The pages of the place; Escape goes one step back."""

    def __init__(self, place: AtTheRack) -> None:
        super().__init__()
        self._place = place
        self.setObjectName("page-rack")

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if event.key() == Qt.Key.Key_Escape:
            self._place.escape()
        else:
            super().keyPressEvent(event)
