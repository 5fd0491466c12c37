"""Wooden full-extension bars: how far they let a drawer out, what they bear, how far the drawer droops.

A bar lies in a groove of the case and in one of the drawer side. Two lengthwise slots go through its thickness, the
rear one round a screw in the case, the front one round a screw in the drawer. Places are measured along the bar,
depths across it, heights upright. The load P is what one of the two bars of a drawer carries.
"""

from __future__ import annotations

from math import radians, sqrt, tan

from boardwright.formulas.limits import Limit, Limits

LIMITS: Limits = {
    "land_stress": {"S": Limit(0, None, "mm")},
    "wall_pressure": {"a": Limit(0, None, "mm")},
}


def bar_thickness(c: float, d: float, gap: float, play: float) -> float:
    """Thickness of a bar that lies in two facing grooves.

    Args:
        c: depth of the groove in the case [mm].
        d: depth of the groove in the drawer side [mm].
        gap: room between drawer and case, one side [mm].
        play: room left to the bar across [mm].

    Returns:
        Thickness of the bar [mm].

    Limits:
        None.

    Source:
        Sum of sizes: both groove bottoms are c + gap + d apart.

    Example:
        Grooves of 6 and 5, 2 apart, play 1, by hand: 12.

        >>> bar_thickness(6, 5, 2, 1)
        12
    """
    return c + gap + d - play


def slot_travel(S: float, D: float) -> float:
    """How far a bar slides past the screw in one of its slots.

    Args:
        S: clear length of the slot [mm].
        D: shank diameter of the screw [mm].

    Returns:
        Travel from one end to the other [mm].

    Limits:
        S at least D.

    Source:
        Kinematics: the screw's axis keeps D/2 from each end of the slot.

    Example:
        A slot of 150 and a screw of 3, by hand: 147.

        >>> slot_travel(150, 3)
        147
    """
    return S - D


def full_travel(S_front: float, S_rear: float, D: float) -> float:
    """How far a drawer comes out on bars with two slots.

    Args:
        S_front: clear length of the slot round the drawer's screw [mm].
        S_rear: clear length of the slot round the case's screw [mm].
        D: shank diameter of both screws [mm].

    Returns:
        Travel of the drawer [mm].

    Limits:
        Both slots at least D.

    Source:
        Kinematics: the bar leaves the case by one slot, the drawer leaves the bar by the other.

    Example:
        Slots of 150 and 140 and screws of 3, by hand: 147 + 137 = 284.

        >>> full_travel(150, 140, 3)
        284
    """
    return slot_travel(S_front, D) + slot_travel(S_rear, D)


def recess_width(head: float, turn: float, angle: float = 90) -> float:
    """Width of the V in which a screw's head lies flush when it is backed off.

    Args:
        head: diameter of the head [mm].
        turn: how far the head is below the face when the screw is driven home: one pitch for one turn [mm].
        angle: between the walls of the V [degrees].

    Returns:
        Width of the V at the face [mm].

    Limits:
        Angles up to that of the head: it then touches with its rim.

    Source:
        Geometry: at the depth of the rim the V is as wide as the head, and each wall leans by half the angle.

    Example:
        A head of 6 a pitch of 1 down in a V of 90 degrees, by hand: 6 + 2 x 1 = 8.

        >>> round(recess_width(6, 1), 9)
        8.0
    """
    return head + 2 * turn * tan(radians(angle / 2))


def recess_depth(W: float, angle: float = 90) -> float:
    """Depth of a V of a given width.

    Args:
        W: width at the face [mm].
        angle: between its walls [degrees].

    Returns:
        Depth to the point of the V [mm].

    Limits:
        None.

    Source:
        Geometry: half the width over the tangent of half the angle.

    Example:
        >>> round(recess_depth(8), 9)
        4.0
    """
    return W / 2 / tan(radians(angle / 2))


