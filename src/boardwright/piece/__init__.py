"""`Design` → `Piece`: parts, joints, cuts, fasteners, hardware, spaces, every size known."""
