"""Flask for a service that keeps nothing from one request to the next: it leaves out what nobody here has asked for."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from flask import Flask
from flask.sessions import SessionInterface
from werkzeug.routing import MapAdapter

if TYPE_CHECKING:
    from collections.abc import Callable

    from flask import Request, Response
    from flask.typing import ResponseReturnValue
    from werkzeug.routing import Map, Rule


class NoSession(SessionInterface):
    """No cookies, so nothing to read before a request or to write after it."""

    def open_session(self, app: Flask, request: Request) -> Any:  # noqa: ARG002
        """The same nothing for everybody."""
        return self


class Known(MapAdapter):
    """What serves a method at a path without variables: looked for once."""

    def __init__(self, routes: Map, method: str, path: str) -> None:
        super().__init__(routes, "", "/", "", "http", path, method)
        self.rule, _ = super().match(return_rule=True)

    def match(self, *_: Any, **__: Any) -> tuple[Rule, dict[str, Any]]:
        """The rule, and no variables."""
        return self.rule, {}


class StatelessFlask(Flask):
    """Flask without sessions, without functions before and after a request, and with routes that mind neither host nor
    scheme: half of the time that a request takes outside its view. What every answer carries comes from
    `headers.Edge`."""

    session_interface = NoSession()

    def __init__(self, *arguments: Any, **named: Any) -> None:
        super().__init__(*arguments, **named)
        self.known: dict[tuple[str, str], Known] = {}

    def know_routes(self) -> None:
        """Look up every path without variables, once all of them are there; OPTIONS asks for more than its rule."""
        for rule in self.url_map.iter_rules():
            for method in set() if rule.arguments else (rule.methods or set()) - {"OPTIONS"}:
                self.known[method, rule.rule] = Known(self.url_map, method, rule.rule)

    def create_url_adapter(self, request: Request | None) -> MapAdapter | None:
        """What finds the view. Nothing here is redirected or built from a name, so it need not know its host."""
        if request is None:
            return None
        method, path = request.environ["REQUEST_METHOD"], request.environ["PATH_INFO"]
        # PEP 3333: the bytes of the path, each as one character.
        return self.known.get((method, path)) or self.url_map.bind(
            "", default_method=method, path_info=path.encode("latin-1").decode(errors="replace")
        )

    def full_dispatch_request(self) -> Response:
        """The view's answer, or what is said of its fault."""
        try:
            told: ResponseReturnValue = self.dispatch_request()
        except Exception as fault:  # noqa: BLE001  # Flask parts them
            told = self.handle_user_exception(fault)
        return self.make_response(told)

    def ensure_sync(self, func: Callable[..., Any]) -> Callable[..., Any]:
        """No view here is a coroutine."""
        return func

    def process_response(self, response: Response) -> Response:
        """Nobody looks at an answer after its view."""
        return response

    def do_teardown_request(self, exc: BaseException | None = None) -> None:
        """Nothing is held while a request is answered."""

    def do_teardown_appcontext(self, exc: BaseException | None = None) -> None:
        """Nothing is held while a request is answered."""
