"""Loads on the trusses: dead load, lanes and shares, shock, live load factors, simple beams."""

from eyebar.loads.across import (
    LaneCase,
    Lanes,
    Shares,
    lane_cases,
    lane_load_shares,
    lanes,
    multiple_presence,
    shares,
    worst_case,
)
from eyebar.loads.dead import DeadSet, JointLoads, dead_sets, factored, joint_loads
from eyebar.loads.live import levels, live_factor
from eyebar.loads.shock import impact, loaded_length_ft
from eyebar.loads.simple_beam import Extreme, greatest_end_shear, greatest_moment

__all__ = [
    "DeadSet", "Extreme", "JointLoads", "LaneCase", "Lanes", "Shares", "dead_sets", "factored",
    "greatest_end_shear", "greatest_moment", "impact", "joint_loads", "lane_cases",
    "lane_load_shares", "lanes", "levels", "live_factor", "loaded_length_ft", "multiple_presence",
    "shares", "worst_case",
]
