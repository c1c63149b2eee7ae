"""What was entered is kept in the job book and found again; a book that cannot be opened is said, and nothing is lost meanwhile."""

from __future__ import annotations

import os
from pathlib import Path

import msgspec
import pytest

from fitdoctor.case import Case, Measured
from fitdoctor.desk.opening import begin_anew, cases_folder, open_shelf, spare_place
from fitdoctor.desk.shelf import Kept, Shelf, own_words
from fitdoctor.errors import FitdoctorError
from fitdoctor.jobbook.book import open_book
from fitdoctor.jobbook.opening import usual_place
from fitdoctor.jobbook.trouble import DamagedBook

KEPT = Kept(case=Case(garment="slacks", seen=("x",), measured={"m": Measured(19.05)}), step="measure", depths=("m",))


def close(shelf: Shelf) -> None:
    shelf.opened().file.close()


def test_a_garment_comes_back_as_it_was_kept_with_the_page_that_was_open() -> None:
    shelf = open_shelf()
    kept = shelf.keep(KEPT)
    close(shelf)
    again = open_shelf()
    assert again.take(kept.id) == kept
    assert msgspec.structs.replace(kept, id="") == KEPT
    assert again.opened().places.last() == kept.id


def test_leafing_through_the_pages_is_no_change_of_the_job() -> None:
    shelf = open_shelf()
    kept = shelf.keep(KEPT)
    before = shelf.opened().job(kept.id)
    shelf.keep(msgspec.structs.replace(kept, step="sheet"))
    assert shelf.opened().job(kept.id) == before
    assert shelf.take(kept.id).step == "sheet"


def test_a_garment_of_no_kind_is_not_in_the_book() -> None:
    shelf = open_shelf()
    assert shelf.keep(Kept(case=Case(garment=""))).id == ""
    assert shelf.at_hand() == ()


def test_a_book_that_cannot_be_opened_has_one_that_stands_in_and_is_taken_in_later(tmp_path: Path) -> None:
    shelf = open_shelf()
    first = shelf.keep(KEPT)
    close(shelf)
    book, whole = usual_place(), usual_place().read_bytes()
    book.write_bytes(b"not a book at all" * 100)
    meanwhile = open_shelf()
    assert isinstance(meanwhile.trouble, DamagedBook)
    assert meanwhile.spare
    second = meanwhile.keep(Kept(case=Case(garment="dress", title="Blue"), step="narrow"))
    photo = tmp_path / "back.png"
    photo.write_bytes(b"a picture")
    meanwhile.opened().add_photo(second.id, photo)
    close(meanwhile)
    book.write_bytes(whole)
    again = open_shelf()
    assert again.trouble is None
    assert set(again.at_hand()) == {first.id, second.id}
    assert again.take(second.id) == second
    assert [p.name for p in again.opened().photos.of(second.id)] == ["back.png"]
    assert not spare_place().exists()
    assert not list(book.parent.glob("jobs-meanwhile*"))


def test_a_damaged_book_is_set_aside_and_what_came_meanwhile_is_in_the_new_one() -> None:
    usual_place().parent.mkdir(parents=True)
    usual_place().write_bytes(b"not a book at all" * 100)
    meanwhile = open_shelf()
    kept = meanwhile.keep(KEPT)
    close(meanwhile)
    anew = begin_anew()
    assert anew.trouble is None
    assert anew.take(kept.id) == kept
    assert list(usual_place().parent.glob("jobs-set-aside-*"))


def test_where_no_book_can_be_opened_every_try_says_why_and_loses_nothing() -> None:
    home = usual_place().parent
    home.parent.mkdir(parents=True)
    home.write_text("a file in the place of the folder")
    shelf = open_shelf()
    assert shelf.book is None
    with pytest.raises(FitdoctorError, match="cannot be opened for writing") as caught:
        shelf.keep(KEPT)
    assert "still here" in caught.value.hint


def test_garments_kept_in_files_are_taken_in_once_with_initials_for_names() -> None:
    folder = cases_folder()
    folder.mkdir(parents=True)
    named = msgspec.structs.replace(KEPT, id="slacks-1", case=msgspec.structs.replace(KEPT.case, wearer="Mary Ann"))
    (folder / "slacks-1.json").write_bytes(msgspec.json.encode(named))
    (folder / "dress-1.json").write_text("{")
    shelf = open_shelf()
    assert shelf.trouble is not None
    assert "dress-1.json" in shelf.trouble.text
    taken = shelf.take("slacks-1")
    assert taken.case.wearer == "M. A."
    assert taken.step == "measure"
    assert sorted(path.name for path in folder.iterdir()) == ["dress-1.json"]
    (folder / "slacks-1.json").write_bytes(msgspec.json.encode(named))
    close(shelf)
    assert open_shelf().at_hand() == ("slacks-1",)


@pytest.mark.skipif(os.name == "nt", reason="names of files are locked there while they are open")
def test_two_windows_keep_into_one_book() -> None:
    one, other = open_shelf(), open_shelf()
    one.keep(KEPT)
    other.keep(Kept(case=Case(garment="dress")))
    assert len(one.at_hand()) == len(other.at_hand()) == 2
    with open_book() as third:
        assert third.places.last() in one.at_hand()


def test_own_words_are_told_from_other_notes() -> None:
    assert own_words("Bought at a sale.\nSeen: the hem winks\n") == ["the hem winks"]
