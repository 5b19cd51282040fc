"""A package that is built and installed somewhere else serves its page and its description."""

import json
import subprocess
import sys
import sysconfig
import venv
from collections.abc import Iterator
from pathlib import Path

import pytest
import requests

from tests.running import ROOT, running


def run(*words: str | Path) -> None:
    done = subprocess.run(words, cwd=ROOT, capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stdout + done.stderr


@pytest.fixture(scope="module")
def installed(tmp_path_factory: pytest.TempPathFactory) -> Iterator[str]:
    """The address of a service that runs from a wheel, in an environment that knows no checkout."""
    there = tmp_path_factory.mktemp("installed")
    run(sys.executable, "-m", "build", "--wheel", "--no-isolation", "--outdir", there, ROOT)
    (wheel,) = there.glob("dividing-*.whl")
    venv.create(there / "fresh", with_pip=False)
    python = there / "fresh" / "bin" / "python"
    run(sys.executable, "-m", "pip", "--python", python, "install", "--quiet", "--no-deps", "--no-index", wheel)
    # What it depends on is taken from this environment, where it is locked, so that nothing is fetched.
    (fresh,) = (there / "fresh" / "lib").glob("python*/site-packages")
    (fresh / "locked.pth").write_text(sysconfig.get_path("purelib"))
    with running("--workers", "1", python=str(python), PYTHONPATH="") as (base, _):
        yield base


def test_an_installed_package_serves_the_page(installed: str) -> None:
    for file in ("index.html", "style.css"):
        served = requests.get(f"{installed}/{file.removeprefix('index.html')}", timeout=5)
        assert served.status_code == 200
        assert served.content == (ROOT / "frontend" / file).read_bytes()


def test_an_installed_package_serves_every_file_that_the_page_loads(installed: str) -> None:
    scripts = [file.relative_to(ROOT / "frontend") for file in (ROOT / "frontend").rglob("*.js")]

    assert scripts
    assert [name for name in scripts if requests.get(f"{installed}/{name}", timeout=5).status_code != 200] == []


def test_an_installed_package_serves_its_description(installed: str) -> None:
    kept = json.loads((ROOT / "openapi" / "openapi.json").read_text(encoding="utf-8"))

    assert requests.get(f"{installed}/openapi.json", timeout=5).json() == kept


def test_an_installed_package_solves(installed: str) -> None:
    answer = requests.post(f"{installed}/v1/solve", json={"work": {"divisions": 28}}, timeout=5).json()

    assert answer["setups"][0]["summary"] == "Plate 3, circle 49: 1 turn and 21 spaces, arms over 22 holes"
