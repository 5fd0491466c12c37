"""One published equation a function, with its source and limits."""
