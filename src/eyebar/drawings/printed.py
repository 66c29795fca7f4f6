"""A drawing for a page that brings the letters itself, and whose paper is the ground."""

import re
from dataclasses import dataclass

from eyebar.drawings.ink import Ink
from eyebar.drawings.lettering import PAPER
from eyebar.drawings.svg_file import svg_alone, svg_text

TINT = f'fill="{PAPER}"'
WHITE = 'fill="#ffffff"'
_SPREAD = re.compile(r'(letter-spacing="[^"]*") textLength="[^"]*" lengthAdjust="[^"]*"')
"""Space opened between letters and their length in one: what sets a page opens it twice."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Printed:
    """A drawing: its ink, its size [units of 1/96 inch], and what it shows in words."""

    ink: tuple[Ink, ...]
    width: float
    height: float
    title: str
    said: str

    @property
    def svg(self) -> str:
        """Its SVG, without letters and on white."""
        words = self.title, self.said
        svg = svg_text(self.ink, (self.width, self.height), words=words, faces="")
        return _SPREAD.sub(r"\1", svg).replace(TINT, WHITE)

    @property
    def alone(self) -> str:
        """Its SVG as a file of its own, with the letters that are used."""
        return svg_alone(self.ink, (self.width, self.height), words=(self.title, self.said))