def engaged_in_case(L: float, start: float, T_case: float) -> float:
    """How much of a bar is still in the case's groove when the bar is out.

    Args:
        L: length of the bar [mm].
        start: from the front edge of the case to the bar's front end when shut [mm].
        T_case: how far the bar has come out of the case [mm].

    Returns:
        Length in the groove [mm].

    Limits:
        The groove runs out at the front edge.

    Source:
        Kinematics: the bar's rear end lies at start + L - T_case.

    Example:
        A bar of 400 that starts 30 in, 190 out, by hand: 240.

        >>> engaged_in_case(400, 30, 190)
        240
    """
    return min(L, L + start - T_case)


def engaged_in_drawer(rear: float, start: float, T_drawer: float) -> float:
    """How much of a bar is still in the drawer's groove when the drawer has left it.

    Args:
        rear: from the front edge of the case to the rear end of the drawer side when shut [mm].
        start: from the front edge of the case to the bar's front end when shut [mm].
        T_drawer: how far the drawer has come off the bar [mm].

    Returns:
        Length in the groove [mm].

    Limits:
        The groove runs out at the rear end of the side; the bar is at least as long as what is left.

    Source:
        Kinematics: seen from the bar, the side's rear end moves from rear - start to rear - start - T_drawer.

    Example:
        A side that ends 420 in, a bar that starts 30 in, 190 off, by hand: 200.

        >>> engaged_in_drawer(420, 30, 190)
        200
    """
    return rear - start - T_drawer


def mouth_force(P: float, a: float, E: float) -> float:
    """Force of the case on a bar at the front edge of its groove.

    Args:
        P: load on the bar [N].
        a: from the front edge out to the load [mm].
        E: length of bar in the groove [mm].

    Returns:
        Force upward at the front edge [N].

    Limits:
        Rigid parts with play: the bar bears at both ends of what is in the groove.

    Source:
        Statics: moments round the bar's rear end, P (a + E) = R E.

    Example:
        50 N, 200 out, 200 in, by hand: 100 N.

        >>> mouth_force(50, 200, 200)
        100.0
    """
    return P * (a + E) / E


def tail_force(P: float, a: float, E: float) -> float:
    """Force of the case on the rear end of a bar; it holds the bar down.

    Args:
        P: load on the bar [N].
        a: from the front edge out to the load [mm].
        E: length of bar in the groove [mm].

    Returns:
        Force downward at the bar's rear end [N].

    Limits:
        As `mouth_force`; negative where the load lies inside the case.

    Source:
        Statics: moments round the front edge, P a = R E.

    Example:
        50 N, 200 out, 250 in, by hand: 40 N.

        >>> tail_force(50, 200, 250)
        40.0
    """
    return P * a / E


def front_force(P: float, x: float, E: float) -> float:
    """Force of the drawer on the front end of a bar.

    Args:
        P: load on the bar [N].
        x: from the bar's front end forward to the load, negative when it lies over the bar [mm].
        E: length of bar in the drawer's groove [mm].

    Returns:
        Force downward at the bar's front end [N].

    Limits:
        Rigid parts with play: the drawer bears at both ends of what its groove holds.

    Source:
        Statics of the drawer: moments round the rear end of its groove, P (x + E) = R E.

    Example:
        50 N, 20 before the bar, 200 in the groove, by hand: 55 N.

        >>> front_force(50, 20, 200)
        55.0
    """
    return P * (x + E) / E


def greatest_moment(P: float, x: float, E: float, out: float) -> float:
    """Greatest bending moment in a bar at full pull.

    Args:
        P: load on the bar [N].
        x: from the bar's front end forward to the load, negative when it lies over the bar [mm].
        E: length of bar in the drawer's groove [mm].
        out: length of bar before the front edge of the case [mm].

    Returns:
        Moment [N mm].

    Limits:
        Rigid parts with play, as `front_force` and `mouth_force`; the load lies before the front edge.

    Source:
        Statics: with R = P (x + E) / E at the front end the moment is R E at the rear end of the drawer's groove and
        P (x + out) at the front edge; where the drawer reaches into the case it is R out at the front edge.

    Example:
        50 N, 20 before a bar that stands 210 out with 200 in the drawer, by hand: 50 x 230 = 11500.

        >>> float(greatest_moment(50, 20, 200, 210))
        11500.0
    """
    front = front_force(P, x, E)
    return front * out if out < E else max(front * E, P * (x + out))


