"""What was entered is kept: written whole, found again, and an accident says so."""

from __future__ import annotations

import os
from pathlib import Path

import pytest

from fitdoctor.case import Case, Measured
from fitdoctor.desk.shelf import Kept, Shelf, own_words
from fitdoctor.errors import FitdoctorError

KEPT = Kept(id="slacks-1", case=Case(garment="slacks", seen=("x",), measured={"m": Measured(19.05)}), step="measure", depths=("m",))


def test_a_case_comes_back_as_it_was_kept(tmp_path: Path) -> None:
    shelf = Shelf(tmp_path)
    kept = shelf.keep(KEPT)
    again, notes = Shelf(tmp_path).all()
    assert again == (kept,)
    assert notes == ()
    assert shelf.last() == "slacks-1"


def test_a_draft_left_by_a_crash_is_not_taken_for_a_case(tmp_path: Path) -> None:
    shelf = Shelf(tmp_path)
    shelf.keep(KEPT)
    (tmp_path / "slacks-1.new").write_text('{"id": "sla')
    assert [kept.id for kept in shelf.all()[0]] == ["slacks-1"]


def test_a_crash_while_writing_leaves_the_case_of_before(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    shelf = Shelf(tmp_path)
    before = shelf.keep(KEPT)

    def power_cut(_number: int) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(os, "fsync", power_cut)
    with pytest.raises(FitdoctorError, match="no space left on device") as caught:
        shelf.keep(Kept(id="slacks-1", case=Case(garment="dress")))
    assert "still here" in caught.value.hint
    assert shelf.all()[0] == (before,)


def test_a_file_that_cannot_be_read_is_named_and_left_alone(tmp_path: Path) -> None:
    broken = tmp_path / "dress-1.json"
    broken.write_text("{")
    found, notes = Shelf(tmp_path).all()
    assert found == ()
    assert str(broken) in notes[0]
    assert broken.exists()


def test_a_new_case_never_takes_the_place_of_another(tmp_path: Path) -> None:
    shelf = Shelf(tmp_path)
    shelf.keep(KEPT)
    assert shelf.new_id("slacks") == "slacks-2"


def test_own_words_are_told_from_other_notes() -> None:
    assert own_words("Bought at a sale.\nSeen: the hem winks\n") == ["the hem winks"]
