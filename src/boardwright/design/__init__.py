"""Design file → `Design`: strict schema, line and column in every finding. The only door to ruamel.yaml."""
