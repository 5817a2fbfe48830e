"""Course packs, lessons and finder tables: from text to frozen value objects, or refused with file, line and key."""