def slotted_second_moment(t: float, h: float, w: float, W: float, D: float) -> float:
    """Second moment of area of a bar across its slot, with the V for the screw's head.

    Args:
        t: thickness of the bar [mm].
        h: height of the bar [mm].
        w: height of the slot [mm].
        W: width of the V at the face [mm].
        D: depth of the V [mm].

    Returns:
        Second moment of area about the bar's middle [mm4].

    Limits:
        Slot and V in the middle of the height; w <= W <= h, D <= t.

    Source:
        Mechanics: t (h^3 - w^3) / 12 less the integral of z^2 D (1 - 2 z / W), taken twice from w/2 to W/2.

    Example:
        By hand for t 12, h 10, w 2, W 6, D 3: 12 x 992 / 12 = 992; the V takes
        6 x ((27 - 1) / 3 - (81 - 1) / 12) = 6 x (8.6667 - 6.6667) = 12; so 980.

        >>> round(slotted_second_moment(12, 10, 2, 6, 3), 6)
        980.0
    """
    a, b = w / 2, W / 2
    v = 2 * D * ((b**3 - a**3) / 3 - (b**4 - a**4) / (2 * W))
    return t * (h**3 - w**3) / 12 - v


def land_stress(V: float, S: float, t: float, c: float) -> float:
    """Stress in the two lands of a slot from the shear that they carry.

    Args:
        V: shear force across the slot [N].
        S: clear length of the slot [mm].
        t: least thickness of a land [mm].
        c: height of a land [mm].

    Returns:
        Stress at the ends of the lands, beside that of the whole bar in bending [MPa].

    Limits:
        Both lands alike, held stiffly by wood at both ends of the slot.

    Source:
        Mechanics of a frame without diagonals: each land carries V/2 and turns its bend in the middle, so its end
        moment is V/2 x S/2; its section modulus is t c^2 / 6.

    Example:
        40 N over a slot of 150, lands 12 x 6, by hand: 40 x 150 / 4 = 1500 N mm on 72 mm3 = 20.83.

        >>> round(land_stress(40, 150, 12, 6), 2)
        20.83
    """
    return 1.5 * V * S / (t * c**2)


def land_stress_held(E: float, play: float, S: float, c: float) -> float:
    """Greatest stress that the two lands of a slot can come to in a groove that holds them to its play.

    Args:
        E: modulus of elasticity [MPa].
        play: height of the groove over that of the bar [mm].
        S: clear length of the slot [mm].
        c: height of a land [mm].

    Returns:
        Stress at the ends of the lands [MPa].

    Limits:
        The whole slot lies in the groove: one of its ends sinks past the other by the play and no more.

    Source:
        Mechanics: a beam whose ends are held from turning and shifted by the play bends with 6 E I play / S^2.

    Example:
        E 12000, play 1, slot 150, lands 6 high, by hand: 3 x 12000 x 6 / 22500 = 9.6.

        >>> round(land_stress_held(12000, 1, 150, 6), 3)
        9.6
    """
    return 3 * E * play * c / S**2


def tilt_in_groove(play: float, E: float, curvature: float) -> float:
    """Slope of a bar at the mouth of its groove, by the play and by its bending in the groove.

    Args:
        play: height of the groove over that of the bar [mm].
        E: length of bar in the groove [mm].
        curvature: of the bar at the mouth, moment over stiffness [1/mm].

    Returns:
        Slope at the mouth [-].

    Limits:
        Small angles; the moment falls in a straight line from the mouth to where the bar bears behind.

    Source:
        Mechanics: the bar bears at the mouth and, a play higher, at its rear end: play / E + curvature E / 3. Where it
        would bow past the upper wall, at curvature E^2 > 6 play, it bears where it touches that wall in line with it:
        play = curvature E'^2 / 6, slope = curvature E' / 2 = sqrt(1.5 play curvature).

    Example:
        Play 1, 200 in the groove, by hand: straight 1/200; at 0.00006 per mm 1/200 + 0.004 = 0.009; at 0.0006
        sqrt(0.0009) = 0.03.

        >>> [round(tilt_in_groove(1, 200, k), 6) for k in (0, 0.00006, 0.0006)]
        [0.005, 0.009, 0.03]
    """
    if curvature * E**2 <= 6 * play:
        return play / E + curvature * E / 3
    return sqrt(1.5 * play * curvature)


