"""`plan.json`: the record that every output prints from."""
