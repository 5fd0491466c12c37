"""Ways a part can be joined to another: one file a joint."""
