"""Where the answers are kept: one file, written whole or not at all; a damaged one is set aside."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import UTC, datetime
from pathlib import Path

import msgspec
import platformdirs

from fitdoctor.errors import FitdoctorError
from fitdoctor.jobbook.photos import write_whole
from fitdoctor.practice.progress import Answered

FORMAT = 1


class Kept(msgspec.Struct, frozen=True, kw_only=True):
    """The file."""

    format: int = FORMAT
    answers: tuple[Answered, ...] = ()


def practice_file() -> Path:
    """Where the answers are kept."""
    return Path(platformdirs.user_data_dir("fitdoctor", appauthor=False)) / "practice.json"


@dataclass(frozen=True)
class Record:
    """The answers on file, and a sentence where something had to be done about the file."""

    file: Path
    answers: tuple[Answered, ...] = ()
    note: str = ""

    def with_answer(self, answer: Answered) -> Record:
        """The record with an answer more, written; what another window wrote in the meantime is kept.

        Raises:
            FitdoctorError: it could not be written.
        """
        on_file = open_record(self.file)
        answers = tuple(sorted({*on_file.answers, *self.answers, answer}, key=lambda a: (a.at, a.exercise, a.ask)))
        try:
            self.file.parent.mkdir(parents=True, exist_ok=True)
            write_whole(self.file, msgspec.json.format(msgspec.json.encode(Kept(answers=answers))))
        except OSError as error:
            raise FitdoctorError(f"The answer could not be kept: {error.strerror}.", "You can go on; it is not counted.") from error
        return Record(self.file, answers, on_file.note)


def open_record(file: Path | None = None) -> Record:
    """The answers on file. A file that cannot be understood is set aside under another name, and the record begins anew.

    Raises:
        FitdoctorError: the file was written by a later version, or cannot be opened.
    """
    path = file or practice_file()
    try:
        kept = msgspec.json.decode(path.read_bytes(), type=Kept)
    except FileNotFoundError:
        return Record(path)
    except msgspec.MsgspecError:
        return Record(path, note=_set_aside(path))
    except OSError as error:
        raise FitdoctorError(f"{path} cannot be opened: {error.strerror}.", "Practising goes on without it.") from error
    if kept.format > FORMAT:
        raise FitdoctorError(f"{path} was written by a later version of fitdoctor.", "Open it with that one.")
    return Record(path, kept.answers)


def _set_aside(path: Path) -> str:
    stamp = datetime.now(UTC).strftime("%Y-%m-%d-%H%M%S-%f")
    aside = path.with_name(f"{path.stem}-damaged-{stamp}.json")
    try:
        path.rename(aside)
    except OSError as error:
        raise FitdoctorError(f"{path} is damaged and cannot be set aside: {error.strerror}.", "Move it away.") from error
    return f"The record of your answers was damaged; it is kept as {aside}, and a new one is begun."
