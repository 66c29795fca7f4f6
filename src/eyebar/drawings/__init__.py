"""Drawings in ink: made from documents alone, the same bytes every time."""

from eyebar.drawings.form_picture import Picture, form_picture
from eyebar.drawings.how_sheet import HowSheet, how_figures, how_sheet
from eyebar.drawings.pin_figure import PinFigure, pin_figure, pin_figures
from eyebar.drawings.pin_sheet import PinDrawing, pin_drawing
from eyebar.drawings.printed import Printed
from eyebar.drawings.small import sign_alone, small_elevation
from eyebar.drawings.stress_sheet import Sheet, stress_sheet

__all__ = [
    "HowSheet", "Picture", "PinDrawing", "PinFigure", "Printed", "Sheet", "form_picture",
    "how_figures", "how_sheet", "pin_drawing", "pin_figure", "pin_figures", "sign_alone",
    "small_elevation", "stress_sheet",
]
