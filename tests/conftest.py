"""What every test stands on: no screen, no shop of its own, the shipped knowledge read once."""

from __future__ import annotations

import os
from pathlib import Path

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

import pytest
from hypothesis import settings

from fitdoctor.knowledge.knowledge import Knowledge

settings.register_profile("steady", deadline=None, derandomize=True)
settings.load_profile("steady")


@pytest.fixture(autouse=True)
def folders_of_its_own(tmp_path_factory: pytest.TempPathFactory, monkeypatch: pytest.MonkeyPatch) -> Path:
    """Settings, autosaved cases and the job book never touch the real ones."""
    home = tmp_path_factory.mktemp("home")
    for name in ("XDG_CONFIG_HOME", "XDG_DATA_HOME", "XDG_CACHE_HOME", "XDG_STATE_HOME"):
        monkeypatch.setenv(name, str(home / name.lower()))
    return home


@pytest.fixture(scope="session")
def knowledge() -> Knowledge:
    """The knowledge as shipped."""
    from fitdoctor.knowledge.read import read_knowledge, shipped_folder

    return read_knowledge([shipped_folder()])
