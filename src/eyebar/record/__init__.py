"""Text <-> validated record, with the line of every key; the only room with pydantic and ruamel."""

from eyebar.record.blocks import JointBlockEntry
from eyebar.record.checking import Checked, Unmeasured, checked, not_measured
from eyebar.record.editing import override_in_file, with_override, write_whole
from eyebar.record.fields import NOT_MEASURED, Sides
from eyebar.record.findings import ConditionEntry, DecisionEntry, InspectionEntry, ReadingEntry
from eyebar.record.floor import FloorEntry
from eyebar.record.members import BOTH_TRUSSES, MaterialEntry, MemberGroup, OverrideEntry
from eyebar.record.models import Record
from eyebar.record.pins import PackedEntry, PinEntry
from eyebar.record.reading import FORMAT, LARGEST, read_record, record_of
from eyebar.record.sections import SectionEntry
from eyebar.record.trusses import EndsEntry, TrussesEntry
from eyebar.record.words import Bearing, Decided, EndFixing, RoadSurface, What

__all__ = [
    "BOTH_TRUSSES",
    "FORMAT",
    "LARGEST",
    "NOT_MEASURED",
    "Bearing",
    "Checked",
    "ConditionEntry",
    "Decided",
    "DecisionEntry",
    "EndFixing",
    "EndsEntry",
    "FloorEntry",
    "InspectionEntry",
    "JointBlockEntry",
    "MaterialEntry",
    "MemberGroup",
    "OverrideEntry",
    "PackedEntry",
    "PinEntry",
    "ReadingEntry",
    "Record",
    "RoadSurface",
    "SectionEntry",
    "Sides",
    "TrussesEntry",
    "Unmeasured",
    "What",
    "checked",
    "not_measured",
    "override_in_file",
    "read_record",
    "record_of",
    "with_override",
    "write_whole",
]
