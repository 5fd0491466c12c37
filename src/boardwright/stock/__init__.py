"""Rough sizes, glue-ups, board and sheet layouts, buying list. The only door to ortools."""
