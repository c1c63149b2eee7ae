"""Pictures of the program for the handbook and for review: offscreen, of one size, with the program's own fonts, in the plain C locale."""

from __future__ import annotations

import os
from collections.abc import Callable, Iterator
from functools import partial
from pathlib import Path
from tempfile import TemporaryDirectory

from PySide6.QtCore import QEventLoop, QLocale, QSize
from PySide6.QtGui import QImage
from PySide6.QtWidgets import QApplication

from fitdoctor.desk.app import application_of
from fitdoctor.desk.contact_sheets import contact_sheet, explaining_sheets
from fitdoctor.desk.figure_view import FigureView
from fitdoctor.desk.first import kept_from_file
from fitdoctor.desk.fitting import Fitting
from fitdoctor.desk.job import Job
from fitdoctor.desk.look import Look, look_of
from fitdoctor.desk.shelf import Kept, Shelf
from fitdoctor.desk.shots_of_places import places
from fitdoctor.desk.step_names import STEPS
from fitdoctor.desk.window import Window
from fitdoctor.errors import FitdoctorError
from fitdoctor.jobbook.book import open_book
from fitdoctor.knowledge.knowledge import Knowledge
from fitdoctor.knowledge.read import demo_files
from fitdoctor.shop import Shop

SIZE = QSize(1280, 800)
SMALL = QSize(1024, 700)
SHOWN: dict[str, str] = {
    "garment": "trousers",
    "shows": "trousers",
    "narrow": "jacket",
    "measure": "dress",
    "done": "trousers",
    "plan": "dress",
    "sheet": "dress",
}
"Which garment of the demo each page is shown with: a word of its file's name."
TURNS = 6


def take_shots(knowledge: Knowledge, folder: Path, symptoms_only: bool = False) -> Iterator[Path]:
    """Write every picture into a folder, one after another; each file's name says page, theme, and size of the text."""
    os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")
    application = application_of()
    QLocale.setDefault(QLocale.c())
    folder.mkdir(parents=True, exist_ok=True)
    for theme in ("light", "dark"):
        look = look_of(theme == "dark")
        path = folder / f"symptoms-{theme}.png"
        yield saved(contact_sheet(knowledge, look.tones), path)
    for name, sheet in explaining_sheets(knowledge, look_of(dark=False).tones):
        path = folder / f"{name}.png"
        yield saved(sheet, path)
    if symptoms_only:
        return
    for look, size, ending in _looks():
        with TemporaryDirectory() as kept, open_book(Path(kept) / "jobs.db") as book:
            shelf = Shelf(book)
            demo = {word: shelf.keep(_kept(knowledge, word)) for word in dict.fromkeys(SHOWN.values())}
            yield from _pages(application, knowledge, shelf, demo, look, size, (folder, Path(kept)), f"{look.tokens.name}{ending}")


def _looks() -> Iterator[tuple[Look, QSize, str]]:
    for dark in (False, True):
        yield look_of(dark), SIZE, ""
        yield look_of(dark, 200), SIZE, "-200"
        yield look_of(dark, high_contrast=True), SIZE, "-high-contrast"
    yield look_of(dark=False), SMALL, "-small"


def saved(image: QImage, path: Path) -> Path:
    """Write a picture whole or not at all; its path.

    Raises:
        FitdoctorError: it could not be written.
    """
    draft = path.with_name(f"{path.stem}.part{path.suffix}")
    try:
        if not image.save(str(draft)):
            raise FitdoctorError(f"{path} could not be written.", "Choose another folder.")
        draft.replace(path)
    finally:
        draft.unlink(missing_ok=True)
    return path


def _kept(knowledge: Knowledge, word: str) -> Kept:
    return kept_from_file(knowledge, next(file for file in demo_files() if word in file.stem))


def _pages(
    application: QApplication,
    knowledge: Knowledge,
    shelf: Shelf,
    demo: dict[str, Kept],
    look: Look,
    size: QSize,
    folders: tuple[Path, Path],
    ending: str,
) -> Iterator[Path]:
    folder, kept = folders
    window = Window(Shop(), look)
    window.resize(size)
    window.show()
    fitting = Fitting(window, Job(knowledge, Shop(), shelf, demo[SHOWN[STEPS[0]]]))
    for number, step in enumerate(STEPS, 1):
        fitting.job.open(demo[SHOWN[step]])
        fitting.job.go_to(step)
        yield _shot(application, window, folder / f"{number}-{step}-{ending}.png")
    for number, place in enumerate(places(window, fitting, kept, partial(_wait, application)), len(STEPS) + 1):
        yield _shot(application, window, folder / f"{number}-{place}-{ending}.png")
    window.close()
    window.deleteLater()


def _shot(application: QApplication, window: Window, path: Path) -> Path:
    settle(application, window)
    return saved(window.grab().toImage(), path)


def _wait(application: QApplication, until: Callable[[], bool]) -> None:
    while not until():
        application.processEvents(QEventLoop.ProcessEventsFlag.WaitForMoreEvents)


def settle(application: QApplication, window: Window) -> None:
    """Let all work, layouts and figures come to rest."""
    for _ in range(TURNS):
        application.processEvents()
    while window.at_work.busy:
        application.processEvents(QEventLoop.ProcessEventsFlag.WaitForMoreEvents)
    for figure in window.findChildren(FigureView):
        figure.refresh()
    application.processEvents()
