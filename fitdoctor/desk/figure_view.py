"""The big figure: zones to choose, what was noted with its call-outs, by mouse and by keyboard."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from PySide6.QtCore import QEvent, QPointF, QRectF, Qt, Signal
from PySide6.QtGui import QAccessible, QAccessibleAnnouncementEvent, QBrush, QKeyEvent, QMouseEvent
from PySide6.QtWidgets import QWidget

from fitdoctor.desk.call_out import EM, CallOut, CallOutText
from fitdoctor.desk.call_outs import CallOuts
from fitdoctor.desk.figure_item import FigureItem
from fitdoctor.desk.figure_tones import FigureTones
from fitdoctor.desk.name_plate import NamePlate
from fitdoctor.desk.painter import hit
from fitdoctor.desk.pictures import Pictures
from fitdoctor.desk.zone_item import ZoneItem, nearest
from fitdoctor.desk.zoom_view import ZoomView
from fitdoctor.figure.compose import Scene
from fitdoctor.figure.reach import anchor
from fitdoctor.figure.shapes import Shape
from fitdoctor.figure.zones import zone_areas
from fitdoctor.knowledge.entries import Drawing, Figure

NEAR_PX = 10.0
"A line counts as hit within so many pixels."
ARROWS = {Qt.Key.Key_Left: (-1, 0), Qt.Key.Key_Right: (1, 0), Qt.Key.Key_Up: (0, -1), Qt.Key.Key_Down: (0, 1)}
VIEW_KEYS = {Qt.Key.Key_F: "front", Qt.Key.Key_B: "back", Qt.Key.Key_S: "side"}


@dataclass(frozen=True)
class Noted:
    """A symptom on the figure: its entry, its drawing, the label of its call-out and what that says."""

    symptom: str
    drawing: Drawing
    label: str = ""
    says: str = ""


class FigureView(ZoomView):
    """Shows one figure. Emits ids: the zone chosen, the symptom clicked, the view asked for by its letter."""

    zoneChosen = Signal(str)
    zonePointed = Signal(str)
    symptomClicked = Signal(str)
    viewWanted = Signal(str)

    def __init__(self, pictures: Pictures, tones: FigureTones, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.tones, self._em = tones, EM
        self._item, self._plate = FigureItem(pictures, tones), NamePlate(tones)
        self.content.addItem(self._item)
        self.content.addItem(self._plate)
        self._figure: Figure | None = None
        self._facts: dict[str, str] = {}
        self._zones: dict[str, ZoneItem] = {}
        self._noted: tuple[Noted, ...] = ()
        self.call_outs = CallOuts(self.content, tones, self.symptomClicked.emit)
        self._lit = self._pointed = self._chosen = ""
        self._here: QPointF | None = None
        self.setBackgroundBrush(QBrush(tones.colour("bg")))
        self.setMinimumSize(180, 220)

    # ---- what is shown

    def show_figure(self, figure: Figure, facts: Mapping[str, str], zones: Mapping[str, str], name: str = "") -> None:
        """Show a figure with the garment's facts; `zones` is id -> title of those that can be chosen; `name` is said aloud."""
        if self._figure is None or self._figure.id != figure.id:
            self._zoom, self._chosen = 1.0, ""
        self._figure, self._facts = figure, dict(facts)
        self.setAccessibleName(name or figure.title)
        self._set_zones(zones)
        self.content.setSceneRect(QRectF(*figure.box))
        self._show_scene()
        self.fit()
        self.refresh()

    def _set_zones(self, zones: Mapping[str, str]) -> None:
        self.point_at("")
        for item in self._zones.values():
            self.content.removeItem(item)
        areas = zone_areas(self._figure, self._facts) if self._figure else {}
        self._zones = {zone: ZoneItem(zone, title, areas[zone], self.tones) for zone, title in zones.items() if zone in areas}
        for item in self._zones.values():
            self.content.addItem(item)
        self._paint_states()

    def show_noted(self, noted: Sequence[Noted], overlay: tuple[Shape, ...] = ()) -> None:
        """Show what was noted, each with its call-out where it has a label; the overlay explains (arrows, tape, words)."""
        self._noted = tuple(noted)
        self.show_call_outs([CallOutText(entry.label, anchor(entry.drawing), entry.says, entry.symptom) for entry in noted if entry.label])
        self._show_scene(overlay)
        self.refresh()

    def show_call_outs(self, texts: Sequence[CallOutText]) -> None:
        """Put call-outs beside the figure in place of those before."""
        self.call_outs.show(texts)
        self.call_outs.place(self.seen(), self.scale_now())

    def light(self, symptom: str) -> None:
        """Show one noted symptom at full strength and the others more faintly; an empty id lights all."""
        self._lit = symptom
        self._show_scene(self._item.overlay)
        self.refresh()

    def set_tones(self, tones: FigureTones) -> None:
        """Change to the colours of another theme."""
        self.tones = self._item.tones = self._plate.tones = tones
        self.setBackgroundBrush(QBrush(tones.colour("bg")))
        for zone in self._zones.values():
            zone.tones = tones
        self.call_outs.dress(tones, self._em)
        self.refresh()
        self.content.update()

    def set_text_size(self, em: float) -> None:
        """Change the body size of the text, in pixels: names and balls grow with it."""
        self._em, self._plate.pixels = em, round(em * 0.94)
        self.call_outs.dress(self.tones, em)
        self.fit()

    def _show_scene(self, overlay: tuple[Shape, ...] = ()) -> None:
        if self._figure is None:
            return
        full = tuple(entry.drawing for entry in self._noted if self._lit in ("", entry.symptom))
        faint = tuple(entry.drawing for entry in self._noted if self._lit not in ("", entry.symptom))
        self._item.show_scene(Scene(self._figure, full, faint, self._facts), overlay)

    def refresh(self) -> None:
        """Paint what is in sight at the size it is seen."""
        self._item.refresh(self.seen(), self.scale_now(), self.devicePixelRatioF())
        self.call_outs.place(self.seen(), self.scale_now())

    def margins_px(self) -> float:
        """Room for the call-outs at the right, and as much at the left."""
        return 2 * self.call_outs.room_px()

    # ---- zones

    def zones(self) -> tuple[str, ...]:
        """The zones that can be chosen, from the top down."""
        return tuple(sorted(self._zones, key=lambda zone: self._zones[zone].middles()[0].y()))

    def zone_item(self, zone: str) -> ZoneItem:
        """The item of a zone."""
        return self._zones[zone]

    def chosen(self) -> str:
        """The chosen zone, or nothing."""
        return self._chosen

    def pointed(self) -> str:
        """The zone pointed at by mouse or keyboard, or nothing."""
        return self._pointed

    def choose(self, zone: str) -> None:
        """Show a zone as chosen, without a signal."""
        self._chosen = zone if zone in self._zones else ""
        self._paint_states()

    def point_at(self, zone: str) -> None:
        """Show a zone as pointed at: its outline, its name on a plate and to a screen reader."""
        zone = zone if zone in self._zones else ""
        if zone == self._pointed:
            return
        self._pointed, self._here = zone, None
        title = self._zones[zone].title if zone else ""
        self.setAccessibleDescription(title)
        box = self._zones[zone].path().boundingRect() if zone else QRectF()
        self._plate.say(title, QPointF(box.center().x(), max(box.top(), self.seen().top() + 40 / self.scale_now())))
        self._paint_states()
        self.zonePointed.emit(zone)

    def _paint_states(self) -> None:
        for zone, item in self._zones.items():
            item.set_state(zone == self._pointed, zone == self._chosen)

    def step(self, dx: int, dy: int) -> None:
        """Point at the nearest zone in a direction; at the edge stay where it is."""
        if not self._pointed and not self._chosen:
            self.point_at(self.zones()[0] if self._zones else "")
            return
        at = self._pointed or self._chosen
        others = [item for zone, item in self._zones.items() if zone != at]
        found = nearest(others, self._here or self._zones[at].middles()[0], dx, dy)
        if found:
            self.point_at(found[0])
            self._here = found[1]
            QAccessible.updateAccessibility(QAccessibleAnnouncementEvent(self, self.accessibleDescription()))

    def take(self, zone: str) -> None:
        """Choose a zone and say so."""
        if zone in self._zones:
            self.choose(zone)
            self.zoneChosen.emit(zone)

    # ---- mouse and keyboard

    def symptom_at(self, at: QPointF) -> str:
        """The noted symptom whose lines lie under a place in mm, or nothing."""
        near = NEAR_PX / self.scale_now()
        return next((entry.symptom for entry in reversed(self._noted) if hit(entry.drawing, at, near)), "")

    def zone_at(self, at: QPointF) -> str:
        """The zone under a place in mm: of several the smallest."""
        under = [item for item in self._zones.values() if item.path().contains(at)]
        return max(under, key=ZoneItem.zValue).zone if under else ""

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        if not self.dragging():
            self.point_at(self.zone_at(self.mapToScene(event.position().toPoint())))
        super().mouseMoveEvent(event)

    def leaveEvent(self, event: QEvent) -> None:
        self.point_at("")
        super().leaveEvent(event)

    def mousePressEvent(self, event: QMouseEvent) -> None:
        super().mousePressEvent(event)
        at = event.position().toPoint()
        if event.button() != Qt.MouseButton.LeftButton or self.dragging() or isinstance(self.itemAt(at), CallOut):
            return
        place = self.mapToScene(at)
        symptom = self.symptom_at(place)
        if symptom:
            self.symptomClicked.emit(symptom)
        else:
            self.take(self.zone_at(place))

    def keyPressEvent(self, event: QKeyEvent) -> None:
        key = Qt.Key(event.key())
        if key in ARROWS:
            self.step(*ARROWS[key])
        elif key in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self.take(self._pointed)
        elif key in VIEW_KEYS and not event.modifiers():
            self.viewWanted.emit(VIEW_KEYS[key])
        else:
            super().keyPressEvent(event)
