"""Where the page and the API's description lie, in a checkout and in an installed package."""

from pathlib import Path

_HERE = Path(__file__).resolve().parent
# service/dividing/web/files.py: three folders up is the checkout, when there is one.
_CHECKOUT = _HERE.parents[2]


def page_folder() -> Path:
    """The folder of `index.html` and of all that the page loads."""
    return _first(_CHECKOUT / "frontend", _HERE / "page", holding="index.html")


def description_file() -> Path:
    """The OpenAPI description as the repository keeps it."""
    return _first(_CHECKOUT / "openapi" / "openapi.json", _HERE / "openapi.json")


def _first(*places: Path, holding: str = "") -> Path:
    for place in places:
        if (place / holding).is_file():
            return place
    looked_in = " or ".join(str(place) for place in places)
    raise FileNotFoundError(f"This installation is not complete: nothing at {looked_in}. Install it again.")