def overhang_tilt(P: float, a: float, E: float, I: float) -> float:  # noqa: E741
    """How much steeper the line to the front end of a bar is than the bar at the front edge of the case.

    Args:
        P: load at the front end [N].
        a: from the front edge of the case to the front end [mm].
        E: modulus of elasticity, shear included [MPa].
        I: second moment of area [mm4].

    Returns:
        Slope beside that at the front edge [-].

    Limits:
        A straight bar; small deflections.

    Source:
        Cantilever with a load at its end, P a^3 / (3 E I): Wood Handbook FPL-GTR-282 (2021), eq. 9-2 and table 9-1,
        `beams.LOADINGS`; over the length a.

    Example:
        50 N, 200 out, E 12000, I 3600, by hand: 50 x 40000 / (3 x 12000 x 3600) = 0.01543.

        >>> round(overhang_tilt(50, 200, 12000, 3600), 5)
        0.01543
    """
    return P * a**2 / (3 * E * I)


def wall_pressure(P: float, a: float, E: float, b: float) -> float:
    """Greatest pressure between a bar and the wall of its groove.

    Args:
        P: load on the bar [N].
        a: from the mouth of the groove out to the load [mm].
        E: length of bar in the groove [mm].
        b: breadth of bar on the wall: groove depth less play [mm].

    Returns:
        Pressure at the mouth [MPa].

    Limits:
        A stiff bar that fits its groove; pressure that rises and falls in a straight line over E.

    Source:
        Statics: force P and moment P (a + E/2) round the middle of the length E give P/(b E) + 6 M/(b E^2).

    Example:
        50 N, 200 out, 200 in, 6 broad, by hand: 50 / 1200 x (4 + 6) = 0.4167.

        >>> round(wall_pressure(50, 200, 200, 6), 4)
        0.4167
    """
    return P / (b * E) * (4 + 6 * a / E)


def droop(tilt: float, T: float, tilt_off: float, T_off: float) -> float:
    """How far a drawer's front hangs down at full pull.

    Args:
        tilt: slope of the bars to their front ends [-].
        T: from the front edge of the case out to the drawer's front [mm].
        tilt_off: slope of the drawer on its bars, play over length in the groove [-].
        T_off: from the bars' front ends out to the drawer's front [mm].

    Returns:
        Sinking of the drawer's front, the most when the drawer tips on its bars [mm].

    Limits:
        Small angles.

    Source:
        Geometry: the bars turn round the front edge of the case, the drawer round the bars' front ends.

    Example:
        Slopes of 1/200 and 1/250, 400 and 200 out, by hand: 2 + 0.8 = 2.8.

        >>> droop(1 / 200, 400, 1 / 250, 200)
        2.8
    """
    return tilt * T + tilt_off * T_off


def sunk_head(W: float, head: float, angle: float = 90) -> float:
    """How far below a bar's face the rim of a head lies when the screw is driven home into the V.

    Args:
        W: width of the V at the face [mm].
        head: diameter of the head [mm].
        angle: between the walls of the V [degrees].

    Returns:
        Depth of the rim under the face [mm].

    Limits:
        W at least the head.

    Source:
        Geometry, the inverse of `recess_width`.

    Example:
        A head of 6 in a V 8 wide, by hand: 1.

        >>> round(sunk_head(8, 6), 9)
        1.0
    """
    return (W - head) / 2 / tan(radians(angle / 2))


def screw_grip(length: float, t: float, sunk: float) -> float:
    """How deep a screw stands in the wood behind a bar.

    Args:
        length: of the screw [mm].
        t: thickness of the bar [mm].
        sunk: how far its head lies below the bar's face [mm].

    Returns:
        Depth in the wood [mm].

    Limits:
        The bar touches the bottom of its groove.

    Source:
        Sum of sizes.

    Example:
        A screw of 19 in a bar of 13, its head 1 under the face, by hand: 7.

        >>> screw_grip(19, 13, 1)
        7
    """
    return length - t + sunk
