"""JSON Schemas of the entries, so that an editor completes and checks a file while it is typed."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import msgspec

from fitdoctor.errors import FitdoctorError
from fitdoctor.knowledge.entries import KINDS, LengthMm, Source
from fitdoctor.knowledge.field_notes import class_notes, field_notes
from fitdoctor.knowledge.read.case_file import CaseFile

LENGTH = {
    "anyOf": [{"type": "string", "pattern": '(mm|cm|in|inch|inches|"|″)\\.?$'}, {"const": 0}],
    "description": "A length with its unit: 3/4 in, 19 mm.",
}
_PLAIN_TEXT = ["string", "number", "boolean"]
"""Text may look like a number or like yes to an editor; it is read as text all the same."""

_OF_FILES: dict[str, Any] = {
    **KINDS,
    "sources": dict[str, Source],
    "scale": dict[str, dict[str, float]],
    "words": dict[str, list[str]],
    "case-file": CaseFile,
}


def schema_of(name: str) -> dict[str, Any]:
    """The JSON Schema of a kind of entry, of sources, scale or words, or of a case file."""
    found = msgspec.json.schema(_OF_FILES[name], schema_hook=_of_length)
    _free_plain_text(found)
    for record, schema in found.get("$defs", {}).items():
        _describe(record, schema)
    return {"$schema": "https://json-schema.org/draft/2020-12/schema", "title": name, **found}


def export_schemas(folder: Path) -> tuple[Path, ...]:
    """Write a schema for each kind of file into a folder; return their paths.

    Raises:
        FitdoctorError: the folder cannot be written.
    """
    written = []
    try:
        folder.mkdir(parents=True, exist_ok=True)
        for name in _OF_FILES:
            path = folder / f"{name}.schema.json"
            path.write_text(json.dumps(schema_of(name), indent=1, ensure_ascii=False) + "\n", encoding="utf-8")
            written.append(path)
    except OSError as error:
        raise FitdoctorError(f"The schemas could not be written to {folder}: {error.strerror}.", "Choose another folder.") from error
    return tuple(written)


def _of_length(kind: type) -> dict[str, Any]:
    if kind is not LengthMm:
        raise NotImplementedError(kind)
    return dict(LENGTH)


def _free_plain_text(schema: Any) -> None:
    """Let plain text be any scalar, everywhere below."""
    if isinstance(schema, list):
        for item in schema:
            _free_plain_text(item)
    elif isinstance(schema, dict):
        if schema.get("type") == "string" and "pattern" not in schema:
            schema["type"] = _PLAIN_TEXT
        for item in schema.values():
            _free_plain_text(item)


def _describe(record: str, schema: dict[str, Any]) -> None:
    schema["description"] = " ".join(class_notes().get(record, "").split())
    for name, field in schema.get("properties", {}).items():
        note = _note(record, name)
        if note:
            field["description"] = note
    if record == "When":
        values = schema["properties"]["is"]
        schema["properties"]["is"] = {"anyOf": [{"type": _PLAIN_TEXT}, {k: v for k, v in values.items() if k != "description"}]}


def _note(record: str, encoded: str) -> str:
    """The note of a field by its name in YAML; those of every entry stand with Entry."""
    notes = field_notes()
    for own in (encoded, f"{encoded}_", f"{encoded}_mm"):
        for of in (record, "Entry"):
            if (of, own) in notes:
                return notes[(of, own)]
    return ""
