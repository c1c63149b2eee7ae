"""Settings: each holds at once, is kept at once and can be taken back; what cannot be used changes nothing and says why."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from PySide6.QtCore import QCoreApplication, Qt, QTranslator
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QAbstractButton, QApplication, QLineEdit, QWidget
from pytestqt.qtbot import QtBot

from fitdoctor.desk.app import Desk
from fitdoctor.desk.look import look_of
from fitdoctor.desk.pages.page import ScrollColumn
from fitdoctor.desk.parts.text import Words
from fitdoctor.desk.settings.money import read_price
from fitdoctor.desk.tokens import TARGET
from fitdoctor.desk.window import Window
from fitdoctor.knowledge.knowledge import Knowledge
from fitdoctor.plan import STAGES
from fitdoctor.shop import Shop, load_shop, settings_file
from fitdoctor.units import MM_PER_INCH

SMALLEST_LINK = 24
"Target size (minimum), Web Content Accessibility Guidelines 2.2, success criterion 2.5.8."


class Office:
    """The window on the page Settings, as it is used by mouse and keys."""

    def __init__(self, qtbot: QtBot, window: Window, desk: Desk) -> None:
        self.qtbot, self.window, self.desk = qtbot, window, desk

    @property
    def shop(self) -> Shop:
        return self.window.shop

    def kept(self) -> Shop:
        """As the file has it."""
        shop, notes = load_shop()
        assert notes == ()
        return shop

    def settle(self) -> None:
        self.qtbot.waitUntil(lambda: not self.window.at_work.busy, timeout=30_000)
        for _ in range(5):
            QApplication.processEvents()

    def find(self, name: str) -> QWidget:
        found = [w for w in self.window.findChildren(QWidget, name) if w.isVisible()]
        assert len(found) == 1, f"{len(found)} visible widgets are called {name}"
        return found[0]

    def shown(self, name: str) -> bool:
        return any(w.isVisible() for w in self.window.findChildren(QWidget, name))

    def press(self, name: str) -> None:
        button = self.find(name)
        assert isinstance(button, QAbstractButton)
        button.click()
        self.settle()

    def type(self, name: str, text: str) -> None:
        field = self.find(name)
        assert isinstance(field, QLineEdit)
        field.setFocus()
        field.selectAll()
        QTest.keyClick(field, Qt.Key.Key_Delete)
        QTest.keyClicks(field, text)
        QTest.keyClick(field, Qt.Key.Key_Return)
        self.settle()

    def said(self, name: str) -> str:
        words = self.find(name)
        assert isinstance(words, Words)
        return words.text()


MakeOffice = Callable[..., Office]


@pytest.fixture
def office_of(qtbot: QtBot, knowledge: Knowledge) -> Iterator[MakeOffice]:
    made: list[Window] = []

    def make(shop: Shop | None = None, size: tuple[int, int] = (1280, 800)) -> Office:
        window = Window(shop or Shop(theme="light"))
        qtbot.addWidget(window)
        made.append(window)
        window.resize(*size)
        window.show()
        desk = Desk(window)
        desk.open(knowledge)
        window.activateWindow()
        qtbot.waitUntil(window.isActiveWindow)
        office = Office(qtbot, window, desk)
        window.placeWanted.emit("settings")
        office.settle()
        return office

    yield make
    for window in made:
        window.close()


@pytest.fixture
def office(office_of: MakeOffice) -> Office:
    return office_of()


# ---- coming and going


def test_the_page_is_reached_from_the_head_and_by_its_key_and_left_by_escape(office: Office) -> None:
    assert office.window.place == "settings"
    assert office.shown("page-settings")
    assert not office.window.tape.isVisible()
    QTest.keyClick(office.window.focusWidget(), Qt.Key.Key_Escape)
    office.settle()
    assert office.window.place == "fit"
    assert office.window.tape.isVisible()
    QTest.keyClick(office.window, Qt.Key.Key_Comma, Qt.KeyboardModifier.ControlModifier)
    office.settle()
    assert office.shown("page-settings")
    office.press("head-place-fit")
    office.press("head-place-settings")
    assert office.shown("page-settings")


def test_the_way_back_gives_the_focus_back(office: Office) -> None:
    office.press("head-place-fit")
    focus = office.window.focusWidget().objectName()
    QTest.keyClick(office.window, Qt.Key.Key_Comma, Qt.KeyboardModifier.ControlModifier)
    assert office.window.focusWidget().objectName() == "settings-unit-in"
    QTest.keyClick(office.window.focusWidget(), Qt.Key.Key_Escape)
    assert office.window.focusWidget().objectName() == focus


def test_settings_stand_before_the_handbook_is_read(qtbot: QtBot) -> None:
    window = Window(Shop(theme="light"))
    qtbot.addWidget(window)
    window.show()
    desk = Desk(window)
    desk.start()
    assert desk.settings is not None
    window.placeWanted.emit("settings")
    assert window.pages.currentWidget() is desk.settings.page
    desk.settings.leave()
    assert window.pages.currentWidget() is window.waiting
    window.close()


# ---- each setting


CHOICES = [
    ("settings-unit-cm", "unit", "cm"),
    ("settings-finest-8", "finest", 8),
    ("settings-text-percent-125", "text_percent", 125),
    ("settings-theme-dark", "theme", "dark"),
    ("settings-high-contrast-yes", "high_contrast", "yes"),
    ("settings-still-yes", "still", "yes"),
    ("settings-minutes-share-more", "minutes_percent", 105),
]


@pytest.mark.parametrize(("button", "name", "value"), CHOICES)
def test_a_choice_holds_and_is_kept_at_once_and_is_taken_back_and_made_again(office: Office, button: str, name: str, value: object) -> None:
    before = getattr(office.shop, name)
    assert before != value
    office.press(button)
    assert getattr(office.shop, name) == getattr(office.kept(), name) == value
    office.press("foot-undo")
    assert getattr(office.shop, name) == getattr(office.kept(), name) == before
    assert not office.shown("settings-foot")
    QTest.keyClick(office.window, Qt.Key.Key_Y, Qt.KeyboardModifier.ControlModifier)
    office.settle()
    assert getattr(office.shop, name) == value


def test_the_look_follows_at_once_and_the_page_stays(office: Office) -> None:
    office.press("settings-theme-dark")
    office.press("settings-high-contrast-yes")
    office.press("settings-text-percent-150")
    office.press("settings-still-yes")
    look = office.window.look
    assert (look.dark, look.tokens.high_contrast, look.percent, look.still) == (True, True, 150, True)
    assert office.window.place == "settings"
    assert office.find("settings-theme-dark").property("checked")
    for _ in range(4):
        QTest.keyClick(office.window, Qt.Key.Key_Z, Qt.KeyboardModifier.ControlModifier)
        office.settle()
    assert office.window.look == look_of(dark=False)


def test_undo_on_the_page_leaves_the_garment_alone_and_the_other_way_round(office: Office) -> None:
    assert office.desk.fitting is not None
    job = office.desk.fitting.job
    job.name("Named before")
    office.press("settings-unit-cm")
    QTest.keyClick(office.window, Qt.Key.Key_Z, Qt.KeyboardModifier.ControlModifier)
    office.settle()
    assert office.shop.unit == "in"
    assert job.case.title == "Named before"


def test_lengths_are_written_in_the_other_unit_on_every_page(office: Office) -> None:
    assert office.desk.fitting is not None
    job = office.desk.fitting.job
    office.press("settings-unit-cm")
    assert job.shop.unit == "cm"
    assert not office.shown("settings-finest")
    job.go_to("measure")
    office.settle()
    remarks = {w.text() for w in office.window.findChildren(Words) if w.isVisible()}
    assert "cm" in remarks


def test_wages_are_counted_once_a_rate_is_given(office: Office) -> None:
    assert office.desk.fitting is not None
    assert not office.shown("settings-rate")
    office.press("settings-wages-yes")
    assert office.shop.rate_per_hour is None
    assert office.window.focusWidget().objectName() == "settings-rate"
    office.type("settings-rate", "24,50")
    office.type("settings-currency", "$")
    assert (office.kept().rate_per_hour, office.kept().currency) == (24.5, "$")
    assert office.said("settings-currency-row-note") == "An hour is written $24.50."
    job = office.desk.fitting.job
    assert job.assessment is not None
    assert job.assessment.shop.rate_per_hour == 24.5
    office.press("settings-wages-no")
    assert office.kept().rate_per_hour is None
    assert not office.shown("settings-rate")


@pytest.mark.parametrize("typed", ["much", "-3", "1e3", "24.505", "24 50"])
def test_what_is_no_price_is_said_and_the_rate_before_stays(office_of: MakeOffice, typed: str) -> None:
    office = office_of(Shop(theme="light", rate_per_hour=18.0, currency="£"))
    office.type("settings-rate", typed)
    assert office.shop.rate_per_hour == 18.0
    assert typed in office.said("settings-rate-row-note")
    assert "£18.00 stays" in office.said("settings-rate-row-note")
    office.type("settings-rate", "19")
    assert office.shop.rate_per_hour == 19.0
    assert not office.shown("settings-rate-row-note")


@pytest.mark.parametrize(("typed", "price"), [("24", 24.0), (" 24.5 ", 24.5), ("24,50", 24.5), ("", None), ("24.", None), ("nan", None)])
def test_a_price_is_read_as_it_is_typed(typed: str, price: float | None) -> None:
    assert read_price(typed) == price


def test_a_sign_that_is_too_long_is_not_taken(office_of: MakeOffice) -> None:
    office = office_of(Shop(theme="light", rate_per_hour=18.0, currency="£"))
    office.type("settings-currency", "groats apiece")
    assert office.shop.currency == "£"
    assert "too long" in office.said("settings-currency-row-note")


def test_own_minutes_reach_the_plan_and_a_stage_can_be_set_apart(office: Office) -> None:
    assert office.desk.fitting is not None
    job = office.desk.fitting.job

    def likely() -> dict[str, float]:
        assert job.assessment is not None
        return {op.id: op.minutes[1] for op in job.assessment.plan.operations}

    before = likely()
    for _ in range(4):
        office.press("settings-minutes-share-more")
    assert office.shop.minutes_percent == 120
    assert likely() == {op: pytest.approx(1.2 * minutes) for op, minutes in before.items()}
    assert "1 h 10" in office.said("settings-minutes-note")
    office.press("settings-stages-open")
    assert job.assessment is not None
    stage = job.assessment.plan.operations[0].stage
    office.press(f"settings-stage-{stage}-share-less")
    assert office.kept().stage_percent == {stage: 115}
    office.press(f"settings-stage-{stage}-as-all")
    assert office.kept().stage_percent == {}
    office.press("foot-undo")
    assert office.kept().stage_percent == {stage: 115}


def test_steps_that_follow_one_another_are_one_change(office: Office) -> None:
    for _ in range(3):
        office.press("settings-minutes-share-less")
    assert office.shop.minutes_percent == 85
    office.press("foot-undo")
    assert office.shop.minutes_percent == 100


def test_every_stage_of_the_work_can_be_set_apart(office: Office) -> None:
    office.press("settings-stages-open")
    assert all(office.shown(f"settings-stage-{stage}") for stage in STAGES)
    office.press("settings-stages-open")
    assert not office.shown("settings-stage-waist")


def test_the_drop_of_a_trouser_hem_is_typed_stepped_and_cleared(office: Office) -> None:
    assert office.shop.hem_drop_mm is None
    office.type("settings-hem-drop", "7/8")
    assert office.kept().hem_drop_mm == pytest.approx(7 / 8 * MM_PER_INCH)
    office.press("settings-hem-drop-more")
    assert office.shop.hem_drop_mm == pytest.approx(15 / 16 * MM_PER_INCH)
    office.press("settings-hem-printed")
    assert office.kept().hem_drop_mm is None
    assert not office.shown("settings-hem-printed")


@pytest.mark.parametrize(("typed", "says"), [("9", "more than a hem can slant"), ("1 1/", "not a length yet")])
def test_a_drop_that_cannot_be_is_said_and_not_taken(office: Office, typed: str, says: str) -> None:
    office.type("settings-hem-drop", "1/2")
    office.type("settings-hem-drop", typed)
    assert says in office.said("settings-hem-note")


# ---- folders


OWN = """id: {id}
title: A hem that only this shop knows
why: It was sewn in a hurry.
lies_in: making
how_common: {{trousers: rare}}
no_method: Unpick it.
sources: [common-practice]
"""


def test_another_folder_of_knowledge_is_read_at_once_and_taken_back(office: Office, tmp_path: Path) -> None:
    assert office.desk.fitting is not None
    (tmp_path / "causes").mkdir()
    (tmp_path / "causes" / "own-hem.yaml").write_text(OWN.format(id="own-hem"))
    office.type("settings-own-path", str(tmp_path))
    assert office.kept().knowledge_folder == str(tmp_path)
    assert office.desk.look_up is not None
    office.desk.look_up.show_entry(("causes", "own-hem"))
    assert "own-hem" in office.desk.fitting.job.knowledge.causes
    assert office.window.place == "settings"
    assert office.desk.fitting.job.index.search("only this shop knows")[0].id == "own-hem"
    office.press("foot-undo")
    assert office.kept().knowledge_folder == ""
    assert "own-hem" not in office.desk.fitting.job.knowledge.causes
    assert office.desk.look_up.trail.here is None


def test_problems_of_the_own_folder_are_said_in_the_bar(office: Office, tmp_path: Path) -> None:
    (tmp_path / "causes").mkdir()
    (tmp_path / "causes" / "own-hem.yaml").write_text("id: own-hem\ntitle: [\n")
    office.type("settings-own-path", str(tmp_path))
    said = office.window.message.shown()
    assert said is not None
    assert "own-hem.yaml" in said[0]


@pytest.mark.parametrize("which", ["own", "sheets"])
def test_a_folder_that_is_not_there_is_said_and_not_taken(office: Office, tmp_path: Path, which: str) -> None:
    office.type(f"settings-{which}-path", str(tmp_path))
    gone = str(tmp_path / "gone")
    office.type(f"settings-{which}-path", gone)
    assert gone in office.said(f"settings-{which}-note")
    assert f"{tmp_path} stays" in office.said(f"settings-{which}-note")
    name = {"own": "knowledge_folder", "sheets": "sheets_folder"}[which]
    assert getattr(office.shop, name) == str(tmp_path)
    office.press(f"settings-{which}-none")
    assert getattr(office.kept(), name) == ""


def test_a_folder_that_went_away_meanwhile_leaves_the_handbook_that_comes_with_the_program(qtbot: QtBot, tmp_path: Path) -> None:
    window = Window(Shop(theme="light", knowledge_folder=str(tmp_path / "gone")))
    qtbot.addWidget(window)
    window.message.add("A setting cannot be used.")
    desk = Desk(window)
    desk.start()
    qtbot.waitUntil(lambda: desk.fitting is not None, timeout=30_000)
    said = window.message.shown()
    assert said is not None
    assert str(tmp_path / "gone") in said[0]
    assert "A setting cannot be used." in said[0]


def test_sheets_are_offered_in_their_folder(office: Office, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    from PySide6.QtWidgets import QFileDialog

    office.type("settings-sheets-path", str(tmp_path))
    offered: list[str] = []

    def ask(_parent: QWidget, _title: str, path: str, _kind: str) -> tuple[str, str]:
        offered.append(path)
        return "", ""

    monkeypatch.setattr(QFileDialog, "getSaveFileName", ask)
    assert office.desk.fitting is not None
    office.desk.fitting.job.go_to("sheet")
    office.settle()
    office.press("sheet-save-pdf")
    assert Path(offered[0]).parent == tmp_path


def test_a_folder_is_chosen_through_the_systems_dialog(office: Office, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    from PySide6.QtWidgets import QFileDialog

    monkeypatch.setattr(QFileDialog, "getExistingDirectory", lambda *_: str(tmp_path))
    office.press("settings-sheets-choose")
    assert office.kept().sheets_folder == str(tmp_path)


def test_settings_that_cannot_be_kept_hold_and_say_so(office: Office) -> None:
    file = settings_file()
    file.parent.mkdir(parents=True, exist_ok=True)
    file.with_suffix(".new").mkdir()
    office.press("settings-unit-cm")
    assert office.shop.unit == "cm"
    said = office.window.message.shown()
    assert said is not None
    assert "could not be kept" in said[0]


# ---- reading the page


def clipped(office: Office) -> list[str]:
    shown = [w for w in office.window.findChildren(QWidget) if w.isVisible()]
    return [f"{type(w).__name__} {w.objectName()}" for w in shown if getattr(w, "clipped", lambda: False)()]


def too_wide(office: Office) -> list[str]:
    columns = (c for c in office.window.findChildren(ScrollColumn) if c.isVisible())
    return [c.objectName() for c in columns if c.content.width() > c.viewport().width() + 1]


FULL = {"theme": "light", "rate_per_hour": 24.0, "currency": "£", "hem_drop_mm": 22.225, "stage_percent": {"waist": 120}}


@pytest.mark.parametrize("percent", [100, 125, 150, 200])
@pytest.mark.parametrize("size", [(960, 600), (1280, 800)])
def test_nothing_is_clipped_at_any_size(office_of: MakeOffice, percent: int, size: tuple[int, int]) -> None:
    office = office_of(Shop(**FULL, text_percent=percent), size)  # type: ignore[arg-type]
    assert clipped(office) == []
    assert too_wide(office) == []


class Longer(QTranslator):
    """Another language, as it were: every string longer by a third, its {values} kept."""

    def translate(self, _context: str, text: str, _disambiguation: str | None = None, _n: int = -1) -> str:
        return f"[{text}{'·' * (len(text) // 3)}]"


def test_a_translation_shows_everywhere_and_nothing_is_clipped(office_of: MakeOffice) -> None:
    translator = Longer()
    QCoreApplication.installTranslator(translator)
    try:
        office = office_of(Shop(**FULL))  # type: ignore[arg-type]
        assert clipped(office) == []
        page = office.find("page-settings")
        said = {w.text() for w in page.findChildren(Words) if w.isVisible() and not w.objectName().endswith("-percent")}
        assert {text for text in said if text and "[" not in text} <= {office.shop.unit}
    finally:
        QCoreApplication.removeTranslator(translator)


def test_everything_is_named_and_large_enough(office_of: MakeOffice) -> None:
    office = office_of(Shop(**FULL))  # type: ignore[arg-type]
    page = office.find("page-settings")
    pressed = [w for w in page.findChildren(QWidget) if isinstance(w, QAbstractButton | QLineEdit) and w.isVisible()]
    assert [w.objectName() for w in pressed if not w.accessibleName() or not w.objectName()] == []
    names = [w.objectName() for w in pressed]
    assert len(names) == len(set(names))
    buttons = [w for w in pressed if isinstance(w, QAbstractButton)]
    small = [w for w in buttons if w.height() < (SMALLEST_LINK if w.property("role") == "quiet" else TARGET - 2)]
    assert small == []


def test_tab_reaches_everything_on_the_page(office_of: MakeOffice) -> None:
    office = office_of(Shop(**FULL))  # type: ignore[arg-type]
    page = office.find("page-settings")
    stops = {
        w.objectName()
        for w in page.findChildren(QWidget)
        if w.isVisible() and w.isEnabled() and w.focusPolicy() & Qt.FocusPolicy.TabFocus and w.objectName()
    }
    reached = []
    for _ in range(2 * len(stops) + 20):
        QTest.keyClick(office.window.focusWidget(), Qt.Key.Key_Tab)
        reached.append(office.window.focusWidget().objectName())
    assert stops <= set(reached)
