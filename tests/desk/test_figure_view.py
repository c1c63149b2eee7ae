"""The big figure by mouse and by keyboard."""

from __future__ import annotations

from itertools import pairwise

import msgspec
import pytest
from PySide6.QtCore import QPoint, QPointF, Qt
from PySide6.QtGui import QColor
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot

from fitdoctor.desk.call_out import CallOutText, spread
from fitdoctor.desk.figure_view import FigureView, Noted
from fitdoctor.desk.painter import DARK, LIGHT
from fitdoctor.desk.pictures import Pictures
from fitdoctor.desk.plate import Plate
from fitdoctor.figure.arrows import tape
from fitdoctor.figure.compose import Scene
from fitdoctor.knowledge.entries import Drawing
from fitdoctor.knowledge.knowledge import Knowledge

CROP = [-250, 330, 500, 560]


def drawing(**stroke: object) -> Drawing:
    return msgspec.convert({"crop": CROP, "strokes": [{"stroke": "fold", "depth": 20, **stroke}]}, Drawing)


FOLDS = drawing(**{"from": [-118, 480], "to": [116, 480]})
CUPS = drawing(**{"from": [10, 740], "to": [176, 740], "both": True})


@pytest.fixture
def view(qtbot: QtBot, knowledge: Knowledge) -> FigureView:
    """The back of trousers in a window of the smallest size."""
    widget = FigureView(Pictures(knowledge.figures), LIGHT)
    qtbot.addWidget(widget)
    widget.resize(424, 606)
    zones = {zone.id: zone.title for zone in knowledge.garments["trousers"].zones if zone.view == "back"}
    widget.show_figure(knowledge.figures["trousers-back"], {}, zones, "Trousers, seen from the back")
    widget.show()
    qtbot.waitExposed(widget)
    return widget


def pixel(view: FigureView, x: float, y: float) -> QPoint:
    return view.mapFromScene(QPointF(x, y))


def test_the_whole_figure_is_in_sight(view: FigureView) -> None:
    x, y, wide, high = -330, 260, 660, 1290
    assert view.seen().adjusted(-1, -1, 1, 1).contains(x, y)
    assert view.seen().adjusted(-1, -1, 1, 1).contains(x + wide, y + high)


def test_a_click_on_a_zone_chooses_it(view: FigureView, qtbot: QtBot) -> None:
    with qtbot.waitSignal(view.zoneChosen) as chosen:
        QTest.mouseClick(view.viewport(), Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier, pixel(view, 97, 1000))
    assert chosen.args == ["knee"]
    assert view.chosen() == "knee"
    assert view.zone_item("knee").chosen


def test_the_zone_under_the_mouse_says_its_name(view: FigureView) -> None:
    QTest.mouseMove(view.viewport(), pixel(view, 97, 1000))
    assert view.pointed() == "knee"
    assert view.accessibleDescription() == "The knee"
    assert view.accessibleName() == "Trousers, seen from the back"


def test_arrow_keys_walk_the_zones_and_enter_chooses(view: FigureView, qtbot: QtBot) -> None:
    walked = []
    for _ in range(9):
        QTest.keyClick(view, Qt.Key.Key_Down)
        walked.append(view.pointed())
    assert walked[0] == "waistband"
    assert walked[-1] == "hem"
    assert len(set(walked)) >= 7
    with qtbot.waitSignal(view.zoneChosen) as chosen:
        QTest.keyClick(view, Qt.Key.Key_Return)
    assert chosen.args == ["hem"]


def test_every_zone_is_reached_by_arrow_keys(view: FigureView) -> None:
    seen, queue = set(), ["waistband"]
    while queue:
        zone = queue.pop()
        seen.add(zone)
        for dx, dy in ((0, 1), (0, -1), (1, 0), (-1, 0)):
            view.point_at(zone)
            view.step(dx, dy)
            if view.pointed() not in seen:
                queue.append(view.pointed())
    assert seen == set(view.zones())


@pytest.mark.parametrize(("key", "wanted"), [(Qt.Key.Key_F, "front"), (Qt.Key.Key_B, "back"), (Qt.Key.Key_S, "side")])
def test_a_letter_asks_for_a_view(view: FigureView, qtbot: QtBot, key: Qt.Key, wanted: str) -> None:
    with qtbot.waitSignal(view.viewWanted) as asked:
        QTest.keyClick(view, key)
    assert asked.args == [wanted]


