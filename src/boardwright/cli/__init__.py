"""The command line: parse, call the pipeline, print."""
