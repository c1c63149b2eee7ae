"""Files written to be taken along: all of them whole, or none."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path

from fitdoctor.errors import FitdoctorError
from fitdoctor.jobbook.photos import write_whole


def write_all(files: Mapping[Path, bytes]) -> list[Path]:
    """Write files; their paths.

    Raises:
        FitdoctorError: one could not be written; none that was not there before is left.
    """
    written: list[Path] = []
    for path, content in files.items():
        new = not path.exists()
        try:
            write_whole(path, content)
        except OSError as error:
            for other in written:
                other.unlink(missing_ok=True)
            raise FitdoctorError(f"{path} could not be written: {error.strerror}.", "Choose another folder.") from error
        if new:
            written.append(path)
    return list(files)
