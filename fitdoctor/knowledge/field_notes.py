"""What the records say about themselves: the docstrings of their classes and fields, read from their source."""

from __future__ import annotations

import ast
import inspect
from collections.abc import Iterator
from functools import cache

from fitdoctor.knowledge import drawn, entries, entry, remedies, solved


@cache
def class_notes() -> dict[str, str]:
    """Record -> its docstring."""
    return {node.name: ast.get_docstring(node) or "" for node in _classes()}


@cache
def field_notes() -> dict[tuple[str, str], str]:
    """(record, field) -> the docstring under the field."""
    return {(node.name, field): note for node in _classes() for field, note in _notes_in(node)}


def _classes() -> Iterator[ast.ClassDef]:
    bodies = (ast.parse(inspect.getsource(module)).body for module in (entry, drawn, entries, remedies, solved))
    return (node for body in bodies for node in body if isinstance(node, ast.ClassDef))


def _notes_in(node: ast.ClassDef) -> Iterator[tuple[str, str]]:
    last = ""
    for statement in node.body:
        if isinstance(statement, ast.AnnAssign) and isinstance(statement.target, ast.Name):
            last = statement.target.id
        elif isinstance(statement, ast.Expr) and isinstance(statement.value, ast.Constant) and last:
            yield last, str(statement.value.value)
