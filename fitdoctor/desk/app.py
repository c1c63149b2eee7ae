"""Starting the window: painted first, then the knowledge is read, then the garment that was open last is taken in hand."""

from __future__ import annotations

import sys
import traceback
from collections.abc import Callable, Sequence
from importlib.resources import files
from pathlib import Path
from types import TracebackType
from typing import TYPE_CHECKING

import msgspec
from PySide6.QtCore import QLocale
from PySide6.QtGui import QIcon
from PySide6.QtWidgets import QApplication, QMessageBox, QPushButton

from fitdoctor.desk.at_work import LongWork
from fitdoctor.desk.background import Tell, nothing, run_in_background
from fitdoctor.desk.window import Window
from fitdoctor.desk.wishes import ask_for_stillness
from fitdoctor.desk.words import tr
from fitdoctor.errors import FitdoctorError
from fitdoctor.shop import Shop, load_shop, save_shop

if TYPE_CHECKING:
    from fitdoctor.desk.fitting import Fitting
    from fitdoctor.desk.handbook.look_up import LookUp
    from fitdoctor.desk.jobbook.place import JobBookPlace
    from fitdoctor.desk.practice.place import Practise
    from fitdoctor.desk.rack.place import AtTheRack
    from fitdoctor.desk.settings.settings import Settings
    from fitdoctor.knowledge.knowledge import Knowledge


def run(case: Path | None = None, argv: Sequence[str] = ()) -> int:
    """Open the window; return when it is closed.

    Args:
        case: a case file to open in place of the garment that was open last.
    """
    application = application_of(argv)
    shop, notes = load_shop()
    window = Window(shop)
    window.show()
    for note in notes:
        window.message.add(note)
    desk = Desk(window, case)
    sys.excepthook = desk.show_bug
    application.processEvents()
    ask_for_stillness(window.be_still)
    desk.start()
    return int(application.exec())


def application_of(argv: Sequence[str] = ()) -> QApplication:
    """The running Qt application, made where there is none."""
    running = QApplication.instance()
    if isinstance(running, QApplication):
        return running
    application = QApplication(["fitdoctor", *argv])
    application.setApplicationName("fitdoctor")
    application.setDesktopFileName("fitdoctor")
    application.setWindowIcon(QIcon(str(files("fitdoctor.desk") / "fitdoctor.svg")))
    application.setStyle("Fusion")
    QLocale.setDefault(QLocale())
    return application


