"""The command line: each command parses, calls one function of the library, and prints.

Exit 0: fine. 1: refused, with the reason. 2: not understood as typed.
"""

import sys


def main() -> None:
    """Run the command line."""
    from eyebar.cli.commands import app

    for stream in (sys.stdout, sys.stderr):
        if hasattr(stream, "reconfigure"):
            # A terminal without the sign for "times" gets a question mark, not a traceback.
            stream.reconfigure(errors="replace")
    app(prog_name="eyebar")
