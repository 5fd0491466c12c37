"""The command line: parse, call the pipeline, print."""

from boardwright.cli.main import main

__all__ = ["main"]
