"""What the system wishes for whoever reads: dark, more contrast, nothing that moves."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING

from PySide6.QtCore import Qt
from PySide6.QtGui import QGuiApplication

from fitdoctor.desk.background import run_in_background
from fitdoctor.errors import FitdoctorError

if TYPE_CHECKING:
    from PySide6.QtDBus import QDBusMessage

_PORTAL = ("org.freedesktop.portal.Desktop", "/org/freedesktop/portal/desktop", "org.freedesktop.portal.Settings")
_REDUCED = 1
_PATIENCE_MS = 1000


def dark_wished() -> bool:
    """Whether the system is in its dark theme."""
    return QGuiApplication.styleHints().colorScheme() == Qt.ColorScheme.Dark


def contrast_wished() -> bool:
    """Whether the system asks for more contrast; Qt before 6.10 cannot say."""
    hints = QGuiApplication.styleHints()
    if not hasattr(hints, "accessibility"):
        return False
    return bool(hints.accessibility().contrastPreference() == Qt.ContrastPreference.HighContrast)


def on_wish(changed: Callable[[], None]) -> None:
    """Call when the system wishes for another theme or another contrast."""
    hints = QGuiApplication.styleHints()
    hints.colorSchemeChanged.connect(changed)
    if hasattr(hints, "accessibility"):
        hints.accessibility().contrastPreferenceChanged.connect(changed)


def ask_for_stillness(then: Callable[[bool], None]) -> None:
    """Ask the desktop whether it wishes for reduced motion, and hand the answer on; where nothing answers, it does not.

    The key is `reduced-motion` of the Settings portal (XDG Desktop Portal); Qt does not hand it on.
    """
    run_in_background(_stillness, then, lambda _error: then(False))


def _stillness() -> bool:
    from PySide6.QtDBus import QDBusConnection, QDBusMessage  # not before the window is painted

    bus = QDBusConnection.sessionBus()
    if not bus.isConnected():
        return False
    ask = QDBusMessage.createMethodCall(*_PORTAL, "ReadOne")
    ask.setArguments(["org.freedesktop.appearance", "reduced-motion"])
    answer = bus.call(ask, timeout=_PATIENCE_MS)
    if answer.type() != QDBusMessage.MessageType.ReplyMessage:
        raise FitdoctorError(answer.errorMessage())
    return said_by(answer)


def said_by(answer: QDBusMessage) -> bool:
    """Whether an answer of the portal asks for reduced motion."""
    values = [getattr(value, "variant", lambda value=value: value)() for value in answer.arguments()]
    return values == [_REDUCED]
