"""What was learned as a folder of YAML that lies over the shipped knowledge: for another machine, or to be read and argued about."""

from __future__ import annotations

import shutil
from collections.abc import Iterator, Mapping
from pathlib import Path
from typing import Any

import msgspec

from fitdoctor.diagnosis.closing import as_written, overlay
from fitdoctor.diagnosis.learning import Learned
from fitdoctor.errors import FitdoctorError
from fitdoctor.jobbook.lessons import OperationMinutes
from fitdoctor.knowledge.entries import Method, Minutes
from fitdoctor.knowledge.knowledge import Knowledge
from fitdoctor.knowledge.read.document import write_document

_WORTH_CHANGING = 0.05


def export_overlay(
    knowledge: Knowledge, learned: Learned, minutes: Mapping[str, OperationMinutes], folder: Path
) -> tuple[tuple[str, str], ...]:
    """Write the entries that learning changed into a new folder, all of them or none.

    Args:
        minutes: operation of a plan -> the minutes written down for it.
        folder: must not be there yet, or be empty.

    Returns:
        (kind, id) of each entry written.

    Raises:
        FitdoctorError: the folder holds something, or cannot be written.
    """
    entries = {**overlay(knowledge, learned), **dict(_timed(knowledge, minutes))}
    draft = folder.with_name(f"{folder.name}.part")
    try:
        if folder.exists() and (not folder.is_dir() or any(folder.iterdir())):
            raise FitdoctorError(f"{folder} is not empty.", "Choose a new folder, so that nothing of yours is written over.")
        shutil.rmtree(draft, ignore_errors=True)
        draft.mkdir(parents=True)
        for (kind, id_), values in entries.items():
            (draft / kind).mkdir(exist_ok=True)
            (draft / kind / f"{id_}.yaml").write_text(write_document(values), encoding="utf-8")
        if folder.exists():
            folder.rmdir()
        draft.rename(folder)
    except OSError as error:
        raise FitdoctorError(f"{folder} could not be written: {error.strerror}.", "Choose another folder.") from error
    return tuple(sorted(entries))


def _timed(knowledge: Knowledge, minutes: Mapping[str, OperationMinutes]) -> Iterator[tuple[tuple[str, str], dict[str, Any]]]:
    """The methods whose operations take another time here than printed."""
    for id_, method in knowledge.methods.items():
        timed = _with_minutes(method, minutes)
        if timed != method:
            yield ("methods", id_), as_written(timed)


def _with_minutes(method: Method, minutes: Mapping[str, OperationMinutes]) -> Method:
    def learned(operation: str, printed: Minutes) -> Minutes:
        timed = minutes.get(f"{method.id}.{operation}")
        if timed is None or abs(timed.beside(printed)[1] - printed[1]) <= _WORTH_CHANGING * printed[1]:
            return printed
        low, likely, high = (round(each, 1) for each in timed.beside(printed))
        return low, likely, high

    operations = tuple(msgspec.structs.replace(op, minutes=learned(op.id, op.minutes)) for op in method.operations)
    return msgspec.structs.replace(method, operations=operations)
