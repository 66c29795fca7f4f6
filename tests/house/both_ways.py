"""Writes docs/both-ways.md by the example that makes it: python -m tests.house.both_ways."""

import runpy
from pathlib import Path

ROOT = Path(__file__).parents[2]
PAGE = ROOT / "docs" / "both-ways.md"


def page() -> str:
    """The page as the example in docs/examples makes it today."""
    example = runpy.run_path(str(ROOT / "docs" / "examples" / "every_bar_both_ways.py"))
    made: str = example["page"]()
    return made


if __name__ == "__main__":
    PAGE.write_text(page(), encoding="utf-8")
