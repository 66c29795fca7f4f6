"""The frozen bridge as it is on a date: forms of truss, members, readings, decisions, weights."""
