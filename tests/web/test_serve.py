"""The service is started with one command, says where to open it and stops when it is told to."""

import os
import re
import signal
import socket
from pathlib import Path

import pytest
import requests

from dividing import __version__
from dividing.web import serve
from tests.load.instance import on_kept_socket
from tests.running import Service, free_port, running

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
    assert serve.parse_bind(text) == address


@pytest.mark.parametrize(
    "text", ["", "8080", ":8080", "host", "host:", "host:0", "host:65536", "host:-1", "host:8o", "host:٨٠"]
)
def test_what_is_no_address_is_refused_in_one_sentence(text: str, capsys: pytest.CaptureFixture[str]) -> None:
    with pytest.raises(SystemExit) as stopped:
        serve.main([f"--bind={text}"])

    assert stopped.value.code == 2
    assert capsys.readouterr().err == (
        f"--bind takes HOST:PORT with a port from 1 to 65535, {FOR_EXAMPLE}; not {text!r}.\n"
    )


@pytest.mark.parametrize("text", ["", "0", "65", "-1", "two", "1.5", "٢"])
def test_a_wrong_number_of_workers_is_refused_in_one_sentence(
    text: str, capsys: pytest.CaptureFixture[str]
) -> None:
    with pytest.raises(SystemExit) as stopped:
        serve.main([f"--workers={text}"])

    assert stopped.value.code == 2
    assert capsys.readouterr().err == f"--workers takes a whole number from 1 to 64; not {text!r}.\n"


def test_an_address_that_is_taken_is_refused_before_anything_starts(capsys: pytest.CaptureFixture[str]) -> None:
    with socket.socket() as taken:
        taken.bind(("127.0.0.1", 0))
        taken.listen()
        port = taken.getsockname()[1]

        assert serve.main(["--bind", f"127.0.0.1:{port}"]) == 1

    assert capsys.readouterr().err == (
        f"Nothing can be served at 127.0.0.1:{port}: Address already in use. Choose another address with --bind.\n"
    )


def test_by_default_each_core_has_a_worker() -> None:
    assert serve.usual_workers() == min(len(os.sched_getaffinity(0)), serve.MOST_WORKERS_UNASKED)


def test_the_greeting_says_how_to_let_the_tablets_in() -> None:
    assert serve.greeting(("127.0.0.1", 8080), 2) == (
        f"Dividing {__version__} answers at http://127.0.0.1:8080 with 2 workers. Ctrl-C stops it.\n"
        "Only this machine reaches it. To let the shop's tablets in, start it with --bind 0.0.0.0:8080"
        f" and open {serve.shop_address(8080)} on the tablet.\n" + serve.PRICE_OF_PLAIN_HTTP
    )


def test_the_greeting_names_the_address_for_the_tablets() -> None:
    assert serve.greeting(("0.0.0.0", 8080), 1) == (
        f"Dividing {__version__} answers at http://127.0.0.1:8080 with 1 worker. Ctrl-C stops it.\n"
        f"On a tablet in the shop open {serve.shop_address(8080)}.\n" + serve.PRICE_OF_PLAIN_HTTP
    )


def test_the_shop_address_is_found_without_a_network(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(serve, "NOWHERE", ("255.255.255.255", 9))  # the system refuses the way to everybody
    monkeypatch.setattr(socket, "gethostname", lambda: "loom-office")

    assert serve.shop_address(8080) == "http://loom-office:8080"


@pytest.mark.parametrize("how", [signal.SIGTERM, signal.SIGINT])
def test_the_service_answers_and_stops_when_told(how: signal.Signals) -> None:
    with running("--workers", "1") as (base, service):
        answer = requests.get(f"{base}/health", timeout=5).json()
        assert answer == {"status": "ok", "version": __version__}

        assert service.stop(how) == 0
        printed = service.printed()

    assert printed.startswith(f"Dividing {__version__} answers at {base} with 1 worker.")
    assert "Traceback" not in printed
    with pytest.raises(requests.ConnectionError):
        requests.get(f"{base}/health", timeout=5)


def test_stalled_callers_do_not_keep_the_service_from_stopping() -> None:
    with running("--workers", "1") as (base, service):
        host, port = re.findall(r"//(.+):(\d+)", base)[0]
        stalled = [socket.create_connection((host, int(port))) for _ in range(20)]
        for caller in stalled:
            caller.sendall(b"POST /v1/solve HTTP/1.1\r\nContent-Le")

        assert service.stop() == 0
        for caller in stalled:
            caller.close()


def test_a_socket_that_is_handed_on_outlives_a_restart() -> None:
    with socket.create_server(("127.0.0.1", 0)) as listener:
        for _ in range(2):
            service = on_kept_socket(listener, "--workers", "1")
            try:
                # Whoever calls before it is up waits in the socket's queue.
                base = f"http://127.0.0.1:{listener.getsockname()[1]}"
                assert requests.get(f"{base}/health", timeout=20).status_code == 200
            finally:
                service.terminate()
            assert service.wait(20) == 0


def test_nothing_is_written_to_the_disk(tmp_path: Path) -> None:
    # gunicorn would put its control socket and its workers' signs of life under these.
    surroundings = {"HOME": str(tmp_path), "TMPDIR": str(tmp_path), "XDG_RUNTIME_DIR": str(tmp_path)}
    with running("--workers", "1", PYTHONDONTWRITEBYTECODE="1", **surroundings) as (base, _):
        requests.get(f"{base}/", timeout=5)

        assert list(tmp_path.iterdir()) == []


def test_a_variable_meant_for_another_service_changes_nothing() -> None:
    with running("--workers", "1", GUNICORN_CMD_ARGS="--workers 3 --bind 127.0.0.1:1", PORT="1") as (base, service):
        assert requests.get(f"{base}/health", timeout=5).status_code == 200
        assert "with 1 worker." in service.printed()


def test_a_wrong_word_on_the_command_line_ends_the_start() -> None:
    service = Service("--bind", f"127.0.0.1:{free_port()}", "--wokers", "2")

    assert service.process.wait(timeout=20) == 2
    assert service.printed() == "unrecognized arguments: --wokers 2\n"
    service.output.close()
