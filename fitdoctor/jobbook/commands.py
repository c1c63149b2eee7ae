"""`fitdoctor jobs`: the book on the command line. What opens the book is imported only when it runs."""

from __future__ import annotations

import argparse
import json
from collections.abc import Callable
from pathlib import Path
from typing import TYPE_CHECKING, Any

from fitdoctor.errors import FitdoctorError

if TYPE_CHECKING:
    from fitdoctor.jobbook.finding import Line

Run = Callable[[argparse.Namespace], int]


def jobs_command(parser: argparse.ArgumentParser) -> None:
    """Add list, export, import and delete to the parser of `fitdoctor jobs`; alone it lists."""
    parser.add_argument("--book", type=Path, metavar="FILE", help="the job book; your own if left out")
    parser.set_defaults(run=_list, words=[], json=False, open=None)
    commands = parser.add_subparsers(title="commands", metavar="COMMAND")

    def command(name: str, run: Run, says: str) -> argparse.ArgumentParser:
        made = commands.add_parser(name, help=says, description=says)
        made.set_defaults(run=run)
        return made

    listed = command("list", _list, "List the jobs, those due first on top.")
    out = command("export", _export, "Write jobs into a file that another book can read, or a table.")
    out.add_argument("file", type=Path, help="file to write: .json or .csv")
    out.add_argument("--without-photos", action="store_true")
    for searching in (listed, out):
        searching.add_argument("words", nargs="*", help="only jobs in which all of these occur")
        only = searching.add_mutually_exclusive_group()
        only.add_argument("--open", action="store_true", default=None, help="only jobs that are not closed")
        only.add_argument("--closed", dest="open", action="store_false", help="only closed jobs")
    listed.add_argument("--json", action="store_true")
    command("import", _import, "Bring jobs in from such a file, all or none.").add_argument("file", type=Path)
    gone = command("delete", _delete, "Delete a job for good, its readings and photos too.")
    gone.add_argument("job", help="id of the job, as `fitdoctor jobs` prints it")
    gone.add_argument("--for-good", action="store_true", help="say that you mean it: it cannot be taken back")


def _list(args: argparse.Namespace) -> int:
    with _open(args) as book:
        lines = _found(book, args)
    if args.json:
        print(json.dumps([_plain(line) for line in lines], indent=1, ensure_ascii=False))
        return 0
    for line in lines:
        due = f"due {line.due}" if line.due else "no due day"
        print(f"{line.id}  {line.wearer:8} {line.state:10} {due:14} {line.title or line.garment}{' (closed)' if line.closed else ''}")
    if not lines:
        print("No such job is in the book.")
    return 0


def _export(args: argparse.Namespace) -> int:
    from fitdoctor.jobbook.carrying import export_csv, export_json

    with _open(args) as book:
        ids = [line.id for line in _found(book, args)]
        if args.file.suffix == ".json":
            written = export_json(book, ids, args.file, with_photos=not args.without_photos)
        elif args.file.suffix == ".csv":
            written = export_csv(book, ids, args.file)
        else:
            raise FitdoctorError(f"Jobs cannot be written as ‘{args.file.name}’.", "End the file's name in .json or .csv.")
    print(f"{_jobs(written)} written to {args.file}.")
    return 0


def _import(args: argparse.Namespace) -> int:
    from fitdoctor.jobbook.carrying import import_json

    with _open(args) as book:
        print(f"{_jobs(import_json(book, args.file))} brought in.")
    return 0


def _delete(args: argparse.Namespace) -> int:
    with _open(args) as book:
        job = book.job(args.job)
        if not args.for_good:
            raise FitdoctorError(f"‘{job.case.title or job.id}’ would be deleted for good.", "Add --for-good if you mean it.")
        book.delete(job.id)
    print("Deleted for good.")
    return 0


def _open(args: argparse.Namespace) -> Any:
    from fitdoctor.jobbook.book import open_book

    return open_book(args.book)


def _found(book: Any, args: argparse.Namespace) -> tuple[Line, ...]:
    from fitdoctor.jobbook.finding import Sought, find

    return find(book.file, Sought(words=" ".join(args.words), open=args.open))


def _plain(line: Line) -> dict[str, Any]:
    import msgspec

    plain: dict[str, Any] = msgspec.to_builtins(line)
    return plain


def _jobs(number: int) -> str:
    return f"{number} {'job' if number == 1 else 'jobs'}"
