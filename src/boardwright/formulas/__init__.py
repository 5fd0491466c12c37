"""One published equation a function, with its symbols, units, limits, source and a worked example.

moisture, movement, density: wood and water. screws, placing: fasteners. beams, strength: what carries.
joint_strength: joints and legs. lifting, passing: what is lifted and carried. lumber: board feet and tally. gluing:
clamps and glue. Each module's `LIMITS` says where its formulas hold; `limits.breaches` reads it.
"""
