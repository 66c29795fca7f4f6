"""Blocks and shoes that bars bear on at a joint, as they are written."""

from eyebar.record.fields import Entry, Text, TrussName, UnsureArea
from eyebar.record.members import BOTH_TRUSSES
from eyebar.record.trusses import JointList


class JointBlockEntry(Entry):
    """Like blocks or shoes, of cast iron as a rule, on which the ends of bars bear."""

    joints: JointList
    truss: TrussName = BOTH_TRUSSES
    """The one truss they stand in; empty: in both."""
    material: Text
    bearing: UnsureArea = None
    """Area on which the end of one bar bears, the least there is."""
    note: Text | None = None
