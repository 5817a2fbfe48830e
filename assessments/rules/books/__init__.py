"""Rule books and the names shared rules may use, read from TOML and refused with file, line and key."""
