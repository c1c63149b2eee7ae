"""The window: head, tape, the page in hand, messages, foot. Painted before anything is read; built anew when its look changes."""

from __future__ import annotations

from collections.abc import Callable
from functools import partial

import msgspec
from PySide6.QtCore import QSize, Qt, Signal
from PySide6.QtGui import QAction, QCloseEvent, QKeyEvent, QKeySequence
from PySide6.QtWidgets import QApplication, QLineEdit, QPlainTextEdit, QStackedWidget, QVBoxLayout, QWidget

from fitdoctor.desk.at_work import AtWork
from fitdoctor.desk.look import Look, look_of
from fitdoctor.desk.parts.foot import PageFoot
from fitdoctor.desk.parts.head import RunningHead
from fitdoctor.desk.parts.message_bar import MessageBar
from fitdoctor.desk.parts.rows import emptied
from fitdoctor.desk.parts.tape import StepTape
from fitdoctor.desk.parts.text import Words
from fitdoctor.desk.parts.work_bar import WorkBar
from fitdoctor.desk.step_names import STEPS, TITLES, StepState
from fitdoctor.desk.style import dress, lay_on
from fitdoctor.desk.wishes import contrast_wished, dark_wished, on_wish
from fitdoctor.desk.words import tr
from fitdoctor.errors import FitdoctorError
from fitdoctor.shop import Shop, Wish

SIZE, LEAST = QSize(1280, 800), QSize(960, 600)
PLACES = (("fit", "Fit a garment"), ("rack", "At the rack"), ("look-up", "Look it up"), ("practise", "Practise"), ("job-book", "Job book"))
TEXT_STEPS = (100, 110, 125, 150, 175, 200)


