"""Jobs out as JSON and CSV, and in again; bad files refused whole with every reason."""

from __future__ import annotations

import base64
import csv
import json
from datetime import date
from pathlib import Path
from typing import Any

import msgspec
import pytest

from fitdoctor.errors import FitdoctorError
from fitdoctor.jobbook.book import JobBook
from fitdoctor.jobbook.carrying import export_csv, export_json, import_json
from fitdoctor.jobbook.finding import find
from fitdoctor.jobbook.job import Job, Outcome
from tests.diagnosis.small_knowledge import small_knowledge
from tests.jobbook.jobs_at_hand import FIRST_DAY, PHOTO, a_book, a_case, a_photo, a_reading

replace = msgspec.structs.replace


def filled(folder: Path) -> JobBook:
    book = a_book(folder)
    job = book.add(Job(case=a_case(), due=date(2024, 6, 7), minutes={"lower-waist.mark": 8.5}))
    book.history.note(job.id, a_reading(job, FIRST_DAY))
    book.history.note(job.id, a_reading(job, FIRST_DAY, {"long": 0.9}, "after the first try-on"))
    book.add_photo(job.id, a_photo(folder))
    book.close_job(job, Outcome(right=("long",), used_mm={"lower-waist.back-waist-seam": 16.0}, minutes=55))
    book.add(a_case("=1+1", "C. D.", "skirt"))
    return book


def ids(book: JobBook) -> list[str]:
    return [line.id for line in find(book.file)]


def test_what_goes_out_comes_in_again_the_same(tmp_path: Path) -> None:
    (tmp_path / "other").mkdir()
    with filled(tmp_path) as book, a_book(tmp_path / "other") as other:
        assert export_json(book, ids(book), tmp_path / "out.json") == 2
        assert import_json(other, tmp_path / "out.json") == 2
        for id_ in ids(book):
            assert other.job(id_) == book.job(id_)
            assert other.history.of(id_) == book.history.of(id_)
            assert other.photos.of(id_) == book.photos.of(id_)
        assert [p.read_bytes() for p in other.photos.folder.iterdir()] == [PHOTO]
        assert import_json(other, tmp_path / "out.json") == 0, "the same jobs again are passed over"


def test_photos_can_be_left_at_home(tmp_path: Path) -> None:
    with filled(tmp_path) as book:
        export_json(book, ids(book), tmp_path / "out.json", with_photos=False)
    assert base64.b64encode(PHOTO) not in (tmp_path / "out.json").read_bytes()


def test_a_job_that_differs_from_the_books_keeps_the_whole_file_out(tmp_path: Path) -> None:
    with filled(tmp_path) as book:
        export_json(book, ids(book), tmp_path / "out.json")
        changed, gone = ids(book)
        job = book.job(changed)
        book.change(job, replace(job, state="given-back"))
        book.delete(gone)
        with pytest.raises(FitdoctorError, match="‘Grey flannel trousers’ stands in the book and differs"):
            import_json(book, tmp_path / "out.json")
        assert ids(book) == [changed]


def test_a_bad_file_is_refused_whole_with_every_reason(tmp_path: Path) -> None:
    with filled(tmp_path) as book:
        export_json(book, ids(book), tmp_path / "out.json")
        plain: Any = json.loads((tmp_path / "out.json").read_text())
        first, second = plain["jobs"][0]["job"], plain["jobs"][1]["job"]
        first["state"] = "maried"
        first["due"] = "next Friday"
        first["minutes"]["lower-waist.mark"] = -3
        first["case"]["colour"] = "grey"
        second["added"] = "2024-05-31T10:00:00"
        second["case"]["measured"] = {"waist": {"mm": "wide"}}
        plain["jobs"].append({"readings": []})
        (tmp_path / "bad.json").write_text(json.dumps(plain))
        book.delete(ids(book)[0])
        before = ids(book)
        with pytest.raises(FitdoctorError) as caught:
            import_json(book, tmp_path / "bad.json")
        assert ids(book) == before
    reasons = caught.value.text.splitlines()
    assert len(reasons) == 7
    for place, said in (
        ("jobs.1.job.state", "‘maried’ is none of looked-at, marked"),
        ("jobs.1.job.due", "‘next Friday’ is not a day"),
        ("jobs.1.job.minutes.lower-waist.mark", "‘-3’ is outside what is allowed"),
        ("jobs.1.job.case", "there is no field ‘colour’"),
        ("jobs.2.job.added", "is not a time"),
        ("jobs.2.job.case.measured.waist.mm", "‘wide’ is not a number"),
        ("jobs.3", "the field ‘job’ is missing"),
    ):
        assert any(place in reason and said in reason for reason in reasons), f"{place}: {said} is not among {reasons}"
    assert caught.value.hint == "Nothing was brought in."


