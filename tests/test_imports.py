"""Imports point one way: web -> parts -> indexing -> the standard library; and nowhere in a circle."""

import ast
import sys
from collections.abc import Iterator
from pathlib import Path

import pytest

SERVICE = Path(__file__).resolve().parent.parent / "service"
FILES = sorted((SERVICE / "dividing").rglob("*.py"))
# What each folder may import of the package, itself included.
MAY_IMPORT = {"indexing": {"indexing"}, "parts": {"parts", "indexing"}, "web": {"web", "parts", "indexing"}}


def name_of(file: Path) -> str:
    parts = file.relative_to(SERVICE).with_suffix("").parts
    return ".".join(parts[:-1] if parts[-1] == "__init__" else parts)


MODULES = {name_of(file): file for file in FILES}


def folder_of(module: str) -> str:
    return module.split(".")[1] if module.count(".") else ""


def imported_by(module: str, *, when_loaded: bool = False) -> Iterator[str]:
    """Full names of what a module imports; `when_loaded` leaves out imports inside functions."""
    file = MODULES[module]
    package = module if file.name == "__init__.py" else module.rpartition(".")[0]
    tree = ast.parse(file.read_text(encoding="utf-8"))
    inside = {inner for node in ast.walk(tree) if isinstance(node, ast.FunctionDef) for inner in ast.walk(node)}
    for node in ast.walk(tree):
        if when_loaded and node in inside:
            continue
        if isinstance(node, ast.Import):
            yield from (alias.name for alias in node.names)
        elif isinstance(node, ast.ImportFrom):
            up = package.split(".")[: len(package.split(".")) - node.level + 1] if node.level else []
            source = ".".join([*up, *([node.module] if node.module else [])])
            # `from x import y` loads the module x.y if there is one, else x.
            for alias in node.names:
                whole = f"{source}.{alias.name}"
                yield whole if whole in MODULES else source


def test_there_are_modules_to_look_at() -> None:
    assert {folder_of(module) for module in MODULES} >= set(MAY_IMPORT)


@pytest.mark.parametrize("module", MODULES)
def test_a_module_imports_only_what_lies_below_it(module: str) -> None:
    allowed = MAY_IMPORT.get(folder_of(module))
    if allowed is None:  # dividing itself and its __main__
        return
    of_ours = {name for name in imported_by(module) if name.split(".")[0] == "dividing"}

    assert {name for name in of_ours if folder_of(name) not in {*allowed, ""}} == set()


@pytest.mark.parametrize("module", [name for name in MODULES if folder_of(name) in ("indexing", "parts")])
def test_the_trade_needs_nothing_but_the_standard_library(module: str) -> None:
    foreign = {name.split(".")[0] for name in imported_by(module)} - {"dividing"} - sys.stdlib_module_names

    assert foreign == set()


def test_no_module_imports_itself_by_a_detour() -> None:
    needs = {
        module: {name for name in imported_by(module, when_loaded=True) if name in MODULES and name != module}
        for module in MODULES
    }
    # Take away, again and again, what needs nothing that is left: in a circle something always is left.
    while free := [module for module, needed in needs.items() if not needed & needs.keys()]:
        for module in free:
            del needs[module]

    assert sorted(needs) == []
