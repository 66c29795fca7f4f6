"""The command line: each command parses, calls one function of the library, and prints.

Exit 0: fine. 1: refused, with the reason. 2: not understood as typed.
"""

import gc
import os
import sys

ONE_THREAD = "OPENBLAS_NUM_THREADS"
"""Read by numpy's linear algebra as it is loaded. Matrices of a truss are small:
dealing them out to threads and waiting took a third of a rating's time."""

NEW_VALUES = 200_000
"""So many new values before rubbish is looked for, not Python's 700: a command's values live as
long as it runs, and walking over them again and again took a sixth of a report's time."""


def main() -> None:
    """Run the command line."""
    os.environ.setdefault(ONE_THREAD, "1")
    gc.set_threshold(NEW_VALUES)
    from eyebar.cli.commands import app

    for stream in (sys.stdout, sys.stderr):
        if hasattr(stream, "reconfigure"):
            # A terminal without the sign for "times" gets a question mark, not a traceback.
            stream.reconfigure(errors="replace")
    app(prog_name="eyebar")
