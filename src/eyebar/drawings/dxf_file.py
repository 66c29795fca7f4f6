"""DXF in inches, on layers: what every such file has in common.

Every entity that belongs to a part carries its address as extended data of the application EYEBAR,
so that a drawing office finds the part again. Lengths are those of the bridge: nothing is scaled.
"""

import io
import math
from collections.abc import Sequence
from dataclasses import dataclass, field
from typing import Any

from eyebar.errors import MissingLibrary
from eyebar.views import sheet_words

Point = tuple[float, float]
APPLICATION = "EYEBAR"
STRING = 1000
"""Group code of a text in extended data."""
INCHES = 1
"""Value of $INSUNITS for inches."""
FINE, MIDDLE, HEAVY = 18, 35, 50
"""Line weights [1/100 mm]."""
LAYERS = {
    "MEMBERS": MIDDLE, "CENTRE LINES": FINE, "PINS": MIDDLE, "SUPPORTS": MIDDLE,
    "TRUSSES": HEAVY, "FLOORBEAMS": MIDDLE, "STRINGERS": MIDDLE, "DECK": FINE, "CURBS": FINE,
    "VEHICLE": MIDDLE, "DIMENSIONS": FINE, "NAMES": FINE, "NOTES": FINE,
}
"""Layer -> its line weight."""


@dataclass(slots=True)
class DxfFile:
    """A DXF file being drawn. `letters` is the height of its lettering [in]."""

    letters: float = 6.0
    document: Any = field(init=False)

    def __post_init__(self) -> None:
        ezdxf = _ezdxf()
        self.document = ezdxf.new("R2010", setup=True)
        self.document.ezdxf_metadata()["CREATED_BY_EZDXF"] = ezdxf.__version__
        self.document.header["$INSUNITS"] = INCHES
        self.document.header["$MEASUREMENT"] = 0
        self.document.appids.new(APPLICATION)
        for name, weight in LAYERS.items():
            line = "CENTER" if name == "CENTRE LINES" else "Continuous"
            self.document.layers.add(name, lineweight=weight, linetype=line)

    def line(self, start: Point, end: Point, layer: str, part: str = "") -> None:
        """A line."""
        self._marked(self._space.add_line(start, end, dxfattribs={"layer": layer}), part)

    def outline(self, points: Sequence[Point], layer: str, part: str = "") -> None:
        """A closed figure."""
        made = self._space.add_lwpolyline(list(points), close=True, dxfattribs={"layer": layer})
        self._marked(made, part)

    def strip(self, ends: tuple[Point, Point], breadth: float, layer: str, part: str) -> None:
        """The outline of something straight of a breadth."""
        (x1, y1), (x2, y2) = ends
        length = math.dist(*ends)
        across = -(y2 - y1) / length * breadth / 2, (x2 - x1) / length * breadth / 2
        self.outline([
            (x1 + across[0], y1 + across[1]), (x2 + across[0], y2 + across[1]),
            (x2 - across[0], y2 - across[1]), (x1 - across[0], y1 - across[1]),
        ], layer, part)

    def circle(self, centre: Point, radius: float, layer: str, part: str = "") -> None:
        """A circle."""
        made = self._space.add_circle(centre, radius, dxfattribs={"layer": layer})
        self._marked(made, part)

    def name(self, text: str, at: Point, *, height: float = 0.0, degrees: float = 0.0) -> None:
        """Lettering about a point, turned."""
        made = self._space.add_text(
            text, height=height or self.letters, rotation=degrees, dxfattribs={"layer": "NAMES"}
        )
        made.set_placement(at, align=_ezdxf().enums.TextEntityAlignment.MIDDLE_CENTER)

    def dimension(self, first: Point, second: Point, base: Point, *, upright: bool = False) -> None:
        """A dimension between two points, its line through `base`, in feet and inches."""
        length = abs(second[1] - first[1]) if upright else abs(second[0] - first[0])
        size = self.letters
        made = self._space.add_linear_dim(
            base=base, p1=first, p2=second, angle=90 if upright else 0,
            text=sheet_words.length(length), dimstyle="EZDXF", dxfattribs={"layer": "DIMENSIONS"},
            override={"dimtxt": size, "dimasz": 0.6 * size, "dimexe": 0.4 * size,
                      "dimexo": 0.6 * size, "dimgap": 0.3 * size},
        )
        made.render()

    def notes(self, lines: Sequence[str], at: Point) -> None:
        """Lines of words under each other."""
        for i, text in enumerate(lines):
            made = self._space.add_text(text, height=self.letters, dxfattribs={"layer": "NOTES"})
            made.set_placement((at[0], at[1] - 1.8 * self.letters * i))

    def written(self) -> bytes:
        """The bytes of the file, the same for the same drawing."""
        options = _ezdxf().options
        before = options.write_fixed_meta_data_for_testing
        options.write_fixed_meta_data_for_testing = True
        try:
            stream = io.StringIO()
            self.document.write(stream)
        finally:
            options.write_fixed_meta_data_for_testing = before
        text: str = stream.getvalue()
        return text.encode(self.document.output_encoding)

    @property
    def _space(self) -> Any:
        return self.document.modelspace()

    def _marked(self, entity: Any, part: str) -> None:
        if part:
            entity.set_xdata(APPLICATION, [(STRING, part)])


def _ezdxf() -> Any:
    try:
        import ezdxf
        import ezdxf.enums
    except ImportError:
        raise MissingLibrary("ezdxf", "a DXF file", "dxf") from None
    return ezdxf
