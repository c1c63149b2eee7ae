"""The sheet of a map: entries in columns with lines between them; as a list one under another, without lines."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import groupby
from typing import TYPE_CHECKING

from PySide6.QtCore import QPointF, QRect, QSize, Qt, Signal
from PySide6.QtGui import QPainter, QPainterPath, QPaintEvent, QPen
from PySide6.QtWidgets import QWidget

from fitdoctor.desk.handbook.kinds import KIND_TITLES, Key
from fitdoctor.desk.handbook.map_node import MapNode
from fitdoctor.desk.look import Look
from fitdoctor.desk.parts.control import ControlGroup, bring_into_sight
from fitdoctor.desk.parts.text import Words
from fitdoctor.desk.tokens import CHOSEN, HAIR
from fitdoctor.desk.words import count, tr

if TYPE_CHECKING:
    from fitdoctor.knowledge.graph import Edge, EntryMap, Node

Band = tuple[Words, list[MapNode], Words | None]
"""The entries of a kind in a column, with their head and what is said of those left out."""

_LEAST_EM, _MOST_EM, _GAP_EM, _LEAST_GAP_EM, _BOW_EM = 6.2, 15.0, 2.7, 1.5, 1.0
_BETWEEN, _BAND, _BELOW_HEAD, _EDGE = 7, 14, 8, 4


class MapSheet(QWidget):
    """Emits the entry wanted."""

    wanted = Signal(object)

    def __init__(self) -> None:
        super().__init__()
        self.setObjectName("look-up-map")
        self.as_list = False
        self.nodes: list[MapNode] = []
        self._words: list[Words] = []
        self._bands: list[Band] = []
        self._edges: tuple[Edge, ...] = ()
        self._pointed: Key | None = None
        self._rule = 0
        self.look: Look | None = None

    def show_map(self, look: Look, found: EntryMap) -> None:
        """Show a map in place of the one before; `lay` gives everything its place."""
        for old in (*self.nodes, *self._words):
            old.hide()
            old.setObjectName("")
            old.setParent(None)
            old.deleteLater()
        self.look, self._edges, self._pointed = look, found.edges, None
        self.nodes, self._words, self._bands = [], [], []
        for kind, nodes in groupby(sorted(found.nodes, key=lambda n: (n.column, n.row)), key=lambda n: n.kind):
            self._band(look, kind, list(nodes), found.more.get(kind, 0))
        self._group = ControlGroup(self.nodes)
        current = self.current()
        self._group.focused(current)

    def _band(self, look: Look, kind: str, nodes: list[Node], more: int) -> None:
        head = self._say(look, f"**{tr(KIND_TITLES[kind])}**", f"look-up-map-head-{kind}")
        made = [self._node(look, node) for node in nodes]
        rest = count(more, "and 1 more", "and {number} more")
        self._bands.append((head, made, self._say(look, rest, f"look-up-map-more-{kind}") if more else None))

    def _say(self, look: Look, text: str, name: str) -> Words:
        words = Words(look, text, "small", "ink-2", name)
        words.setParent(self)
        words.show()
        self._words.append(words)
        return words

    def _node(self, look: Look, node: Node) -> MapNode:
        says = ", ".join(part for part in (f"{tr(KIND_TITLES[node.kind])}: {node.title}", node.word.replace("-", " ")) if part)
        made = MapNode(look, node, says, node.steps == 0)
        made.setParent(self)
        made.clicked.connect(lambda _on=False: self.wanted.emit(node.key))
        made.moved.connect(lambda dx, dy: self._go(made, dx, dy))
        made.pointed.connect(lambda on: self._point(node.key if on else None))
        made.show()
        self.nodes.append(made)
        return made

    def current(self) -> MapNode:
        """The entry the map is drawn round."""
        return next(node for node in self.nodes if node.current)

    # ---- places

    def lay(self, width: int, height: int) -> None:
        """Give everything its place on a sheet at least so large."""
        if not self.look:
            return
        high = self._lay_list(width) if self.as_list else self._lay_columns(width)
        wide = max((widget.geometry().right() for widget in (*self.nodes, *self._words)), default=0) + _EDGE
        self.resize(max(width, wide), max(height, high + _EDGE))
        self.update()

    def _columns(self) -> list[list[Band]]:
        return [list(bands) for _, bands in groupby(self._bands, key=lambda band: band[1][0].node.column)]

    def _lay_columns(self, width: int) -> int:
        """Heads on one line, what stands below them about the middle."""
        assert self.look
        columns, left = self._columns(), self.look.px(_BOW_EM)
        gap = max(self.look.px(_LEAST_GAP_EM), min(self.look.px(_GAP_EM), width // 20))
        room = (width - left - _EDGE - gap * (len(columns) - 1)) // len(columns)
        wide = max(self.look.px(_LEAST_EM), min(self.look.px(_MOST_EM), room), *(node.minimumSizeHint().width() for node in self.nodes))
        heads = [bands[0][0] for bands in columns]
        self._rule = max(head.heightForWidth(wide) for head in heads) + 2
        heights = [sum(part[2] for part in self._parts(bands, wide)) - bands[0][0].heightForWidth(wide) for bands in columns]
        for number, bands in enumerate(columns):
            head = heads[number]
            top = self._rule - head.heightForWidth(wide) + (max(heights) - heights[number]) // 3
            self._put(bands, left + number * (wide + gap), top, wide)
            head.move(head.x(), 0)
        return self._rule + max(heights)

    def _lay_list(self, width: int) -> int:
        assert self.look
        return self._put(self._bands, _EDGE, 0, min(width - 2 * _EDGE, self.look.px(34)))

    def _put(self, bands: list[Band], x: int, y: int, wide: int) -> int:
        for widget, before, high in self._parts(bands, wide):
            if widget:
                widget.setGeometry(QRect(x, y + before, wide, high - before))
            y += high
        return y

    def _parts(self, bands: list[Band], wide: int) -> Iterator[tuple[QWidget | None, int, int]]:
        """Each widget with the room above it, and its height with that room."""
        for number, (head, nodes, more) in enumerate(bands):
            yield head, _BAND if number else 0, head.heightForWidth(wide) + (_BAND if number else 0)
            for at, node in enumerate(nodes):
                before = _BETWEEN if at else _BELOW_HEAD
                yield node, before, node.heightForWidth(wide) + before
            if more:
                yield more, _BELOW_HEAD, more.heightForWidth(wide) + _BELOW_HEAD

    def sizeHint(self) -> QSize:
        return self.size()

    # ---- walking

    def _go(self, node: MapNode, dx: int, dy: int) -> None:
        """To the nearest entry that way: one it is linked with before any other."""
        if self.as_list:
            at = self.nodes.index(node) + (dx + dy)
            target = self.nodes[max(0, min(len(self.nodes) - 1, at))]
        else:
            target = self._nearest(node, dx, dy) or node
        target.setFocus(Qt.FocusReason.TabFocusReason)
        bring_into_sight(target)

    def _nearest(self, node: MapNode, dx: int, dy: int) -> MapNode | None:
        here = node.geometry().center()
        if dy:
            ahead = [n for n in self.nodes if n.node.column == node.node.column and (n.geometry().center().y() - here.y()) * dy > 0]
            return min(ahead, key=lambda n: abs(n.geometry().center().y() - here.y()), default=None)
        ahead = [n for n in self.nodes if (n.node.column - node.node.column) * dx > 0]
        linked = self._linked(node.node.key)

        def far(other: MapNode) -> tuple[int, bool, int]:
            steps = abs(other.node.column - node.node.column)
            return steps, other.node.key not in linked, abs(other.geometry().center().y() - here.y())

        return min(ahead, key=far, default=None)

    def _linked(self, key: Key) -> set[Key]:
        return {edge.end if edge.start == key else edge.start for edge in self._edges if key in (edge.start, edge.end)}

    def _point(self, key: Key | None) -> None:
        self._pointed = key
        self.update()

    # ---- lines

    def paintEvent(self, _event: QPaintEvent) -> None:
        if self.as_list or not self.look:
            return
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setPen(QPen(self.look.colour("rule"), HAIR))
        painter.drawLine(self.look.px(_BOW_EM), self._rule, self.width() - _EDGE, self._rule)
        lit = self._pointed or self.current().node.key
        for edge in sorted(self._edges, key=lambda edge: lit in (edge.start, edge.end)):
            on = lit in (edge.start, edge.end)
            painter.setPen(QPen(self.look.colour("thread" if on else "edge"), CHOSEN if on else HAIR))
            painter.drawPath(self._line(edge))
        painter.end()

    def _line(self, edge: Edge) -> QPainterPath:
        ends = [next(node for node in self.nodes if node.node.key == key) for key in (edge.start, edge.end)]
        one, other = sorted(ends, key=lambda node: (node.x(), node.y()))
        path = QPainterPath(_right(one) if one.x() != other.x() else _left(one))
        target = _left(other)
        start = path.currentPosition()
        if one.x() == other.x():
            bow = QPointF(self.look.px(1.25 * _BOW_EM) if self.look else 0.0, 0)
            path.cubicTo(start - bow, target - bow, target)
        else:
            reach = QPointF((target.x() - start.x()) / 2, 0)
            path.cubicTo(start + reach, target - reach, target)
        return path


def _right(node: MapNode) -> QPointF:
    return QPointF(node.geometry().right(), node.geometry().center().y())


def _left(node: MapNode) -> QPointF:
    return QPointF(node.geometry().left(), node.geometry().center().y())