class Window(QWidget):
    """The shell. `fills` are called after every rebuilding and put the pages into it."""

    closed = Signal()
    shopChanged = Signal(object)
    undoWanted = Signal()
    redoWanted = Signal()
    printWanted = Signal()
    stepWanted = Signal(str)
    placeWanted = Signal(str)
    newWanted = Signal()
    summaryWanted = Signal()
    keyTyped = Signal(str)

    def __init__(self, shop: Shop, look: Look | None = None) -> None:
        super().__init__()
        self.shop = shop if look is None else _set_to(look, shop)
        self._faces = look.faces if look else None
        self._still_wished = False
        self.look = look or self._wished()
        self.fills: list[Callable[[], None]] = []
        self.place = "fit"
        self.at_work = AtWork(self)
        self.setObjectName("window")
        self.setWindowTitle("fitdoctor")
        self.setMinimumSize(LEAST)
        self.resize(SIZE)
        self._whole = QVBoxLayout(self)
        self._whole.setContentsMargins(0, 0, 0, 0)
        self._whole.setSpacing(0)
        self._build()
        self._keys()
        on_wish(self._take_look)

    # ---- building

    def _build(self) -> None:
        dress(self, self.look)
        self.head = RunningHead(self.look, [(place, tr(title)) for place, title in PLACES])
        self.head.show_place("fit")
        self.head.placeWanted.connect(self.placeWanted.emit)
        self.tape = StepTape(self.look, [StepState(step, tr(title)) for step, title in TITLES.items()])
        self.tape.stepWanted.connect(self.stepWanted.emit)
        self.pages = QStackedWidget()
        self.waiting = _Waiting(self.look)
        self.pages.addWidget(self.waiting)
        self.message = MessageBar(self.look)
        self.work = WorkBar(self.look)
        self.foot = PageFoot(self.look)
        self.foot.undo.connect(self.undoWanted.emit)
        self.foot.summary.connect(self.summaryWanted.emit)
        for bed in (self.head, self.tape, self.foot):
            lay_on(bed, self.look, "table")
        bands = (self.head, self.tape, self.pages, self.work, self.message, self.foot)
        for widget in bands:
            self._whole.addWidget(widget, int(widget is self.pages))
        self.at_work.show_in(self.work)

    def rebuild(self, look: Look) -> None:
        """Build everything anew in another look; the focus stays where it was, by name."""
        focus = self.focusWidget().objectName() if self.focusWidget() else ""
        message = self.message.shown()
        self.look = look
        for widget in emptied(self._whole):
            widget.hide()
            widget.deleteLater()  # not made a window of its own first: that would make this one inactive
        self._build()
        place = self.place
        for fill in self.fills:
            fill()
        if place != self.place:
            self.placeWanted.emit(place)
        if message:
            self.message.say(*message)
        self._whole.activate()  # the pages lay themselves out for their width before they get the focus
        QApplication.sendPostedEvents()
        found = next((w for w in self.findChildren(QWidget, focus) if w.isVisibleTo(self)), None) if focus else None
        if found:
            found.setFocus(Qt.FocusReason.OtherFocusReason)

    def show_place(self, place: str, page: QWidget) -> None:
        """Show a page of a place; tape and foot belong to fitting a garment alone."""
        self.place = place
        self.head.show_place(place)
        self.tape.setVisible(place == "fit")
        self.foot.setVisible(place == "fit")
        self.pages.setCurrentWidget(page)

    # ---- what the shop and the system wish for

    def change(self, **fields: object) -> None:
        """Set something of the shop's; it holds at once and is kept."""
        before, self.shop = self.shop, msgspec.structs.replace(self.shop, **fields)
        self.shopChanged.emit(fields)
        if any(getattr(before, name) != getattr(self.shop, name) for name in ("unit", "finest")):
            self.rebuild(self._wished())  # fields and tapes are made for a unit
        else:
            self._take_look()

    def be_still(self, wished: bool) -> None:
        """Take in whether the system wishes for reduced motion."""
        self._still_wished = wished
        self._take_look()

    def _wished(self) -> Look:
        shop = self.shop
        dark = dark_wished() if shop.theme == "system" else shop.theme == "dark"
        high = shop.high_contrast == "yes" or contrast_wished()
        return look_of(dark, shop.text_percent, self._faces, high, shop.still == "yes" or self._still_wished)

    def _take_look(self) -> None:
        wished = self._wished()
        if wished != self.look:
            self.rebuild(wished)

    def set_text(self, percent: int) -> None:
        """Set the size of the text, 100 to 200 per cent, and keep it in the settings."""
        percent = max(TEXT_STEPS[0], min(TEXT_STEPS[-1], percent))
        if percent != self.look.percent:
            self.change(text_percent=percent)

    def _text_step(self, by: int) -> None:
        at = min(range(len(TEXT_STEPS)), key=lambda place: abs(TEXT_STEPS[place] - self.look.percent))
        self.set_text(TEXT_STEPS[max(0, min(len(TEXT_STEPS) - 1, at + by))])

    # ---- keys

    def _keys(self) -> None:
        self._key("Ctrl++", lambda: self._text_step(1))
        self._key("Ctrl+=", lambda: self._text_step(1))
        self._key("Ctrl+-", lambda: self._text_step(-1))
        self._key("Ctrl+0", lambda: self.set_text(100))
        self._key("Ctrl+Z", self.undoWanted.emit)
        self._key("Ctrl+Shift+Z", self.redoWanted.emit)
        self._key("Ctrl+Y", self.redoWanted.emit)
        self._key("Ctrl+P", self.printWanted.emit)
        self._key("Ctrl+N", self.newWanted.emit)
        self._key("Ctrl+F", partial(self.placeWanted.emit, "look-up"))
        self._key("Ctrl+,", partial(self.placeWanted.emit, "settings"))
        for number, (place, _) in enumerate(PLACES, 1):
            self._key(f"Ctrl+{number}", partial(self.placeWanted.emit, place))
        self._key("F6", lambda: self._column(1))
        self._key("Shift+F6", lambda: self._column(-1))
        self._key("Ctrl+PgDown", lambda: self._turn(1))
        self._key("Ctrl+PgUp", lambda: self._turn(-1))
        for number, step in enumerate(STEPS, 1):
            self._key(f"Alt+{number}", partial(self.stepWanted.emit, step))

    def _key(self, keys: str, act: Callable[[], None]) -> None:
        action = QAction(self)
        action.setShortcut(QKeySequence(keys))
        action.triggered.connect(lambda _on=False: act())
        self.addAction(action)

    def _turn(self, by: int) -> None:
        at = STEPS.index(self.tape.chosen()) + by
        if 0 <= at < len(STEPS):
            self.stepWanted.emit(STEPS[at])

    def _column(self, by: int) -> None:
        """Put the focus on the next band of the window: tape, page, work in hand, foot."""
        bands = [band for band in (self.tape, self.pages, self.work, self.foot, self.head) if band.isVisibleTo(self)]
        focus = self.focusWidget()
        at = next((place for place, band in enumerate(bands) if focus and band.isAncestorOf(focus)), 0)
        for step in range(1, len(bands) + 1):
            stop = _first_stop(bands[(at + by * step) % len(bands)])
            if stop:
                stop.setFocus(Qt.FocusReason.ShortcutFocusReason)
                return

    def keyPressEvent(self, event: QKeyEvent) -> None:
        focus = self.focusWidget()
        typing = isinstance(focus, QLineEdit | QPlainTextEdit)
        held = event.modifiers() & ~(Qt.KeyboardModifier.ShiftModifier | Qt.KeyboardModifier.KeypadModifier)
        if event.text().strip() and not typing and not held:
            self.keyTyped.emit(event.text())
        else:
            super().keyPressEvent(event)

    # ---- the rest

    def say(self, error: Exception) -> None:
        """Show a known error in the bar."""
        if isinstance(error, FitdoctorError):
            self.message.say(f"{error.text} {error.hint}".strip())
        else:
            raise error

    def closeEvent(self, event: QCloseEvent) -> None:
        self.at_work.stop_all()
        self.closed.emit()
        super().closeEvent(event)


def _set_to(look: Look, shop: Shop) -> Shop:
    """The shop's settings with the theme and size of a look, which then no wish of the system changes."""
    high: Wish = "yes" if look.tokens.high_contrast else shop.high_contrast
    still: Wish = "yes" if look.still else shop.still
    return msgspec.structs.replace(shop, theme=look.tokens.name, text_percent=look.percent, high_contrast=high, still=still)


class _Waiting(QWidget):
    """What is said while the knowledge is read."""

    def __init__(self, look: Look) -> None:
        super().__init__()
        self.words = Words(look, tr("Reading the handbook."), "lead", "ink-2", "waiting-words")
        column = QVBoxLayout(self)
        column.setContentsMargins(32, 24, 32, 24)
        column.addWidget(self.words)
        column.addStretch(1)

    def say(self, text: str) -> None:
        """How far it is."""
        self.words.say(text)


def _first_stop(band: QWidget) -> QWidget | None:
    tabs = (w for w in band.findChildren(QWidget) if w.focusPolicy() & Qt.FocusPolicy.TabFocus and w.isVisibleTo(band) and w.isEnabled())
    return next(tabs, None)
