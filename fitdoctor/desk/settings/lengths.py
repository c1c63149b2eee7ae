"""How lengths are written and rounded, and what the shop takes where nobody measured."""

from __future__ import annotations

from fitdoctor.desk.look import Look
from fitdoctor.desk.parts.button import Button
from fitdoctor.desk.parts.length_field import HIGH, LengthField
from fitdoctor.desk.parts.round_choice import ChoiceRow
from fitdoctor.desk.settings.group import Group, show_choice
from fitdoctor.desk.settings.row import SettingRow
from fitdoctor.desk.words import tr
from fitdoctor.shop import MOST_HEM_DROP_MM, Shop

FINEST = (8, 16, 32)


class Lengths(Group):
    """Unit, rounding, and the drop of a trouser hem."""

    def __init__(self, look: Look, shop: Shop) -> None:
        super().__init__(look, tr("Lengths"))
        self._shop = shop
        self._units = {"in": tr("Inches and fractions"), "cm": tr("Centimetres")}
        self._unit = ChoiceRow(look, "unit", list(self._units.items()), "", "settings-unit", tr("Written in"))
        self._unit.chosen.connect(self._take_unit)
        steps = [(str(part), tr("to 1/{n} in", n=part)) for part in FINEST]
        self._finest = ChoiceRow(look, "finest", steps, "", "settings-finest", tr("Marks are rounded"))
        self._finest.chosen.connect(self._take_finest)
        self._rounding = SettingRow(look, "settings-rounding", tr("Marks are rounded"), [self._finest])
        says = tr("How much lower the back of a trouser hem is")
        self._drop = LengthField(look, shop, "settings-hem-drop", says)
        self._drop.lengthTyped.connect(self._take_drop)
        self._drop.notRead.connect(self._not_read)
        self._drop.cleared.connect(lambda: self._set_drop(None))
        self._as_printed = Button(look, tr("As printed"), "settings-hem-printed")
        self._as_printed.setFixedHeight(look.grown(HIGH))
        self._as_printed.clicked.connect(lambda: self._set_drop(None))
        self._hem = SettingRow(look, "settings-hem", tr("Back of a trouser hem, lower by"), [self._drop, self._as_printed])
        self.lay([SettingRow(look, "settings-units", tr("Written in"), [self._unit]), self._rounding, self._hem])

    def _take_unit(self, _question: str, unit: str) -> None:
        self.wanted.emit({"unit": unit}, tr("Lengths are written in {unit}", unit=self._units[unit].lower()), "")

    def _take_finest(self, _question: str, part: str) -> None:
        self.wanted.emit({"finest": int(part)}, tr("Marks are rounded to 1/{n} in", n=part), "")

    def _not_read(self, typed: str) -> None:
        self._hem.show_wrong(tr("‘{typed}’ is not a length yet. Write it as 1/2, 0.5 or 13 mm.", typed=typed.strip()))

    def _take_drop(self, mm: float) -> None:
        wrong = mm > MOST_HEM_DROP_MM
        self._drop.field.show_wrong(wrong)
        if wrong:
            most = self._shop.length(MOST_HEM_DROP_MM)
            self._hem.show_wrong(tr("That is more than a hem can slant. It may be up to {most}.", most=most))
        else:
            self._set_drop(mm)

    def _set_drop(self, mm: float | None) -> None:
        said = tr("as printed") if mm is None else tr("{length} lower", length=self._shop.length(mm))
        self.wanted.emit({"hem_drop_mm": mm}, tr("Back of a trouser hem: {said}", said=said), "hem")

    def show_shop(self, shop: Shop) -> None:
        self._shop = shop
        show_choice(self._unit, shop.unit)
        show_choice(self._finest, str(shop.finest))
        self._finest.setVisible(shop.unit == "in")
        shared = tr("In all and on each side: what rounding takes from one mark, another gets.")
        self._rounding.say(shared if shop.unit == "in" else tr("To the whole millimetre. {shared}", shared=shared))
        self._drop.show_length(shop.hem_drop_mm)
        self._as_printed.setVisible(shop.hem_drop_mm is not None)
        used = tr("Used where nobody measured; the sheet says so each time.")
        printed = tr("Nothing is set: as printed, 1/2 in. {used}", used=used)
        self._hem.say(printed if shop.hem_drop_mm is None else used)
