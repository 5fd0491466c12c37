"""Boardwright: from a design to a built and published piece of furniture."""
