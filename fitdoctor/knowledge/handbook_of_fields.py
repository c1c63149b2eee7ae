"""The handbook for whoever writes entries: `knowledge/README.md`, made from the records themselves.

`python -m fitdoctor.knowledge.handbook_of_fields` writes it anew after a change of the records.
"""

from __future__ import annotations

from collections.abc import Iterator
from types import NoneType, UnionType
from typing import Annotated, Any, Literal, Union, get_args, get_origin

import msgspec

from fitdoctor.knowledge import checks
from fitdoctor.knowledge.entries import KINDS, Entry, Id, LengthMm, PointList, Source
from fitdoctor.knowledge.field_notes import class_notes, field_notes
from fitdoctor.knowledge.read import shipped_folder

_HEAD = """# The fields of the knowledge

Made from the records in `fitdoctor/knowledge/entries.py` by `python -m fitdoctor.knowledge.handbook_of_fields`; a test keeps it fresh.

One entry a file, `<kind>/<region>/<id>.yaml`; the file's name is the id. Every scalar is read as plain text: `no` is the word no.
Text that contains a colon and a blank, or starts with a special sign, is quoted. A length carries its unit: `3/4 in`, `19 mm`.
Each link is written once, at the end that needs it. Every claim names a source of `sources/`, or `common-practice`.
Words for chances stand in `scale.yaml`, lay words for the search in `words.yaml`, the regions a search is narrowed to in `regions.yaml`.
Fields in **bold** must be there.
"""
_SIMPLE: dict[Any, str] = {str: "text", float: "number", int: "number", bool: "true or false", LengthMm: "length"}


def handbook() -> str:
    """The whole handbook as Markdown."""
    parts = [_HEAD, "## Every entry\n", _table(Entry, of_every_entry=True)]
    told: set[str] = set()
    for kind, record in KINDS.items():
        parts += [f"## {kind}\n", _note_of(record), _table(record)]
        parts += _inner_tables(record, told)
    parts += ["## sources\n", _note_of(Source), _table(Source), "## What is checked\n", "\n".join(_rules()) + "\n"]
    return "\n".join(parts)


def write_handbook() -> None:
    """Write the handbook beside the knowledge."""
    (shipped_folder() / "README.md").write_text(handbook(), encoding="utf-8")


def _inner_tables(record: type[msgspec.Struct], told: set[str]) -> Iterator[str]:
    """The records inside a record, each told once."""
    for inner in _records_in(record):
        if inner.__name__ not in told:
            told.add(inner.__name__)
            yield f"### {inner.__name__}\n"
            yield _note_of(inner)
            yield _table(inner)
            yield from _inner_tables(inner, told)


def _records_in(record: type[msgspec.Struct]) -> Iterator[type[msgspec.Struct]]:
    for field in _own_fields(record):
        yield from _records_of(field.type)


def _records_of(kind: Any) -> Iterator[type[msgspec.Struct]]:
    if isinstance(kind, type) and issubclass(kind, msgspec.Struct):
        yield kind
    for inner in get_args(kind):
        yield from _records_of(inner)


def _own_fields(record: type[msgspec.Struct], of_every_entry: bool = False) -> list[msgspec.structs.FieldInfo]:
    shared = Entry.__struct_fields__ if issubclass(record, Entry) and not of_every_entry else ()
    return [field for field in msgspec.structs.fields(record) if field.name not in shared]


def _table(record: type[msgspec.Struct], of_every_entry: bool = False) -> str:
    rows = ["| field | holds | |", "|---|---|---|"]
    for field in _own_fields(record, of_every_entry):
        name = f"**{field.encode_name}**" if field.required else field.encode_name
        note = field_notes().get((record.__name__, field.name), "")
        rows.append(f"| {name} | {_holds(field.type)}{_otherwise(field)} | {_cell(note)} |")
    return "\n".join(rows) + "\n"


def _holds(kind: Any) -> str:
    """What a field holds, in words."""
    origin, inner = get_origin(kind), get_args(kind)
    if kind == Id:
        return "id"
    if kind == PointList:
        return "points"
    if origin is Annotated:
        return _holds(inner[0])
    if origin is Literal:
        return " · ".join(f"`{word}`" for word in inner)
    if origin is tuple:
        return f"list of {_holds(inner[0])}" if inner[-1] is Ellipsis else f"[{', '.join(_holds(item) for item in inner)}]"
    if origin is dict:
        return f"{_holds(inner[0])} → {_holds(inner[1])}"
    if origin in (Union, UnionType):
        return " or ".join(_holds(item) for item in inner if item is not NoneType)
    return _SIMPLE.get(kind, getattr(kind, "__name__", str(kind)))


def _otherwise(field: msgspec.structs.FieldInfo) -> str:
    """What stands where the field is left out, if that says something."""
    if field.required or field.default in (msgspec.NODEFAULT, None, "", (), False):
        return ""
    return f" (else `{field.default}`)" if isinstance(field.default, str | float | int) else ""


def _note_of(record: type[msgspec.Struct]) -> str:
    return " ".join(class_notes().get(record.__name__, "").replace("``", "`").split()) + "\n"


def _cell(text: str) -> str:
    return " ".join(text.split()).replace("|", "\\|")


def _rules() -> Iterator[str]:
    for name, rule in {**checks.RULES, **checks.ON_ASKING}.items():
        yield f"- `{name}`: {' '.join((rule.__doc__ or '').split())}"


if __name__ == "__main__":
    write_handbook()
