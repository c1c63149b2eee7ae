"""How the window looks: size of the text, theme, contrast, motion."""

from __future__ import annotations

from collections.abc import Sequence

from fitdoctor.desk.look import Look
from fitdoctor.desk.parts.round_choice import ChoiceRow
from fitdoctor.desk.settings.group import Group, show_choice
from fitdoctor.desk.settings.row import SettingRow
from fitdoctor.desk.words import tr
from fitdoctor.shop import Shop

TEXT_STEPS = (100, 110, 125, 150, 175, 200)


class Screen(Group):
    """Each is a row of words to choose one of."""

    def __init__(self, look: Look) -> None:
        super().__init__(look, tr("The screen"))
        system = ("system", tr("As the system has it"))
        sizes = [(str(percent), tr("{n} %", n=percent)) for percent in TEXT_STEPS]
        self._text = self._row("text_percent", tr("Size of the text"), sizes)
        self._theme = self._row("theme", tr("Light or dark"), [system, ("light", tr("Light")), ("dark", tr("Dark"))])
        self._contrast = self._row("high_contrast", tr("Contrast"), [system, ("yes", tr("High"))])
        self._motion = self._row("still", tr("Motion"), [system, ("yes", tr("None"))])
        texts = tr("Ctrl + and Ctrl − set it too; Ctrl 0 goes back to 100 %.")
        high = tr("No tints, and every edge in ink.")
        still = tr("Bars and lines stand at once where they are to be.")
        self.lay(
            [
                SettingRow(look, "settings-text", tr("Size of the text"), [self._text], texts),
                SettingRow(look, "settings-theme", tr("Light or dark"), [self._theme]),
                SettingRow(look, "settings-contrast", tr("Contrast"), [self._contrast], high),
                SettingRow(look, "settings-motion", tr("Motion"), [self._motion], still),
            ]
        )

    def _row(self, name: str, title: str, values: Sequence[tuple[str, str]]) -> ChoiceRow:
        row = ChoiceRow(self.look, name, values, "", f"settings-{name.replace('_', '-')}", title)
        said = dict(values)
        row.chosen.connect(lambda setting, value: self._choose(setting, value, f"{title}: {said[value]}"))
        return row

    def _choose(self, setting: str, value: str, said: str) -> None:
        self.wanted.emit({setting: int(value) if setting == "text_percent" else value}, said, "")

    def show_shop(self, shop: Shop) -> None:
        show_choice(self._text, str(shop.text_percent))
        show_choice(self._theme, shop.theme)
        show_choice(self._contrast, shop.high_contrast)
        show_choice(self._motion, shop.still)
