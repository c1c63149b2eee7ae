"""Pictures of the other places of the window: at the rack, look it up and its map, practise, the job book, settings."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from pathlib import Path

from PySide6.QtCore import QLocale

from fitdoctor.desk.fitting import Fitting
from fitdoctor.desk.handbook.look_up import LookUp
from fitdoctor.desk.jobbook.bind import bind_job_book
from fitdoctor.desk.practice.place import Practise
from fitdoctor.desk.rack.kept import Lists
from fitdoctor.desk.rack.place import AtTheRack
from fitdoctor.desk.settings.settings import Settings
from fitdoctor.desk.window import Window
from fitdoctor.practice.scope import Scope

Wait = Callable[[Callable[[], bool]], None]
LOOKED_UP = ("conditions", "dart-ends-not-punched")
MAPPED = ("causes", "jacket-back-too-short")
GARMENT, PRICE, WORTH, SEEN = "trousers", "9", "30", "trousers-too-short"
PRACTISED = Scope(garment="trousers", region=("back",), level="easy", kinds=("lines",))
SEED = "wardrobe"


def places(window: Window, fitting: Fitting, folder: Path, wait: Wait) -> Iterator[str]:
    """Turn the window to one place after another, and name what shows.

    Args:
        folder: where the rack's lists and the answers of the exercises are kept meanwhile.
        wait: lets the window work until something holds.
    """
    yield from _rack(window, fitting, folder, wait)
    look_up = LookUp(window, fitting.job)
    window.placeWanted.emit("look-up")
    look_up.show_entry(LOOKED_UP)
    yield "look-up"
    look_up.show_entry(MAPPED)
    look_up.page.turns.map.click()
    yield "map"
    yield from _practise(window, fitting, look_up, folder, wait)
    bind_job_book(window, fitting)
    window.placeWanted.emit("job-book")
    yield "job-book"
    Settings(window)
    window.placeWanted.emit("settings")
    yield "settings"


def _rack(window: Window, fitting: Fitting, folder: Path, wait: Wait) -> Iterator[str]:
    place = AtTheRack(window, fitting.job, QLocale.c(), Lists(folder / "rack"))
    hand = place.hand
    window.placeWanted.emit("rack")
    hand.choose_garment(GARMENT)
    hand.draft(price=PRICE, worth=WORTH)
    hand.take(hurry=False)
    hand.see(SEEN, hand.knowledge.symptoms[SEEN].title)
    wait(lambda: hand.answer() is not None)
    yield "rack"


def _practise(window: Window, fitting: Fitting, look_up: LookUp, folder: Path, wait: Wait) -> Iterator[str]:
    place = Practise(window, fitting.job, look_up.show_entry, folder / "practice.json")
    window.placeWanted.emit("practise")
    place.sitting.start_set(PRACTISED, SEED, 3)
    wait(lambda: place.sitting.question is not None)
    yield "practise"
