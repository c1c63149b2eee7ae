"""Amounts of money as the buyer writes and reads them."""

from __future__ import annotations

import re
from dataclasses import dataclass

from PySide6.QtCore import QLocale

MOST = 1_000_000.0
_PLAIN = re.compile(r"\d+(?:[.,]\d{1,2})?")
_GROUPED = re.compile(r"[\d.,'’\s\u00a0\u202f]*\d")
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
        plain = round(abs(amount), 2)
        said = self.locale.toCurrencyString(plain, sign, 2) if sign else self.locale.toString(plain, "f", 2)
        return f"{_MINUS}{said}" if amount < 0 and plain else said

    def off(self, amount: float) -> str:
        """An amount that is taken off."""
        return f"{_MINUS}{self.say(abs(amount))}" if round(abs(amount), 2) else self.say(0.0)

    def typed(self, amount: float) -> str:
        """An amount as it would be typed."""
        return self.locale.toString(amount, "f", 0 if amount == int(amount) else 2)

    def read(self, text: str) -> float | None:
        """An amount as it was typed, with a point or a comma, with or without the sign; None where it is none.

        An amount has two places at most after the point: what looks finer is a slip.
        """
        bare = text.strip()
        for sign in filter(None, (self.sign, self.locale.currencySymbol())):
            bare = bare.removeprefix(sign).removesuffix(sign).strip()
        amount = self._plain(bare)
        return amount if amount is not None and amount <= MOST else None

    def _plain(self, bare: str) -> float | None:
        if _PLAIN.fullmatch(bare):
            return float(bare.replace(",", "."))
        if not _GROUPED.fullmatch(bare):
            return None
        amount, sound = self.locale.toDouble(bare)
        return amount if sound and abs(amount * 100 - round(amount * 100)) < 1e-6 else None
