"""Opening the job book for the window: what lay elsewhere is taken in, and a book that cannot be opened has one that stands in for it."""

from __future__ import annotations

from datetime import date
from pathlib import Path

import msgspec
import platformdirs

from fitdoctor.desk.shelf import Kept, Shelf
from fitdoctor.errors import FitdoctorError
from fitdoctor.jobbook.book import JobBook, now, open_book, put
from fitdoctor.jobbook.carrying import export_json, import_json
from fitdoctor.jobbook.finding import find
from fitdoctor.jobbook.job import Job, check_wearer
from fitdoctor.jobbook.left_off import LeftOff
from fitdoctor.jobbook.opening import set_aside, usual_place


def open_shelf() -> Shelf:
    """The shelf of the user's own book. One that cannot be opened has its reason in `trouble`."""
    try:
        book = open_book()
    except FitdoctorError as error:
        return _spare_shelf(error)
    shelf = Shelf(book)
    try:
        take_in_spare(book, spare_place())
        take_in_files(book, cases_folder())
    except FitdoctorError as error:
        shelf.trouble = error
    return shelf


def begin_anew() -> Shelf:
    """Set a book aside that cannot be opened, and begin a new one.

    Raises:
        FitdoctorError: it could not be renamed.
    """
    set_aside(usual_place(), now())
    return open_shelf()


def spare_place() -> Path:
    """Where garments are kept while the book cannot be opened."""
    return usual_place().with_name("jobs-meanwhile.db")


def cases_folder() -> Path:
    """Where earlier versions kept each garment in a file of its own."""
    return Path(platformdirs.user_data_dir("fitdoctor", appauthor=False)) / "cases"


def _spare_shelf(trouble: FitdoctorError) -> Shelf:
    try:
        return Shelf(open_book(spare_place()), trouble, spare=True)
    except FitdoctorError:
        return Shelf(None, trouble)


def take_in_spare(book: JobBook, path: Path) -> None:
    """Bring in what was kept while the book could not be opened, and wipe it where it lay. Interrupted, it is done again next time.

    Raises:
        FitdoctorError: it cannot be read, or there is no room; it was left as it is.
    """
    if not path.exists():
        return
    draft = path.with_suffix(".json")
    with open_book(path) as spare:
        ids = [line.id for line in find(spare.file)]
        export_json(spare, ids, draft)
        import_json(book, draft)
        for id_ in ids:
            book.places.keep(id_, spare.places.of(id_))
            spare.delete(id_)
        folder = spare.photos.folder
    for left in (draft, path, Path(f"{path}-wal"), Path(f"{path}-shm")):
        left.unlink(missing_ok=True)
    if folder.is_dir():
        folder.rmdir()


def take_in_files(book: JobBook, folder: Path) -> None:
    """Bring in the garments that earlier versions kept in files; each file is taken away once its garment is in the book.

    Raises:
        FitdoctorError: a file cannot be read; it was left as it is, and the others were brought in.
    """
    bad: list[str] = []
    for path in sorted(folder.glob("*.json")) if folder.is_dir() else ():
        try:
            kept = msgspec.json.decode(path.read_bytes(), type=Kept)
            _take_in(book, kept)
            path.unlink()
        except (OSError, msgspec.MsgspecError) as error:
            bad.append(f"{path} could not be read and was left as it is ({error}).")
    if bad:
        raise FitdoctorError("\n".join(bad))
    if folder.is_dir():
        (folder / "last").unlink(missing_ok=True)


def _take_in(book: JobBook, kept: Kept) -> None:
    """Under its own id, so that a file met twice is one job."""
    if not kept.case.garment or any(line.id == kept.id for line in find(book.file)):
        return
    at = book.clock()
    case = msgspec.structs.replace(kept.case, wearer=_initials(kept.case.wearer))
    job = Job(id=kept.id, revision=1, case=case, brought=date.today(), reached={"looked-at": at}, added=at, changed=at)
    with book.file.writing() as connection:
        put(connection, job)
    book.places.keep(job.id, LeftOff(**{name: getattr(kept, name) for name in LeftOff.__struct_fields__}))


def _initials(wearer: str) -> str:
    """What the book may keep of a wearer that was written down before it kept initials only."""
    try:
        check_wearer(wearer)
    except FitdoctorError:
        return " ".join(f"{word[0].upper()}." for word in wearer.split() if word[0].isalpha())[:12].strip()
    return wearer
