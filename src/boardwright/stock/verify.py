"""The check of a layout. It knows no solver and trusts nothing that an answer says about itself."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator

from boardwright.stock.instance import Instance, Item, Limits, Rectangle, StockSize
from boardwright.stock.slicing import Box, separable
from boardwright.stock.solution import COST_TOLERANCE, NO_STOCK_LEFT, Answer, Bin, Placed
from boardwright.stock.units import to_units
from boardwright.stock.verify_cuts import cut_faults
from boardwright.stock.verify_limits import box_of, limit_faults, meet, order_faults


def verify(instance: Instance, answer: Answer) -> list[str]:
    """Faults of an answer.

    Args:
        instance: the question.
        answer: the answer.

    Returns:
        One sentence a fault, in a steady order; empty when the answer is sound.
    """
    found: list[str] = []
    stocks = {s.id: s for s in instance.stocks}
    for number, cut_from in enumerate(answer.bins, 1):
        where = f"bin {number} ({cut_from.stock_id})"
        if cut_from.stock_id not in stocks:
            found.append(f"{where}: no such stock")
            continue
        found += [f"{where}: {fault}" for fault in _bin_faults(instance, stocks[cut_from.stock_id], cut_from)]
    found += order_faults(instance, answer.bins)
    found += _count_faults(instance, answer)
    found += _unplaced_faults(instance, answer)
    found += _cost_faults(answer, stocks)
    return found


def usable(stock: StockSize) -> Box:
    """The rectangle that is left of a stock when it has been trimmed (units)."""
    end, edge = to_units(stock.trim_length), to_units(stock.trim_width)
    return end, edge, to_units(stock.length) - end, to_units(stock.width) - edge


def _box(placed: Placed) -> Box:
    x, y = to_units(placed.x), to_units(placed.y)
    return x, y, x + to_units(placed.length), y + to_units(placed.width)


def _bin_faults(instance: Instance, stock: StockSize, cut_from: Bin) -> Iterator[str]:
    """Faults of one stock and what is cut from it.

    Args:
        instance: the question.
        stock: the stock.
        cut_from: what is cut from it.

    Yields:
        One sentence a fault.
    """
    kerf = to_units(instance.kerf)
    items = {i.id: i for i in instance.items}
    inside = usable(stock)
    if not cut_from.placed:
        yield "nothing is cut from it"
    for part in cut_from.placed:
        if part.item_id not in items:
            yield f"{part.item_id} is not wanted"
            continue
        yield from _part_faults(items[part.item_id], part, inside)
    boxes = [_box(p) for p in cut_from.placed]
    yield from _clash_faults(cut_from, boxes, kerf)
    axes = {"rip": (1,), "crosscut": (0,), "any": (0, 1)}[instance.first_cut]
    if not any(separable(boxes, kerf, along, instance.stages) for along in axes):
        limit = "any number of" if instance.stages is None else str(instance.stages)
        yield f"the parts cannot be sawn apart in {limit} stages, first cut {instance.first_cut}"
    full = (0, 0, to_units(stock.length), to_units(stock.width))
    leftovers = [_corners(r) for r in cut_from.leftovers]
    yield from cut_faults(instance, full, boxes, cut_from.cuts, leftovers)
    yield from limit_faults(instance, stock, cut_from)


def _corners(r: Rectangle) -> Box:
    return to_units(r.x0), to_units(r.y0), to_units(r.x1), to_units(r.y1)


def _part_faults(item: Item, part: Placed, inside: Box) -> Iterator[str]:
    name = f"{part.item_id} copy {part.copy}"
    wanted = (to_units(item.length), to_units(item.width))
    if part.turned:
        wanted = (wanted[1], wanted[0])
        if not item.turnable:
            yield f"{name} is turned across the grain"
    if (to_units(part.length), to_units(part.width)) != wanted:
        yield f"{name} is {part.length} x {part.width} mm on the stock, not as the item"
    x0, y0, x1, y1 = _box(part)
    if x0 < inside[0] or y0 < inside[1] or x1 > inside[2] or y1 > inside[3]:
        yield f"{name} is outside the trimmed stock"


def _clash_faults(cut_from: Bin, boxes: list[Box], kerf: int) -> Iterator[str]:
    order = sorted(range(len(boxes)), key=lambda i: boxes[i])
    for n, i in enumerate(order):
        for j in order[n + 1 :]:
            a, b = boxes[i], boxes[j]
            if b[0] >= a[2] + kerf:
                break
            if b[1] < a[3] + kerf and a[1] < b[3] + kerf:
                p, q = cut_from.placed[i], cut_from.placed[j]
                pair = f"{p.item_id} copy {p.copy} and {q.item_id} copy {q.copy}"
                yield f"{pair} overlap or are nearer than the kerf"


def _count_faults(instance: Instance, answer: Answer) -> Iterator[str]:
    seen = Counter((p.item_id, p.copy) for b in answer.bins for p in b.placed)
    seen.update((u.item_id, u.copy) for u in answer.unplaced)
    for item in instance.items:
        for copy in range(1, item.count + 1):
            times = seen.pop((item.id, copy), 0)
            if times != 1:
                yield f"{item.id} copy {copy} is {'missing' if times == 0 else f'there {times} times'}"
    for name, copy in sorted(seen):
        yield f"{name} copy {copy} is more than is wanted"
    used = Counter(b.stock_id for b in answer.bins)
    for stock in instance.stocks:
        if stock.count is not None and used[stock.id] > stock.count:
            yield f"stock {stock.id} is used {used[stock.id]} times; there are {stock.count}"


def _fits(item: Item, stock: StockSize, kerf: int) -> bool:
    """Whether a stock has a place for an item: if so, one against edges or defects on its left and below it.

    Beside a defect it must be a cut away from the edge.
    """
    x0, y0, x1, y1 = usable(stock)
    defects = [box_of(d) for d in stock.defects]
    length, width = to_units(item.length), to_units(item.width)
    for a, b in ((length, width), (width, length)) if item.turnable else ((length, width),):
        for x in {x0, *(max(d[2], x0 + kerf) for d in defects)}:
            for y in {y0, *(max(d[3], y0 + kerf) for d in defects)}:
                box = (x, y, x + a, y + b)
                if box[2] <= x1 and box[3] <= y1 and not any(meet(box, d) for d in defects):
                    return True
    return False


def _unplaced_faults(instance: Instance, answer: Answer) -> Iterator[str]:
    items = {i.id: i for i in instance.items}
    used = Counter(b.stock_id for b in answer.bins)
    waiting = {name for sequence in instance.sequences for name in sequence}
    for copy in answer.unplaced:
        held_up = copy.item_id in waiting or instance.in_order or instance.limits != Limits()
        if copy.item_id not in items or (copy.reason == NO_STOCK_LEFT and held_up):
            continue
        taking = [s for s in instance.stocks if _fits(items[copy.item_id], s, to_units(instance.kerf))]
        free = [s for s in taking if s.count is None or used[s.id] < s.count]
        if (copy.reason != NO_STOCK_LEFT and taking) or (
            copy.reason == NO_STOCK_LEFT and (free or not taking)
        ):
            yield f"{copy.item_id} copy {copy.copy} is left out for a reason that is not true: {copy.reason}"


def _cost_faults(answer: Answer, stocks: dict[str, StockSize]) -> Iterator[str]:
    cost = sum(stocks[b.stock_id].cost for b in answer.bins if b.stock_id in stocks)
    slack = COST_TOLERANCE * max(1.0, cost)
    if abs(cost - answer.cost) > slack:
        yield f"the cost is {cost:g}, not {answer.cost:g}"
    if answer.lower_bound > cost + slack:
        yield f"the lower bound {answer.lower_bound:g} is above the cost {cost:g}"
    if answer.bins_bound > len(answer.bins):
        yield f"at least {answer.bins_bound} stocks are said to be needed; {len(answer.bins)} are used"
    if answer.proven and answer.lower_bound < cost - slack:
        yield f"said to be proven, but the bound {answer.lower_bound:g} is below the cost {cost:g}"
