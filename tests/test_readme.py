"""What the README shows is what the service answers."""

import json
import re
import shlex
from pathlib import Path
from typing import Any

import pytest
import requests
import yaml

from dividing.web.options import read_options
from dividing.web.serve import settings

ROOT = Path(__file__).resolve().parent.parent
README = (ROOT / "README.md").read_text(encoding="utf-8")
ADDRESS = "http://127.0.0.1:8080"
EXAMPLES = re.findall(r"```sh\n(curl [^\n]+)\n```\n\n```json\n(.+?)```", README, re.DOTALL)


def ask(command: str, base: str) -> Any:
    """Do what the curl command does: -H gives a header, -d a body."""
    words = iter(shlex.split(command.replace(ADDRESS, base))[1:])
    url, body, headers = "", None, {}
    for word in words:
        if word == "-d":
            body = next(words)
        elif word == "-H":
            name, _, value = next(words).partition(": ")
            headers[name] = value
        elif word != "-s":
            url = word
    return requests.request("POST" if body else "GET", url, data=body, headers=headers, timeout=10).json()


def shown_in(part: Any, whole: Any) -> Any:
    """As much of the answer as the README shows of it."""
    if isinstance(part, dict) and isinstance(whole, dict):
        return {key: shown_in(value, whole.get(key)) for key, value in part.items()}
    if isinstance(part, list) and isinstance(whole, list):
        return [shown_in(*pair) for pair in zip(part, whole, strict=False)]
    return whole


@pytest.mark.parametrize(("command", "shown"), EXAMPLES)
def test_an_example_answers_as_shown(command: str, shown: str, live: str) -> None:
    expected = json.loads(shown)

    assert shown_in(expected, ask(command, live)) == expected


def test_every_curl_in_the_readme_is_followed_by_its_answer() -> None:
    assert len(EXAMPLES) == README.count("curl -s") > 4


def test_the_commands_are_one_line_each_and_name_files_that_exist() -> None:
    commands = [block for block in re.findall(r"```sh\n(.*?)\n```", README, re.DOTALL) if "curl" not in block]

    assert len(commands) == 2
    for command in commands:
        assert "\n" not in command
    assert (ROOT / "service/requirements.lock").is_file()
    assert (ROOT / "tests/run").stat().st_mode & 0o111


@pytest.mark.parametrize("target", re.findall(r"\]\(([^)#:]+)\)", README))
def test_a_link_leads_to_a_file(target: str) -> None:
    assert (ROOT / target).exists()


def test_what_an_orchestrator_is_told_holds_of_the_service(live: str) -> None:
    (told,) = map(yaml.safe_load, re.findall(r"```yaml\n(.*?)```", README, re.DOTALL))
    (container,) = told["containers"]
    options = read_options(container["args"])
    probes = [container[name]["httpGet"] for name in ("readinessProbe", "livenessProbe")]
    assert [probe["path"] for probe in probes] == ["/ready", "/health"]
    assert [requests.get(live + probe["path"], timeout=5).status_code for probe in probes] == [200, 200]
    assert {probe["port"] for probe in probes} == {options.bind[1]}
    assert container["ports"] == [{"containerPort": options.bind[1]}]
    # It may still answer for so long after the pause in which the way to it is taken down.
    pause = int(container["lifecycle"]["preStop"]["exec"]["command"][1])
    assert pause + settings(options)["graceful_timeout"] < told["terminationGracePeriodSeconds"]
    # A user who is no root has to be known by number, or the container is not started.
    dockerfile = (ROOT / "Dockerfile").read_text(encoding="utf-8")
    assert container["securityContext"]["runAsNonRoot"]
    assert int(re.findall(r"^USER (\d+):", dockerfile, re.MULTILINE)[-1]) > 0
    # Its arguments stand behind the program, in place of those of CMD.
    assert re.search(r'^ENTRYPOINT \[.*"dividing"\]$', dockerfile, re.MULTILINE)
