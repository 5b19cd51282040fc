"""The application, put together from its parts."""

from __future__ import annotations

import os
from collections.abc import Mapping

from flask import Flask

from . import docs, pages, problems
from .headers import Edge
from .log import Sink, to_standard_output
from .stateless import StatelessFlask
from .themes import THEMES

ORIGINS = "DIVIDING_ORIGINS"
"""The one setting from outside: origins, parted by spaces, whose pages may ask too ("*": any). Unset, none."""


def create_app(environment: Mapping[str, str] | None = None, *, sink: Sink = to_standard_output) -> Flask:
    """The service, ready to serve; `sink` takes the lines of its log."""
    app = StatelessFlask(__name__, static_folder=None)
    # With merging on, // would be answered by a redirect instead of a problem.
    app.url_map.merge_slashes = False
    problems.install(app)
    for blueprint in (*(theme.blueprint for theme in THEMES), docs.blueprint, pages.make_blueprint()):
        app.register_blueprint(blueprint)
    app.know_routes()
    origins = (os.environ if environment is None else environment).get(ORIGINS, "")
    app.wsgi_app = Edge(app.wsgi_app, origins=frozenset(origins.split()), sink=sink)  # type: ignore[method-assign]
    return app
