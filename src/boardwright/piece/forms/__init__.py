"""Constructions: one file a form."""
