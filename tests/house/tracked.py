"""The files of the repository, and what may not stand in them."""

import re
import subprocess
from pathlib import Path

ROOT = Path(__file__).parents[2]
"""The checkout."""

FORBIDDEN = tuple(
    re.compile(pattern, re.IGNORECASE)
    for pattern in (
        # A package registry's host: which one serves an install is the machine's affair. The
        # letters stand in brackets so that these lines do not find themselves.
        r"[p]ypi\.org|pythonhoste[d]\.org|registry\.npmj[s]|deb\.debia[n]\.org",
        # Paths of one machine.
        r"(?<![\w.>])/(wor[k]|tm[p]|hom[e]|roo[t]|op[t])/",
    )
)
"""What no tracked file may hold."""

PICTURES = {".png", ".jpg", ".pdf", ".woff2"}


def tracked_files() -> list[Path]:
    """Every file that git knows of and that is there, pictures apart."""
    listed = subprocess.run(
        ["git", "ls-files", "-z"], cwd=ROOT, check=True, capture_output=True, text=True
    ).stdout
    paths = (ROOT / name for name in listed.split("\0") if name)
    return [path for path in paths if path.is_file() and path.suffix not in PICTURES]


def forbidden_lines(text: str) -> list[str]:
    """The lines of a text that hold something forbidden, numbered."""
    return [
        f"{number}: {line.strip()}"
        for number, line in enumerate(text.splitlines(), start=1)
        if any(pattern.search(line) for pattern in FORBIDDEN)
    ]
