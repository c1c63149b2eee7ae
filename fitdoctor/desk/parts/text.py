"""Words on the page: a paragraph as a widget, a heading of a section, a hair line."""

from __future__ import annotations

from math import ceil

from PySide6.QtCore import QRectF, QSize, Qt
from PySide6.QtGui import QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QHBoxLayout, QLabel, QSizePolicy, QVBoxLayout, QWidget

from fitdoctor.desk.look import Look
from fitdoctor.desk.parts.setting import Paragraph, plain
from fitdoctor.desk.tokens import HAIR

_ROOM = 0.5
_LEAD_GAP = 20.0


class Words(QLabel):
    """A text in one size of the scale, broken at the width it gets; `**bold**` and fractions are set."""

    def __init__(self, look: Look, text: str = "", role: str = "body", tone: str = "ink", name: str = "") -> None:
        super().__init__()
        self.look, self.role, self.tone = look, role, tone
        self._marked = ""
        self.align = Qt.AlignmentFlag.AlignLeft
        self.in_middle = False
        self.setObjectName(name)
        policy = QSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Minimum)
        policy.setHeightForWidth(True)
        self.setSizePolicy(policy)
        self.say(text)

    def say(self, text: str) -> None:
        """Show another text; one that says nothing takes no room."""
        self._marked = text
        self.setText(plain(text))
        if not text or self.parent():
            self.setVisible(bool(text))
        self.updateGeometry()
        self.update()

    def said(self) -> str:
        """The text with its marks."""
        return self._marked

    def paragraph(self) -> Paragraph:
        """The text as it is set."""
        return Paragraph(self.look, self._marked, self.role)

    def hasHeightForWidth(self) -> bool:
        return True

    def heightForWidth(self, width: int) -> int:
        return ceil(self.paragraph().height(width)) if self._marked else 0

    def sizeHint(self) -> QSize:
        return QSize(ceil(self.paragraph().natural_width() + _ROOM), ceil(self.look.line(self.role)))

    def minimumSizeHint(self) -> QSize:
        return QSize(ceil(self.paragraph().least_width() + _ROOM), ceil(self.look.line(self.role)) if self._marked else 0)

    def clipped(self) -> bool:
        """Whether some of the text is out of sight."""
        return self.width() + 1 < self.paragraph().least_width() or self.height() + 1 < self.heightForWidth(self.width())

    def paintEvent(self, _event: QPaintEvent) -> None:
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        paragraph = self.paragraph()
        box = QRectF(self.rect())
        if self.in_middle:
            box.setTop((self.height() - paragraph.height(self.width())) / 2)
        paragraph.paint(painter, box, self.look.colour(self.tone), self.align)
        painter.end()


class OneLine(Words):
    """A text that keeps to one line, in the middle of its height: remarks, figures in a column."""

    def __init__(self, look: Look, text: str = "", role: str = "body", tone: str = "ink", name: str = "") -> None:
        super().__init__(look, text, role, tone, name)
        self.in_middle = True

    def minimumSizeHint(self) -> QSize:
        return self.sizeHint()


class Rule(QWidget):
    """A hair line from side to side."""

    def __init__(self, look: Look, tone: str = "rule", width: float = HAIR) -> None:
        super().__init__()
        self.look, self.tone, self.thick = look, tone, width
        self.setFixedHeight(2)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)

    def paintEvent(self, _event: QPaintEvent) -> None:
        painter = QPainter(self)
        painter.setPen(QPen(self.look.colour(self.tone), self.thick))
        painter.drawLine(0, 1, self.width(), 1)
        painter.end()


class Upright(QWidget):
    """A rule from top to bottom between two columns."""

    def __init__(self, look: Look, tone: str = "rule") -> None:
        super().__init__()
        self.setFixedWidth(2)
        self.setAutoFillBackground(True)
        tones = self.palette()
        tones.setColor(self.backgroundRole(), look.colour(tone))
        self.setPalette(tones)


class SectionHead(QWidget):
    """The head of a section: bold, an ink line below, a remark or something to press at the right."""

    def __init__(self, look: Look, title: str, remark: str | QWidget = "", name: str = "") -> None:
        super().__init__()
        self.setObjectName(name)
        self.title = Words(look, title, "bold")
        self.remark = remark if isinstance(remark, QWidget) else Words(look, remark, "small", "ink-2")
        row = QHBoxLayout()
        row.setContentsMargins(0, 0, 0, 7)
        row.setSpacing(12)
        row.addStrut(ceil(look.line("small") + 6))  # room for a link, so that neighbouring heads share a line
        row.addWidget(self.title, 1, Qt.AlignmentFlag.AlignBottom)
        row.addWidget(self.remark, 0, Qt.AlignmentFlag.AlignBottom)
        whole = QVBoxLayout(self)
        whole.setContentsMargins(0, 0, 0, 0)
        whole.setSpacing(0)
        whole.addLayout(row)
        whole.addWidget(Rule(look, "ink"))

    def say(self, title: str, remark: str = "") -> None:
        """Change its words."""
        self.title.say(title)
        if isinstance(self.remark, Words):
            self.remark.say(remark)


class PageTitle(Words):
    """The one title of a page, and the sentence beside it; below it where there is no room."""

    def __init__(self, look: Look, title: str, name: str) -> None:
        super().__init__(look, title, "page-title", name=name)
        self.lead = ""
        self.only_lead = False

    def remark(self, lead: str) -> None:
        """Change the sentence beside the title."""
        self.lead = lead
        self.setText(f"{plain(self.said())}. {plain(lead)}" if lead else plain(self.said()))
        self.updateGeometry()
        self.update()

    def shrink(self, narrow: bool) -> None:
        """In a narrow window the tape says the title already: only the sentence stays."""
        self.only_lead = narrow
        self.updateGeometry()
        self.update()

    def _beside(self) -> Paragraph:
        return Paragraph(self.look, self.lead, "small" if self.only_lead else "lead")

    def _on_one_line(self, width: float) -> bool:
        return self.paragraph().natural_width() + _LEAD_GAP + self._beside().natural_width() <= width

    def heightForWidth(self, width: int) -> int:
        if self.only_lead:
            return ceil(self._beside().height(width)) if self.lead else 0
        title = self.paragraph().height(width)
        return ceil(title if not self.lead or self._on_one_line(width) else title + 4 + self._beside().height(width))

    def sizeHint(self) -> QSize:
        return QSize(self.look.px(20), self.heightForWidth(self.look.px(40)))

    def minimumSizeHint(self) -> QSize:
        return QSize(self.look.px(12), 0)

    def paintEvent(self, event: QPaintEvent) -> None:
        if not self.only_lead:
            super().paintEvent(event)
        if not self.lead:
            return
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        title, lead = self.paragraph(), self._beside()
        box = QRectF(self.rect())
        if self.only_lead:
            pass
        elif self._on_one_line(self.width()):
            box.adjust(title.natural_width() + _LEAD_GAP, title.base_line() - lead.base_line(), 0, 0)
        else:
            box.setTop(title.height(self.width()) + 4)
        lead.paint(painter, box, self.look.colour("ink-2"))
        painter.end()
