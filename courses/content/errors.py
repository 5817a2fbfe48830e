"""What is said when a shipped file cannot be read: the file, the line, the key, and what would be right."""

from __future__ import annotations


class FileRefused(ValueError):
    """A shipped file, such as a lesson, a course or a scenario, that cannot be read.

    The text of the error is one line: ``file, line N, key: sentence``.

    >>> print(FileRefused("lessons.toml", 12, "minutes", "'long' is not a whole number; write minutes = 30."))
    lessons.toml, line 12, minutes: 'long' is not a whole number; write minutes = 30.
    """

    def __init__(self, file: str, line: int, key: str, sentence: str) -> None:
        """Keep the place (``file``, ``line`` from 1, ``key``) and the ``sentence`` that says what would be right."""
        super().__init__(f"{file}, line {line}, {key}: {sentence}")
        self.file = file
        self.line = line
        self.key = key
        self.sentence = sentence
