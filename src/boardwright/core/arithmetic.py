"""Arithmetic over lengths, as a maker writes it: `case.width - 2 * stock.ply + 1/4`.

Signs: `+`, `-`, `*` or `×`, `/` or `÷`, brackets, `min(…)`, `max(…)`; numbers as in `lengths.read_length`;
names are dotted, with places in square brackets. What a hyphen means between two numbers:

- `1-3/8` without spaces is one number, one and three eighths, as the trade writes it (common practice).
- `5 - 3/8` with spaces is five less three eighths; a space on one side only is refused.
- after a name or a bracket a hyphen is always a minus sign: `a-3/8`.

`3/4` is one number. Right after a division it could be read in two ways, so `a / 3/4` is refused and
`a / (3/4)` is read. A bare number takes the file's units when it is added to a length, compared with
one, or is the result.
"""

from boardwright.core.expressions import ArithmeticProblem
from boardwright.core.named_sizes import CircularSizes, Resolver, UnknownSize
from boardwright.core.sums import Expression, parse

__all__ = ["ArithmeticProblem", "CircularSizes", "Expression", "Resolver", "UnknownSize", "parse"]
