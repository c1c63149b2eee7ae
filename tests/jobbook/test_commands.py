"""The book on the command line."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from fitdoctor.cli import DONE, INPUT_HAS_PROBLEMS, main
from fitdoctor.jobbook.job import Job, Outcome
from tests.jobbook.jobs_at_hand import a_book, a_case


@pytest.fixture
def book_file(tmp_path: Path) -> Path:
    with a_book(tmp_path) as book:
        book.add(Job(case=a_case(), id="x"))
        book.close_job(book.add(a_case("Brown coat", "C. D.", "coat")), Outcome())
    return tmp_path / "jobs.db"


def test_jobs_are_listed(book_file: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["jobs", "--book", str(book_file)]) == DONE
    assert [line.split("  ")[-1].strip()[-10:] for line in capsys.readouterr().out.splitlines()] == ["l trousers", "t (closed)"]
    assert main(["jobs", "--book", str(book_file), "list", "brown", "--closed", "--json"]) == DONE
    assert [(line["title"], line["state"]) for line in json.loads(capsys.readouterr().out)] == [("Brown coat", "done")]
    assert main(["jobs", "--book", str(book_file), "list", "velvet"]) == DONE
    assert "No such job" in capsys.readouterr().out


def test_jobs_go_out_and_come_in(book_file: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    other = str(tmp_path / "other.db")
    assert main(["jobs", "--book", str(book_file), "export", str(tmp_path / "out.json"), "--open"]) == DONE
    assert main(["jobs", "--book", other, "import", str(tmp_path / "out.json")]) == DONE
    assert capsys.readouterr().out.endswith("1 job brought in.\n")
    assert main(["jobs", "--book", other, "export", str(tmp_path / "out.csv")]) == DONE
    assert "Grey flannel trousers" in (tmp_path / "out.csv").read_text(encoding="utf-8-sig")
    assert main(["jobs", "--book", other, "export", str(tmp_path / "out.doc")]) == INPUT_HAS_PROBLEMS
    (tmp_path / "out.json").write_text("[]")
    assert main(["jobs", "--book", other, "import", str(tmp_path / "out.json")]) == INPUT_HAS_PROBLEMS
    assert "Nothing was brought in." in capsys.readouterr().err


def test_a_job_is_deleted_only_when_it_is_meant(book_file: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["jobs", "--book", str(book_file)]) == DONE
    id_ = capsys.readouterr().out.split()[0]
    assert main(["jobs", "--book", str(book_file), "delete", id_]) == INPUT_HAS_PROBLEMS
    assert "--for-good" in capsys.readouterr().err
    assert main(["jobs", "--book", str(book_file), "delete", id_, "--for-good"]) == DONE
    assert main(["jobs", "--book", str(book_file), "delete", id_, "--for-good"]) == INPUT_HAS_PROBLEMS
    assert "not in the book" in capsys.readouterr().err
    with a_book(tmp_path) as book:
        assert [job.case.title for job in book.learning.jobs()] == ["Brown coat"]
