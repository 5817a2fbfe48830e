"""Whole numbers as words of a command line."""

from courses.management.door import DoorError

LARGEST = 2**63 - 1


def whole_number(name: str, word: str, least: int = 0, most: int = LARGEST) -> int:
    """Return the number that `word` spells; a DoorError names the argument and what would be right."""
    plain = word.strip()
    if not (plain.isascii() and plain.isdigit() and len(plain) <= 19 and least <= int(plain) <= most):
        raise DoorError(f"{name} is {word[:40]!r}; give a whole number from {least} to {most}, such as {name} 7.")
    return int(plain)
