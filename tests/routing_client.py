"""Adds the dividing instruction to each operation of a routing file: python routing_client.py in.csv out.csv"""

import csv
import sys
from pathlib import Path

import requests

SERVICE = "http://127.0.0.1:8080"


def question(operation: dict[str, str]) -> dict[str, object]:
    """One operation of the routing as the service is asked about it."""
    return {"ref": operation["op"], "work": {"divisions": int(operation["teeth"])}, "limit": 1}


def add_instructions(source: Path, target: Path, service: str = SERVICE) -> None:
    """Write the routing anew with a column that says how to set the head."""
    with source.open(encoding="utf-8-sig", newline="") as file:
        operations = list(csv.DictReader(file))
    batch = {"items": [question(operation) for operation in operations]}
    response = requests.post(service + "/v1/solve/batch", json=batch, timeout=30)
    response.raise_for_status()
    for operation, told in zip(operations, response.json()["answers"], strict=True):
        good = told["status"] == 200
        operation["dividing"] = told["answer"]["setups"][0]["summary"] if good else told["problem"]["detail"]
    with target.open("w", encoding="utf-8", newline="") as file:
        writer = csv.DictWriter(file, list(operations[0]))
        writer.writeheader()
        writer.writerows(operations)


if __name__ == "__main__":
    add_instructions(Path(sys.argv[1]), Path(sys.argv[2]), *sys.argv[3:])
