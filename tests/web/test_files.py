"""The page and the description are found in a checkout and in an installed package."""

from pathlib import Path

import pytest

from dividing.web import files

REPOSITORY = Path(__file__).resolve().parents[2]


def test_a_checkout_serves_the_page_as_it_is_being_written() -> None:
    assert files.page_folder() == REPOSITORY / "frontend"
    assert files.description_file() == REPOSITORY / "openapi" / "openapi.json"


def test_an_installed_package_serves_the_page_it_carries(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    (tmp_path / "page").mkdir()
    (tmp_path / "page" / "index.html").write_text("<!doctype html>")
    (tmp_path / "openapi.json").write_text("{}")
    monkeypatch.setattr(files, "_CHECKOUT", tmp_path / "nowhere")
    monkeypatch.setattr(files, "_HERE", tmp_path)

    assert files.page_folder() == tmp_path / "page"
    assert files.description_file() == tmp_path / "openapi.json"


def test_a_package_without_its_page_says_what_to_do(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(files, "_CHECKOUT", tmp_path / "checkout")
    monkeypatch.setattr(files, "_HERE", tmp_path / "package")

    with pytest.raises(FileNotFoundError) as refused:
        files.page_folder()

    assert str(refused.value) == (
        f"This installation is not complete: nothing at {tmp_path}/checkout/frontend or {tmp_path}/package/page."
        " Install it again."
    )
