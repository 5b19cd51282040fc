"""Every theme of the service is named in one place, and from there it is served and described."""

from __future__ import annotations

import importlib
import pkgutil
from types import ModuleType

import pytest
from flask import Flask

from dividing import web
from dividing.web.openapi import description
from dividing.web.themes import THEMES

NAMES = [theme.__name__.rpartition(".")[2] for theme in THEMES]
# What is served to browsers beside the themes.
NO_THEMES = {"docs", "pages"}


def routes_of(app: Flask, name: str) -> set[tuple[str, str]]:
    """What a blueprint serves: address and method."""
    return {
        (rule.rule, method.lower())
        for rule in app.url_map.iter_rules()
        if rule.endpoint.partition(".")[0] == name
        for method in (rule.methods or set()) - {"HEAD", "OPTIONS"}
    }


def test_a_module_with_operations_is_a_theme() -> None:
    modules = [importlib.import_module(f"dividing.web.{found.name}") for found in pkgutil.iter_modules(web.__path__)]
    assert {module.__name__ for module in modules if hasattr(module, "OPERATIONS")} == {
        theme.__name__ for theme in THEMES
    }


def test_nothing_is_served_but_themes_and_what_browsers_load(app: Flask) -> None:
    assert set(app.blueprints) == {*NAMES, *NO_THEMES}
    assert {rule.endpoint.partition(".")[0] for rule in app.url_map.iter_rules()} == set(app.blueprints)


@pytest.mark.parametrize("theme", THEMES, ids=NAMES)
def test_a_theme_serves_what_it_tells_and_tells_what_it_serves(app: Flask, theme: ModuleType) -> None:
    told = [(operation.path, operation.method) for operation in theme.OPERATIONS]
    assert sorted(routes_of(app, theme.blueprint.name)) == sorted(told)


def test_every_operation_is_described_in_the_order_of_the_themes() -> None:
    told = [(operation.path, operation.method, operation.name) for theme in THEMES for operation in theme.OPERATIONS]
    described = [
        (path, method, operation["operationId"])
        for path, methods in description()["paths"].items()
        for method, operation in methods.items()
    ]
    # One address may be asked in two ways: the second stands beside the first.
    first = {path: place for place, (path, _, _) in reversed([*enumerate(told)])}
    assert described == sorted(told, key=lambda operation: first[operation[0]])


def test_no_two_operations_share_a_name() -> None:
    names = [operation.name for theme in THEMES for operation in theme.OPERATIONS]
    assert len(set(names)) == len(names)
