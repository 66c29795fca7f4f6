"""Closed forms of the factors of timber: stability, size, notches, what each method makes of them.

Stresses in ksi, lengths in inches.
"""

from math import sqrt

from eyebar.formula import Symbol, formula

NDS = "National Design Specification for Wood Construction"
MODULUS = Symbol("modulus of elasticity of the timber", "ksi", "modulus", low=700.0, high=2000.0)
F_B = Symbol("reference bending stress", "ksi", "reference", low=0.5, high=2.0)
C_M = Symbol("wet service factor", "1", "wet", low=0.5, high=1.0)
C_I = Symbol("incising factor", "1", "incised", low=0.8, high=1.0)
C_D = Symbol("load duration factor", "1", "duration", low=0.9, high=1.6)
LEAST_MODULUS = Symbol("modulus for stability", "ksi", "least_modulus", low=300.0, high=800.0)
TURNING = Symbol("bending stress at which the beam turns over", "ksi", "turning", low=0.3,
                 high=20.0)


@formula(
    "E_min = E * (1 - 1.645 * v) * 1.03 / 1.66",
    result=Symbol("modulus for stability", "ksi"),
    E=MODULUS,
    v=Symbol("coefficient of variation of the modulus", "1", "scatter", low=0.1, high=0.3),
    source=NDS + " appendix D.4, from memory",
)
def modulus_for_stability(modulus: float, scatter: float) -> float:
    """Modulus that stability is reckoned with, safety within it [ksi].

    Modulus [ksi], variation [1]; scalars or arrays. Limits: none.
    """
    return modulus * (1 - 1.645 * scatter) * 1.03 / 1.66


@formula(
    "l_e = 2.06 * l_u if l_u / d < 7 else (1.63 * l_u + 3 * d if l_u / d <= 14.3 else 1.84 * l_u)",
    result=Symbol("effective length of a beam that may turn over", "in"),
    l_u=Symbol("length over which nothing holds the compressed edge", "in", "unheld", low=20.0,
               high=300.0),
    d=Symbol("depth", "in", "depth", low=6.0, high=18.0),
    source=NDS + " Table 3.3.3, any loading, from memory",
)
def effective_beam_length(unheld: float, depth: float) -> float:
    """Effective length of a timber beam against turning over, any loading [in].

    Lengths [in]. Scalars. Limits: ends held against turning.
    """
    if unheld / depth < 7:
        return 2.06 * unheld
    if unheld / depth <= 14.3:
        return 1.63 * unheld + 3 * depth
    return 1.84 * unheld


@formula(
    "R_B = sqrt(l_e * d / b**2)",
    result=Symbol("slenderness ratio of the beam", "1"),
    l_e=Symbol("effective length", "in", "effective_length", low=60.0, high=600.0),
    d=Symbol("depth", "in", "depth", low=6.0, high=18.0),
    b=Symbol("width of the stick", "in", "breadth", low=2.0, high=8.0),
    source=NDS + " 3.3.3.6, from memory",
)
def beam_slenderness(effective_length: float, depth: float, breadth: float) -> float:
    """Slenderness ratio of a timber beam [1].

    Lengths [in]. Scalars. Limits: none here; no more than the office's greatest where it is used.
    """
    return sqrt(effective_length * depth / breadth**2)


@formula(
    "F_bE = c * E_min / R_B**2",
    result=Symbol("bending stress at which the beam turns over", "ksi"),
    c=Symbol("coefficient of the rule", "1", "coefficient", low=0.5, high=1.5),
    E_min=LEAST_MODULUS,
    R_B=Symbol("slenderness ratio of the beam", "1", "beam_ratio", low=5.0, high=50.0),
    source=NDS + " 3.3.3.8 (1.20), LRFD Bridge Design Specifications 8.6.2 (0.76 of the modulus "
    "itself), from memory",
)
def beam_turning_stress(coefficient: float, least_modulus: float, beam_ratio: float) -> float:
    """Bending stress at which a timber beam turns over [ksi].

    Coefficient, ratio [1], modulus [ksi]; scalars or arrays. Limits: none.
    """
    return coefficient * least_modulus / beam_ratio**2


@formula(
    "C_L = (1 + F_bE / F_b) / 1.9 - sqrt(((1 + F_bE / F_b) / 1.9)**2 - F_bE / F_b / 0.95)",
    result=Symbol("beam stability factor", "1"),
    F_bE=TURNING,
    F_b=Symbol("bending stress with all other factors", "ksi", "stable", low=0.5, high=4.0),
    source=NDS + " 3.3.3.8, LRFD Bridge Design Specifications 8.6.2, from memory",
)
def beam_stability(turning: float, stable: float) -> float:
    """Part of its bending stress that a timber beam's slenderness leaves [1].

    Stresses [ksi]. Scalars. Limits: none.
    """
    ratio = turning / stable
    half = (1 + ratio) / 1.9
    return half - sqrt(half**2 - ratio / 0.95)


