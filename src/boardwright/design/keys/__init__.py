"""The keys of the design file, one file for each matter; `schema` puts them together."""
