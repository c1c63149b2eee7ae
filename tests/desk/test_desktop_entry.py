"""The entry in the desktop's menu, the icon and the description for catalogues keep to their specifications."""

from __future__ import annotations

import os
import re
import subprocess
import sys
import tomllib
import xml.etree.ElementTree as ET
from configparser import ConfigParser
from pathlib import Path

import pytest
from PySide6.QtCore import QSize
from PySide6.QtGui import QColor, QIcon, QImage

from fitdoctor.cli import main
from fitdoctor.desk.tokens import LIGHT, contrast
from fitdoctor.desk.window import LEAST

PROJECT = Path(__file__).parent.parent.parent
ENTRY, METAINFO = PROJECT / "share" / "fitdoctor.desktop", PROJECT / "share" / "fitdoctor.metainfo.xml"
ICON = PROJECT / "fitdoctor" / "desk" / "fitdoctor.svg"

# Desktop Entry Specification 1.5 (freedesktop.org): recognised keys of an entry of the type Application, and what their values are.
STRINGS = {"Type", "Version", "Name", "GenericName", "Comment", "Icon", "TryExec", "Exec", "Path", "StartupWMClass"}
BOOLEANS = {"NoDisplay", "Hidden", "DBusActivatable", "Terminal", "StartupNotify", "PrefersNonDefaultGPU", "SingleMainWindow"}
LISTS = {"OnlyShowIn", "NotShowIn", "Actions", "MimeType", "Categories", "Implements", "Keywords"}
FIELD_CODES = set("fFuUick%")
ONE_OF = set("fFuU")
# Desktop Menu Specification 1.1, appendix A: main categories, one of which an entry has.
MAIN_CATEGORIES = {"AudioVideo", "Development", "Education", "Game", "Graphics", "Network", "Office", "Science", "System", "Utility"}


@pytest.fixture
def entry() -> dict[str, str]:
    parser = ConfigParser(interpolation=None, strict=True, delimiters=("=",), comment_prefixes=("#",))
    parser.optionxform = str  # type: ignore[assignment, method-assign]
    parser.read_string(ENTRY.read_text(encoding="utf-8"))
    assert parser.sections() == ["Desktop Entry"]
    return dict(parser["Desktop Entry"])


def test_the_entry_has_what_is_required_and_nothing_unknown(entry: dict[str, str]) -> None:
    assert ENTRY.read_text().startswith("[Desktop Entry]\n"), "the group comes first"
    assert {"Type", "Name", "Exec"} <= entry.keys()
    assert entry["Type"] == "Application"
    assert entry["Version"] == "1.5"
    assert entry.keys() <= STRINGS | BOOLEANS | LISTS
    assert all(value.strip() == value and value for value in entry.values())


def test_booleans_and_lists_of_the_entry_are_well_formed(entry: dict[str, str]) -> None:
    assert {entry[key] for key in entry.keys() & BOOLEANS} <= {"true", "false"}
    for key in entry.keys() & LISTS:
        assert entry[key].endswith(";")
        assert all(item for item in entry[key].split(";")[:-1])
    assert len(MAIN_CATEGORIES & set(entry["Categories"].split(";"))) == 1


def test_the_command_of_the_entry_is_one_the_program_knows(entry: dict[str, str], capsys: pytest.CaptureFixture[str]) -> None:
    command, *words = entry["Exec"].split(" ")
    scripts = tomllib.loads((PROJECT / "pyproject.toml").read_text())["project"]["scripts"]
    assert command in scripts
    codes = [code for word in words for code in re.findall(r"%(.)", word)]
    assert set(codes) <= FIELD_CODES
    assert sum(code in ONE_OF for code in codes) <= 1
    plain = [word for word in words if "%" not in word]
    with pytest.raises(SystemExit) as left:
        main([*plain, "--help"])
    assert left.value.code == 0
    assert "case" in capsys.readouterr().out


