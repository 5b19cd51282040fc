"""What the costliest questions that are still answered cost, cold: a search over heads and works at their limits.

    python -m tests.bench.worst_requests [--shown 25] [--only solve]

Every question of `tests/web/worst.py` is asked in this process with nothing remembered, and where it is among the worst
twice more; the least of the three is its processor time, since what disturbs only adds. Printed are the worst, and the
worst of each operation.
"""

from __future__ import annotations

import argparse
import gc
import json
import time
from typing import Any

from dividing.web.app import create_app
from dividing.web.serve import PIECES_BEFORE_COLLECTING
from tests.web import worst


def cost(client: Any, address: str, body: bytes) -> tuple[float, int]:
    """Milliseconds of processor time, and the status."""
    worst.forget()
    gc.collect()
    began = time.process_time()
    answer = client.post(address, data=body, content_type="application/json")
    return (time.process_time() - began) * 1000, answer.status_code


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--shown", type=int, default=25)
    parser.add_argument("--only", default="")
    given = parser.parse_args()
    client = create_app(sink=len).test_client()
    client.get("/ready")
    # As the service has it.
    gc.freeze()
    gc.set_threshold(PIECES_BEFORE_COLLECTING, 20, 20)
    found = []
    refused = 0
    for name, address, question in worst.questions():
        if not name.startswith(given.only):
            continue
        body = json.dumps(question).encode()
        spent, status = cost(client, address, body)
        refused += status != 200
        if status == 200:
            found.append((spent, name, address, body))
    found.sort(reverse=True)
    tried = [(min(spent, *(cost(client, address, body)[0] for _ in range(2))), name, address)
             for spent, name, address, body in found[: 2 * given.shown]]  # fmt: skip
    tried.sort(reverse=True)
    print(f"{len(found)} answered, {refused} refused")
    for spent, name, _ in tried[: given.shown]:
        print(f"{spent:7.1f} ms  {name}")
    print("the worst of each operation:")
    seen: set[str] = set()
    for spent, name, address in [*tried, *((spent, name, address) for spent, name, address, _ in found)]:
        if address not in seen:
            seen.add(address)
            print(f"{spent:7.1f} ms  {address}: {name}")


if __name__ == "__main__":
    main()
