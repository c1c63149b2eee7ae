"""How long work takes this shop, against the printed minutes: for all work, and for a stage of its own."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QHBoxLayout, QWidget

from fitdoctor.desk.look import Look
from fitdoctor.desk.parts.button import Link
from fitdoctor.desk.parts.rows import Rows, left
from fitdoctor.desk.parts.text import Words
from fitdoctor.desk.settings.group import Group
from fitdoctor.desk.settings.row import SettingRow
from fitdoctor.desk.settings.stepper import Stepper
from fitdoctor.desk.words import tr
from fitdoctor.plan import STAGE_WORDS
from fitdoctor.sheet import duration
from fitdoctor.shop import LEAST_PERCENT, MOST_PERCENT, Shop

STEP = 5
_NAME_EM = 9


class StageRow(QWidget):
    """One stage: its share, and the way back to that of all work."""

    def __init__(self, look: Look, stage: str, title: str) -> None:
        super().__init__()
        self.stage, self.title = stage, title
        self.setObjectName(f"settings-stage-{stage}")
        words = Words(look, title, "row")
        words.setFixedWidth(look.px(_NAME_EM))
        self.stepper = Stepper(look, f"settings-stage-{stage}-share", title, LEAST_PERCENT, MOST_PERCENT, STEP)
        self.own = Link(look, tr("As all work"), f"settings-stage-{stage}-as-all")
        self.own.setAccessibleName(tr("{stage}: as all work", stage=title))
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(12)
        for widget in (words, self.stepper, self.own):
            row.addWidget(widget, 0, Qt.AlignmentFlag.AlignVCenter)
        row.addStretch(1)


class OwnMinutes(Group):
    """The stages are shown where one is set apart, or where they are asked for."""

    def __init__(self, look: Look) -> None:
        super().__init__(look, tr("Minutes"))
        self._open = False
        title = tr("All work, against the printed minutes")
        self._all = Stepper(look, "settings-minutes-share", title, LEAST_PERCENT, MOST_PERCENT, STEP)
        self._all.stepped.connect(
            lambda to: self.wanted.emit({"minutes_percent": to}, tr("All work: {n} % of the printed minutes", n=to), "minutes")
        )
        self._row = SettingRow(look, "settings-minutes", title, [self._all])
        self._more = Link(look, "", "settings-stages-open", "body", big=True)
        self._more.clicked.connect(self._turn)
        self._stages = Rows("settings-stages", 8)
        self._rows = [self._stage(stage, tr(words)) for stage, words in STAGE_WORDS.items()]
        self._stages.show_rows(self._rows)
        self.lay([self._row, left(self._more), self._stages])

    def _stage(self, stage: str, title: str) -> StageRow:
        row = StageRow(self.look, stage, title)
        row.stepper.stepped.connect(lambda to: self._set(stage, title, to))
        row.own.clicked.connect(lambda: self._set(stage, title, None))
        return row

    def _set(self, stage: str, title: str, to: int | None) -> None:
        rest = {other: share for other, share in self._shop.stage_percent.items() if other != stage}
        said = tr("{stage}: as all work", stage=title) if to is None else tr("{stage}: {n} % of the printed minutes", stage=title, n=to)
        self.wanted.emit({"stage_percent": rest if to is None else {**rest, stage: to}}, said, f"stage-{stage}" if to else "")

    def _turn(self) -> None:
        self._open = not self._open
        self.show_shop(self._shop)

    def show_shop(self, shop: Shop) -> None:
        self._shop = shop
        self._all.show_percent(shop.minutes_percent)
        hour = duration(60 * shop.minutes_percent / 100)
        self._row.say(tr("What is printed as 1 h takes {time} here.", time=hour))
        apart = bool(shop.stage_percent)
        self._more.say("" if apart else tr("Show the stages together") if self._open else tr("Set a stage apart"))
        for row in self._rows:
            row.stepper.show_percent(shop.stage_percent.get(row.stage, shop.minutes_percent))
            row.own.setVisible(row.stage in shop.stage_percent)
        self._stages.setVisible(apart or self._open)