def test_a_click_on_a_noted_line_names_the_symptom_not_the_zone(view: FigureView, qtbot: QtBot) -> None:
    view.show_noted([Noted("level-folds", FOLDS, "1", "Level folds"), Noted("cupping", CUPS, "2", "Cupping")])
    with qtbot.waitSignal(view.symptomClicked) as clicked, qtbot.assertNotEmitted(view.zoneChosen):
        QTest.mouseClick(view.viewport(), Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier, pixel(view, 0, 480))
    assert clicked.args == ["level-folds"]
    with qtbot.waitSignal(view.symptomClicked) as clicked:
        QTest.mouseClick(view.viewport(), Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier, pixel(view, -93, 740))
    assert clicked.args == ["cupping"]


def test_call_outs_stand_clear_of_one_another(view: FigureView) -> None:
    view.show_noted([Noted(f"s{i}", FOLDS, str(i)) for i in range(1, 5)])
    places = sorted(call_out.pos().y() * view.scale_now() for call_out in view.call_outs.items)
    assert all(below - above >= 30 for above, below in pairwise(places))


def test_a_call_out_keeps_its_size_when_the_figure_is_enlarged(view: FigureView) -> None:
    view.show_noted([Noted("level-folds", FOLDS, "1")])
    before = view.call_outs.items[0].shape().boundingRect()
    QTest.keyClick(view, Qt.Key.Key_Plus)
    assert view.call_outs.items[0].shape().boundingRect() == before


def test_larger_text_makes_larger_balls(view: FigureView) -> None:
    view.show_noted([Noted("level-folds", FOLDS, "1")])
    before = view.call_outs.items[0].shape().boundingRect().width()
    view.set_text_size(34)
    assert view.call_outs.items[0].shape().boundingRect().width() > 1.8 * before


def test_plus_minus_and_nought_enlarge_and_show_the_whole_again(view: FigureView) -> None:
    whole = view.scale_now()
    QTest.keyClick(view, Qt.Key.Key_Plus)
    assert view.scale_now() == pytest.approx(whole * 1.25)
    QTest.keyClick(view, Qt.Key.Key_Minus)
    QTest.keyClick(view, Qt.Key.Key_Minus)
    assert view.scale_now() == pytest.approx(whole)
    for _ in range(30):
        QTest.keyClick(view, Qt.Key.Key_Plus)
    assert view.zoomed() == 8
    QTest.keyClick(view, Qt.Key.Key_0)
    assert view.scale_now() == pytest.approx(whole)


def test_the_middle_button_shifts_an_enlarged_figure(view: FigureView) -> None:
    view.zoom(3)
    middle = view.seen().center()
    QTest.mousePress(view.viewport(), Qt.MouseButton.MiddleButton, Qt.KeyboardModifier.NoModifier, QPoint(200, 300))
    QTest.mouseMove(view.viewport(), QPoint(160, 240))
    QTest.mouseRelease(view.viewport(), Qt.MouseButton.MiddleButton, Qt.KeyboardModifier.NoModifier, QPoint(160, 240))
    assert view.seen().center().y() > middle.y()


def test_lighting_one_sign_dims_the_others(view: FigureView) -> None:
    view.show_noted([Noted("level-folds", FOLDS, "1"), Noted("cupping", CUPS, "2")])
    view.light("cupping")
    shown = view._item.scene_shown
    assert shown is not None
    assert shown.drawings == (CUPS,)
    assert shown.dimmed == (FOLDS,)
    view.light("")
    assert view._item.scene_shown is not None
    assert view._item.scene_shown.dimmed == ()


def test_another_figure_forgets_the_chosen_zone(view: FigureView, knowledge: Knowledge) -> None:
    view.take("knee")
    view.show_figure(knowledge.figures["trousers-front"], {}, {"fly": "The fly"})
    assert view.chosen() == ""
    assert view.zones() == ("fly",)


def test_the_dark_theme_reaches_the_picture(view: FigureView) -> None:
    view.set_tones(DARK)
    assert QColor(view.grab().toImage().pixel(3, 3)) == QColor(DARK.colours["bg"])


def test_heights_are_spread_and_kept_in_order() -> None:
    assert spread([10, 12, 14], 30, 0, 200) == [10, 40, 70]
    assert spread([180, 190, 195], 30, 0, 200) == [140, 170, 200]
    assert spread([], 30, 0, 200) == []


def test_a_plate_shows_a_scene_with_its_letters(qtbot: QtBot, knowledge: Knowledge) -> None:
    plate = Plate(Pictures(knowledge.figures), LIGHT)
    qtbot.addWidget(plate)
    plate.resize(420, 264)
    scene, crop = Scene(knowledge.figures["trousers-back"]), (-250.0, 380.0, 500.0, 320.0)
    plate.show_scene(scene, crop, says="The back of the trousers")
    plain = plate.grab().toImage()
    plate.show_scene(scene, crop, tape([(0, 449), (0, 712)]), [CallOutText("A", (0, 460)), CallOutText("B", (150, 436))], "With marks")
    assert plate.grab().toImage() != plain
    assert plate.accessibleName() == "With marks"
