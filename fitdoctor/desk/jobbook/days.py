"""Days as the job book says them and reads them: near ones by their name, others by date."""

from __future__ import annotations

import re
from datetime import date, timedelta

from PySide6.QtCore import QLocale

from fitdoctor.desk.words import tr
from fitdoctor.errors import FitdoctorError

_WEEK = 7
_WHOLE = re.compile(r"(\d{4})-(\d{1,2})-(\d{1,2})")
_DAY_AND_MONTH = re.compile(r"(\d{1,2})[. ]+(\d{1,2}|[^\W\d]+)\.?(?:[. ]+(\d{4}))?")
_ON = re.compile(r"\+ ?(\d{1,3})")


def day_words(day: date, today: date) -> str:
    """‘today’, ‘Thursday’, ‘3 Dec’, ‘3 Dec 2027’."""
    away = (day - today).days
    near = {0: tr("today"), 1: tr("tomorrow"), -1: tr("yesterday")}
    if away in near:
        return near[away]
    if 1 < away < _WEEK:
        return QLocale().dayName(day.isoweekday())
    month = QLocale().monthName(day.month, QLocale.FormatType.ShortFormat).rstrip(".")
    return f"{day.day} {month}" if day.year == today.year else f"{day.day} {month} {day.year}"


def due_words(due: date | None, today: date) -> str:
    """‘due Thursday’, ‘2 days late’, ‘no due day’."""
    if due is None:
        return tr("no due day")
    late = (today - due).days
    if late > 0:
        return tr("1 day late") if late == 1 else tr("{n} days late", n=late)
    return tr("due {day}", day=day_words(due, today))


def typed_day(text: str, today: date) -> date | None:
    """A day as it may be typed: 2026-12-03, 3.12., 3 Dec, Thursday, tomorrow, +7. Nothing typed is no day.

    A day and month without a year is the next such day; a weekday the next one after today.

    Raises:
        FitdoctorError: it is no day.
    """
    plain = text.strip().casefold()
    if not plain:
        return None
    for way in (_by_name, _by_number):
        found = way(plain, today)
        if found:
            return found
    raise FitdoctorError(tr("‘{typed}’ is not a day yet.", typed=text.strip()), tr("Write it as 3 Dec, Thursday, +7 or 2026-12-03."))


def _by_name(plain: str, today: date) -> date | None:
    near = {tr("today"): 0, tr("tomorrow"): 1, tr("yesterday"): -1}
    if plain in near:
        return today + timedelta(days=near[plain])
    for ahead in range(1, _WEEK + 1):
        day = today + timedelta(days=ahead)
        if len(plain) > 1 and QLocale().dayName(day.isoweekday()).casefold().startswith(plain.rstrip(".")):
            return day
    return None


def _by_number(plain: str, today: date) -> date | None:
    on, whole, part = _ON.fullmatch(plain), _WHOLE.fullmatch(plain), _DAY_AND_MONTH.fullmatch(plain)
    if on:
        return today + timedelta(days=int(on[1]))
    if whole:
        return _date(int(whole[1]), int(whole[2]), int(whole[3]))
    if not part:
        return None
    month = int(part[2]) if part[2].isdigit() else _month(part[2])
    if part[3]:
        return _date(int(part[3]), month, int(part[1]))
    days = (_date(today.year + ahead, month, int(part[1])) for ahead in (0, 1))
    return next((day for day in days if day and day >= today), None)


def _month(name: str) -> int:
    names = (QLocale().monthName(number).casefold() for number in range(1, 13))
    return next((number for number, month in enumerate(names, 1) if len(name) > 2 and month.startswith(name)), 0)


def _date(year: int, month: int, day: int) -> date | None:
    try:
        return date(year, month, day)
    except ValueError:
        return None
