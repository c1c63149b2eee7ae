"""An entry as a page of a handbook, in plain values and plain text."""

from fitdoctor.handbook.opposed import SideBySide
from fitdoctor.handbook.page import Page, PageSource, UsedIn, entry_page, find_entry, page_json
from fitdoctor.handbook.sections import Section
from fitdoctor.handbook.text import page_text

__all__ = ["Page", "PageSource", "Section", "SideBySide", "UsedIn", "entry_page", "find_entry", "page_json", "page_text"]
