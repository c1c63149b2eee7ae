"""A job book that cannot be opened: said in one sentence, with the way out; the window works on meanwhile."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QObject

from fitdoctor.desk.opening import begin_anew, open_shelf
from fitdoctor.desk.shelf import Shelf
from fitdoctor.desk.words import tr
from fitdoctor.errors import FitdoctorError
from fitdoctor.jobbook.trouble import DamagedBook

if TYPE_CHECKING:
    from fitdoctor.desk.jobbook.place import JobBookPlace


def way_out(shelf: Shelf) -> tuple[str, str]:
    """What a button says that helps, and what it asks for; nothing where the book is open."""
    if isinstance(shelf.trouble, DamagedBook):
        return tr("Set it aside and begin a new one"), "anew"
    return (tr("Open it again"), "again") if shelf.book is None or shelf.spare else ("", "")


class Trouble(QObject):
    """Says what is wrong with the book, and mends it when it is asked to."""

    def __init__(self, place: JobBookPlace) -> None:
        super().__init__(place)
        self.place = place
        place.window.fills.append(self.fill)
        self.fill()
        self.say()

    def fill(self) -> None:
        """Listen to the page that is in the window now."""
        self.place.page.wanted.connect(self._do)

    def _do(self, want: str) -> None:
        acts = {"again": self.open_again, "anew": self.begin_anew}
        if want in acts:
            acts[want]()

    def say(self) -> None:
        """Say in one sentence why the book could not be opened, and where garments are kept meanwhile."""
        shelf = self.place.shelf
        if shelf.trouble is None:
            return
        meanwhile = tr("Until then garments are kept in a book beside it.") if shelf.spare else ""
        text = " ".join(part for part in (shelf.trouble.text, shelf.trouble.hint, meanwhile) if part)
        button, helps = way_out(shelf)
        self.place.window.message.say(text, button=button, act=lambda: self._do(helps))

    def open_again(self) -> None:
        """Try to open the book again."""
        self._let_go()
        self._stand_on(open_shelf())

    def begin_anew(self) -> None:
        """Set a damaged book aside and begin a new one."""
        self._let_go()
        try:
            shelf = begin_anew()
        except FitdoctorError as error:
            shelf = open_shelf()
            shelf.trouble = error
        self._stand_on(shelf)

    def _let_go(self) -> None:
        """The spare book is closed, so that it can be taken in."""
        if self.place.shelf.book:
            self.place.shelf.book.file.close()
            self.place.shelf.book = None

    def _stand_on(self, shelf: Shelf) -> None:
        self.place.job.shelf = shelf
        self.place.job.look_again()
        self.say()
        self.place.refresh()
