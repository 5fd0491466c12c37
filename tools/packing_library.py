"""A general-purpose packing library on the same jobs: the best of its guillotine methods, to compare with."""

from __future__ import annotations

from typing import Any


def fewest_sheets(job: dict[str, Any], turnable: bool) -> int:
    """Sheets that the best of the library's guillotine methods and orders needs, any number of stages."""
    import rectpack  # type: ignore[import-untyped]
    from rectpack import guillotine

    methods = [
        getattr(guillotine, f"Guillotine{choose}{split}")
        for choose in ("Bssf", "Blsf", "Baf")
        for split in ("Sas", "Las", "Slas", "Llas", "Maxas", "Minas")
    ]
    orders = (rectpack.SORT_AREA, rectpack.SORT_SSIDE, rectpack.SORT_LSIDE, rectpack.SORT_PERI)
    parts = [(a, b) for a, b, *more in job["parts"] for _ in range(more[0])]
    length, width = job["sheet"]
    found = []
    for method in methods:
        for order in orders:
            packer = rectpack.newPacker(
                mode=rectpack.PackingMode.Offline,
                bin_algo=rectpack.PackingBin.BBF,
                pack_algo=method,
                sort_algo=order,
                rotation=turnable,
            )
            for a, b in parts:
                packer.add_rect(a, b)
            packer.add_bin(length, width, count=len(parts))
            packer.pack()
            if sum(len(sheet) for sheet in packer) == len(parts):
                found.append(len(packer))
    return min(found, default=len(parts))
