"""What is typed and told at the rack is kept; garments are compared, printed, taken to the table."""

from __future__ import annotations

import io
from pathlib import Path
from typing import TYPE_CHECKING

import msgspec
import pytest
from pypdf import PdfReader
from PySide6.QtWidgets import QFileDialog, QLineEdit, QMenu, QPushButton

from fitdoctor.desk.rack.kept import Lists, OnRack, RackList, lists_folder
from fitdoctor.desk.rack.print_comparison import comparison_pdf
from fitdoctor.errors import FitdoctorError
from fitdoctor.rack.told import Told
from fitdoctor.shop import Shop

if TYPE_CHECKING:
    from tests.desk.rack_rail import Buyer, MakeBuyer

pytest_plugins = ["tests.desk.rack_rail"]


def two_garments(buyer: Buyer) -> None:
    buyer.look_at("trousers", "50", "40", "Dear trousers")
    buyer.press("rack-next-garment")
    buyer.look_at("skirt", "5", "40", "Cheap skirt")
    buyer.go_on(buyer.nothing_else)


def words_of(pdf: PdfReader) -> str:
    return " ".join(" ".join(page.extract_text() for page in pdf.pages).split())


# ---- amounts that cannot be used


@pytest.mark.parametrize(
    ("typed", "said"),
    [("eight", "‘eight’ is not an amount yet"), ("-3", "below nothing"), ("", "An amount is wanted")],
)
def test_a_bad_price_is_said_beside_its_field_and_nothing_begins(buyer: Buyer, typed: str, said: str) -> None:
    buyer.describe("trousers", typed, "40")
    buyer.press("rack-go")
    assert said in buyer.said("rack-price-wrong")
    assert buyer.there("rack-worth-wrong") is None
    assert buyer.focus() == "rack-price"
    assert buyer.hand.garment is None
    buyer.text("rack-price", "8")
    assert buyer.there("rack-price-wrong") is None
    buyer.press("rack-go")
    assert buyer.hand.garment is not None


def test_a_garment_worth_nothing_is_not_looked_at(buyer: Buyer) -> None:
    buyer.describe("trousers", "0", "0")
    buyer.press("rack-go")
    assert buyer.there("rack-price-wrong") is None, "what is given away has a price of nothing"
    assert buyer.said("rack-worth-wrong")


def test_own_time_costs_nothing_and_the_shops_hour_does(at_the_rail: MakeBuyer) -> None:
    buyer = at_the_rail(shop=Shop(rate_per_hour=18.0, currency="€"))
    buyer.look_at("jacket", "10", "45")
    buyer.see("one sleeve longer", "one-sleeve-longer")
    assert buyer.hand.garment is not None
    assert buyer.hand.garment.rate == 18.0
    assert buyer.said("rack-sum-work-amount").startswith("− €")
    buyer.press("rack-prices")
    buyer.press("rack-wages-of-own")
    assert buyer.there("rack-rate") is None
    buyer.press("rack-go")
    assert buyer.said("rack-sum-work-amount") == "€0.00"
    assert buyer.hand.garment.told, "what was told stays when prices change"


# ---- kept


def test_a_restart_keeps_the_garment_the_answers_and_what_was_half_typed(at_the_rail: MakeBuyer) -> None:
    first = at_the_rail()
    first.look_at("trousers", "25", "40", "Grey trousers")
    first.answer("no")
    asked = first.question().mark
    first.window.close()
    second = at_the_rail()
    assert "Grey trousers" in second.said("rack-garment")
    assert second.question().mark == asked
    second.press("rack-another")
    second.press("rack-kind-skirt")
    second.text("rack-price", "7,")
    second.window.close()
    third = at_the_rail()
    field = third.there("rack-price")
    assert isinstance(field, QLineEdit)
    assert field.text() == "7,"
    third.press("rack-list-garment-1")
    assert third.question().mark == asked


def test_another_look_of_the_window_keeps_the_question(buyer: Buyer) -> None:
    buyer.look_at("trousers", "25", "40")
    asked = buyer.said("rack-question")
    buyer.window.set_text(150)
    buyer.settle()
    assert buyer.said("rack-question") == asked
    assert buyer.focus().startswith("rack-answer-")


def test_a_list_is_written_whole_and_read_again(tmp_path: Path) -> None:
    lists = Lists(tmp_path)
    told = (Told(kind="side", id="back", value="yes", said="The back: something does"), Told(kind="seen", id="strain"))
    one = RackList(id="list-1", garments=(OnRack(id="garment-1", garment="skirt", price=8, worth=40, told=told),), at="garment-1")
    kept = lists.keep(one)
    assert lists.last() == (kept, "")
    assert msgspec.structs.replace(kept, changed="") == one


def test_a_list_that_cannot_be_read_is_said_and_left_as_it_is(tmp_path: Path) -> None:
    lists = Lists(tmp_path)
    lists.keep(RackList(id="list-1", garments=(OnRack(id="a", garment="skirt", price=8, worth=40),)))
    (tmp_path / "list-1.json").write_text("{")
    last, note = lists.last()
    assert last.id == "list-2"
    assert "left as it is" in note
    assert lists.all()[0] == ()
    assert len(lists.all()[1]) == 1
    assert (tmp_path / "list-1.json").read_text() == "{"


