"""Species, sheets, fasteners, glues: CSV rows, each with its source; a user file can add or override rows."""