SAYS_ITSELF = """
from PySide6.QtGui import QGuiApplication
from fitdoctor.desk.app import application_of
application = application_of()
print(QGuiApplication.desktopFileName(), application.applicationName(), application.windowIcon().isNull())
"""


def test_the_program_names_its_entry_and_has_its_icon(entry: dict[str, str]) -> None:
    alone = {**os.environ, "QT_QPA_PLATFORM": "offscreen"}
    said = subprocess.run([sys.executable, "-c", SAYS_ITSELF], cwd=PROJECT, capture_output=True, text=True, check=True, env=alone).stdout
    assert said.split() == [ENTRY.stem, entry["StartupWMClass"], "False"]
    assert entry["Icon"] == ICON.stem


def test_wheel_and_source_carry_the_files() -> None:
    build = tomllib.loads((PROJECT / "pyproject.toml").read_text())["tool"]["hatch"]["build"]["targets"]
    shared = build["wheel"]["shared-data"]
    assert {PROJECT / source for source in shared} == {ENTRY, METAINFO, ICON}
    # Icon Theme Specification 0.13: scalable icons of applications lie in hicolor/scalable/apps.
    assert set(shared.values()) == {
        "share/applications/fitdoctor.desktop",
        "share/metainfo/fitdoctor.metainfo.xml",
        "share/icons/hicolor/scalable/apps/fitdoctor.svg",
    }
    assert "share" in build["sdist"]["include"]


# ---- description


def test_the_description_has_what_a_catalogue_requires(entry: dict[str, str]) -> None:
    # AppStream 1.0 (freedesktop.org), desktop applications: id, metadata_license, name, summary, description and launchable are required.
    root = ET.fromstring(METAINFO.read_text(encoding="utf-8"))
    assert root.tag == "component"
    assert root.get("type") == "desktop-application"
    for tag in ("id", "metadata_license", "name", "summary", "description", "launchable", "content_rating"):
        assert len(root.findall(tag)) == 1, tag
    assert root.findtext("launchable") == ENTRY.name
    assert root.findtext("name") == entry["Name"]
    assert root.findtext("summary") == entry["Comment"]
    assert not (root.findtext("summary") or ".").endswith(".")
    assert {child.tag for child in root.find("description") or ()} <= {"p", "ul", "ol"}
    assert root.findtext("provides/binary") == entry["Exec"].split(" ")[0]
    assert [c.text for c in root.findall("categories/category")] == entry["Categories"].rstrip(";").split(";")
    assert root.findtext("requires/display_length") == str(LEAST.width())


# ---- icon


def pictured(size: int) -> QImage:
    return QIcon(str(ICON)).pixmap(QSize(size, size)).toImage().convertToFormat(QImage.Format.Format_RGB32)


@pytest.mark.usefixtures("qtbot")
@pytest.mark.parametrize("size", [16, 24, 32, 48, 256])
def test_the_icon_can_be_told_at_every_size(size: int) -> None:
    """Cloth and ground stand apart, the two legs are parted, and the basted line shows on the cloth."""
    image = pictured(size)
    ground, cloth = image.pixelColor(size // 2, size - 2), image.pixelColor(size // 4, size * 3 // 4)
    assert contrast(named(ground), named(cloth)) > 4.5
    column = [image.pixelColor(round(size * 0.42), y) for y in range(size // 8, size // 2)]
    darkest = min(column, key=lambda colour: colour.lightness())
    assert contrast(named(darkest), named(cloth)) > 1.8


def test_the_icon_is_square_and_in_the_programs_own_colours() -> None:
    text = ICON.read_text()
    root = ET.fromstring(text)
    assert root.get("viewBox") == "0 0 64 64"
    assert set(re.findall(r"#[0-9A-Fa-f]{6}", text)) == {LIGHT.thread, LIGHT.paper}


def named(colour: QColor) -> str:
    return colour.name()
