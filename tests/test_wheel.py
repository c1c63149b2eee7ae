"""The wheel carries the knowledge and the templates, and runs far from the checkout."""

from __future__ import annotations

import os
import subprocess
import sys
import venv
from pathlib import Path

import pytest

PROJECT = Path(__file__).parent.parent


@pytest.fixture(scope="module")
def installed(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The `fitdoctor` command of a clean environment into which only the wheel and what it needs were installed."""
    folder = tmp_path_factory.mktemp("wheel")
    build = [sys.executable, "-m", "build", "--wheel", "--no-isolation", "--outdir", str(folder), str(PROJECT)]
    subprocess.run(build, check=True, capture_output=True)
    (wheel,) = folder.glob("*.whl")
    venv.create(folder / "clean", with_pip=True)
    bin_ = folder / "clean" / ("Scripts" if os.name == "nt" else "bin")
    subprocess.run(
        [bin_ / "python", "-m", "pip", "install", "-q", "--disable-pip-version-check", str(wheel)], check=True, capture_output=True
    )
    return bin_ / "fitdoctor"


def run(command: Path, *words: str, at: Path) -> str:
    clean = {name: value for name, value in os.environ.items() if not name.startswith("PYTHON")}
    return subprocess.run([command, *words], cwd=at, env=clean, check=True, capture_output=True, text=True).stdout


def test_the_installed_program_finds_its_knowledge_from_another_folder(installed: Path, tmp_path: Path) -> None:
    assert "symptoms" in run(installed, "check", at=tmp_path)
    assert "collar-stands-off-neck" in run(installed, "search", "collar", "stands", "off", at=tmp_path)


def test_menu_entry_icon_and_description_are_installed_where_a_desktop_looks_for_them(installed: Path) -> None:
    # XDG Base Directory Specification: data files lie in applications/, icons/ and metainfo/ below a data directory such as <prefix>/share.
    share = installed.parent.parent / "share"
    assert (share / "applications" / "fitdoctor.desktop").is_file()
    assert (share / "metainfo" / "fitdoctor.metainfo.xml").is_file()
    assert (share / "icons" / "hicolor" / "scalable" / "apps" / "fitdoctor.svg").is_file()


def test_the_installed_program_writes_the_demo_sheet_without_a_screen(installed: Path, tmp_path: Path) -> None:
    run(installed, "demo", at=tmp_path)
    pdf, html = sorted(tmp_path.glob("*.pdf")), sorted(tmp_path.glob("*.html"))
    assert len(pdf) == len(html) == 1
    assert pdf[0].read_bytes().startswith(b"%PDF")
    assert "Job sheet" in html[0].read_text()
