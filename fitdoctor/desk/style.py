"""The style of what Qt paints itself: one palette and one style sheet, both filled from the look."""

from __future__ import annotations

from string import Template

from PySide6.QtGui import QColor, QPalette
from PySide6.QtWidgets import QWidget

from fitdoctor.desk.look import Look

_SHEET = Template(
    """
QWidget { font-family: "$sans"; font-size: ${body}px; }
QLineEdit, QPlainTextEdit { background: transparent; color: $ink; border: none; selection-background-color: $thread;
    selection-color: $on_thread; placeholder-text-color: $ink_2; }
QLineEdit[role="entry"] { font-size: ${entry}px; font-weight: bold; }
QScrollArea { background: transparent; border: none; }
QScrollBar:vertical { background: $paper_2; width: 14px; margin: 0; border: none; }
QScrollBar::handle:vertical { background: $edge; min-height: 40px; border-radius: 3px; margin: 1px 3px; }
QScrollBar::handle:vertical:hover { background: $ink_2; }
QScrollBar:horizontal { background: $paper_2; height: 14px; margin: 0; border: none; }
QScrollBar::handle:horizontal { background: $edge; min-width: 40px; border-radius: 3px; margin: 3px 1px; }
QScrollBar::handle:horizontal:hover { background: $ink_2; }
QScrollBar::add-line, QScrollBar::sub-line { width: 0; height: 0; }
QAbstractScrollArea::corner { background: $paper_2; border: none; }
QScrollBar::add-page, QScrollBar::sub-page { background: transparent; }
QMenu { background: $paper; color: $ink; border: 2px solid $ink; padding: 6px 0; }
QMenu::item { padding: ${menu}px 28px; border-left: 4px solid transparent; }
QMenu::item:selected { background: $hand; color: $hand_ink; border-left: 4px solid $thread; }
QMenu::separator { height: 2px; background: $rule; margin: 6px 0; }
QToolTip { background: $paper; color: $ink; border: 2px solid $ink; padding: 4px 8px; }
QMessageBox, QDialog { background: $paper; color: $ink; }
QMessageBox QLabel { color: $ink; }
QPushButton[role="dialog"] { min-height: ${target}px; padding: 0 20px; background: $paper; color: $ink; border: 2px solid $ink;
    border-radius: 3px; font-weight: bold; }
"""
)


def style_sheet(look: Look) -> str:
    """The style sheet of a look."""
    return _SHEET.substitute(
        look.tokens.colours(),
        sans=look.faces.sans,
        body=look.font("body").pixelSize(),
        entry=look.font("entry").pixelSize(),
        menu=look.grown(9),
        target=look.target(),
        hand=look.tokens.ink if look.tokens.high_contrast else look.tokens.thread_tint,
        hand_ink=look.tokens.paper if look.tokens.high_contrast else look.tokens.ink,
    )


def palette(look: Look, ground: str = "paper") -> QPalette:
    """The palette of a look; `ground` is the colour behind: paper, table."""
    roles = {
        QPalette.ColorRole.Window: ground,
        QPalette.ColorRole.Base: "paper",
        QPalette.ColorRole.AlternateBase: "paper-2",
        QPalette.ColorRole.WindowText: "ink",
        QPalette.ColorRole.Text: "ink",
        QPalette.ColorRole.ButtonText: "ink",
        QPalette.ColorRole.PlaceholderText: "ink-2",
        QPalette.ColorRole.Button: "paper",
        QPalette.ColorRole.Highlight: "thread",
        QPalette.ColorRole.HighlightedText: "on-thread",
        QPalette.ColorRole.Link: "thread",
        QPalette.ColorRole.Mid: "edge",
        QPalette.ColorRole.Midlight: "rule",
        QPalette.ColorRole.ToolTipBase: "paper",
        QPalette.ColorRole.ToolTipText: "ink",
    }
    made = QPalette()
    for role, name in roles.items():
        made.setColor(role, QColor(look.tokens.colour(name)))
    return made


def dress(window: QWidget, look: Look) -> None:
    """Put a window and all in it into a look."""
    window.setPalette(palette(look))
    window.setStyleSheet(style_sheet(look))


def lay_on(widget: QWidget, look: Look, ground: str) -> None:
    """Fill a widget with another ground than paper."""
    widget.setAutoFillBackground(True)
    widget.setPalette(palette(look, ground))
