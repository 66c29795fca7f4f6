"""The metals: which row of an office's table a metal falls under, and what coupons prove."""

from eyebar.materials.coupons import (
    Characteristic,
    characteristic_value,
    tolerance_factor,
)
from eyebar.materials.eras import era, row_names

__all__ = ["Characteristic", "characteristic_value", "era", "row_names", "tolerance_factor"]