def test_what_fits_the_form_and_cannot_be_is_refused_too(tmp_path: Path) -> None:
    with filled(tmp_path) as book:
        export_json(book, ids(book), tmp_path / "out.json")
        plain: Any = json.loads((tmp_path / "out.json").read_text())
        plain["jobs"][1]["job"]["id"] = plain["jobs"][0]["job"]["id"]
        plain["jobs"][1]["job"]["case"]["wearer"] = "Anna Schneider"
        del plain["jobs"][1]["job"]["changed"]
        plain["jobs"][1]["photos"] = [{"name": "../../letter.txt", "added": "2024-05-31T10:00:00Z", "content": "QUJD"}]
        (tmp_path / "bad.json").write_text(json.dumps(plain))
        with pytest.raises(FitdoctorError) as caught:
            import_json(book, tmp_path / "bad.json")
    assert len(caught.value.text.splitlines()) == 4
    for said in ("stands there 2 times", "more than initials", "‘changed’ is missing", "no photo that the book could keep"):
        assert said in caught.value.text


@pytest.mark.parametrize(
    ("content", "said"),
    [
        (b"", "is not JSON"),
        (b"garment: trousers", "is not JSON"),
        (b"\xff\xfe{}", "is not JSON"),
        (b"[" * 100_000, "is not JSON"),
        (b"[]", "stands where fields are wanted"),
        (b'{"format": 2, "jobs": []}', "‘2’ is none of 1"),
        (b'{"format": 1}', "the field ‘jobs’ is missing"),
        (b'{"jobs": [{"job": {"id": "a", "case": {"garment": "skirt", "title": 7}}}]}', "wanted"),
        (b'{"jobs": [{"job": {"id": "a", "revision": 1e999, "case": {"garment": "skirt"}}}]}', "JSON|number|allowed"),
        (b'{"jobs": [{"job": {"id": "a", "revision": 123456789012345678901234567890, "case": {"garment": "skirt"}}}]}', "allowed|number"),
    ],
)
def test_files_of_all_sorts_are_refused_without_a_fall(tmp_path: Path, content: bytes, said: str) -> None:
    path = tmp_path / "bad.json"
    path.write_bytes(content)
    with a_book(tmp_path) as book:
        with pytest.raises(FitdoctorError, match=said):
            import_json(book, path)
        with pytest.raises(FitdoctorError, match="cannot be read"):
            import_json(book, tmp_path / "none.json")
        assert ids(book) == []


def test_a_table_for_a_spreadsheet_is_text_and_no_formula(tmp_path: Path) -> None:
    with filled(tmp_path) as book:
        assert export_csv(book, ids(book), tmp_path / "out.csv", small_knowledge()) == 2
    with (tmp_path / "out.csv").open(encoding="utf-8-sig", newline="") as file:
        trousers, skirt = list(csv.DictReader(file))
    assert skirt["title"] == "'=1+1"
    assert trousers["causes"] == "Cause long"
    assert {name: trousers[name] for name in ("minutes planned", "minutes spent", "closed", "result", "state", "photos", "due")} == {
        "minutes planned": "60",
        "minutes spent": "55",
        "closed": "2024-05-31",
        "result": "as-wanted",
        "state": "done",
        "photos": "1",
        "due": "2024-06-07",
    }
    assert trousers["amounts used, mm"] == "lower-waist.back-waist-seam 16"


def test_a_file_that_cannot_be_written_leaves_nothing(tmp_path: Path) -> None:
    with filled(tmp_path) as book:
        for export in (export_json, export_csv):
            with pytest.raises(FitdoctorError, match="could not be written"):
                export(book, ids(book), tmp_path / "no such folder" / "out")
            (tmp_path / "taken").mkdir(exist_ok=True)
            with pytest.raises(FitdoctorError, match="could not be written"):
                export(book, ids(book), tmp_path / "taken")
        assert not list(tmp_path.glob("*.part"))
