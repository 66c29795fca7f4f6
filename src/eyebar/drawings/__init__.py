"""Drawings in ink: made from documents alone, the same bytes every time."""

from eyebar.drawings.stress_sheet import Sheet, stress_sheet

__all__ = ["Sheet", "stress_sheet"]
