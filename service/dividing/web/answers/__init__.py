"""Answers as plain dictionaries, their keys in the order of the contract.

Exact values come in and are rounded here, once, on their way out; `orjson` writes what comes out.
"""

from typing import Any

Answer = dict[str, Any]