class Desk:
    """Brings window, knowledge and job together."""

    def __init__(self, window: Window, case: Path | None = None) -> None:
        self.window, self._case = window, case
        self.fitting: Fitting | None = None
        self.rack: AtTheRack | None = None
        self.look_up: LookUp | None = None
        self.practise: Practise | None = None
        self.job_book: JobBookPlace | None = None
        self.settings: Settings | None = None
        window.shopChanged.connect(self._keep_shop)

    def start(self) -> None:
        """Read the knowledge in the background, and open the desk on it."""
        self._read(self.open, self._not_read)
        self._lay_out_settings()

    def _lay_out_settings(self) -> None:
        """They stand before the handbook is read, for its folder is set there."""
        from fitdoctor.desk.settings.settings import Settings

        self.settings = self.settings or Settings(self.window)

    def read_anew(self) -> None:
        """Read the knowledge again, as another folder was named; until then what was read before stands."""
        self._read(self._take_anew, self._not_read_anew)

    def _read(self, then: Callable[[Knowledge], None], stopped: Callable[[], None]) -> None:
        shop = self.window.shop
        if shop.knowledge_folder and not Path(shop.knowledge_folder).is_dir():
            text = "Your own folder {folder} is not there, so only the handbook that comes with the program is used."
            self.window.message.add(tr(text, folder=shop.knowledge_folder))
            shop = msgspec.structs.replace(shop, knowledge_folder="")
        self.window.at_work.start(LongWork(tr("Reading the handbook"), lambda tell: read_all(shop, tell), then, self._failed, stopped))

    def _not_read(self) -> None:
        self.window.waiting.say(tr("The handbook was not read to its end, so nothing can be worked out."))
        self.window.message.say(tr("Reading was stopped."), error=False, button=tr("Read the handbook"), act=self.start)

    def _not_read_anew(self) -> None:
        text = tr("Reading was stopped. What was read before stands.")
        self.window.message.say(text, error=False, button=tr("Read it again"), act=self.read_anew)

    def _take_anew(self, knowledge: Knowledge) -> None:
        if self.fitting is None:
            self.open(knowledge)
            return
        self.fitting.job.take(knowledge)
        self.window.rebuild(self.window.look)
        if knowledge.problems:
            self._say_left_out(knowledge)

    def open(self, knowledge: Knowledge) -> None:
        """Show the pages."""
        from fitdoctor.desk.first import first_kept
        from fitdoctor.desk.fitting import Fitting
        from fitdoctor.desk.handbook.look_up import LookUp
        from fitdoctor.desk.job import Job
        from fitdoctor.desk.jobbook.bind import bind_job_book
        from fitdoctor.desk.opening import open_shelf
        from fitdoctor.desk.rack.place import AtTheRack

        self._lay_out_settings()
        place = self.window.place
        shelf = open_shelf()
        try:
            kept = first_kept(knowledge, shelf, self._case)
        except FitdoctorError as error:
            self.window.say(error)
            kept = first_kept(knowledge, shelf)
        job = Job(knowledge, self.window.shop, shelf, kept)
        self.fitting = Fitting(self.window, job)
        self.rack = AtTheRack(self.window, job)
        self.look_up = LookUp(self.window, job)
        self.window.placeWanted.connect(self._open_practise)
        self.job_book = bind_job_book(self.window, self.fitting)
        if place != self.window.place:
            self.window.placeWanted.emit(place)
        run_in_background(lambda: job.index, nothing, self._failed)  # so that the first key typed is answered at once
        if knowledge.problems:
            self._say_left_out(knowledge)

    def _open_practise(self, place: str) -> None:
        """Practising has much of its own to bring in: only whoever wants it waits for it."""
        if place == "practise" and self.practise is None and self.fitting and self.look_up:
            from fitdoctor.desk.practice.place import Practise

            self.practise = Practise(self.window, self.fitting.job, self.look_up.show_entry)
            self.practise.open()

    def _say_left_out(self, knowledge: Knowledge) -> None:
        first = knowledge.problems[0]
        more = len(knowledge.problems) - 1
        rest = tr(" And {n} more; run ‘fitdoctor check’ to see all.", n=more) if more else ""
        self.window.message.say(tr("Not all of the handbook could be read: {first}.", first=str(first).rstrip(".")) + rest, error=False)

    def _failed(self, error: Exception) -> None:
        if isinstance(error, FitdoctorError):
            self.window.waiting.say(f"{error.text} {error.hint}".strip())
            self.window.say(error)
        else:
            self.show_bug(type(error), error, error.__traceback__)

    def _keep_shop(self, fields: dict[str, object]) -> None:
        """Keep what was set, and let the garment in hand be worked out by it; another folder of knowledge is read."""
        if self.fitting:
            self.fitting.job.take(shop=self.window.shop)
        try:
            save_shop(self.window.shop)
        except OSError as error:
            self.window.say(FitdoctorError(f"The settings could not be kept: {error.strerror}.", "They hold until the window is closed."))
        if "knowledge_folder" in fields:
            self.read_anew()

    def show_bug(self, kind: type[BaseException], error: BaseException, trace: TracebackType | None) -> None:
        """A fault of the program: say so, with the details to hand on."""
        if isinstance(error, FitdoctorError):
            self.window.say(error)
            return
        details = "".join(traceback.format_exception(kind, error, trace))
        print(details, file=sys.stderr)
        box = QMessageBox(self.window)
        box.setObjectName("bug")
        box.setWindowTitle(tr("A fault of the program"))
        box.setText(tr("Something went wrong that is not your doing. What you entered is kept."))
        box.setInformativeText(tr("The details help whoever mends it: {kind}: {error}", kind=kind.__name__, error=error))
        box.setDetailedText(details)
        close = QPushButton(tr("Go on"))
        close.setProperty("role", "dialog")
        box.addButton(close, QMessageBox.ButtonRole.AcceptRole)
        box.open()


def read_all(shop: Shop, tell: Tell | None = None) -> Knowledge:
    """Read the knowledge, the shop's own laid over it; bring in what assessing needs while nobody waits for it."""
    from fitdoctor.knowledge.read import read_knowledge, shipped_folder

    own = [Path(shop.knowledge_folder)] if shop.knowledge_folder else []
    return read_knowledge([shipped_folder(), *own], tell)
