"""The map in Look it up: drawn in columns, walked by keys and by mouse on the same trail as the pages, folded to a list."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

import pytest
from PySide6.QtCore import Qt, QUrl
from PySide6.QtGui import QDesktopServices, QGuiApplication
from PySide6.QtWidgets import QApplication, QWidget

from fitdoctor.desk.handbook.map_node import MapNode, outline
from fitdoctor.knowledge.knowledge import Knowledge
from fitdoctor.knowledge.read import shipped_folder

if TYPE_CHECKING:
    from tests.desk.reading_chair import MakeReader, Reader

pytest_plugins = ["tests.desk.reading_chair"]

PUNCHED = ("conditions", "dart-ends-not-punched")
HIPS = ("causes", "hips-too-small")
FOLDS = ("symptoms", "level-folds-under-back-band")


def on_map(reader: Reader, key: tuple[str, str]) -> None:
    reader.open()
    reader.look_up.show_entry(key)
    reader.settle()
    reader.click("look-up-map-turn")


def nodes(reader: Reader) -> dict[tuple[str, str], MapNode]:
    return {node.node.key: node for node in reader.look_up.page.map.sheet.nodes}


def focus_key() -> tuple[str, str]:
    focus = QApplication.focusWidget()
    assert isinstance(focus, MapNode)
    return focus.node.key


def test_the_map_reads_from_left_to_right_and_nothing_lies_over_anything(reader: Reader) -> None:
    on_map(reader, FOLDS)
    shown = list(nodes(reader).values())
    for node in shown:
        for other in shown:
            assert node is other or not node.geometry().intersects(other.geometry())
            assert (node.node.column < other.node.column) == (node.x() < other.x())
    kinds = {node.node.kind for node in shown}
    assert all(reader.there(f"look-up-map-head-{kind}") for kind in kinds), "the kind is said in words"


def test_what_the_map_has_no_room_for_is_said(reader: Reader) -> None:
    on_map(reader, FOLDS)
    more = reader.look_up.graph.around(*FOLDS).more
    assert more
    for kind, number in more.items():
        if any(node.node.kind == kind for node in nodes(reader).values()):
            assert str(number) in reader.said(f"look-up-map-more-{kind}")


def test_arrows_go_along_the_lines_and_enter_walks_on_the_trail_of_the_pages(reader: Reader) -> None:
    on_map(reader, HIPS)
    assert focus_key() == HIPS
    reader.keys(Qt.Key.Key_Right)
    first = focus_key()
    assert first[0] == "methods"
    reader.keys(Qt.Key.Key_Return)
    assert reader.look_up.trail.here == first
    assert focus_key() == first, "the focus goes along"
    reader.keys(Qt.Key.Key_Left, Qt.KeyboardModifier.AltModifier)
    assert reader.look_up.trail.here == HIPS
    reader.keys(Qt.Key.Key_Right, Qt.KeyboardModifier.AltModifier)
    assert reader.look_up.trail.here == first


def test_up_and_down_stay_in_the_column(reader: Reader) -> None:
    on_map(reader, HIPS)
    reader.keys(Qt.Key.Key_Left)
    column = [node for node in nodes(reader).values() if node.node.column == 0]
    for _ in column:
        reader.keys(Qt.Key.Key_Up)
    assert focus_key() == min(column, key=lambda node: node.y()).node.key
    for _ in column:
        reader.keys(Qt.Key.Key_Down)
    assert focus_key() == max(column, key=lambda node: node.y()).node.key


def test_a_click_walks_and_a_click_on_the_entry_itself_opens_its_page(reader: Reader) -> None:
    on_map(reader, HIPS)
    reader.press("look-up-map-symptoms-vent-spreads")
    assert reader.look_up.trail.here == ("symptoms", "vent-spreads")
    assert reader.there("look-up-map") is not None
    reader.press("look-up-map-symptoms-vent-spreads")
    assert reader.there("look-up-map") is None
    assert reader.said("look-up-title") == reader.look_up.job.knowledge.symptoms["vent-spreads"].title


def test_the_keys_alone_turn_from_page_to_map_and_back(reader: Reader) -> None:
    reader.open()
    reader.look_up.show_entry(HIPS)
    reader.keys(Qt.Key.Key_M, Qt.KeyboardModifier.AltModifier)
    assert reader.there("look-up-map") is not None
    reader.keys(Qt.Key.Key_M, Qt.KeyboardModifier.AltModifier)
    assert reader.there("look-up-map") is None


def test_a_source_has_no_map_and_shows_its_page_on_the_way(reader: Reader, knowledge: Knowledge) -> None:
    on_map(reader, HIPS)
    reader.look_up.show_entry(("sources", next(iter(knowledge.sources))))
    reader.settle()
    assert reader.there("look-up-map") is None
    assert reader.there("look-up-map-turn") is None
    reader.keys(Qt.Key.Key_Left, Qt.KeyboardModifier.AltModifier)
    assert reader.there("look-up-map") is not None


def test_the_map_folds_to_a_list_that_says_the_same(reader: Reader) -> None:
    on_map(reader, HIPS)
    before = set(nodes(reader))
    reader.press("look-up-map-fold")
    listed = reader.look_up.page.map.sheet.nodes
    assert {node.node.key for node in listed} == before
    assert len({node.x() for node in listed}) == 1
    assert [node.y() for node in listed] == sorted(node.y() for node in listed)
    listed[0].setFocus()
    reader.keys(Qt.Key.Key_Down)
    assert focus_key() == listed[1].node.key


def test_every_entry_of_the_map_says_kind_title_and_chance_aloud(reader: Reader) -> None:
    on_map(reader, HIPS)
    for node in nodes(reader).values():
        assert node.node.title in node.accessibleName()
        assert node.node.word.replace("-", " ") in node.accessibleName()
        assert node.objectName()
    assert "What shows" in nodes(reader)[("symptoms", "vent-spreads")].accessibleName()


def test_no_two_kinds_that_share_a_column_look_alike(reader: Reader) -> None:
    on_map(reader, HIPS)
    box = nodes(reader)[HIPS].rect().toRectF()
    shapes = {kind: outline(kind, box, 8.0).toFillPolygon().toList().__repr__() for kind in ("symptoms", "causes", "methods", "conditions")}
    assert len(set(shapes.values())) == 4


def test_larger_and_smaller_set_the_words_anew(reader: Reader) -> None:
    on_map(reader, HIPS)
    before = nodes(reader)[HIPS].height()
    reader.keys(Qt.Key.Key_Plus)
    reader.keys(Qt.Key.Key_Plus)
    assert nodes(reader)[HIPS].height() > before
    assert focus_key() == HIPS
    reader.keys(Qt.Key.Key_0)
    assert nodes(reader)[HIPS].height() == before
    reader.press("look-up-map-smaller")
    assert nodes(reader)[HIPS].height() < before


@pytest.mark.parametrize("percent", [100, 150, 200])
@pytest.mark.parametrize("as_list", [False, True])
def test_no_word_of_a_map_is_out_of_sight(sit_down: MakeReader, percent: int, as_list: bool) -> None:
    reader = sit_down("dark", percent)
    on_map(reader, HIPS)
    reader.look_up.page.map.fold(as_list)
    for key in (HIPS, FOLDS, PUNCHED):
        reader.look_up.show_entry(key)
        reader.settle()
        clipped = [w for w in reader.window.findChildren(QWidget) if w.isVisible() and getattr(w, "clipped", bool)()]
        assert [w.objectName() for w in clipped] == []


@pytest.mark.parametrize("place", ["look-up-file", "look-up-map-file"])
def test_the_file_and_line_of_an_entry_are_shown_copied_and_opened(reader: Reader, monkeypatch: pytest.MonkeyPatch, place: str) -> None:
    opened: list[QUrl] = []

    def opens(url: QUrl) -> bool:
        opened.append(url)
        return len(opened) == 1

    monkeypatch.setattr(QDesktopServices, "openUrl", opens)
    reader.open()
    reader.look_up.show_entry(PUNCHED)
    if "map" in place:
        reader.look_up.turn_map()
    reader.settle()
    where = reader.look_up.job.knowledge.places[PUNCHED]
    assert reader.said(f"{place}-where") == f"{where.file.relative_to(shipped_folder()).as_posix()}:{where.line}"
    reader.press(f"{place}-copy")
    assert QGuiApplication.clipboard().text() == f"{where.file}:{where.line}"
    reader.press(f"{place}-open")
    assert [Path(url.toLocalFile()) for url in opened] == [where.file]
    reader.press(f"{place}-open")
    link = reader.there(f"{place}-open")
    assert link is not None
    assert "copy" in link.accessibleName(), "where nothing opens it, that is said"


def test_the_line_of_a_source_is_its_own(reader: Reader, knowledge: Knowledge) -> None:
    reader.open()
    source = list(knowledge.sources)[5]
    reader.look_up.show_entry(("sources", source))
    reader.settle()
    where = knowledge.places[("sources", source)]
    assert where.line > 1
    assert where.file.read_text().splitlines()[where.line - 1].startswith(source)
    assert reader.said("look-up-file-where").endswith(f":{where.line}")