@formula(
    "C_F = (12 in / d)**p",
    result=Symbol("size factor", "1"),
    d=Symbol("depth", "in", "depth", low=12.0, high=24.0),
    p=Symbol("power of the rule", "1", "power", low=0.1, high=0.2),
    source=NDS + " 4.3.6.2, from memory",
)
def size_of_timber(depth: float, power: float) -> float:
    """Size factor of a timber deeper than 12 in [1].

    Depth [in], power [1]; scalars or arrays. Limits: depth over 12 in.
    """
    factor: float = (12.0 / depth) ** power
    return factor


@formula(
    "F = F_b * C_D * C_M * C_F * C_fu * C_i * C_r",
    result=Symbol("bending stress with all factors but stability", "ksi"),
    F_b=F_B,
    C_D=C_D,
    C_M=C_M,
    C_F=Symbol("size factor", "1", "size", low=0.8, high=1.5),
    C_fu=Symbol("flat use factor", "1", "flat", low=0.7, high=1.2),
    C_i=C_I,
    C_r=Symbol("repetitive member factor", "1", "repetitive", low=1.0, high=1.15),
    source=NDS + " Table 4.3.1, from memory",
)
def adjusted_bending(
    reference: float, *, duration: float, wet: float, size: float, flat: float, incised: float,
    repetitive: float,
) -> float:
    """Bending stress of timber with every factor but that of stability [ksi].

    Stress [ksi], factors [1]; scalars or arrays. Limits: each factor where its condition holds.
    """
    return reference * duration * wet * size * flat * incised * repetitive


@formula(
    "F = F_v * C_D * C_M * C_i",
    result=Symbol("shear stress along the grain that the stick may bear", "ksi"),
    F_v=Symbol("reference shear stress", "ksi", "reference", low=0.1, high=0.3),
    C_D=C_D,
    C_M=C_M,
    C_i=C_I,
    source=NDS + " Table 4.3.1, from memory",
)
def adjusted_shear(reference: float, *, duration: float, wet: float, incised: float) -> float:
    """Shear stress along the grain with its factors [ksi].

    Stress [ksi], factors [1]; scalars or arrays. Limits: none.
    """
    return reference * duration * wet * incised


@formula(
    "F = F_c * C_M * C_i",
    result=Symbol("push across the grain that the stick may bear", "ksi"),
    F_c=Symbol("reference push across the grain", "ksi", "reference", low=0.3, high=1.0),
    C_M=C_M,
    C_i=C_I,
    source=NDS + " Table 4.3.1: no load duration, from memory",
)
def adjusted_across(reference: float, *, wet: float, incised: float) -> float:
    """Push across the grain with its factors [ksi].

    Stress [ksi], factors [1]; scalars or arrays. Limits: the length of the bearing not counted.
    """
    return reference * wet * incised


@formula(
    "F = m * F_a",
    result=Symbol("allowable stress", "ksi"),
    m=Symbol("operating over inventory", "1", "times", low=1.0, high=1.33),
    F_a=Symbol("allowable stress at inventory", "ksi", "allowed", low=0.1, high=3.0),
    source="Manual for Bridge Evaluation 6B.5.2.7, from memory",
)
def allowed_at_level(times: float, allowed: float) -> float:
    """Allowable stress of timber at a level [ksi].

    Times [1], stress [ksi]; scalars or arrays. Limits: none.
    """
    return times * allowed


@formula(
    "F_r = psi * phi * (K / phi) * l * F_a",
    result=Symbol("stress by load and resistance", "ksi"),
    psi=Symbol("condition and system factor together", "1", "reduction", low=0.85, high=1.0),
    phi=Symbol("resistance factor", "1", "factor", low=0.6, high=1.0),
    K=Symbol("format conversion times the resistance factor", "1", "conversion", low=1.5, high=3.0),
    l=Symbol("time effect factor", "1", "time_effect", low=0.6, high=1.0),
    F_a=Symbol("stress with its factors, without load duration", "ksi", "adjusted", low=0.1,
               high=3.0),
    source="LRFD Bridge Design Specifications 8.4.4 and 8.6, from memory",
)
def factored_timber(
    reduction: float, factor: float, *, conversion: float, time_effect: float, adjusted: float
) -> float:
    """Stress of timber by load and resistance [ksi].

    Factors [1], stress [ksi]; scalars or arrays. Limits: none.
    """
    return reduction * factor * (conversion / factor) * time_effect * adjusted


@formula(
    "F_n = F * (d_n / d)**2",
    result=Symbol("shear stress on what a notch leaves", "ksi"),
    F=Symbol("shear stress of the whole stick", "ksi", "whole", low=0.1, high=0.5),
    d_n=Symbol("depth over the notch", "in", "over_notch", low=4.0, high=16.0),
    d=Symbol("depth", "in", "depth", low=16.0, high=20.0),
    source=NDS + " 3.4.3.2, notch on the stretched side, from memory",
)
def notched_shear(whole: float, over_notch: float, depth: float) -> float:
    """Shear stress that the wood over a notch may bear [ksi].

    Stress [ksi], lengths [in]; scalars or arrays. Limits: notch on the lower side, at the end.
    """
    return whole * (over_notch / depth) ** 2
