"""The compiler: from the checked rules of a book to one generated function, audited before it is executed.

It writes two variants, one that only judges and one that records what it looked at. Values that may be missing, and
only those, are reckoned in three values. `tests/assessments/rules/oracle` holds an independent back end to compare.
"""

from assessments.rules.compiler.audit import AuditFailed
from assessments.rules.compiler.cache import compile_book, compile_rule
from assessments.rules.compiler.compiled import DRAWN, Compiled, Run

__all__ = ["DRAWN", "AuditFailed", "Compiled", "Run", "compile_book", "compile_rule"]
