"""The register of calculators: one declaration gives the page, the lesson's calculator and the door.

A new sum is one `Sum` in the module of its topic; `register` puts the topics in order.
"""

from courses.trade.sums.register import SUMS, listing, refusals, sum_named, work_out
from courses.trade.sums.result import Figure, Result, ShownLine, ShownResult
from courses.trade.sums.shape import Input, Note, Output, Quantity, Sum, Value, Worked

__all__ = [
    "SUMS",
    "Figure",
    "Input",
    "Note",
    "Output",
    "Quantity",
    "Result",
    "ShownLine",
    "ShownResult",
    "Sum",
    "Value",
    "Worked",
    "listing",
    "refusals",
    "sum_named",
    "work_out",
]
