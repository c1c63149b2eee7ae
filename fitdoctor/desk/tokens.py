"""The colours and spaces of the desk, defined once; and how far two colours stand apart."""

from __future__ import annotations

from dataclasses import dataclass, fields
from typing import Literal

Theme = Literal["light", "dark"]

SPACES = (4, 8, 12, 16, 20, 24, 32, 48)
"Pixels; they stay as they are when the text grows."
MARGIN = 32
GUTTER = 36
HAIR, CHOSEN, THREAD_LINE, ROW_BAR, VERDICT_BAR, FOCUS = 1.5, 2.5, 3.0, 4, 6, 3
"Widths of lines in pixels."
CORNER = 3.0
TARGET, ANSWER = 44, 52
"Least height of what can be pressed, pixels at 100 % of text."


@dataclass(frozen=True)
class Tokens:
    """One theme. Thread is the only accent; stop is used for nothing but what stops the work."""

    name: Theme
    table: str
    paper: str
    paper_2: str
    ink: str
    ink_2: str
    rule: str
    edge: str
    thread: str
    thread_tint: str
    on_thread: str
    good: str
    good_tint: str
    care: str
    care_tint: str
    stop: str
    stop_tint: str
    high_contrast: bool = False

    def colour(self, name: str) -> str:
        """A colour by its name: `ink-2` or `ink_2`."""
        return str(getattr(self, name.replace("-", "_")))

    def colours(self) -> dict[str, str]:
        """Every colour by its name."""
        return {field.name: getattr(self, field.name) for field in fields(self) if field.type == "str"}


LIGHT = Tokens(
    name="light",
    table="#E9E0D0",
    paper="#FBF8F1",
    paper_2="#F3EDE0",
    ink="#29241F",
    ink_2="#5A5148",
    rule="#D3C8B6",
    edge="#857968",
    thread="#2A4A7C",
    thread_tint="#E0E7F2",
    on_thread="#FBF8F1",
    good="#2C5A37",
    good_tint="#E2EBDC",
    care="#734600",
    care_tint="#F6E8CC",
    stop="#8A271B",
    stop_tint="#F7E0D9",
)
DARK = Tokens(
    name="dark",
    table="#161310",
    paper="#211D19",
    paper_2="#2B2621",
    ink="#F0E8DB",
    ink_2="#C0B4A4",
    rule="#483F37",
    edge="#978A7B",
    thread="#ABC3ED",
    thread_tint="#2A3448",
    on_thread="#191613",
    good="#A8D1A6",
    good_tint="#25332A",
    care="#EAC07A",
    care_tint="#3A2E1B",
    stop="#F2A898",
    stop_tint="#452720",
)


def _high(theme: Tokens, paper: str, ink: str, thread: str, good: str, care: str, stop: str) -> Tokens:
    """A theme in high contrast: every ground is the paper, every edge and remark is in ink, and the tints are gone."""
    inked = {"ink": ink, "ink_2": ink, "rule": ink, "edge": ink, "thread": thread, "good": good, "care": care, "stop": stop}
    return Tokens(name=theme.name, high_contrast=True, **(dict.fromkeys(theme.colours(), paper) | inked))


LIGHT_HIGH = _high(LIGHT, "#FFFFFF", "#000000", thread="#14306B", good="#123F1E", care="#4F2F00", stop="#7A1409")
DARK_HIGH = _high(DARK, "#000000", "#FFFFFF", thread="#C6DAFF", good="#BFEFBC", care="#FFD894", stop="#FFC4B6")

TEXT_PAIRS = (
    ("ink", "paper"),
    ("ink", "paper-2"),
    ("ink", "table"),
    ("ink", "thread-tint"),
    ("ink", "care-tint"),
    ("ink-2", "paper"),
    ("ink-2", "paper-2"),
    ("ink-2", "table"),
    ("ink-2", "thread-tint"),
    ("thread", "paper"),
    ("thread", "paper-2"),
    ("thread", "table"),
    ("thread", "thread-tint"),
    ("on-thread", "thread"),
    ("paper", "ink"),
    ("good", "paper"),
    ("good", "good-tint"),
    ("care", "paper"),
    ("care", "care-tint"),
    ("stop", "paper"),
    ("stop", "stop-tint"),
)
"Text on ground, as they occur in the window; 4.5 : 1 is the floor."
LINE_PAIRS = (("edge", "paper"), ("edge", "paper-2"), ("edge", "table"), ("edge", "thread-tint"), ("thread", "paper-2"))
"Lines that mean something, on their ground; 3 : 1 is the floor."


def luminance(colour: str) -> float:
    """Relative luminance of `#RRGGBB` (Web Content Accessibility Guidelines 2.2)."""

    def linear(channel: int) -> float:
        share = channel / 255
        return share / 12.92 if share <= 0.04045 else float(((share + 0.055) / 1.055) ** 2.4)

    red, green, blue = (int(colour[at : at + 2], 16) for at in (1, 3, 5))
    return 0.2126 * linear(red) + 0.7152 * linear(green) + 0.0722 * linear(blue)


def contrast(one: str, other: str) -> float:
    """How far two colours stand apart, 1 to 21 (Web Content Accessibility Guidelines 2.2)."""
    light, dark = sorted((luminance(one), luminance(other)), reverse=True)
    return (light + 0.05) / (dark + 0.05)