def test_a_list_that_cannot_be_written_is_a_known_error_and_stays_in_the_window(buyer: Buyer, monkeypatch: pytest.MonkeyPatch) -> None:
    def full(*_: object) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(Path, "replace", full)
    buyer.look_at("trousers", "25", "40")
    assert "no space left" in buyer.said("message-words")
    assert buyer.question() is not None
    with pytest.raises(FitdoctorError, match="could not be kept"):
        Lists(lists_folder()).keep(RackList(id="x"))


def test_a_new_list_leaves_the_earlier_one_to_be_opened_again(buyer: Buyer) -> None:
    two_garments(buyer)
    buyer.press("rack-another")
    buyer.press("rack-list-new")
    assert buyer.there("rack-list-empty") is not None
    buyer.press("rack-lists")
    menu = buyer.window.findChild(QMenu, "rack-lists-menu")
    assert menu is not None
    earlier = next(action for action in menu.actions() if "Cheap skirt" in action.text())
    earlier.trigger()
    menu.close()
    buyer.settle()
    assert len(buyer.hand.list.garments) == 2


# ---- side by side


def test_two_garments_stand_side_by_side_what_to_buy_first(buyer: Buyer) -> None:
    two_garments(buyer)
    buyer.press("rack-compare")
    skirt, trousers = buyer.there("rack-compared-garment-2-column"), buyer.there("rack-compared-garment-1-column")
    assert skirt is not None
    assert trousers is not None
    assert skirt.mapTo(buyer.window, skirt.rect().topLeft()).x() < trousers.mapTo(buyer.window, trousers.rect().topLeft()).x()
    assert skirt.mapTo(buyer.window, skirt.rect().topLeft()).y() == trousers.mapTo(buyer.window, trousers.rect().topLeft()).y()
    assert buyer.said("rack-compared-garment-1-reason") == buyer.hand.ready()[1][1].reason.text
    buyer.press("rack-compared-garment-1")
    assert "Dear trousers" in buyer.said("rack-garment")


def test_a_garment_taken_off_the_list_can_be_put_back(buyer: Buyer) -> None:
    two_garments(buyer)
    buyer.press("rack-compare")
    buyer.press("rack-compared-garment-1-drop")
    assert buyer.there("rack-compared-garment-1") is None
    buyer.press("message-button")
    assert buyer.there("rack-compared-garment-1") is not None


def test_the_comparison_is_written_as_pdf_where_the_dialog_says(buyer: Buyer, tmp_path: Path) -> None:
    two_garments(buyer)
    buyer.press("rack-compare")
    buyer.press("rack-pdf")
    dialog = buyer.window.findChild(QFileDialog, "rack-pdf-dialog")
    assert dialog is not None
    file = tmp_path / "comparison.pdf"
    dialog.fileSelected.emit(str(file))
    dialog.close()
    text = words_of(PdfReader(file))
    for word in ("Dear trousers", "Cheap skirt", "Leave it", "£50.00"):
        assert word in text


def test_seven_garments_print_on_as_many_pages_as_they_need(buyer: Buyer) -> None:
    two_garments(buyer)
    answers = [answer for _, answer in buyer.hand.ready()]
    text = words_of(PdfReader(io.BytesIO(comparison_pdf((answers * 4)[:7], buyer.hand.money))))
    assert text.count("Dear trousers") + text.count("Cheap skirt") == 7


# ---- on to the table


def test_a_garment_goes_on_to_the_table_with_all_that_was_told(buyer: Buyer) -> None:
    buyer.look_at("trousers", "8", "40", "Short trousers")
    buyer.see("too short", "trousers-too-short")
    buyer.go_on(buyer.nothing_else)
    buyer.press("rack-fit")
    assert buyer.window.place == "fit"
    assert buyer.job.case.title == "Short trousers"
    assert buyer.job.case.seen == ("trousers-too-short",)
    assert buyer.fitting.page().isVisible()


def test_a_garment_kept_in_the_job_book_leaves_the_buyer_where_he_is(buyer: Buyer) -> None:
    before = len(buyer.job.shelf.at_hand())
    buyer.look_at("trousers", "8", "40", "Short trousers")
    buyer.press("rack-keep")
    assert buyer.window.place == "rack"
    assert "Short trousers" in buyer.said("message-words")
    assert len(buyer.job.shelf.at_hand()) == before + 1


def test_why_it_may_fail_is_told_on_asking(buyer: Buyer) -> None:
    buyer.look_at("jacket", "10", "45")
    buyer.see("one sleeve longer", "one-sleeve-longer")
    answer = buyer.hand.answer()
    assert answer is not None
    assert answer.may_fail
    why = buyer.there("rack-sum-risk-why")
    assert isinstance(why, QPushButton)
    buyer.press("rack-sum-risk-why")
    assert buyer.there("rack-why") is not None
    buyer.press("rack-sum-risk-why")
    assert buyer.there("rack-why") is None
