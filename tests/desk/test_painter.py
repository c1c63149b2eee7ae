"""Pictures as they come out: something shows, it shows the same every time, and light falls from one side."""

from __future__ import annotations

from dataclasses import replace

import msgspec
import pytest
from PySide6.QtCore import QPointF
from PySide6.QtGui import QImage

from fitdoctor.desk.contact_sheets import contact_sheet, explaining_sheets
from fitdoctor.desk.painter import DARK, LIGHT, FigureTones, hit
from fitdoctor.desk.pictures import Pictures
from fitdoctor.figure.choose import figure_of, symptom_drawing
from fitdoctor.figure.compose import Scene
from fitdoctor.knowledge.entries import Drawing
from fitdoctor.knowledge.knowledge import Knowledge

pytestmark = pytest.mark.usefixtures("qapp")

SIDE = 240
LEVELS = 12
LEAST_CHANGE = 0.015
CROP = (-250.0, 330.0, 500.0, 560.0)


def changed(one: QImage, other: QImage) -> float:
    """The share of pixels that differ by more than a few levels."""
    a, b = (bytes(image.convertToFormat(QImage.Format.Format_RGB888).constBits()) for image in (one, other))
    count = one.width() * one.height()
    stride = len(a) // one.height()
    differ = 0
    for y in range(one.height()):
        row = y * stride
        for x in range(row, row + 3 * one.width(), 3):
            differ += max(abs(a[x] - b[x]), abs(a[x + 1] - b[x + 1]), abs(a[x + 2] - b[x + 2])) > LEVELS
    return differ / count


def drawing(**fields: object) -> Drawing:
    return msgspec.convert({"crop": CROP, **fields}, Drawing)


def test_every_symptom_changes_its_picture(knowledge: Knowledge) -> None:
    pictures, faint = Pictures(knowledge.figures), []
    for symptom in knowledge.symptoms.values():
        garment = symptom.garments[0]
        figure, sign = figure_of(knowledge, garment, symptom.view), symptom_drawing(knowledge, symptom, garment)
        if figure is None or sign is None:
            continue
        crop = sign.crop
        size = (SIDE, round(SIDE * crop[3] / crop[2]))
        shown = pictures.picture(Scene(figure, (sign,)), size, 1.0, LIGHT, crop)
        plain = pictures.picture(Scene(figure), size, 1.0, LIGHT, crop)
        share = changed(shown, plain)
        if share < LEAST_CHANGE:
            faint.append((symptom.id, round(100 * share, 2)))
    assert not faint


def test_a_picture_is_the_same_on_a_second_run(knowledge: Knowledge) -> None:
    figure = knowledge.figures["trousers-back"]
    sign = drawing(strokes=[{"stroke": "fold", "from": [-118, 472], "to": [116, 476], "bow": 8, "depth": 19}])
    first, second = (Pictures(knowledge.figures).picture(Scene(figure, (sign,)), (SIDE, SIDE), 1.0, LIGHT, CROP) for _ in range(2))
    assert first == second


def brightest_and_darkest(shown: QImage, plain: QImage) -> tuple[QPointF, QPointF]:
    """Where a sign made the picture lightest and where darkest."""
    best: dict[int, tuple[int, QPointF]] = {}
    for y in range(shown.height()):
        for x in range(shown.width()):
            change = shown.pixelColor(x, y).lightness() - plain.pixelColor(x, y).lightness()
            for sign in (1, -1):
                if sign not in best or sign * change > best[sign][0]:
                    best[sign] = (sign * change, QPointF(x, y))
    return best[1][1], best[-1][1]


@pytest.mark.parametrize("tones", [LIGHT, DARK], ids=["light", "dark"])
def test_mirrored_folds_are_lit_from_the_same_side(knowledge: Knowledge, tones: FigureTones) -> None:
    figure, pictures = knowledge.figures["dress-back"], Pictures(knowledge.figures)
    crop = (-120.0, 600.0, 240.0, 200.0)
    for side in (1, -1):
        fold = {"stroke": "fold", "from": [side * 20, 700], "to": [side * 90, 700], "depth": 22}
        size = (120, 100)
        shown = pictures.picture(Scene(figure, (drawing(strokes=[fold]),)), size, 1.0, tones, crop)
        lit, dark = brightest_and_darkest(shown, pictures.picture(Scene(figure), size, 1.0, tones, crop))
        assert lit.y() < dark.y()


def test_pictures_are_kept_and_the_oldest_go_first(knowledge: Knowledge, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("fitdoctor.desk.pictures.KEPT_BYTES", 2 * 4 * 60 * 60)
    pictures, scene = Pictures(knowledge.figures), Scene(knowledge.figures["skirt-back"])
    first = pictures.picture(scene, (60, 60), 1.0, LIGHT)
    assert pictures.picture(scene, (60, 60), 1.0, LIGHT) is first
    pictures.picture(scene, (60, 60), 1.0, DARK)
    pictures.picture(scene, (60, 60), 1.0, LIGHT, (0.0, 300.0, 50.0, 50.0))
    assert pictures.picture(scene, (60, 60), 1.0, LIGHT) is not first


def test_a_picture_has_the_pixels_of_its_screen(knowledge: Knowledge) -> None:
    image = Pictures(knowledge.figures).picture(Scene(knowledge.figures["skirt-back"]), (100, 80), 1.5, LIGHT)
    assert (image.width(), image.height(), image.devicePixelRatio()) == (150, 120, 1.5)


def test_the_two_themes_differ_and_name_the_same_roles(knowledge: Knowledge) -> None:
    assert set(LIGHT.colours) == set(DARK.colours)
    scene, pictures = Scene(knowledge.figures["shirt-front"]), Pictures(knowledge.figures)
    assert changed(pictures.picture(scene, (60, 60), 1.0, LIGHT), pictures.picture(scene, (60, 60), 1.0, DARK)) > 0.9


def test_a_line_is_hit_near_it_and_missed_far_from_it() -> None:
    sign = drawing(strokes=[{"stroke": "taut", "from": [-100, 500], "to": [100, 500], "depth": 6}])
    assert hit(sign, QPointF(0, 506), 8)
    assert not hit(sign, QPointF(0, 560), 8)


def test_the_contact_sheet_shows_every_symptom(knowledge: Knowledge) -> None:
    some = replace(knowledge, symptoms=dict(list(knowledge.symptoms.items())[:5]))
    sheet = contact_sheet(some, LIGHT, 2, (80, 80))
    assert (sheet.width(), sheet.height()) == (14 + 2 * 94, 14 + 3 * (80 + 40 + 14))


def test_contact_sheets_of_what_explains_hold_every_picture(knowledge: Knowledge) -> None:
    """Six in a row: as many rows as the pictures need."""
    few = replace(
        knowledge,
        causes={id_: knowledge.causes[id_] for id_ in list(knowledge.causes)[:7]},
        checks={id_: knowledge.checks[id_] for id_ in list(knowledge.checks)[:3]},
        measurements={id_: knowledge.measurements[id_] for id_ in list(knowledge.measurements)[:3]},
        methods={},
    )
    sheets = dict(explaining_sheets(few, LIGHT))
    assert list(sheets) == ["causes", "checks", "measurements", "after"]
    assert sheets["causes"].height() > 1.8 * sheets["checks"].height()
    assert sheets["causes"].width() == sheets["checks"].width()
