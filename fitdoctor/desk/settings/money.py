"""What work costs, and how long it takes this shop."""

from __future__ import annotations

import re

from PySide6.QtCore import Qt

from fitdoctor.desk.look import Look
from fitdoctor.desk.parts.field import Field
from fitdoctor.desk.parts.round_choice import ChoiceRow
from fitdoctor.desk.settings.group import Group, show_choice
from fitdoctor.desk.settings.row import SettingRow
from fitdoctor.desk.words import tr
from fitdoctor.shop import MOST_CURRENCY, Shop

_PRICE = re.compile(r"\d{1,6}(?:[.,]\d{1,2})?")


def read_price(text: str) -> float | None:
    """A price as it is typed: 24, 24.50 or 24,50; None where it is none."""
    typed = text.strip()
    return float(typed.replace(",", ".")) if _PRICE.fullmatch(typed) else None


class Money(Group):
    """Wages or none; the rate and the sign are asked where wages are counted."""

    def __init__(self, look: Look) -> None:
        super().__init__(look, tr("Money"))
        self._counting = False
        ways = [("no", tr("I do my own work: count no wages")), ("yes", tr("Count wages"))]
        self._wages = ChoiceRow(look, "wages", ways, "", "settings-wages", tr("Wages"))
        self._wages.chosen.connect(lambda _, way: self._choose(way == "yes"))
        self._rate = Field(look, "settings-rate", tr("Rate an hour"), "", tr("an hour"))
        self._currency = Field(look, "settings-currency", tr("Sign before an amount"))
        for field, em in ((self._rate, 11), (self._currency, 6)):
            field.setFixedWidth(look.px(em))
        self._rate.edit.editingFinished.connect(self._take_rate)
        self._currency.edit.editingFinished.connect(self._take_currency)
        self._rate_row = SettingRow(look, "settings-rate-row", tr("Rate an hour"), [self._rate])
        self._currency_row = SettingRow(look, "settings-currency-row", tr("Sign before an amount"), [self._currency])
        self.lay([SettingRow(look, "settings-wages-row", tr("Wages"), [self._wages]), self._rate_row, self._currency_row])

    def _choose(self, count: bool) -> None:
        self._counting = count
        if not count:
            self.wanted.emit({"rate_per_hour": None}, tr("No wages are counted"), "")
        self.show_shop(self._shop)
        if count:
            self._rate.edit.setFocus(Qt.FocusReason.OtherFocusReason)

    def _take_rate(self) -> None:
        typed = self._rate.edit.text()
        rate = read_price(typed)
        self._rate.show_wrong(bool(typed.strip()) and rate is None)
        if rate is not None:
            self._rate_row.show_wrong("")
            self.wanted.emit({"rate_per_hour": rate}, tr("Rate an hour: {sign}{rate}", sign=self._shop.currency, rate=f"{rate:.2f}"), "")
        elif typed.strip():
            before = self._shop.rate_per_hour
            stands = tr("No wages are counted.") if before is None else tr("{rate} stays.", rate=f"{self._shop.currency}{before:.2f}")
            self._rate_row.show_wrong(tr("‘{typed}’ is not a price. Write it as 24 or 24.50. {stands}", typed=typed.strip(), stands=stands))

    def _take_currency(self) -> None:
        sign = self._currency.edit.text().strip()
        wrong = len(sign) > MOST_CURRENCY
        self._currency.show_wrong(wrong)
        if wrong:
            self._currency_row.show_wrong(tr("‘{sign}’ is too long for a sign. It may have {n} letters.", sign=sign, n=MOST_CURRENCY))
        else:
            self._currency_row.show_wrong("")
            self.wanted.emit({"currency": sign}, tr("Sign before an amount: {sign}", sign=sign or tr("none")), "")

    def show_shop(self, shop: Shop) -> None:
        self._shop = shop
        counted = shop.rate_per_hour is not None or self._counting
        show_choice(self._wages, "yes" if counted else "no")
        self._rate_row.setVisible(counted)
        self._currency_row.setVisible(counted)
        if not self._rate.wrong and not self._rate.edit.hasFocus():
            self._rate.edit.setText("" if shop.rate_per_hour is None else f"{shop.rate_per_hour:.2f}")
        if not self._currency.wrong and not self._currency.edit.hasFocus():
            self._currency.edit.setText(shop.currency)
        example = shop.money(60) if shop.rate_per_hour is not None else ""
        self._currency_row.say(tr("An hour is written {example}.", example=example) if example else "")
