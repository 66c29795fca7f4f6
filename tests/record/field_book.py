"""A small invented record that the tests of this folder change, and how they look at faults."""

from datetime import date

import pytest

from eyebar.errors import BadRecord, Fault
from eyebar.record import Record, record_of

TODAY = date(2026, 11, 1)
"""The day on which the tests read: no test depends on the day it is run."""

SMALL = """\
eyebar: 1
# Sedgewater Bridge is invented.
name: Sedgewater Bridge (invented)
built: 1891
ends: {zero: north, other: south, skew: 0 deg}

trusses:
  names: [upstream, downstream]
  spacing: 16 ft
  form: Pratt
  panels: 6 at 14 ft 6 in
  depth: 18 ft
  counters: [U4-L3, U2-L3]
  bearings: {zero: fixed, other: free}

materials:
  iron: {metal: wrought iron}

members:
  upper:
    kind: top chord
    bars: [U1..U5]
    section:
      channels: {depth: 7 in, web: 1/4 in, flange: 2 in, flange thickness: 3/8 in,
        apart: 7 in, toes: out}
      cover plate: 12 in x 1/4 in
      lacing: {bar: 2 in x 1/4 in, pitch: 12 in, planes: 1}
    material: iron
  end posts:
    kind: end post
    bars: [U1-L0, U5-L6]
    section:
      channels: {depth: 7 in, web: 1/4 in, flange: 2 in, flange thickness: 3/8 in,
        apart: 7 in, toes: out}
      cover plate: 12 in x 1/4 in
      battens: {plate: 9 in x 1/4 in, length: 8 in, pitch: 3 ft, planes: 1}
    material: iron
  lower:
    kind: bottom chord
    bars: [L0..L6]
    section:
      eyebars: {number: 2, width: 3 in, thickness: 3/4 in, head: 7 in, hole: 2 1/2 in}
    material: iron
  hangers:
    kind: hip vertical
    bars: [U1-L1, U5-L5]
    section:
      loop rods: {number: 2, side: 1 in, shape: square}
    material: iron
  posts:
    kind: post
    bars: [U2-L2, U3-L3, U4-L4]
    section:
      rolled: {shape: I, depth: 6 in, web: 1/4 in, flange: 3 1/2 in, flange thickness: 3/8 in}
    material: iron
  diagonals:
    kind: diagonal
    bars: [U1-L2, U5-L4]
    section:
      plates: [3 in x 1/2 in, 3 in x 5/8 in]
    material: iron
  rods:
    kind: counter
    bars: [U2-L3, U4-L3]
    section:
      rods: {number: 1, diameter: 1 1/4 in, shape: round, threads: upset, root diameter: 1 3/8 in}
    material: iron

floor:
  clear width: 14 ft
  curb to upstream truss: 1 ft
  deck: {kind: plank, thickness: 3 in, weight: 50 lb/ft3}
  surfacing: {kind: gravel, thickness: 1 in, weight: 120 lb/ft3, measured: true}
  stringers: {number: 6, size: 4 in x 12 in, weight: 50 lb/ft3, material: timber}
  floorbeams: {weight: 900 lb}
  surface: smooth

inspections:
  - date: 2020-05-04
    by: field crew
    readings:
      - {part: upstream/L2-L3, place: mid, what: thickness, value: 11/16 in, plus minus: 1/32 in}
      - {part: upstream/U1-L2, place: end L2, what: thickness, value: 9/16 in, piece: 2}

decisions:
  - {date: 2021-08-09, what: loose, part: downstream/U2-L3, gap: 1/8 in}
"""
"""Every kind of section but `given`, so that most faults can be made by changing one line."""


def changed(*changes: tuple[str, str]) -> str:
    """The small record with texts replaced, each of which must be there exactly once."""
    text = SMALL
    for old, new in changes:
        assert text.count(old) == 1, f"{old!r} stands {text.count(old)} times"
        text = text.replace(old, new)
    return text


def read(text: str | bytes) -> Record:
    """The record of a text, read on `TODAY`."""
    return record_of(text, file="bridge.yaml", today=TODAY)


def faults_of(text: str | bytes) -> tuple[Fault, ...]:
    """All faults of a text that must have some."""
    with pytest.raises(BadRecord) as bad:
        read(text)
    return bad.value.faults


def line_with(text: str, words: str) -> int:
    """The number of the one line that holds the words, counted from 1."""
    lines = [i for i, line in enumerate(text.splitlines(), 1) if words in line]
    assert len(lines) == 1, f"{words!r} stands on lines {lines}"
    return lines[0]
