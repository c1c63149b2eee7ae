"""Jobs out as a table or for another book, jobs in from another book; the files are asked for by the system's dialogs."""

from __future__ import annotations

from pathlib import Path

from PySide6.QtCore import QObject
from PySide6.QtWidgets import QFileDialog

from fitdoctor.desk.jobbook.place import JobBookPlace
from fitdoctor.desk.words import count, tr
from fitdoctor.errors import FitdoctorError
from fitdoctor.jobbook.carrying import export_csv, export_json, import_json
from fitdoctor.jobbook.finding import find

_MOST_REASONS = 5


class Carry(QObject):
    """Listens to the links below the list."""

    def __init__(self, place: JobBookPlace) -> None:
        super().__init__(place)
        self.place, self.window = place, place.window
        self.window.fills.append(self.fill)
        self.fill()

    def fill(self) -> None:
        """Listen to the page that is in the window now."""
        self.place.page.wanted.connect(self._do)

    def _do(self, want: str) -> None:
        acts = {"out-csv": lambda: self._ask_out("csv"), "out-json": lambda: self._ask_out("json"), "in": self._ask_in}
        if want in acts:
            acts[want]()

    def _ask_out(self, ending: str) -> None:
        path, _ = QFileDialog.getSaveFileName(self.window, tr("Write the jobs out"), f"jobs.{ending}", f"*.{ending}")
        if path:
            self.write_out(Path(path))

    def write_out(self, path: Path) -> None:
        """Write the jobs that are found now: a table as .csv, everything with photos as .json."""
        with self.place.said():
            book = self.place.book
            ids = [line.id for line in find(book.file, self.place.sought)]
            out = export_csv(book, ids, path, self.place.job.knowledge) if path.suffix == ".csv" else export_json(book, ids, path)
            said = count(out, "1 job written to {path}.", "{number} jobs written to {path}.", path=path)
            self.window.message.say(said, error=False)

    def _ask_in(self) -> None:
        path, _ = QFileDialog.getOpenFileName(self.window, tr("Bring jobs in"), "", "*.json")
        if path:
            self.bring_in(Path(path))

    def bring_in(self, path: Path) -> None:
        """Bring jobs in from such a file, all or none; the reasons against are said."""
        try:
            number = import_json(self.place.book, path)
        except FitdoctorError as error:
            reasons = error.text.splitlines()
            more = len(reasons) - _MOST_REASONS
            shown = reasons[:_MOST_REASONS] + ([count(more, "And 1 more reason.", "And {number} more reasons.")] if more > 0 else [])
            self.window.message.say("\n".join([*shown, error.hint]).strip())
            return
        self.place.job.look_again()
        self.place.refresh()
        self.window.message.say(count(number, "1 job brought in.", "{number} jobs brought in."), error=False)
