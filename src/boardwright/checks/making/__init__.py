"""Making: what the shop's machines take, its clamps reach, and its glue gives time for."""
