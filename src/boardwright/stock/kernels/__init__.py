"""Inner loops, compiled by numba on first use. Import these modules inside functions only."""
