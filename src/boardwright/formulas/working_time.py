"""Time in clamps, time at the bench, and a price from both."""

from __future__ import annotations

from collections.abc import Sequence

from boardwright.formulas.limits import Limit, Limits

LIMITS: Limits = {
    "out_of_clamps": {"spread": Limit(0, None, "h"), "clamped": Limit(0, None, "h")},
    "repeated_work": {"less": Limit(0, 1, "-"), "least": Limit(0, 1, "-")},
    "first_build": {"hours": Limit(0, None, "h")},
    "price": {"markup": Limit(0, 5, "-")},
}


def out_of_clamps(
    needs: Sequence[int], clamps: int, spread: float, clamped: float
) -> list[tuple[float, float]]:
    """When each of several glue-ups is in its clamps and out of them again, one person gluing in the given order.

    Args:
        needs: clamps of each glue-up, in the order in which they are glued [-].
        clamps: in the shop [-].
        spread: to spread the glue and set the clamps of one; it is begun so that its clamps are free when it ends [h].
        clamped: time in clamps [h].

    Returns:
        In and out of clamps, from the start [h].

    Limits:
        No glue-up needs more clamps than there are.

    Source:
        A queue for one pair of hands and so many clamps; maker's weblog on a day of glue-ups.

    Example:
        Four door panels with 4 clamps each and a top with 6, eight clamps, 15 min each, an hour in clamps, top last:
        printed all in at 2 1/2 h, all out at 3 1/2.

        >>> out_of_clamps([4, 4, 4, 4, 6], 8, 0.25, 1.0)[-1]
        (2.5, 3.5)
    """
    done: list[tuple[float, float]] = []
    hands = 0.0
    for i, need in enumerate(needs):
        moments = sorted({hands + spread, *(out for _, out in done if out > hands + spread)})
        start = next(
            t
            for t in moments
            if need + sum(n for n, (_, out) in zip(needs[:i], done, strict=True) if out > t) <= clamps
        )
        done.append((start, start + clamped))
        hands = start
    return done


def repeated_work(first: float, count: int, less: float, least: float) -> float:
    """Time for the same work done several times, each a little faster than the last.

    Args:
        first: the first time [h].
        count: how often [-].
        less: saved each time, of the first [-].
        least: share of the first below which it does not fall [-].

    Returns:
        Time for all of them [h].

    Limits:
        One maker's rule; others differ by far.

    Source:
        Trade forum thread on estimates: 5 % off for each repeat, down to 70 %.

    Example:
        Eight joints of 2 h: printed 13.3 h.

        >>> round(repeated_work(2, 8, 0.05, 0.7), 1)
        13.3
    """
    return sum(first * max(least, 1 - less * i) for i in range(count))


def price(hours: float, rate: float, materials: float, markup: float) -> float:
    """Price of a job from its hours and its materials.

    Args:
        hours: all work [h].
        rate: of the shop, for an hour [money].
        materials: bought [money].
        markup: on materials [-].

    Returns:
        The price [money].

    Limits:
        Bids of professionals for one job differ two to five times.

    Source:
        Trade forum thread and trade magazine article on estimates.

    Example:
        32.3 h at 35, materials 135 and a quarter more: printed 1299.

        >>> round(price(32.3, 35, 135, 0.25))
        1299
    """
    return hours * rate + materials * (1 + markup)


def first_build(hours: float) -> tuple[float, float]:
    """What a first-time builder needs for a piece, from the hours of one who has built it before.

    Args:
        hours: of the second build [h].

    Returns:
        Least and most to print [h].

    Limits:
        A judgement from few reports; shop hours, no days of waiting for glue and finish.

    Source:
        Makers' weblogs with logged hours: 2.4, 3.6 and 5.9 times the estimate.

    Example:
        A piece built in 30 h the second time: printed 60 to 180 h.

        >>> first_build(30)
        (60, 180)
    """
    return 2 * hours, 6 * hours
