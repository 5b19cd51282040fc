"""`python -m dividing` starts the service."""

import sys

from dividing.web.serve import main

if __name__ == "__main__":
    sys.exit(main())
