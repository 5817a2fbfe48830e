"""From the text of a rule to a checked tree: read, bounded, every fault at its place, what is risky warned of."""
