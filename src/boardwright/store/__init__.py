"""The rack: lumber, sheets, offcuts, hardware, glue, finish, prices. The only door to SQLAlchemy."""
