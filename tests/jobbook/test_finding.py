"""Finding jobs by words, filters and order."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date

import msgspec
import pytest
from hypothesis import given
from hypothesis import strategies as st

from fitdoctor.jobbook.book import JobBook
from fitdoctor.jobbook.finding import Line, Sought, find
from fitdoctor.jobbook.job import Job, Outcome
from fitdoctor.jobbook.keeping import plain_words
from tests.jobbook.jobs_at_hand import a_book, a_case, a_photo


@pytest.fixture(scope="module")
def book(tmp_path_factory: pytest.TempPathFactory) -> Iterator[JobBook]:
    folder = tmp_path_factory.mktemp("found")
    with a_book(folder) as book:
        flannel = book.add(Job(case=a_case(), due=date(2024, 6, 7), brought=date(2024, 5, 20)))
        book.add_photo(flannel.id, a_photo(folder))
        coat = Job(case=a_case("Manteau d’été, brûlé", "C. D.", "coat"), due=date(2024, 6, 1), state="basted", brought=date(2024, 5, 25))
        book.add(coat)
        skirt = book.add(
            Job(case=msgspec.structs.replace(a_case("A-line skirt", "#1042", "skirt"), seen=("hem-up",)), brought=date(2024, 6, 2))
        )
        book.close_job(skirt, Outcome(right=("short",), note="Straße"))
        yield book


def titles(lines: tuple[Line, ...]) -> list[str]:
    return [line.title.split(" ")[0] for line in lines]


@pytest.mark.parametrize(
    ("words", "found"),
    [
        ("flannel", ["Grey"]),
        ("TROUSERS grey", ["Grey"]),
        ("brule ete", ["Manteau"]),
        ("1042", ["A-line"]),
        ("hem up", ["A-line"]),
        ("strasse", ["A-line"]),
        ("a line", ["A-line"]),
        ("100%", []),
        ("grey skirt", []),
        ("", ["Manteau", "Grey", "A-line"]),
    ],
)
def test_every_word_must_occur_and_accents_and_capitals_are_forgiven(book: JobBook, words: str, found: list[str]) -> None:
    assert titles(find(book.file, Sought(words=words))) == found


@pytest.mark.parametrize(
    ("sought", "found"),
    [
        (Sought(open=True), ["Manteau", "Grey"]),
        (Sought(open=False), ["A-line"]),
        (Sought(states=("basted", "done")), ["Manteau", "A-line"]),
        (Sought(garments=("coat",), words="brule"), ["Manteau"]),
        (Sought(due_by=date(2024, 6, 1)), ["Manteau"]),
        (Sought(brought_from=date(2024, 5, 21), brought_to=date(2024, 5, 25)), ["Manteau"]),
        (Sought(due_by=date(2024, 5, 1)), []),
    ],
)
def test_filters_narrow_together(book: JobBook, sought: Sought, found: list[str]) -> None:
    assert titles(find(book.file, sought)) == found


@pytest.mark.parametrize(
    ("sought", "found"),
    [
        (Sought(order="due"), ["Manteau", "Grey", "A-line"]),
        (Sought(order="due", backwards=True), ["Grey", "Manteau", "A-line"]),
        (Sought(order="closed", backwards=True), ["A-line", "Grey", "Manteau"]),
        (Sought(order="state"), ["Grey", "Manteau", "A-line"]),
        (Sought(order="title"), ["A-line", "Grey", "Manteau"]),
        (Sought(order="garment"), ["Manteau", "A-line", "Grey"]),
        (Sought(order="wearer", backwards=True), ["Manteau", "Grey", "A-line"]),
        (Sought(order="brought", backwards=True), ["A-line", "Manteau", "Grey"]),
        (Sought(order="added"), ["Grey", "Manteau", "A-line"]),
        (Sought(order="changed", backwards=True), ["A-line", "Manteau", "Grey"]),
    ],
)
def test_what_lacks_the_thing_ordered_by_comes_last_either_way(book: JobBook, sought: Sought, found: list[str]) -> None:
    assert titles(find(book.file, sought)) == found


def test_a_line_tells_what_a_list_shows(book: JobBook) -> None:
    line = find(book.file, Sought(words="flannel"))[0]
    assert (line.wearer, line.garment, line.state, line.due, line.photos, line.closed) == (
        "A. B.",
        "trousers",
        "looked-at",
        date(2024, 6, 7),
        1,
        None,
    )


@given(st.text())
def test_plain_words_stay_as_they_are(text: str) -> None:
    assert plain_words(plain_words(text)) == plain_words(text)
