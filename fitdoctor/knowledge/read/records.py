"""Plain values become records; everything that does not fit is said in plain words, with its place."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from datetime import date, datetime
from math import isfinite
from types import NoneType, UnionType
from typing import Annotated, Any, Literal, TypeVar, Union, get_args, get_origin

import msgspec

from fitdoctor.errors import FitdoctorError
from fitdoctor.knowledge.entries import LengthMm
from fitdoctor.knowledge.knowledge import Problem
from fitdoctor.knowledge.nearest import did_you_mean
from fitdoctor.knowledge.read.document import Document, Step
from fitdoctor.units import parse_length

T = TypeVar("T")
Path_ = tuple[Step, ...]

_UNIT_AT_THE_END = re.compile(r"(mm|cm|in|inch|inches|\"|″)\.?$")
_NOT_FINITE = re.compile(r"(?<![\w-])[-+]?(nan|inf|infinity)(?![\w-])")
_TREES = ("when", "only_if", "impossible_if")


@dataclass(frozen=True)
class Fault:
    """One thing that does not fit its record."""

    path: Path_
    text: str


def record(document: Document, kind: type[T]) -> tuple[T | None, tuple[Problem, ...]]:
    """A document as a record of this kind, or every problem that keeps it from being one."""
    if document.plain is None:
        return None, document.problems
    plain = _with_lists_in_trees(document.plain)
    faults: tuple[Fault, ...] = ()
    made: T | None = None
    try:
        made = msgspec.convert(plain, kind, strict=False, dec_hook=_length)
    except msgspec.ValidationError as error:
        faults = tuple(_faults(plain, kind, ())) or (Fault((), str(error)),)
    if made is not None and _may_be_endless(document.text):
        faults = tuple(_faults(plain, kind, ()))
    if not faults:
        return made, ()
    return None, tuple(document.problem(fault.path, fault.text, "record") for fault in faults)


def faults(plain: Any, kind: Any) -> tuple[Fault, ...]:
    """Every fault of plain values against a record; none where they fit."""
    return tuple(_faults(plain, kind, ()))


def _may_be_endless(text: str) -> bool:
    """Whether nan or inf stands somewhere, which would pass for a number."""
    small = text.lower()
    return ("nan" in small or "inf" in small) and bool(_NOT_FINITE.search(small))


def length_with_unit(text: str) -> float:
    """A length in mm that must carry its unit; a bare 0 needs none.

    Raises:
        FitdoctorError: no unit, or not a length.
    """
    stripped = text.strip()
    if stripped != "0" and not _UNIT_AT_THE_END.search(stripped):
        raise FitdoctorError(f"‘{stripped}’ needs a unit: mm, cm or in.")
    return parse_length(stripped)


def _length(kind: type, value: Any) -> Any:
    if kind is not LengthMm:
        raise NotImplementedError(kind)
    try:
        return LengthMm(length_with_unit(str(value)))
    except FitdoctorError as error:
        raise ValueError(str(error)) from error


def _with_lists_in_trees(plain: Any) -> Any:
    if not isinstance(plain, dict) or plain.keys().isdisjoint(_TREES):
        return plain
    return {key: _with_lists(value) if key in _TREES else value for key, value in plain.items()}


def _with_lists(tree: Any) -> Any:
    """One word after `is` becomes a list of one."""
    if isinstance(tree, list):
        return [_with_lists(item) for item in tree]
    if not isinstance(tree, dict):
        return tree
    return {key: [value] if key == "is" and isinstance(value, str) else _with_lists(value) for key, value in tree.items()}


def _faults(value: Any, kind: Any, path: Path_) -> Iterator[Fault]:
    """Every fault below a value; the record's own conversion stops at the first."""
    kind = _one_of(kind, value)
    origin, inner = get_origin(kind), get_args(kind)
    if isinstance(kind, type) and issubclass(kind, msgspec.Struct):
        yield from _record_faults(value, kind, path)
    elif origin is tuple and isinstance(value, list) and inner[-1] is Ellipsis:
        for number, item in enumerate(value):
            yield from _faults(item, inner[0], (*path, number))
    elif origin is tuple and isinstance(value, list) and len(value) == len(inner):
        for number, (item, wanted) in enumerate(zip(value, inner, strict=True)):
            yield from _faults(item, wanted, (*path, number))
    elif origin is dict and isinstance(value, dict):
        for key, item in value.items():
            yield from _leaf_faults(key, inner[0], (*path, key))
            yield from _faults(item, inner[1], (*path, key))
    else:
        yield from _leaf_faults(value, kind, path)


