"""`python -m fitdoctor`."""

import sys

from fitdoctor.cli import main

sys.exit(main())
