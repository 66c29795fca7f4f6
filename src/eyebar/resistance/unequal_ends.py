"""A bar whose pins lie differently at its two ends, and one that bends over a joint."""

from eyebar.formula import Symbol, formula

GREATER = Symbol("pin beside the centre at the end where it is farther", "in", "greater", low=-3.0,
                 high=3.0)
LESSER = Symbol("pin beside the centre at the other end", "in", "lesser", low=-1.0, high=1.0)


@formula(
    "e = e_1 * max(0.6 + 0.4 * e_2 / e_1, 0.4)",
    result=Symbol("equal offset at both ends that bends the bar as much", "in"),
    e_1=GREATER,
    e_2=LESSER,
    source="C_m of Standard Specifications 10.36, 0.6 + 0.4 M_1/M_2 and not below 0.4, from memory",
)
def equal_offset(greater: float, lesser: float) -> float:
    """Equal offset at both ends that bends a bar as two unequal ones do [in].

    Lengths [in], the greater in size first and not zero. Scalars. Limits: no load across the bar.
    """
    return greater * max(0.6 + 0.4 * lesser / greater, 0.4)


@formula(
    "e = (e_1 + e_2) / 2",
    result=Symbol("offset of the thrust at mid-length", "in"),
    e_1=GREATER,
    e_2=LESSER,
    source="statics",
)
def middle_offset(greater: float, lesser: float) -> float:
    """Offset of the thrust at mid-length of a bar with unequal ends [in].

    Lengths [in]; scalars or arrays. Limits: none.
    """
    return (greater + lesser) / 2


@formula(
    "P = max(1 - k * M_s / M_r, 0) / (a / P_c + k * e / M_r)",
    result=Symbol("thrust at which the bar is used up over a joint", "kip"),
    k=Symbol("weight of the moments in this line", "1", "bending", low=0.8, high=1.0),
    M_s=Symbol("moment of its weight over the joint", "kip in", "support", low=0.0, high=80.0),
    M_r=Symbol("moment it may be, its lower fibre pushed", "kip in", "moment_strength", low=99.0,
               high=900.0),
    a=Symbol("weight of the thrust in this line of the rule", "1", "axial", low=0.5, high=1.0),
    P_c=Symbol("push of the column, or of one too short to buckle", "kip", "column", low=20.0,
               high=400.0),
    e=Symbol("thrust below the centre", "in", "offset", low=0.0, high=3.0),
    source="Standard Specifications 10.36 and 10.54.2, LRFD Bridge Design Specifications 6.9.2.2, "
    "from memory; nothing is amplified over the joints",
)
def thrust_over_joint(
    *, bending: float, support: float, moment_strength: float, axial: float, column: float,
    offset: float,
) -> float:
    """Thrust at which a bar that runs on is used up over its joint [kip].

    Weights [1], moments [kip in], loads [kip], lengths [in]. Scalars. Limits: none.
    """
    left = max(1 - bending * support / moment_strength, 0.0)
    return left / (axial / column + bending * offset / moment_strength)
