"""The service is started with one command, says where to open it and stops when it is told to."""

import ctypes
import re
import signal
import socket
from pathlib import Path

import pytest
import requests

from dividing import __version__
from dividing.web import serve
from dividing.web.options import Options
from dividing.web.qr import drawn
from tests.certificate import self_signed
from tests.load.instance import on_kept_socket
from tests.running import Service, free_port, running


def test_an_address_that_is_taken_is_refused_before_anything_starts(capsys: pytest.CaptureFixture[str]) -> None:
    with socket.socket() as taken:
        taken.bind(("127.0.0.1", 0))
        taken.listen()
        port = taken.getsockname()[1]

        assert serve.main(["--bind", f"127.0.0.1:{port}"]) == 1

    assert capsys.readouterr().err == (
        f"Nothing can be served at 127.0.0.1:{port}: Address already in use. Choose another address with --bind.\n"
    )


def test_the_greeting_says_how_to_let_the_tablets_in() -> None:
    assert serve.greeting(Options(("127.0.0.1", 8080), 2)) == (
        f"Dividing {__version__} answers at http://127.0.0.1:8080 with 2 workers. Ctrl-C stops it.\n"
        "Only this machine reaches it. To let the shop's tablets in, start it with --bind 0.0.0.0:8080"
        f" and open {serve.shop_address(8080)} on the tablet.\n" + serve.PRICE_OF_PLAIN_HTTP
    )


def test_the_greeting_names_the_address_for_the_tablets() -> None:
    assert serve.greeting(Options(("0.0.0.0", 8080), 1)) == (
        f"Dividing {__version__} answers at http://127.0.0.1:8080 with 1 worker. Ctrl-C stops it.\n"
        f"On a tablet in the shop open {serve.shop_address(8080)}.\n" + serve.PRICE_OF_PLAIN_HTTP
    )


def test_the_greeting_of_a_service_with_a_certificate_has_no_price_to_tell() -> None:
    assert serve.greeting(Options(("0.0.0.0", 8443), 1, certfile="shop.pem")) == (
        f"Dividing {__version__} answers at https://127.0.0.1:8443 with 1 worker. Ctrl-C stops it.\n"
        f"On a tablet in the shop open {serve.shop_address(8443, 'https')}.\nDo not open it to the internet."
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


def test_with_a_certificate_the_service_speaks_tls(tmp_path: Path) -> None:
    certificate, key = self_signed(tmp_path)
    with socket.create_server(("127.0.0.1", 0)) as listener:
        service = on_kept_socket(listener, "--workers", "1", "--certfile", str(certificate), "--keyfile", str(key))
        try:
            base = f"https://127.0.0.1:{listener.getsockname()[1]}"
            picture = requests.get(f"{base}/qr.svg?divisions=28", timeout=20, verify=str(certificate))
            assert picture.content == drawn(f"{base}/#divisions=28")
        finally:
            service.terminate()
            assert service.wait(20) == 0


def test_figures_of_requests_go_to_statsd_and_tell_nothing_of_what_was_asked() -> None:
    with socket.socket(socket.AF_INET, socket.SOCK_DGRAM) as statsd:
        statsd.bind(("127.0.0.1", 0))
        statsd.settimeout(20)
        with running("--workers", "1", "--statsd-host", f"127.0.0.1:{statsd.getsockname()[1]}") as (base, _):
            requests.get(f"{base}/v1/solve?divisions=0", timeout=5)
            told: list[bytes] = []
            # The number of workers is the master's to tell, whenever it comes to it.
            while not {b"gunicorn.request.status.422:1|c|@1.0", b"gunicorn.workers:1|g"} <= set(told):
                told.append(statsd.recv(1500))

    assert told.count(b"gunicorn.requests:1|c|@1.0") > 1
    assert [one for one in told if one.startswith(b"gunicorn.request.duration:")]
    assert b"gunicorn.request.status.200:1|c|@1.0" in told
    assert [one for one in told if not re.fullmatch(rb"gunicorn\.[a-z.]+(\d{3})?:[\d.]+\|(g|ms|c\|@1\.0)", one)] == []


@pytest.mark.parametrize(("proxies", "scheme"), [("127.0.0.0/8", "https"), ("192.0.2.1", "http")])
def test_the_word_of_a_known_proxy_is_taken_for_how_it_was_called(proxies: str, scheme: str) -> None:
    with running("--workers", "1", "--forwarded-allow-ips", proxies) as (base, _):
        headers = {"Host": "dividing.example", "X-Forwarded-Proto": "https", "X-Forwarded-Host": "other.example"}
        picture = requests.get(f"{base}/qr.svg?divisions=28", headers=headers, timeout=5).content

    assert picture == drawn(f"{scheme}://dividing.example/#divisions=28")


def test_a_variable_does_not_make_a_proxy_known() -> None:
    with running("--workers", "1", "--forwarded-allow-ips", "192.0.2.1", FORWARDED_ALLOW_IPS="*") as (base, _):
        headers = {"X-Forwarded-Proto": "https"}
        picture = requests.get(f"{base}/qr.svg?divisions=28", headers=headers, timeout=5).content

    assert picture == drawn(f"{base}/#divisions=28")


def test_a_header_of_a_proxy_does_not_move_the_service() -> None:
    with running("--workers", "1") as (base, _):
        headers = {"SCRIPT_NAME": "/health", "PATH_INFO": "/nothing"}

        assert requests.get(f"{base}/health", headers=headers, timeout=5).status_code == 200


def test_threads_share_a_pool_of_memory_and_large_pieces_are_given_back(monkeypatch: pytest.MonkeyPatch) -> None:
    told: list[tuple[int, int]] = []

    class Library:
        def __init__(self, _: None) -> None:
            self.mallopt = lambda *words: told.append(words)

    monkeypatch.setattr(ctypes, "CDLL", Library)
    serve.keep_memory_small()
    monkeypatch.setattr(ctypes, "CDLL", lambda _: object())
    serve.keep_memory_small()

    # M_ARENA_MAX, M_MMAP_THRESHOLD and M_TRIM_THRESHOLD of glibc's malloc.h; 128 KiB is where the last two begin.
    assert told == [(-8, 1), (-3, 131_072), (-1, 131_072)]


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
