"""The faces are there on every machine, and their small letters are tall enough."""

from __future__ import annotations

import importlib

import pytest
from PySide6.QtGui import QFontInfo, QFontMetricsF

from fitdoctor.desk import type as desk_type
from fitdoctor.desk.look import look_of
from fitdoctor.desk.type import SCALE, faces_of, font_of, load_faces

pytestmark = pytest.mark.usefixtures("qapp")


def test_the_program_brings_its_faces() -> None:
    faces = load_faces()
    assert (faces.sans, faces.serif) == ("Source Sans Pro", "Source Serif Pro")
    assert QFontInfo(font_of(faces, 18.0, "body")).family() == faces.sans


def test_the_small_letters_are_about_eight_and_a_half_pixels_high() -> None:
    faces = load_faces()
    assert QFontMetricsF(font_of(faces, float(faces.body_px), "body")).xHeight() == pytest.approx(8.5, abs=0.35)


def test_the_fallback_is_set_smaller_because_its_small_letters_are_larger() -> None:
    assert faces_of("DejaVu Sans", "DejaVu Serif").body_px < load_faces().body_px


def test_without_the_packages_the_system_faces_are_used(monkeypatch: pytest.MonkeyPatch) -> None:
    def missing(name: str) -> object:
        raise ImportError(name)

    monkeypatch.setattr(importlib, "import_module", missing)
    assert desk_type._family("sans") == "DejaVu Sans"


def test_nothing_is_smaller_than_small() -> None:
    assert min(cut.em for cut in SCALE.values()) == SCALE["small"].em == 0.88


@pytest.mark.parametrize("percent", [100, 125, 150, 200])
def test_every_size_grows_with_the_text(percent: int) -> None:
    plain, grown = look_of(dark=False), look_of(dark=False, percent=percent)
    for role in SCALE:
        assert grown.font(role).pixelSize() == pytest.approx(plain.font(role).pixelSize() * percent / 100, abs=1.5)
