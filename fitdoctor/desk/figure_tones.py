"""The colours of the drawn figure, for the light and the dark desk."""

from __future__ import annotations

from dataclasses import dataclass, field, replace

from PySide6.QtGui import QColor


@dataclass(frozen=True)
class FigureTones:
    """The colours of the drawn figure by the name of their role, and how strongly shade and light are laid on."""

    name: str
    colours: dict[str, str]
    strength: dict[str, float] = field(default_factory=dict)
    font: str = "Source Sans Pro"

    def colour(self, role: str, alpha: float = 1.0) -> QColor:
        """The colour of a role at an opacity."""
        colour = QColor(self.colours[role])
        colour.setAlphaF(max(0.0, min(1.0, alpha * self.strength.get(role, 1.0))))
        return colour

    def laid_on(self, role: str, alpha: float) -> float:
        """An opacity as this theme lays it on."""
        return alpha * self.strength.get(role, 1.0)


LIGHT = FigureTones(
    "light",
    {
        "paper": "#FBF8F1",
        "bg": "#F3EDE0",
        "edge": "#857968",
        "form": "#E9DED4",
        "form_lit": "#F3EBE3",
        "form_dark": "#CFC1B5",
        "form_line": "#8F806B",
        "cloth": "#DDD2BF",
        "lit": "#EFE8DB",
        "dark": "#BCAE97",
        "trim": "#CDC0A9",
        "under": "#6E6150",
        "button": "#6E6150",
        "shirt": "#FBF8F1",
        "shirt_dark": "#DFD8CB",
        "line": "#3B342D",
        "ink": "#332C25",
        "shade": "#2B1E10",
        "glow": "#FFFFFA",
        "deep": "#211A13",
        "text": "#29241F",
        "guide": "#2A4A7C",
        "pull": "#A2401F",
        "stack": "#17626C",
        "hang": "#5F5016",
    },
    {"shade": 1.0, "glow": 0.95},
)
DARK = FigureTones(
    "dark",
    {
        "paper": "#211D19",
        "bg": "#2B2621",
        "edge": "#978A7B",
        "form": "#453F3A",
        "form_lit": "#524B45",
        "form_dark": "#35302C",
        "form_line": "#85796C",
        "cloth": "#5C5348",
        "lit": "#746A5E",
        "dark": "#453D35",
        "trim": "#51493F",
        "under": "#2C2620",
        "button": "#2C2620",
        "shirt": "#A8A196",
        "shirt_dark": "#7B746A",
        "line": "#DDD3C3",
        "ink": "#120E0A",
        "shade": "#0B0805",
        "glow": "#FFF6E6",
        "deep": "#080604",
        "text": "#F0E8DB",
        "guide": "#ABC3ED",
        "pull": "#FFA482",
        "stack": "#7FD3DA",
        "hang": "#E3C873",
    },
    {"shade": 1.12, "glow": 0.66},
)


def in_high_contrast(tones: FigureTones, guide: str) -> FigureTones:
    """The same figure with ground and ink as far apart as they can be, and marks in another colour; the cloth stays between them."""
    ground, ink = ("#000000", "#FFFFFF") if tones.name == "dark" else ("#FFFFFF", "#000000")
    others = {"paper": ground, "bg": ground, "guide": guide} | dict.fromkeys(("edge", "form_line", "line", "text"), ink)
    return replace(tones, name=f"{tones.name}, high contrast", colours={**tones.colours, **others})
