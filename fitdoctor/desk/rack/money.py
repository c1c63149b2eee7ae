"""Amounts of money as the buyer writes and reads them."""

from __future__ import annotations

import re
from dataclasses import dataclass
from unicodedata import category, decimal

from PySide6.QtCore import QLocale

MOST = 1_000_000.0
_PLAIN = re.compile(r"\d+(?:[.,]\d{1,2})?")
_AIR = re.compile(r"[\s'’]")
_MINUS = "\u2212 "


@dataclass(frozen=True)
class Money:
    """Writes and reads amounts by a locale.

    Attributes:
        sign: of the currency, in place of the locale's own; empty: the locale's.
    """

    locale: QLocale
    sign: str = ""

    def say(self, amount: float) -> str:
        """‘£8.00’, ‘8,00 €’; below nothing with a minus before it."""
        sign = self.sign or self.locale.currencySymbol()
        plain = round(abs(float(amount)), 2)
        said = self.locale.toCurrencyString(plain, sign, 2) if sign else self.locale.toString(plain, "f", 2)
        return f"{_MINUS}{said}" if amount < 0 and plain else said

    def off(self, amount: float) -> str:
        """An amount that is taken off."""
        return f"{_MINUS}{self.say(abs(amount))}" if round(abs(amount), 2) else self.say(0.0)

    def typed(self, amount: float) -> str:
        """An amount as it would be typed."""
        return self.locale.toString(float(amount), "f", 0 if amount == int(amount) else 2)

    def read(self, text: str) -> float | None:
        """An amount as it was typed, with a point or a comma, with or without the sign; None where it is none.

        An amount has two places at most after the point: what looks finer is a slip.
        """
        bare = "".join(str(decimal(letter, letter)) for letter in _seen(text)).strip()
        for sign in filter(None, (self.sign, _seen(self.locale.currencySymbol()))):
            bare = bare.removeprefix(sign).removesuffix(sign).strip()
        amount = self._plain(bare)
        return amount if amount is not None and amount <= MOST else None

    def _plain(self, bare: str) -> float | None:
        if _PLAIN.fullmatch(bare):
            return float(bare.replace(",", "."))
        group, point = re.escape(self.locale.groupSeparator()), self.locale.decimalPoint()
        whole, _, rest = _AIR.sub("", bare).partition(point)
        if not re.fullmatch(rf"\d+|\d{{1,3}}(?:{group}\d{{3}})+", whole) or not re.fullmatch(r"\d{0,2}", rest):
            return None
        return float(f"{re.sub(r'[^0-9]', '', whole)}.{rest or 0}")


def _seen(text: str) -> str:
    """The text without marks that only set its direction."""
    return "".join(letter for letter in text if category(letter) != "Cf")
