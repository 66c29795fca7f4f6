"""What public records say of bridges that stand or stood, drawn as far as they say it.

Heights are in the records almost never: the depth is ours, and so are panels where a record counts
none. Each row quotes its record; the names stand here alone, beside their sources.
"""

from collections.abc import Sequence
from dataclasses import dataclass

from eyebar.history import Lines
from eyebar.terms import Form
from tests.history.trusses import drawn, of_form


@dataclass(frozen=True, slots=True, kw_only=True)
class PublicRecord:
    """A bridge of a public record: where it stands, what is said of it, the form, and its panels.

    `counted` False where the number of panels is ours. `form` None: none of the known.
    """

    bridge: str
    says: str
    source: str
    form: Form | None
    panels: Sequence[float] | int
    counted: bool = True

    @property
    def lines(self) -> Lines:
        """Drawn from what is said."""
        return k_parker(8) if self.form is None else of_form(self.form, self.panels)


def k_parker(count: int) -> Lines:
    """A K web under a curved chord, drawn from the definition: each vertical is met in its middle
    by two half diagonals from the next panel point towards the middle."""
    middle = count // 2
    high = {i: 150.0 + 110.0 * (1.0 - ((i - middle) / middle) ** 2) for i in range(1, count)}
    joints = {f"L{i}": (180.0 * i, 0.0) for i in range(count + 1)}
    joints |= {f"U{i}": (180.0 * i, high[i]) for i in range(1, count)}
    split = [i for i in range(1, count) if i != middle]
    joints |= {f"M{i}": (180.0 * i, high[i] / 2.0) for i in split}
    bars = [f"L{i}-L{i + 1}" for i in range(count)]
    bars += [f"U{i}-U{i + 1}" for i in range(1, count - 1)]
    bars += ["L0-U1", f"L{count}-U{count - 1}", f"U{middle}-L{middle}"]
    for i in split:
        inward = i + 1 if i < middle else i - 1
        bars += [f"L{i}-M{i}", f"M{i}-U{i}", f"M{i}-U{inward}", f"M{i}-L{inward}"]
    return drawn(joints, " ".join(bars))


PENNSYLVANIA = "state inventory of historic bridges, Pennsylvania"
NEW_JERSEY = "state survey of historic bridges, New Jersey"
OKLAHOMA = "Spans of Time, state department of transportation, Oklahoma"
IOWA = "state list of historic bridges, Iowa"

PUBLIC_RECORDS = (
    PublicRecord(bridge="Dump Hill, PA, 1905", says="7 panels, 134 ft, five slopes, pins",
                 source=PENNSYLVANIA, form=Form.CAMELBACK, panels=7),
    PublicRecord(bridge="Shanley Road, Elk Co. PA, 1891", says="7-panel pin Pratt, 118 ft",
                 source=PENNSYLVANIA, form=Form.PRATT, panels=7),
    PublicRecord(bridge="the same, approaches", source=PENNSYLVANIA,
                 says="4-panel double-intersection Warren pony",
                 form=Form.DOUBLE_INTERSECTION_WARREN, panels=4),
    PublicRecord(bridge="Moreland, PA", says="6 panels, pins, skewed", source=PENNSYLVANIA,
                 form=Form.PRATT, panels=(150.0, 180.0, 180.0, 180.0, 180.0, 210.0)),
    PublicRecord(bridge="Bardwell's Ferry, MA", says="13 panels, 193 ft, lenticular",
                 source="Historic American Engineering Record", form=Form.LENTICULAR, panels=13),
    PublicRecord(bridge="Hamp, Hunterdon Co. NJ", says="4 panels, pins, half-hip Pratt pony",
                 source=NEW_JERSEY, form=Form.HALF_HIP_PRATT, panels=4),
    PublicRecord(bridge="White Bridge Road, NJ, 1886", says="half-hip Pratt pony, 70.9 ft",
                 source=NEW_JERSEY, form=Form.HALF_HIP_PRATT, panels=5, counted=False),
    PublicRecord(bridge="Mill Road, NJ", says="3-panel riveted half-hip, 35 ft",
                 source=NEW_JERSEY, form=Form.HALF_HIP_PRATT, panels=3),
    PublicRecord(bridge="Lower Kingstown, NJ", says="4-panel riveted Warren with verticals, pony",
                 source=NEW_JERSEY, form=Form.WARREN_WITH_VERTICALS, panels=4),
    PublicRecord(bridge="near Hillsdale, OK, 1912",
                 says="49 ft, pins, looks like a queen post, has diagonals", source=OKLAHOMA,
                 form=Form.SMALL_PRATT, panels=3),
    PublicRecord(bridge="Noble Co. OK, 1918", says="half-hip, 63 ft, pins", source=OKLAHOMA,
                 form=Form.HALF_HIP_PRATT, panels=4, counted=False),
    PublicRecord(bridge="OK, 1906, three spans", says="five angles, pins, 785 ft",
                 source=OKLAHOMA, form=Form.CAMELBACK, panels=9, counted=False),
    PublicRecord(bridge="Sand Creek, OK, 1936", says="six-panel camelback pony",
                 source=OKLAHOMA, form=Form.CAMELBACK, panels=6),
    PublicRecord(bridge="Rainy Mountain Creek, OK, 1931", says="K web, polygonal chord, 8 panels",
                 source=OKLAHOMA, form=None, panels=8),
    PublicRecord(bridge="Coweta Creek, OK, 1922", says="riveted Pratt pony, 60 ft",
                 source=OKLAHOMA, form=Form.PRATT, panels=5, counted=False),
    PublicRecord(bridge="Capon Lake, WV, 1874", says="176 ft, diagonals over two panels, pins",
                 source="National Register nomination", form=Form.DOUBLE_INTERSECTION_PRATT,
                 panels=12, counted=False),
    PublicRecord(bridge="Hardin City, IA, 1879", says="pin Whipple, cast-iron hip blocks",
                 source="Historic American Engineering Record",
                 form=Form.DOUBLE_INTERSECTION_PRATT, panels=10, counted=False),
    PublicRecord(bridge="Wagon Bridge, Boone Co. IA, 1910", says="one Pennsylvania through span",
                 source="Historic American Engineering Record", form=Form.PENNSYLVANIA, panels=12,
                 counted=False),
    PublicRecord(bridge="Otter Creek, IA, 1870", says="79 ft, rigid Pratt pony, wrought iron",
                 source=IOWA, form=Form.PRATT, panels=6, counted=False),
    PublicRecord(bridge="Adair Co. IA, 1949", says="rigid camelback through", source=IOWA,
                 form=Form.CAMELBACK, panels=7, counted=False),
    PublicRecord(bridge="McDowell, IA, 1883", says="bowstring", source=IOWA,
                 form=Form.BOWSTRING, panels=9, counted=False),
    PublicRecord(bridge="Wilson, KS, 1904", says="Pratt, 90 ft main span",
                 source="state historical society, Kansas", form=Form.PRATT, panels=6,
                 counted=False),
    PublicRecord(bridge="Cedar Point, KS, 1916", says="Pratt, 142 ft",
                 source="state historical society, Kansas", form=Form.PRATT, panels=8,
                 counted=False),
    PublicRecord(bridge="Klondike, IA, 1914, flanking spans", says="two Warren ponies",
                 source=IOWA, form=Form.WARREN, panels=6, counted=False),
    PublicRecord(bridge="Waco, TX, 1901", says="Pennsylvania main span, 450 ft",
                 source="a painter's public page", form=Form.PENNSYLVANIA, panels=20,
                 counted=False),
)
