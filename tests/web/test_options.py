"""What is said on the command line is read, or refused in one sentence before anything starts."""

import os
from pathlib import Path

import pytest

from dividing.web import options
from dividing.web.options import Options
from tests.certificate import self_signed

FOR_EXAMPLE = "for example 127.0.0.1:8080"


@pytest.mark.parametrize(
    ("text", "address"),
    [
        ("127.0.0.1:8080", ("127.0.0.1", 8080)),
        ("0.0.0.0:1", ("0.0.0.0", 1)),
        ("localhost:65535", ("localhost", 65535)),
        ("[::1]:8080", ("::1", 8080)),
    ],
)
def test_an_address_is_read(text: str, address: tuple[str, int]) -> None:
    assert options.parse_bind(text) == address


@pytest.mark.parametrize(
    "text", ["", "8080", ":8080", "host", "host:", "host:0", "host:65536", "host:-1", "host:8o", "host:٨٠"]
)
def test_what_is_no_address_is_refused_in_one_sentence(text: str, capsys: pytest.CaptureFixture[str]) -> None:
    with pytest.raises(SystemExit) as stopped:
        options.read_options([f"--bind={text}"])

    assert stopped.value.code == 2
    assert capsys.readouterr().err == (
        f"--bind takes HOST:PORT with a port from 1 to 65535, {FOR_EXAMPLE}; not {text!r}.\n"
    )


@pytest.mark.parametrize("text", ["", "0", "65", "-1", "two", "1.5", "٢"])
def test_a_wrong_number_of_workers_is_refused_in_one_sentence(
    text: str, capsys: pytest.CaptureFixture[str]
) -> None:
    with pytest.raises(SystemExit) as stopped:
        options.read_options([f"--workers={text}"])

    assert stopped.value.code == 2
    assert capsys.readouterr().err == f"--workers takes a whole number from 1 to 64; not {text!r}.\n"


@pytest.mark.parametrize("text", ["", "8125", "host:0", "host:65536", "host:x"])
def test_a_wrong_place_for_figures_is_refused_in_one_sentence(text: str, capsys: pytest.CaptureFixture[str]) -> None:
    with pytest.raises(SystemExit) as stopped:
        options.read_options([f"--statsd-host={text}"])

    assert stopped.value.code == 2
    assert capsys.readouterr().err == (
        f"--statsd-host takes HOST:PORT with a port from 1 to 65535, for example 127.0.0.1:8125; not {text!r}.\n"
    )


@pytest.mark.parametrize("text", ["", "proxy", "10.0.0.1, 10.0.0.2", "10.0.0.1/8", "300.0.0.1", "*,*"])
def test_wrong_proxies_are_refused_in_one_sentence(text: str, capsys: pytest.CaptureFixture[str]) -> None:
    with pytest.raises(SystemExit) as stopped:
        options.read_options([f"--forwarded-allow-ips={text}"])

    assert stopped.value.code == 2
    assert capsys.readouterr().err == (
        "--forwarded-allow-ips takes addresses or networks parted by commas, for example 127.0.0.1,::1,"
        f" or * for any; not {text!r}.\n"
    )


def test_everything_that_may_be_said_is_read(tmp_path: Path) -> None:
    certificate, key = map(str, self_signed(tmp_path))
    said = ["--bind=[::1]:8443", "--workers=3", "--certfile", certificate, "--keyfile", key]
    said += ["--statsd-host=[::1]:8125", "--forwarded-allow-ips=10.0.0.0/8,::1"]

    assert options.read_options(said) == Options(
        ("::1", 8443), 3, certificate, key, ("::1", 8125), "10.0.0.0/8,::1"
    )
    assert options.read_options(["--forwarded-allow-ips=*"]).forwarded_allow_ips == "*"
    assert options.read_options([]) == Options(("127.0.0.1", 8080), options.usual_workers())


def test_a_certificate_that_cannot_be_used_is_refused_in_one_sentence(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    certificate, _ = self_signed(tmp_path)
    nowhere, empty = tmp_path / "nowhere.pem", tmp_path / "empty.pem"
    empty.touch()
    none = "they are no certificate and open key that belong together"
    said = {
        ("--keyfile", "key.pem"): "--keyfile needs --certfile beside it.",
        ("--certfile", str(nowhere)): f"--certfile {nowhere} and its key cannot be used: No such file or directory.",
        ("--certfile", str(certificate)): f"--certfile {certificate} and its key cannot be used: {none}.",
        ("--certfile", str(empty)): f"--certfile {empty} and its key cannot be used: {none}.",
    }
    for words, sentence in said.items():
        with pytest.raises(SystemExit) as stopped:
            options.read_options(words)
        assert stopped.value.code == 2
        assert capsys.readouterr().err == sentence + "\n"


def test_by_default_each_core_has_a_worker() -> None:
    assert options.usual_workers() == min(len(os.sched_getaffinity(0)), options.MOST_WORKERS_UNASKED)