def _one_of(kind: Any, value: Any) -> Any:
    """Of several kinds the one that this value seems to want to be."""
    if get_origin(kind) not in (Union, UnionType) or (value is None and NoneType in get_args(kind)):
        return kind
    kinds = [k for k in get_args(kind) if k is not NoneType]
    records = [k for k in kinds if isinstance(k, type) and issubclass(k, msgspec.Struct)]
    return records[0] if records and isinstance(value, Mapping) else kinds[0]


def _record_faults(value: Any, kind: type[msgspec.Struct], path: Path_) -> Iterator[Fault]:
    if not isinstance(value, Mapping):
        yield Fault(path, f"{_at(path)}{_kind_of(value)} stands where fields are wanted ({', '.join(_names(kind))})")
        return
    fields = {field.encode_name: field for field in msgspec.structs.fields(kind)}
    for key in value:
        if key not in fields:
            yield Fault((*path, key), f"there is no field ‘{key}’{' in ' + _place(path) if path else ''}{did_you_mean(key, fields)}")
    for name, field in fields.items():
        if name in value:
            yield from _faults(value[name], field.type, (*path, name))
        elif field.required:
            yield Fault(path, f"{_at(path)}the field ‘{name}’ is missing")


def _leaf_faults(value: Any, kind: Any, path: Path_) -> Iterator[Fault]:
    try:
        made = msgspec.convert(value, kind, strict=False, dec_hook=_length)
    except msgspec.ValidationError as error:
        yield Fault(path, f"{_at(path)}{_in_plain_words(value, kind, str(error))}")
        return
    if isinstance(made, float) and not isfinite(made):
        yield Fault(path, f"{_at(path)}‘{value}’ is not a number")


def _in_plain_words(value: Any, kind: Any, said: str) -> str:
    plain = get_args(kind)[0] if get_origin(kind) is Annotated else kind
    if get_origin(plain) is Literal:
        choices = [str(choice) for choice in get_args(plain)]
        return f"‘{value}’ is none of {', '.join(choices)}{did_you_mean(str(value), choices)}"
    if plain in (date, datetime):
        return f"‘{value}’ is not a {'day, such as 2024-05-31' if plain is date else 'time, such as 2024-05-31T14:30:00Z'}"
    if plain in (float, int) and isinstance(value, float | int):
        return f"‘{value}’ is outside what is allowed here"
    if not isinstance(value, str):
        return f"{_kind_of(value)} stands where {_WANTED.get(plain, 'something else')} is wanted"
    if plain in (float, int):
        return f"‘{value}’ is not a number"
    if plain is bool:
        return f"‘{value}’ is neither true nor false"
    if get_origin(plain) in (tuple, dict):
        return f"‘{value}’ stands where {'a list' if get_origin(plain) is tuple else 'a mapping'} is wanted"
    return _text_fault(value, said)


def _text_fault(value: str, said: str) -> str:
    if "matching regex" in said and "a-z0-9" in said:
        return f"‘{value}’ is not an id: small letters, digits and single hyphens"
    if "length >=" in said:
        return "is empty"
    if "length <=" in said:
        return f"‘{value}’ has {len(value)} letters, more than {said.rsplit(' ', 1)[-1]}"
    return said


_WANTED = {str: "text", float: "a number", int: "a number", bool: "true or false", LengthMm: "a length"}


def _kind_of(value: Any) -> str:
    return "a list" if isinstance(value, list) else "a mapping" if isinstance(value, Mapping) else f"‘{value}’"


def _names(kind: type[msgspec.Struct]) -> list[str]:
    return [field.encode_name for field in msgspec.structs.fields(kind)]


def _place(path: Path_) -> str:
    return ".".join(str(step + 1) if isinstance(step, int) else step for step in path)


def _at(path: Path_) -> str:
    return f"{_place(path)}: " if path else ""
