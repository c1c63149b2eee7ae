"""A length set in type: 1 9/16 in with a painted fraction; spoken in words."""

from __future__ import annotations

from fitdoctor.desk.look import Look
from fitdoctor.desk.parts.text import OneLine
from fitdoctor.shop import Shop
from fitdoctor.units import speak_length


class LengthLabel(OneLine):
    """A length in the shop's unit, the convention before it: in all 1 1/8 in."""

    def __init__(self, look: Look, mm: float, shop: Shop, before: str = "", role: str = "bold", name: str = "") -> None:
        super().__init__(look, f"{before} {shop.length(mm)}".strip(), role, name=name)
        self.setAccessibleName(f"{before} {speak_length(mm, shop.unit, shop.finest)}".strip())
