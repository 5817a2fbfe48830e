"""What is said when shipped content cannot be read: the file, the line, the key, and what would be right."""

from __future__ import annotations


class PackError(ValueError):
    """A course pack, lesson or finder table that cannot be read.

    The text of the error is one line: ``file, line N, key: sentence``.

    >>> print(PackError("lessons.toml", 12, "minutes", "'long' is not a whole number; write minutes = 30."))
    lessons.toml, line 12, minutes: 'long' is not a whole number; write minutes = 30.
    """

    def __init__(self, file: str, line: int, key: str, sentence: str) -> None:
        """Keep the place (``file``, ``line`` from 1, ``key``) and the ``sentence`` that says what would be right."""
        super().__init__(f"{file}, line {line}, {key}: {sentence}")
        self.file = file
        self.line = line
        self.key = key
        self.sentence = sentence
