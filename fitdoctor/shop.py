"""What a shop sets for itself: units, rounding step, rate, its own knowledge folder. A bad value falls back with a note."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated, Literal

import msgspec
import platformdirs

from fitdoctor.units import UnitSystem, format_length

Theme = Literal["system", "light", "dark"]
Wish = Literal["system", "yes"]
"As the system asks for it, or always."
LEAST_PERCENT, MOST_PERCENT = 25, 400
MOST_CURRENCY = 8
"Letters of the sign before an amount."
MOST_HEM_DROP_MM = 50.0
Percent = Annotated[int, msgspec.Meta(ge=LEAST_PERCENT, le=MOST_PERCENT)]
Minutes = tuple[float, float, float]


class Shop(msgspec.Struct, frozen=True, kw_only=True):
    """The settings.

    Attributes:
        unit: inches with fractions, or centimetres.
        finest: the finest fraction of an inch marked, a power of two.
        rate_per_hour: price of an hour's work; None counts no wages.
        currency: sign before an amount of money.
        minutes_percent: this shop's minutes as a share of the printed ones.
        stage_percent: the same for one stage of the work, in place of `minutes_percent`.
        hem_drop_mm: how much lower the back of a trouser hem is where nobody measured it; None: as the standard block has it.
        knowledge_folder: the shop's own entries, laid over the shipped ones; empty: none.
        sheets_folder: where it is offered to write sheets and guides; empty: where the program was started.
        text_percent: size of the text, 100 to 200.
        theme: follow the system, or always light or dark.
        high_contrast: edges in ink and no tints; still: nothing on the screen moves.
    """

    unit: UnitSystem = "in"
    finest: Literal[8, 16, 32] = 16
    rate_per_hour: Annotated[float, msgspec.Meta(ge=0)] | None = None
    currency: Annotated[str, msgspec.Meta(max_length=MOST_CURRENCY)] = ""
    minutes_percent: Percent = 100
    stage_percent: dict[str, Percent] = {}
    hem_drop_mm: Annotated[float, msgspec.Meta(ge=0, le=MOST_HEM_DROP_MM)] | None = None
    knowledge_folder: str = ""
    sheets_folder: str = ""
    text_percent: Annotated[int, msgspec.Meta(ge=100, le=200)] = 100
    theme: Theme = "system"
    high_contrast: Wish = "system"
    still: Wish = "system"

    def length(self, mm: float) -> str:
        """A length as this shop writes it."""
        return format_length(mm, self.unit, self.finest)

    def money(self, minutes: float) -> str:
        """What these minutes cost, or nothing where no wages are counted."""
        if self.rate_per_hour is None:
            return ""
        return f"{self.currency}{minutes / 60 * self.rate_per_hour:.2f}"

    def own_minutes(self, printed: Minutes, stage: str = "") -> Minutes:
        """The printed low, likely and high as this shop works."""
        share = self.stage_percent.get(stage, self.minutes_percent) / 100
        low, likely, high = printed
        return low * share, likely * share, high * share

    def sheet_path(self, name: str) -> Path:
        """Where to offer to write a sheet or a guide of this name."""
        return Path(self.sheets_folder) / name

    def usual_lengths(self) -> dict[str, float]:
        """By the id of their measurement, mm: what this shop takes where nobody measured."""
        return {} if self.hem_drop_mm is None else {"hem-slant": self.hem_drop_mm}


def settings_file() -> Path:
    """Where the settings are kept."""
    return Path(platformdirs.user_config_dir("fitdoctor", appauthor=False)) / "shop.json"


def load_shop(file: Path | None = None) -> tuple[Shop, tuple[str, ...]]:
    """The settings, and a note for each value that could not be used and fell back."""
    path = file or settings_file()
    try:
        raw = msgspec.json.decode(path.read_bytes(), type=dict[str, object])
    except FileNotFoundError:
        return Shop(), ()
    except (OSError, msgspec.MsgspecError) as error:
        return Shop(), (f"The settings in {path} could not be read ({error}); the usual ones are used.",)
    kept: dict[str, object] = {}
    notes: list[str] = []
    for name, value in raw.items():
        try:
            msgspec.convert({name: value}, Shop)
        except msgspec.ValidationError as error:
            notes.append(f"The setting ‘{name}’ in {path} cannot be used ({error}); the usual value stands.")
            continue
        kept[name] = value
    return msgspec.convert(kept, Shop), tuple(notes)


def save_shop(shop: Shop, file: Path | None = None) -> None:
    """Write the settings whole or not at all."""
    path = file or settings_file()
    path.parent.mkdir(parents=True, exist_ok=True)
    draft = path.with_suffix(".new")
    draft.write_bytes(msgspec.json.format(msgspec.json.encode(shop)))
    draft.replace(path)

