"""What may be said on the command line, and what is wrong with what was said."""

import argparse
import ipaddress
import os
import ssl
from collections.abc import Sequence
from dataclasses import dataclass
from typing import NoReturn

DEFAULT_BIND = "127.0.0.1:8080"
MOST_WORKERS = 64
# More workers than this by default would fill a small machine's memory without the shop noticing a gain.
MOST_WORKERS_UNASKED = 8
# Whose word is taken that a caller came to it over TLS: a proxy on this machine.
PROXIES = "127.0.0.1,::1"

Address = tuple[str, int]


@dataclass(frozen=True)
class Options:
    """How the service is to run."""

    bind: Address
    workers: int
    certfile: str | None = None
    keyfile: str | None = None
    statsd_host: Address | None = None
    forwarded_allow_ips: str = PROXIES


class _Parser(argparse.ArgumentParser):
    def error(self, message: str) -> NoReturn:
        # Our own sentences begin with the option that they are about.
        said, _, sentence = message.partition(": ")
        self.exit(2, (sentence if said.startswith("argument --") else message) + "\n")


def read_options(arguments: Sequence[str] | None = None) -> Options:
    """The command line as options; what cannot be read ends the program with a sentence."""
    parser = _Parser(prog="python -m dividing", description="Start the dividing service with its page.")
    parser.add_argument("--bind", type=parse_bind, default=DEFAULT_BIND, metavar="HOST:PORT",
                        help="where to listen (%(default)s)")
    parser.add_argument("--workers", type=parse_workers, default=usual_workers(), metavar="N",
                        help="how many processes answer (one for each core: %(default)s)")
    parser.add_argument("--certfile", metavar="FILE", help="serve https with this certificate (PEM)")
    parser.add_argument("--keyfile", metavar="FILE", help="the certificate's key, if it is in a file of its own")
    parser.add_argument("--forwarded-allow-ips", type=parse_proxies, default=PROXIES, metavar="ADDRESSES",
                        help="proxies whose X-Forwarded-Proto is believed, by commas; * for any (%(default)s)")
    parser.add_argument("--statsd-host", type=parse_statsd_host, metavar="HOST:PORT",
                        help="send counts and times of requests there, as statsd reads them (nowhere)")
    options = Options(**vars(parser.parse_args(arguments)))
    if fault := fault_of_certificate(options.certfile, options.keyfile):
        parser.error(fault)
    return options


def parse_bind(text: str) -> Address:
    """`127.0.0.1:8080` or `[::1]:8080` as host and port."""
    if (address := _address(text)) is None:
        raise argparse.ArgumentTypeError(
            f"--bind takes HOST:PORT with a port from 1 to 65535, for example {DEFAULT_BIND}; not {text!r}.")
    return address


def parse_statsd_host(text: str) -> Address:
    """`127.0.0.1:8125` as host and port."""
    if (address := _address(text)) is None:
        raise argparse.ArgumentTypeError(
            f"--statsd-host takes HOST:PORT with a port from 1 to 65535, for example 127.0.0.1:8125; not {text!r}.")
    return address


def parse_workers(text: str) -> int:
    """A whole number of workers."""
    if not (_is_number(text) and 1 <= int(text) <= MOST_WORKERS):
        raise argparse.ArgumentTypeError(
            f"--workers takes a whole number from 1 to {MOST_WORKERS}; not {text!r}.")
    return int(text)


def parse_proxies(text: str) -> str:
    """Addresses or networks, parted by commas, or `*`."""
    try:
        if text != "*":
            for part in text.split(","):
                ipaddress.ip_network(part)
    except ValueError:
        raise argparse.ArgumentTypeError(
            f"--forwarded-allow-ips takes addresses or networks parted by commas, for example {PROXIES},"
            f" or * for any; not {text!r}.") from None
    return text


def usual_workers() -> int:
    """One for each core that this process may use."""
    cores = len(os.sched_getaffinity(0)) if hasattr(os, "sched_getaffinity") else os.cpu_count() or 1
    return min(cores, MOST_WORKERS_UNASKED)


def fault_of_certificate(certfile: str | None, keyfile: str | None) -> str:
    """Why TLS cannot be spoken with these files; an empty text if it can or is not wanted."""
    if certfile is None:
        return "--keyfile needs --certfile beside it." if keyfile else ""
    try:
        # With no password said, it would ask for one at the terminal, where perhaps nobody sits.
        ssl.SSLContext(ssl.PROTOCOL_TLS_SERVER).load_cert_chain(certfile, keyfile, password="")
    except ssl.SSLError:
        reason = "they are no certificate and open key that belong together"
    except OSError as fault:
        reason = f"{fault.strerror}"
    else:
        return ""
    return f"--certfile {certfile} and its key cannot be used: {reason}."


def _address(text: str) -> Address | None:
    host, colon, port = text.rpartition(":")
    host = host.removeprefix("[").removesuffix("]")
    if not (colon and host and _is_number(port) and 1 <= int(port) <= 65535):
        return None
    return host, int(port)


def _is_number(text: str) -> bool:
    return text.isascii() and text.isdigit() and len(text) < 6
