"""The shop's folders: its own entries of the handbook, and where sheets are written."""

from __future__ import annotations

from pathlib import Path

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QFileDialog

from fitdoctor.desk.look import Look
from fitdoctor.desk.parts.button import Button
from fitdoctor.desk.parts.field import Field
from fitdoctor.desk.settings.group import Group
from fitdoctor.desk.settings.row import SettingRow
from fitdoctor.desk.words import tr
from fitdoctor.shop import Shop

_WIDE = 22


class FolderRow(SettingRow):
    """A folder typed, chosen, or none. Emits it once it is there."""

    named = Signal(str)

    def __init__(self, look: Look, name: str, title: str, remark: str) -> None:
        self.field = Field(look, f"{name}-path", title, tr("No folder"))
        self.field.setMinimumWidth(look.px(_WIDE))
        self.choose = Button(look, tr("Choose a folder"), f"{name}-choose")
        self.none = Button(look, tr("No folder"), f"{name}-none")
        super().__init__(look, name, title, [self.field, self.choose, self.none], remark)
        self._title, self._stands = title, ""
        self.field.edit.editingFinished.connect(lambda: self._take(self.field.edit.text()))
        self.field.edit.left.connect(lambda: self.show_folder(self._stands))
        self.choose.clicked.connect(self._ask)
        self.none.clicked.connect(lambda: self._take(""))

    def show_folder(self, folder: str) -> None:
        """Show the folder that is set."""
        self._stands = folder
        self.field.edit.setText(folder)
        self.field.show_wrong(False)
        self.show_wrong("")
        self.none.setVisible(bool(folder))

    def _take(self, typed: str) -> None:
        folder = typed.strip()
        wrong = bool(folder) and not Path(folder).expanduser().is_dir()
        self.field.show_wrong(wrong)
        if wrong:
            stands = tr("{folder} stays.", folder=self._stands) if self._stands else tr("None is used.")
            self.show_wrong(tr("There is no folder {folder}. {stands}", folder=folder, stands=stands))
            return
        self.show_wrong("")
        self.named.emit(str(Path(folder).expanduser()) if folder else "")

    def _ask(self) -> None:
        folder = QFileDialog.getExistingDirectory(self, self._title, self._stands or str(Path.home()))
        if folder:
            self._take(folder)


class Folders(Group):
    """What lies elsewhere on the computer."""

    def __init__(self, look: Look) -> None:
        super().__init__(look, tr("Folders"))
        own = tr("Your own entries lie over those that come with the program: the same name replaces one, a new name adds one.")
        self._own = FolderRow(look, "settings-own", tr("Your own entries of the handbook"), own)
        sheets = tr("Offered when a sheet or a marking guide is saved.")
        self._sheets = FolderRow(look, "settings-sheets", tr("Sheets and marking guides"), sheets)
        self._own.named.connect(lambda folder: self._name("knowledge_folder", tr("Your own entries"), folder))
        self._sheets.named.connect(lambda folder: self._name("sheets_folder", tr("Sheets and marking guides"), folder))
        self.lay([self._own, self._sheets])

    def _name(self, setting: str, what: str, folder: str) -> None:
        self.wanted.emit({setting: folder}, f"{what}: {folder or tr('no folder')}", "")

    def show_shop(self, shop: Shop) -> None:
        self._own.show_folder(shop.knowledge_folder)
        self._sheets.show_folder(shop.sheets_folder)
