"""Sixteen callers who ask without pause: how long an answer takes, and whether the workers grow.

    PYTHONPATH=service python -m tests.load.steady [--seconds 60] [--callers 16] [--port 8460]

Needs wrk (Debian's). The callers share the machine with the service and leave it no rest, so the times are those of a
service at its limit. Memory is read after a warm-up of ten thousand questions, which fills what the service remembers,
and at the end.
"""

from __future__ import annotations

import argparse
import json
import subprocess
from pathlib import Path
from typing import Any

from tests.load.instance import memory, started, workers

WARM_UP_QUESTIONS = 10_000
QUESTIONS = Path(__file__).with_name("questions.lua")


def ask(port: int, callers: int, seconds: int) -> dict[str, Any]:
    """What wrk tells of so many callers over so many seconds."""
    command = ["wrk", "-t1", f"-c{callers}", f"-d{seconds}s", "--timeout", "10s", "-s", str(QUESTIONS)]
    told = subprocess.run([*command, f"http://127.0.0.1:{port}"], check=True, capture_output=True, text=True).stdout
    figures: dict[str, Any] = json.loads(told.splitlines()[-1])
    return figures


def warm_up(port: int, callers: int) -> None:
    asked = 0
    while asked < WARM_UP_QUESTIONS:
        asked += ask(port, callers, 5)["answered"]


def held(master: int) -> tuple[int, int]:
    """KiB that the workers hold: the sum of their RSS and of their PSS."""
    rss, pss = zip(*(memory(worker) for worker in workers(master)), strict=True)
    return sum(rss), sum(pss)


def main() -> int:
    """Measure and print one line; the exit status says whether there was an error."""
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--seconds", type=int, default=60)
    parser.add_argument("--callers", type=int, default=16)
    parser.add_argument("--port", type=int, default=8460)
    chosen = parser.parse_args()
    service = started(chosen.port, "--workers", "2")
    try:
        warm_up(chosen.port, chosen.callers)
        before = held(service.process.pid)
        told = ask(chosen.port, chosen.callers, chosen.seconds)
        after = held(service.process.pid)
    finally:
        service.stop()
    grown = [f"{kind} {first / 1024:.1f} to {last / 1024:.1f} MiB ({(last / first - 1) * 100:+.1f} %)"
             for kind, first, last in zip(("RSS", "PSS"), before, after, strict=True)]
    print(f"{told['answered']:,} answers in {chosen.seconds} s, half within {told['half_ms']} ms,"
          f" 99 in 100 within {told['p99_ms']} ms, longest {told['longest_ms']} ms,"
          f" {told['refused'] + told['broken']} errors; two workers together: {', '.join(grown)}")
    return 1 if told["refused"] + told["broken"] else 0


if __name__ == "__main__":
    raise SystemExit(main())
