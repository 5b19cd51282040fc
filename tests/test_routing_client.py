"""The client that the README shows, run against the service as a works would run it."""

import csv
import re
import subprocess
import sys
from pathlib import Path
from urllib.parse import quote

import requests

ROOT = Path(__file__).resolve().parent.parent
CLIENT = ROOT / "tests/routing_client.py"
README = (ROOT / "README.md").read_text(encoding="utf-8")
ROUTING = """op,part,teeth,machine
OP10,take-up ratchet,64,mill 2
OP20,let-off ratchet,28,mill 2
OP30,"pawl wheel, left",0,mill 1
OP40,dobby wheel,73,mill 1
"""


def test_each_operation_gets_its_instruction_and_a_bad_one_its_problem(live: str, tmp_path: Path) -> None:
    source, target = tmp_path / "routing.csv", tmp_path / "out.csv"
    source.write_text(ROUTING, encoding="utf-8")

    subprocess.run([sys.executable, CLIENT, source, target, live], check=True, timeout=60)

    with target.open(encoding="utf-8", newline="") as file:
        operations = list(csv.DictReader(file))
    assert [each["op"] for each in operations] == ["OP10", "OP20", "OP30", "OP40"]
    assert operations[2]["part"] == "pawl wheel, left"
    # 40/64 = 10/16; 40/28 = 1 3/7 = 1 21/49, the largest circle that 7 divides.
    assert operations[0]["dividing"] == "Plate 1, circle 16: 10 spaces, arms over 11 holes"
    assert operations[1]["dividing"] == "Plate 3, circle 49: 1 turn and 21 spaces, arms over 22 holes"
    assert "1 to 1,000,000" in operations[2]["dividing"]
    assert "not exact" in operations[3]["dividing"]


def test_the_readme_shows_the_client_as_it_is() -> None:
    shown = re.search(r"```python\n(.*?)```", README, re.DOTALL)
    assert shown is not None
    assert shown[1] == CLIENT.read_text(encoding="utf-8")


def test_the_cells_of_the_readme_cut_the_instruction_out_of_the_answer(live: str) -> None:
    # What the two formulas do: ask by the address with the count, then cut between two marks.
    asking, cutting = re.findall(r"```text\n(=.*?)\n```", README)[:2]
    address = re.fullmatch(r'=WEBSERVICE\("http://127\.0\.0\.1:8080([^"]+)" & B2\)', asking)
    marks = re.findall(r'"((?:[^"]|"")+)"', cutting)
    assert address is not None
    start, _, end = (mark.replace('""', '"') for mark in (marks[0], marks[1], marks[2]))

    told = requests.get(live + address[1] + quote("64"), timeout=10).text
    after = told[told.index(start) + len(start):]

    assert after[: after.index(end)] == "Plate 1, circle 16: 10 spaces, arms over 11 holes"
